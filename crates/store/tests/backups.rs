//! A book goes into one file and comes back; a damaged file is refused and nothing is restored.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::book::clock::Hlc;
use eavebook_store::{
    BackupError, Book, Brought, CameSoFar, Carried, Device, backup, restore, verify,
};
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// The book of version 1 with a photo, in a folder; open, as it may be.
fn a_book(dir: &Path) -> (Book, String) {
    let old = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/books/version-1");
    std::fs::create_dir(dir).unwrap();
    std::fs::copy(old.join("book.sqlite"), dir.join("book.sqlite")).unwrap();
    let mut book = Book::open(dir).unwrap();
    let photo = book.put_photo(&mut &[9; 100_000][..]).unwrap();
    (book, photo.sha256)
}

fn said(book: &Book) -> Vec<String> {
    let jobs = book.books().unwrap();
    jobs.iter()
        .flat_map(|job| book.entries(*job).unwrap().whole)
        .map(|entry| entry.to_json())
        .collect()
}

struct Places {
    dir: tempfile::TempDir,
    book: Book,
    photo: String,
    file: PathBuf,
}

impl Places {
    fn new() -> Places {
        let dir = tempfile::tempdir().unwrap();
        let (book, photo) = a_book(&dir.path().join("book"));
        let file = dir.path().join("monday.backup");
        Places {
            dir,
            book,
            photo,
            file,
        }
    }

    fn back(&self) -> PathBuf {
        self.dir.path().join("back")
    }

    /// Takes the file into a book, photos before entries, as whoever brings it does.
    fn bring(&self, book: &mut Book, life: Uuid) -> Result<Brought, BackupError> {
        let carried = Carried::prove(&self.file, &self.unpacked())?;
        let mut brought = Brought::default();
        for mut photo in carried.photos()? {
            book.bring_photo(&mut photo, &mut brought)?;
        }
        for entries in carried.jobs()? {
            book.bring_entries(&entries?, &mut brought, NOW, life)?;
        }
        Ok(brought)
    }

    fn unpacked(&self) -> PathBuf {
        self.dir.path().join("unpacked")
    }
}

#[test]
fn a_book_comes_back_from_its_backup_with_every_entry_and_photo_and_another_life() {
    let places = Places::new();
    let held = backup(places.book.dir(), &places.file).unwrap();
    assert_eq!((held.entries, held.photos, held.lacking), (86, 1, 2));
    assert_eq!(verify(&places.file).unwrap(), held);
    assert_eq!(restore(&places.file, &places.back()).unwrap(), held);
    let back = Book::open(&places.back()).unwrap();
    assert_eq!(said(&back), said(&places.book));
    back.photo(&places.photo).unwrap();
    let (ours, theirs) = (places.book.device().unwrap(), back.device().unwrap());
    assert_eq!(ours.id, theirs.id);
    assert_ne!(ours.incarnation, theirs.incarnation);
    assert_eq!(back.pairing().unwrap(), None);
    let left: Vec<_> = std::fs::read_dir(places.dir.path()).unwrap().collect();
    assert_eq!(left.len(), 3, "{left:?}");
}

#[test]
fn a_backup_with_any_byte_changed_or_missing_is_refused_and_nothing_is_restored() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let whole = std::fs::read(&places.file).unwrap();
    let bad = places.dir.path().join("bad.backup");
    let mut refused = 0;
    let mut refuse = |bytes: &[u8]| {
        std::fs::write(&bad, bytes).unwrap();
        for said in [
            verify(&bad).unwrap_err(),
            restore(&bad, &places.back()).unwrap_err(),
        ] {
            assert!(said.to_string().contains("is no whole backup"), "{said}");
        }
        assert!(!places.back().exists());
        refused += 1;
    };
    for at in (0..whole.len())
        .step_by(whole.len() / 40)
        .chain([whole.len() - 1])
    {
        let mut changed = whole.clone();
        changed[at] ^= 1;
        refuse(&changed);
        refuse(&whole[..at]);
    }
    refuse(&[&whole[..], b"\n"].concat());
    println!("{refused} damaged files refused");
}

#[test]
fn nothing_is_written_over() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let said = backup(places.book.dir(), &places.file)
        .unwrap_err()
        .to_string();
    assert!(
        said.ends_with("so that no backup is written over"),
        "{said}"
    );
    let said = restore(&places.file, places.book.dir())
        .unwrap_err()
        .to_string();
    assert!(said.ends_with("so that no book is written over"), "{said}");
    let nowhere = places.dir.path().join("nowhere");
    let said = backup(&nowhere, &places.dir.path().join("x"))
        .unwrap_err()
        .to_string();
    assert!(said.starts_with("there is no field book in"), "{said}");
}

