//! The book on a real disk: what is kept, what is refused, and in which words.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp, sha256_hex};
use eavebook_core::book::fold::fold;
use eavebook_core::book::kinds::*;
use eavebook_store::{AppendStatus, Device, DraftAfter, Store, StoreError};
use rusqlite::Connection;
use std::path::Path;
use std::time::{Duration, SystemTime};
use tempfile::TempDir;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(7);
const PAD: &str = "pad";

fn folder() -> TempDir {
    tempfile::tempdir().unwrap()
}

fn phone() -> Device {
    Device {
        id: Uuid::from_u128(1),
        incarnation: Uuid::from_u128(2),
        name: "this phone".into(),
        author: "A. Person".into(),
        settings: "{}".into(),
        dseq: 0,
        hlc: Hlc::default(),
    }
}

fn begun(dir: &Path) -> Store {
    let mut book = Store::open(dir).unwrap();
    book.set_device(phone()).unwrap();
    book
}

fn id(number: u64) -> Uuid {
    uuid::Builder::from_u128(u128::from(number))
        .with_version(uuid::Version::SortRand)
        .with_variant(uuid::Variant::RFC4122)
        .into_uuid()
}

fn reading(book: &mut Store, text: &str) -> Entry {
    let turn = book.next_turn(1_800_000_000_000).unwrap();
    let stamp = Stamp {
        id: id(turn.dseq),
        book: JOB,
        device: phone().id,
        incarnation: phone().incarnation,
        dseq: turn.dseq,
        author: "A. Person".into(),
        hlc: turn.hlc,
        local_time: "2026-05-02T14:41:07-05:00".into(),
    };
    let kind = Kind::Reading(Reading {
        thing: Thing::Leg { leg: 1 },
        text: text.into(),
        tape: TapeMarks::FeetInches,
        how: HowRead::Taped,
        followed: Followed::EaveEdge,
        blind: false,
    });
    Entry::new(stamp, &kind, Vec::new())
}

fn refusal<T>(result: Result<T, StoreError>) -> String {
    result.map(|_| ()).unwrap_err().to_string()
}

#[test]
fn what_was_booked_is_there_after_reopening_byte_for_byte() {
    let dir = folder();
    let mut book = begun(dir.path());
    let mut entry = reading(&mut book, "42 ft 7 1/2 in");
    entry.body = format!("{}\u{0}\u{1f3e0} \n", entry.body);
    entry.sha256 = sha256_hex(entry.body.as_bytes());
    entry
        .other
        .insert("beam".into(), "{\"nm\": 6.350e2}".into());
    let before = book
        .append(std::slice::from_ref(&entry), DraftAfter::AsItIs)
        .unwrap();
    assert_eq!(before, [AppendStatus::New]);
    drop(book);
    let book = Store::open(dir.path()).unwrap();
    assert_eq!(book.entries(JOB).unwrap().whole, [entry]);
    assert_eq!(book.books().unwrap(), [JOB]);
}

#[test]
fn a_person_can_read_it_with_plain_sql() {
    let dir = folder();
    let mut book = begun(dir.path());
    let entry = reading(&mut book, "42 ft");
    book.append(&[entry], DraftAfter::AsItIs).unwrap();
    let shell = Connection::open(book.file()).unwrap();
    let row: (String, String, String) = shell
        .query_row(
            "SELECT author, kind, json_extract(body, '$.text') FROM entries",
            [],
            |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)),
        )
        .unwrap();
    assert_eq!(row, ("A. Person".into(), "reading".into(), "42 ft".into()));
    let names: Vec<String> = shell
        .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
        .unwrap()
        .query_map([], |row| row.get(0))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap();
    assert_eq!(
        names,
        [
            "devices",
            "drafts",
            "entries",
            "hubs",
            "outbox",
            "photos",
            "photos_out",
            "quarantine",
            "turned_back",
            "unreadable"
        ]
    );
}

#[test]
fn booking_the_same_entry_twice_books_it_once() {
    let dir = folder();
    let mut book = begun(dir.path());
    let entry = reading(&mut book, "42 ft");
    let twice = [entry.clone(), entry.clone()];
    let found = book.append(&twice, DraftAfter::AsItIs).unwrap();
    assert_eq!(found, [AppendStatus::New, AppendStatus::Known]);
    assert_eq!(book.entries(JOB).unwrap().whole, [entry]);
}

#[test]
fn one_id_with_two_contents_keeps_both_and_the_fold_shows_it() {
    let dir = folder();
    let mut book = begun(dir.path());
    let first = reading(&mut book, "42 ft");
    let mut other = reading(&mut book, "24 ft");
    other.id = first.id;
    for _ in 0..2 {
        book.append(&[first.clone(), other.clone()], DraftAfter::AsItIs)
            .unwrap();
    }
    let found = book.entries(JOB).unwrap();
    assert_eq!(found.whole, [first.clone(), other]);
    assert_eq!(fold(&found.whole).id_conflicts, [first.id]);
}

