//! Books of old versions are opened and say what they said.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::book::entry::Entry;
use eavebook_core::book::fold::fold;
use eavebook_store::Store;
use std::path::{Path, PathBuf};
use uuid::Uuid;

fn old(version: u32) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../../tests/books/version-{version}"))
}

/// A copy of an old book, opened.
fn opened(version: u32) -> (tempfile::TempDir, Store) {
    let dir = tempfile::tempdir().unwrap();
    let file = dir.path().join("book.sqlite");
    std::fs::copy(old(version).join("book.sqlite"), &file).unwrap();
    let book = Store::open(dir.path()).unwrap();
    (dir, book)
}

/// Entries of all jobs as JSON, by id.
fn entry_values(book: &Store) -> Vec<serde_json::Value> {
    let jobs = book.books().unwrap();
    let mut entries: Vec<Entry> = jobs
        .iter()
        .flat_map(|job| {
            let entries = book.entries(*job).unwrap();
            assert_eq!(entries.damaged, Vec::<String>::new());
            entries.whole
        })
        .collect();
    entries.sort_by_key(|entry| entry.id);
    entries
        .iter()
        .map(|entry| serde_json::from_str(&entry.to_json()).unwrap())
        .collect()
}

#[test]
fn a_book_of_version_1_opens_with_every_entry_as_it_was() {
    let (_dir, book) = opened(1);
    let lines = std::fs::read_to_string(old(1).join("entries.jsonl")).unwrap();
    let wanted: Vec<serde_json::Value> = lines
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(wanted.len(), 86);
    assert_eq!(entry_values(&book), wanted);
    for line in lines.lines() {
        Entry::from_json(line).unwrap();
    }
}

#[test]
fn a_book_of_version_1_folds_to_the_same_jobs() {
    let (_dir, book) = opened(1);
    let jobs = book.books().unwrap();
    let found: Vec<_> = jobs
        .iter()
        .map(|job| fold(&book.entries(*job).unwrap().whole))
        .collect();
    assert_eq!(found[0].address, "The pretend house, 14 Invented Lane");
    assert_eq!(
        (
            found[0].readings.len(),
            found[0].corners.len(),
            found[0].pitches.len()
        ),
        (19, 13, 25)
    );
    assert_eq!(
        found[0]
            .readings
            .iter()
            .filter(|read| read.struck.is_some())
            .count(),
        1
    );
    assert_eq!(
        (
            found[0].unknown.len(),
            found[0].circular.len(),
            found[0].awaited.len()
        ),
        (0, 0, 0)
    );
    assert_eq!(found[1].address, "3 Nowhere Row (invented)");
    assert_eq!(found[1].readings[0].text, "42 ft 7 in");
    assert_eq!((found[1].cannot_get.len(), found[1].unknown.len()), (1, 1));
    let device = book.device().unwrap().id;
    assert!(found[1].undo_of(device).is_some() && found[1].redo_of(device).is_none());
}

#[test]
fn a_book_of_version_1_keeps_its_half_typed_reading_and_counts_on() {
    let (_dir, mut book) = opened(1);
    let job: Uuid = book.books().unwrap()[1];
    let draft = book.draft(job, "pad").unwrap().unwrap();
    assert!(
        draft.contains("\"keys\":[{\"key\":\"digit\",\"digit\":4}]"),
        "{draft}"
    );
    let last = book.device().unwrap().hlc;
    assert!(book.next_turn(0).unwrap().hlc > last);
    println!("drill 8: a book of version 1 opens, keeps its half-typed reading and counts on");
}
