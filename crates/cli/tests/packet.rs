//! `eavebook packet`, run as a person runs it.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tempfile::TempDir;

/// Of the pretend house.
const ADDRESS: &str = "The pretend house, 14 Invented Lane";

fn eavebook(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_eavebook"))
        .args(words)
        .output()
        .unwrap()
}

/// A book with the pretend house.
fn house() -> TempDir {
    let dir = tempfile::tempdir().unwrap();
    let said = eavebook(&["demo", "--book", &text(dir.path())]);
    assert!(said.status.success(), "{said:?}");
    dir
}

fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

/// Makes a packet into the folder `out` of a book; the path that it prints.
fn makes(book: &Path, more: &[&str]) -> PathBuf {
    let (dir, out) = (text(book), text(&book.join("out")));
    let mut words = vec!["packet", "--book", &dir, "--out", &out];
    words.extend(more);
    let said = eavebook(&words);
    assert_eq!(said.status.code(), Some(0), "{said:?}");
    PathBuf::from(String::from_utf8(said.stdout).unwrap().trim())
}

fn one_sentence(said: &Output) -> String {
    assert_eq!(said.status.code(), Some(2), "{said:?}");
    assert!(said.stdout.is_empty());
    let text = String::from_utf8(said.stderr.clone()).unwrap();
    assert_eq!(text.lines().count(), 1, "{text}");
    text.trim().to_owned()
}

#[test]
fn the_firms_packet_of_the_newest_job_is_made_printed_and_proved() {
    let book = house();
    let packet = makes(book.path(), &[]);
    let name = packet.file_name().unwrap().to_string_lossy().into_owned();
    assert!(
        name.contains("-v1-firm-") && name.ends_with(".zip"),
        "{name}"
    );
    let said = eavebook(&["packet", "--check", &text(&packet)]);
    assert_eq!(said.status.code(), Some(0), "{said:?}");
    let line = String::from_utf8(said.stdout).unwrap();
    assert!(
        line.starts_with("whole and as it was made: packet "),
        "{line}"
    );
    assert!(line.contains("edition firm, version 1"), "{line}");
    let left = std::fs::read_dir(book.path().join("out")).unwrap().count();
    assert_eq!(left, 1);
}

#[test]
fn asked_for_twice_it_is_the_same_file_byte_for_byte() {
    let book = house();
    let first = makes(book.path(), &["--edition", "owner"]);
    let bytes = std::fs::read(&first).unwrap();
    std::fs::remove_file(&first).unwrap();
    let second = makes(book.path(), &["--edition", "owner"]);
    assert_eq!(
        (&second, std::fs::read(&second).unwrap()),
        (&first, bytes.clone())
    );
    // And also set anew, the one kept beside the book gone.
    std::fs::remove_dir_all(book.path().join("packets")).unwrap();
    let third = makes(book.path(), &["--edition", "owner", "--version", "1"]);
    assert_eq!((&third, std::fs::read(&third).unwrap()), (&first, bytes));
}

#[test]
fn one_byte_changed_is_refused_in_a_sentence() {
    let book = house();
    let packet = makes(book.path(), &["--edition", "crew"]);
    let mut bytes = std::fs::read(&packet).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    std::fs::write(&packet, bytes).unwrap();
    let said = one_sentence(&eavebook(&["packet", "--check", &text(&packet)]));
    assert!(said.contains("copy it again"), "{said}");
}

#[test]
fn what_cannot_be_made_or_proved_is_told_in_one_sentence() {
    let book = house();
    let dir = text(book.path());
    let out = text(&book.path().join("out"));
    let packet = |more: &[&str]| {
        let mut words = vec!["packet", "--book", &dir, "--out", &out];
        words.extend(more);
        one_sentence(&eavebook(&words))
    };
    let said = packet(&["--edition", "everybody"]);
    assert!(
        said.contains("write owner, crew, firm, supplier or permit"),
        "{said}"
    );
    let said = packet(&["--version", "7"]);
    assert!(
        said.starts_with("No version 7 of the firm's packet was made"),
        "{said}"
    );
    let said = packet(&["--job", "0196a5e0-0000-7000-8000-000000000000"]);
    assert!(said.starts_with("This book has no such job."), "{said}");
    let none = one_sentence(&eavebook(&["packet", "--check", "/no/such/file.zip"]));
    assert!(none.contains("/no/such/file.zip"), "{none}");
    let empty = tempfile::tempdir().unwrap();
    let said = one_sentence(&eavebook(&[
        "packet",
        "--book",
        &text(empty.path()),
        "--out",
        &out,
    ]));
    assert!(said.starts_with("This book holds no job yet."), "{said}");
    let said = one_sentence(&eavebook(&["packet", "--out", &out]));
    assert!(said.contains("--book"), "{said}");
}

#[test]
fn the_firms_packet_carried_by_hand_brings_its_job_into_another_book_once() {
    let book = house();
    let packet = makes(book.path(), &[]);
    let office = tempfile::tempdir().unwrap();
    let bring = |file: &Path| eavebook(&["bring", &text(file), "--book", &text(office.path())]);
    let said = |out: Output| {
        assert_eq!(out.status.code(), Some(0), "{out:?}");
        String::from_utf8(out.stdout).unwrap()
    };
    let held = eavebook_packet::carried(&packet).unwrap();
    let (entries, photos) = (held.entries.len(), held.photos.len());
    assert!(entries > 20 && photos > 0, "{entries}, {photos}");
    assert_eq!(
        said(bring(&packet)),
        format!("Brought in: {entries} entries and {photos} photos of {ADDRESS}.\n")
    );
    assert_eq!(
        said(bring(&packet)),
        format!(
            "Nothing new: {entries} entries and {photos} photos of {ADDRESS} were here already.\n"
        )
    );
    // The office makes the same papers of it: entry by entry and photo by photo what was carried.
    assert_eq!(
        eavebook_packet::carried(&makes(office.path(), &[])).unwrap(),
        held
    );
}

#[test]
fn a_packet_that_is_damaged_or_holds_no_book_brings_nothing_and_says_why() {
    let book = house();
    let office = tempfile::tempdir().unwrap();
    let bring = |file: &Path| {
        one_sentence(&eavebook(&[
            "bring",
            &text(file),
            "--book",
            &text(office.path()),
        ]))
    };
    let owners = makes(book.path(), &["--edition", "owner"]);
    assert_eq!(
        bring(&owners),
        "nothing was brought: the packet is for \"owner\" and holds no entries: bring the firm's packet of that job"
    );
    let firms = makes(book.path(), &[]);
    let mut bytes = std::fs::read(&firms).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    std::fs::write(&firms, &bytes).unwrap();
    assert!(bring(&firms).starts_with("nothing was brought: "));
    bytes.truncate(middle);
    std::fs::write(&firms, &bytes).unwrap();
    assert!(bring(&firms).starts_with("nothing was brought: this is no packet, or one cut short"));
    let out = text(&office.path().join("out"));
    let none = eavebook(&["packet", "--book", &text(office.path()), "--out", &out]);
    assert!(one_sentence(&none).starts_with("This book holds no job yet."));
}