#[test]
fn a_row_that_was_tampered_with_is_named_and_the_others_are_still_read() {
    let dir = folder();
    let mut book = begun(dir.path());
    let entries = ["42 ft", "24 ft", "10 ft"].map(|text| reading(&mut book, text));
    book.append(&entries, DraftAfter::AsItIs).unwrap();
    let shell = Connection::open(book.file()).unwrap();
    let change = "UPDATE entries SET body = replace(body, '42', '43') WHERE id = ?1";
    shell.execute(change, [entries[0].id.to_string()]).unwrap();
    let change = "UPDATE entries SET hlc = 'soon' WHERE id = ?1";
    shell.execute(change, [entries[1].id.to_string()]).unwrap();
    let found = book.entries(JOB).unwrap();
    assert_eq!(found.whole, entries[2..]);
    assert!(found.damaged[0].starts_with(&format!("the body of entry {} does not", entries[0].id)));
    assert!(found.damaged[1].starts_with(&format!("entry {} cannot be read", entries[1].id)));
}

#[test]
fn a_draft_goes_away_or_changes_in_the_transaction_that_books() {
    let dir = folder();
    let mut book = begun(dir.path());
    book.keep_draft(JOB, PAD, "4").unwrap();
    book.keep_draft(JOB, PAD, "42").unwrap();
    assert_eq!(book.draft(JOB, PAD).unwrap().as_deref(), Some("42"));
    assert_eq!(book.draft(Uuid::nil(), PAD).unwrap(), None);
    let entry = reading(&mut book, "42 ft");
    let becomes = DraftAfter::Becomes {
        book: JOB,
        name: PAD,
        text: "next",
    };
    book.append(&[entry], becomes).unwrap();
    assert_eq!(book.draft(JOB, PAD).unwrap().as_deref(), Some("next"));
    let entry = reading(&mut book, "24 ft");
    book.append(
        &[entry],
        DraftAfter::Gone {
            book: JOB,
            name: PAD,
        },
    )
    .unwrap();
    assert_eq!(book.draft(JOB, PAD).unwrap(), None);
    book.keep_draft(JOB, PAD, "1").unwrap();
    book.drop_draft(JOB, PAD).unwrap();
    assert_eq!(book.draft(JOB, PAD).unwrap(), None);
}

#[test]
fn count_and_clock_go_on_where_they_stood() {
    let dir = folder();
    let mut book = begun(dir.path());
    let entry = reading(&mut book, "42 ft");
    let last = book.next_turn(1_900_000_000_000).unwrap();
    book.append(&[entry], DraftAfter::AsItIs).unwrap();
    book.keep_settings("{\"cold_hands\":true}").unwrap();
    drop(book);
    let mut book = Store::open(dir.path()).unwrap();
    assert_eq!(book.device().unwrap().settings, "{\"cold_hands\":true}");
    let next = book.next_turn(0).unwrap();
    assert_eq!(next.dseq, last.dseq + 1);
    assert!(
        next.hlc > last.hlc,
        "a clock set back does not turn the order round"
    );
}

#[test]
fn a_device_without_identity_is_told_to_get_one() {
    let dir = folder();
    let mut book = Store::open(dir.path()).unwrap();
    assert_eq!(
        refusal(book.next_turn(0)),
        format!(
            "this device has no identity in the field book in {} yet: give it one, then book",
            dir.path().display()
        )
    );
}

#[test]
fn a_second_program_on_the_same_book_is_refused_by_name_and_let_in_afterwards() {
    let dir = folder();
    let book = begun(dir.path());
    assert_eq!(
        refusal(Store::open(dir.path())),
        format!(
            "the field book in {} is open in another program (process {}): close that one, or \
             name another folder",
            dir.path().display(),
            std::process::id()
        )
    );
    drop(book);
    Store::open(dir.path()).unwrap();
}

/// Every file of a folder with its bytes, the lock apart.
fn files(dir: &Path) -> Vec<(String, Vec<u8>)> {
    let mut files: Vec<_> = std::fs::read_dir(dir)
        .unwrap()
        .map(|file| file.unwrap())
        .filter(|file| file.file_type().unwrap().is_file() && file.file_name() != "book.lock")
        .map(|f| {
            (
                f.file_name().to_string_lossy().into(),
                std::fs::read(f.path()).unwrap(),
            )
        })
        .collect();
    files.sort();
    files
}