#[test]
fn a_photo_that_is_no_longer_what_was_kept_is_named_and_no_backup_is_made() {
    let places = Places::new();
    let photo = places.book.dir().join("photos").join(&places.photo);
    std::fs::write(photo, [8; 100_000]).unwrap();
    let said = backup(places.book.dir(), &places.file)
        .unwrap_err()
        .to_string();
    assert!(said.contains("this photo is not what was kept"), "{said}");
    assert!(!places.file.exists());
}

#[test]
fn a_backup_carried_by_hand_joins_another_book_and_brought_twice_it_changes_nothing_more() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let mut other = Book::open(&places.dir.path().join("office")).unwrap();
    other.set_device(an_office()).unwrap();
    other.meet("hub", "epoch").unwrap();
    let life = Uuid::from_u128(77);
    let brought = places.bring(&mut other, life).unwrap();
    let counts = |brought: &Brought| {
        let Brought { entries, known, .. } = *brought;
        let photos = (brought.photos, brought.known_photos);
        (entries, known, brought.conflicts, photos)
    };
    assert_eq!(counts(&brought), (86, 0, 0, (1, 0)));
    let jobs: Vec<Uuid> = brought.jobs.into_iter().collect();
    assert_eq!(jobs, places.book.books().unwrap());
    assert_eq!(said(&other), said(&places.book));
    other.photo(&places.photo).unwrap();
    // Carried by hand is not sent to a hub: all of it waits for that.
    assert_eq!(other.waiting(1000, 1 << 20).unwrap().len(), 86);
    let again = places.bring(&mut other, life).unwrap();
    assert_eq!(counts(&again), (0, 86, 0, (0, 1)));
    assert_eq!(said(&other), said(&places.book));
    assert_eq!(other.device().unwrap().incarnation, an_office().incarnation);
    assert!(!places.unpacked().exists());
}

#[test]
fn a_book_that_is_behind_its_own_backup_begins_another_life_when_it_brings_it_in() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let mut behind = Book::open(&places.dir.path().join("behind")).unwrap();
    let device = places.book.device().unwrap().clone();
    behind
        .set_device(Device {
            dseq: 3,
            ..device.clone()
        })
        .unwrap();
    let life = Uuid::from_u128(78);
    places.bring(&mut behind, life).unwrap();
    assert_eq!(behind.device().unwrap().incarnation, life);
    // Brought again, the file holds no later count of the new life.
    places.bring(&mut behind, Uuid::from_u128(79)).unwrap();
    assert_eq!(behind.device().unwrap().incarnation, life);
}

#[test]
fn a_damaged_backup_brings_nothing() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let mut bytes = std::fs::read(&places.file).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    std::fs::write(&places.file, bytes).unwrap();
    let mut other = Book::open(&places.dir.path().join("office")).unwrap();
    let told = places.bring(&mut other, Uuid::nil()).unwrap_err();
    assert!(told.to_string().contains("is no whole backup"), "{told}");
    assert!(!places.unpacked().exists());
    assert_eq!(said(&other), Vec::<String>::new());
}

const NOW: u64 = 1_800_000_000_000;

fn an_office() -> Device {
    Device {
        id: Uuid::from_u128(5),
        incarnation: Uuid::from_u128(6),
        name: "an office".to_owned(),
        author: "A. Person".to_owned(),
        settings: "{}".to_owned(),
        dseq: 0,
        hlc: Hlc::default(),
    }
}

#[test]
fn a_file_comes_in_piece_by_piece_and_one_with_a_hole_is_not_kept() {
    let dir = tempfile::tempdir().unwrap();
    let book = Book::open(dir.path()).unwrap();
    let (files, id) = (book.carried_files(), Uuid::from_u128(9));
    let there = || std::fs::read(dir.path().join("carried").join(id.to_string())).ok();
    assert_eq!(files.comes(id, b"0123", 0, 10).unwrap(), CameSoFar::InPart);
    // Its reply was lost, so it comes again.
    assert_eq!(files.comes(id, b"0123", 0, 10).unwrap(), CameSoFar::InPart);
    assert_eq!(files.comes(id, b"4567", 4, 10).unwrap(), CameSoFar::InPart);
    assert_eq!(files.comes(id, b"89", 8, 10).unwrap(), CameSoFar::All);
    assert_eq!(there().unwrap(), b"0123456789");
    assert_eq!(files.comes(id, b"cd", 12, 14).unwrap(), CameSoFar::Gap);
    assert_eq!(there(), None);
    assert_eq!(files.comes(id, b"", 0, 0).unwrap(), CameSoFar::All);
    files.empty().unwrap();
    assert!(!dir.path().join("carried").exists());
    files.empty().unwrap();
}
