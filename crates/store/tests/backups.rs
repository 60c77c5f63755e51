//! A book goes into one file and comes back; a damaged file is refused and nothing is restored.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::book::clock::Hlc;
use eavebook_store::{
    BackupError, Device, FileProgress, ImportReport, ImportSource, Store, backup, restore, verify,
};
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// The book of version 1 with a photo, in a folder; open, as it may be.
fn a_book(dir: &Path) -> (Store, String) {
    let old = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/books/version-1");
    std::fs::create_dir(dir).unwrap();
    std::fs::copy(old.join("book.sqlite"), dir.join("book.sqlite")).unwrap();
    let mut book = Store::open(dir).unwrap();
    let photo = book.put_photo(&mut &[9; 100_000][..]).unwrap();
    (book, photo.sha256)
}

fn entry_texts(book: &Store) -> Vec<String> {
    let jobs = book.books().unwrap();
    jobs.iter()
        .flat_map(|job| book.entries(*job).unwrap().whole)
        .map(|entry| entry.to_json())
        .collect()
}

struct Places {
    dir: tempfile::TempDir,
    book: Store,
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
    fn bring(&self, book: &mut Store, life: Uuid) -> Result<ImportReport, BackupError> {
        let carried = ImportSource::prove(&self.file, &self.unpacked())?;
        let mut report = ImportReport::default();
        for mut photo in carried.photos()? {
            book.import_photo(&mut photo, &mut report)?;
        }
        for entries in carried.jobs()? {
            book.import_entries(&entries?, &mut report, NOW, life)?;
        }
        Ok(report)
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
    let back = Store::open(&places.back()).unwrap();
    assert_eq!(entry_texts(&back), entry_texts(&places.book));
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
        for message in [
            verify(&bad).unwrap_err(),
            restore(&bad, &places.back()).unwrap_err(),
        ] {
            assert!(
                message.to_string().contains("is no whole backup"),
                "{message}"
            );
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
    let message = backup(places.book.dir(), &places.file)
        .unwrap_err()
        .to_string();
    assert!(
        message.ends_with("so that no backup is written over"),
        "{message}"
    );
    let message = restore(&places.file, places.book.dir())
        .unwrap_err()
        .to_string();
    assert!(
        message.ends_with("so that no book is written over"),
        "{message}"
    );
    let nowhere = places.dir.path().join("nowhere");
    let message = backup(&nowhere, &places.dir.path().join("x"))
        .unwrap_err()
        .to_string();
    assert!(
        message.starts_with("there is no field book in"),
        "{message}"
    );
}

#[test]
fn a_photo_that_is_no_longer_what_was_kept_is_named_and_no_backup_is_made() {
    let places = Places::new();
    let photo = places.book.dir().join("photos").join(&places.photo);
    std::fs::write(photo, [8; 100_000]).unwrap();
    let message = backup(places.book.dir(), &places.file)
        .unwrap_err()
        .to_string();
    assert!(
        message.contains("this photo is not what was kept"),
        "{message}"
    );
    assert!(!places.file.exists());
}

#[test]
fn a_backup_carried_by_hand_joins_another_book_and_brought_twice_it_changes_nothing_more() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let mut other = Store::open(&places.dir.path().join("office")).unwrap();
    other.set_device(an_office()).unwrap();
    other.meet("hub", "epoch").unwrap();
    let life = Uuid::from_u128(77);
    let report = places.bring(&mut other, life).unwrap();
    let counts = |report: &ImportReport| {
        let ImportReport { entries, known, .. } = *report;
        let photos = (report.photos, report.known_photos);
        (entries, known, report.conflicts, photos)
    };
    assert_eq!(counts(&report), (86, 0, 0, (1, 0)));
    let jobs: Vec<Uuid> = report.jobs.into_iter().collect();
    assert_eq!(jobs, places.book.books().unwrap());
    assert_eq!(entry_texts(&other), entry_texts(&places.book));
    other.photo(&places.photo).unwrap();
    // Carried by hand is not sent to a hub: all of it waits for that.
    assert_eq!(other.waiting(1000, 1 << 20).unwrap().len(), 86);
    let again = places.bring(&mut other, life).unwrap();
    assert_eq!(counts(&again), (0, 86, 0, (0, 1)));
    assert_eq!(entry_texts(&other), entry_texts(&places.book));
    assert_eq!(other.device().unwrap().incarnation, an_office().incarnation);
    assert!(!places.unpacked().exists());
}

#[test]
fn a_book_that_is_behind_its_own_backup_begins_another_life_when_it_brings_it_in() {
    let places = Places::new();
    backup(places.book.dir(), &places.file).unwrap();
    let mut behind = Store::open(&places.dir.path().join("behind")).unwrap();
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
    let mut other = Store::open(&places.dir.path().join("office")).unwrap();
    let error = places.bring(&mut other, Uuid::nil()).unwrap_err();
    assert!(error.to_string().contains("is no whole backup"), "{error}");
    assert!(!places.unpacked().exists());
    assert_eq!(entry_texts(&other), Vec::<String>::new());
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
    let book = Store::open(dir.path()).unwrap();
    let (files, id) = (book.transfer_files(), Uuid::from_u128(9));
    let kept = || std::fs::read(dir.path().join("carried").join(id.to_string())).ok();
    assert_eq!(
        files.write_piece(id, b"0123", 0, 10).unwrap(),
        FileProgress::InPart
    );
    // Its reply was lost, so it comes again.
    assert_eq!(
        files.write_piece(id, b"0123", 0, 10).unwrap(),
        FileProgress::InPart
    );
    assert_eq!(
        files.write_piece(id, b"4567", 4, 10).unwrap(),
        FileProgress::InPart
    );
    assert_eq!(
        files.write_piece(id, b"89", 8, 10).unwrap(),
        FileProgress::All
    );
    assert_eq!(kept().unwrap(), b"0123456789");
    assert_eq!(
        files.write_piece(id, b"cd", 12, 14).unwrap(),
        FileProgress::Gap
    );
    assert_eq!(kept(), None);
    assert_eq!(files.write_piece(id, b"", 0, 0).unwrap(), FileProgress::All);
    files.empty().unwrap();
    assert!(!dir.path().join("carried").exists());
    files.empty().unwrap();
}