#[test]
fn a_book_of_a_newer_version_is_refused_and_not_changed() {
    let dir = folder();
    let book = begun(dir.path());
    let file = book.file();
    drop(book);
    Connection::open(&file)
        .unwrap()
        .pragma_update(None, "user_version", 7)
        .unwrap();
    let before = files(dir.path());
    assert_eq!(
        refusal(Store::open(dir.path())),
        format!(
            "the field book in {} was written by a newer eavebook (book version 7, this one reads \
             up to 2): update this program; the book was not changed",
            dir.path().display()
        )
    );
    assert!(files(dir.path()) == before, "changed");
}

#[test]
fn a_newer_version_that_was_killed_with_its_change_still_in_the_log_is_refused_too() {
    let dir = folder();
    let book = begun(dir.path());
    let newer = Connection::open(book.file()).unwrap();
    newer.pragma_update(None, "user_version", 7).unwrap();
    let killed = folder();
    for (name, bytes) in files(dir.path()) {
        if !name.ends_with("-shm") {
            std::fs::write(killed.path().join(name), bytes).unwrap();
        }
    }
    let kept = |dir: &Path| {
        files(dir)
            .into_iter()
            .filter(|f| !f.0.ends_with("-shm"))
            .collect()
    };
    let before: Vec<_> = kept(killed.path());
    let message = refusal(Store::open(killed.path()));
    assert!(
        message.contains("(book version 7, this one reads up to 2)"),
        "{message}"
    );
    assert!(kept(killed.path()) == before, "changed");
}

#[test]
fn another_file_of_that_name_is_refused_and_not_changed() {
    for make in [
        (|file| std::fs::write(file, "a shopping list, longer than a header has to be").unwrap())
            as fn(&Path),
        |file| {
            Connection::open(file)
                .unwrap()
                .execute_batch("CREATE TABLE t (x)")
                .unwrap()
        },
        |file| {
            let other = Connection::open(file).unwrap();
            other.pragma_update(None, "application_id", 5).unwrap();
        },
    ] {
        let dir = folder();
        let file = dir.path().join("book.sqlite");
        make(&file);
        let before = std::fs::read(&file).unwrap();
        assert_eq!(
            refusal(Store::open(dir.path())),
            format!(
                "{} is no field book: move it away, or name another folder",
                file.display()
            )
        );
        assert!(std::fs::read(&file).unwrap() == before, "changed");
    }
}

#[test]
fn a_folder_that_is_a_file_is_refused_by_its_name() {
    let dir = folder();
    let file = dir.path().join("notes.txt");
    std::fs::write(&file, "").unwrap();
    let message = refusal(Store::open(&file));
    assert!(
        message.starts_with(&format!("{} cannot be written", file.display())),
        "{message}"
    );
}

#[test]
fn a_book_with_a_broken_page_is_refused_after_a_kill_and_left_as_it_is() {
    let dir = folder();
    let mut book = begun(dir.path());
    let entries: Vec<Entry> = (0..200).map(|_| reading(&mut book, "42 ft")).collect();
    book.append(&entries, DraftAfter::AsItIs).unwrap();
    drop(book);
    let file = dir.path().join("book.sqlite");
    let mut bytes = std::fs::read(&file).unwrap();
    for byte in &mut bytes[3 * 4096..6 * 4096] {
        *byte = 0xee;
    }
    std::fs::write(&file, bytes).unwrap();
    std::fs::write(dir.path().join("book.sqlite-wal"), "torn").unwrap();
    let kept = |dir: &Path| {
        files(dir)
            .into_iter()
            .filter(|f| !f.0.ends_with("-shm"))
            .collect()
    };
    let before: Vec<_> = kept(dir.path());
    let message = refusal(Store::open(dir.path()));
    assert!(kept(dir.path()) == before, "changed");
    assert!(message.starts_with(&format!(
        "the field book in {} is damaged",
        dir.path().display()
    )));
    assert!(
        message.ends_with("go on from a backup or in another folder"),
        "{message}"
    );
}

#[test]
fn a_photo_is_a_file_named_by_its_hash_and_the_same_one_twice_is_one() {
    let dir = folder();
    let mut book = begun(dir.path());
    let bytes = vec![9_u8; 200_000];
    let photo = book.put_photo(&mut bytes.as_slice()).unwrap();
    assert_eq!(book.put_photo(&mut bytes.as_slice()).unwrap(), photo);
    assert_eq!(
        (photo.sha256.clone(), photo.size),
        (sha256_hex(&bytes), 200_000)
    );
    assert_eq!(
        std::fs::read(dir.path().join("photos").join(&photo.sha256)).unwrap(),
        bytes
    );
    assert_eq!(
        std::fs::read_dir(dir.path().join("photos"))
            .unwrap()
            .count(),
        1
    );
    let mut back = Vec::new();
    std::io::Read::read_to_end(&mut book.photo(&photo.sha256).unwrap(), &mut back).unwrap();
    assert_eq!(back, bytes);
}

#[test]
fn what_is_no_photo_of_this_book_is_refused_and_no_path_leads_out_of_the_folder() {
    let dir = folder();
    let book = begun(dir.path());
    for name in [
        "ab".repeat(32),
        "../book.sqlite".into(),
        String::new(),
        "AB".repeat(32),
    ] {
        let message = refusal(book.photo(&name));
        assert!(
            message.ends_with("fetch it from another copy") && !message.contains(".."),
            "{message}"
        );
    }
}

#[test]
fn a_photo_that_breaks_off_leaves_nothing_and_leftovers_of_a_kill_are_swept_after_a_while() {
    struct BreaksOff;
    impl std::io::Read for BreaksOff {
        fn read(&mut self, _: &mut [u8]) -> std::io::Result<usize> {
            Err(std::io::Error::other("the camera went away"))
        }
    }
    let dir = folder();
    let mut book = begun(dir.path());
    let message = refusal(book.put_photo(&mut BreaksOff));
    assert!(
        message.contains("failed (the camera went away) and nothing of this was kept"),
        "{message}"
    );
    let photos = dir.path().join("photos");
    assert_eq!(std::fs::read_dir(&photos).unwrap().count(), 0);
    let kept = book.put_photo(&mut [1_u8, 2, 3].as_slice()).unwrap();
    std::fs::write(photos.join("arriving-0"), "half").unwrap();
    assert_eq!(book.put_photo(&mut [4_u8].as_slice()).unwrap().size, 1);
    let day = Duration::from_secs(24 * 3600);
    assert_eq!(book.sweep(SystemTime::now() - day).unwrap(), 0);
    assert_eq!(book.sweep(SystemTime::now() + day).unwrap(), 1);
    assert!(book.photo(&kept.sha256).is_ok());
}

/// A kill at the end of the very first transaction: what it wrote is there, and the journal that
/// takes it back still lies beside it.
#[test]
fn a_book_whose_beginning_was_cut_off_is_begun_anew() {
    let (cut, found) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let writer = Connection::open(cut.path().join("book.sqlite")).unwrap();
    writer
        .execute_batch(
            "PRAGMA cache_size = 1; BEGIN; CREATE TABLE entries (body);
             WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 200)
             INSERT INTO entries SELECT randomblob(4000) FROM n;",
        )
        .unwrap();
    let copy = |name| std::fs::copy(cut.path().join(name), found.path().join(name)).unwrap();
    copy("book.sqlite-journal");
    writer.execute_batch("COMMIT").unwrap();
    copy("book.sqlite");
    let mut book = Store::open(found.path()).unwrap();
    book.keep_draft(JOB, PAD, "42").unwrap();
}

#[test]
fn a_packet_is_found_by_its_id_copied_out_whole_and_only_what_was_begun_is_swept() {
    let dir = folder();
    let packets = begun(dir.path()).packets();
    assert_eq!(packets.find("0123456789ab"), None);
    let folder = packets.folder().unwrap().to_owned();
    let name = "12-invented-lane-v1-owner-0123456789ab.zip";
    std::fs::write(folder.join(name), "whole").unwrap();
    std::fs::write(folder.join(format!("{name}.part")), "who").unwrap();
    assert_eq!(packets.find("0123456789ab"), Some(folder.join(name)));

    let out = dir.path().join("out");
    let copy = packets.copy_out(&folder.join(name), &out).unwrap();
    assert_eq!(copy, out.join(name));
    assert_eq!(std::fs::read(&copy).unwrap(), b"whole");
    assert_eq!(std::fs::read_dir(&out).unwrap().count(), 1);

    packets
        .keep_only(&["0123456789ab".to_owned()].into())
        .unwrap();
    let left = std::fs::read_dir(&folder).unwrap();
    let left: Vec<_> = left.map(|file| file.unwrap().file_name()).collect();
    assert_eq!(left, [name]);
    packets.keep_only(&[].into()).unwrap();
    assert!(packets.is_empty());
}

#[test]
fn a_packet_copied_to_where_nothing_may_be_written_says_so_and_leaves_nothing() {
    let dir = folder();
    let packets = begun(dir.path()).packets();
    let packet = packets.folder().unwrap().join("a-v1-owner-ab.zip");
    std::fs::write(&packet, "whole").unwrap();
    let file = dir.path().join("a file");
    std::fs::write(&file, "").unwrap();
    let message = packets.copy_out(&packet, &file).unwrap_err().to_string();
    assert!(
        message.contains("allow writing there, or name another folder"),
        "{message}"
    );
}
