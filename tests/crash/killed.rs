//! kill -9 of a writer at a random moment, then a look at the book.
//!
//! It proves order: nothing is said before the store has it. It does not prove the disk, since
//! what was written outlives its process in the system's memory; that is for `synced`.

use crate::kill::{Noise, said_until_killed};
use crate::size::size;
use crate::writer;
use eavebook_core::book::entry::{Entry, ParsedBody, sha256_hex};
use eavebook_core::book::kinds::Kind;
use eavebook_store::Store;
use std::collections::BTreeSet;
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::Stdio;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(7);

/// What a writer said is done, over all rounds on one book.
#[derive(Debug, Default)]
pub struct Acknowledged {
    keys: u64,
    entries: BTreeSet<Uuid>,
    photos: BTreeSet<String>,
    pub lines: usize,
}

impl Acknowledged {
    pub fn hear(&mut self, lines: &[String]) {
        lines.iter().for_each(|line| self.hear_line(line));
    }

    fn hear_line(&mut self, line: &str) {
        self.lines += 1;
        match line.split(' ').collect::<Vec<_>>()[..] {
            ["key", number] => self.keys = number.parse().unwrap(),
            ["booked", id] => {
                self.entries.insert(id.parse().unwrap());
            }
            ["photo", sha256, id] => {
                self.entries.insert(id.parse().unwrap());
                self.photos.insert(sha256.to_owned());
            }
            _ => unreachable!("the writer said \"{line}\""),
        }
    }
}

/// What is wrong with a book, against what was acknowledged.
pub fn faults(dir: &Path, told: &Acknowledged) -> Vec<String> {
    let mut faults = Vec::new();
    let book = Store::open(dir).unwrap();
    let whole: String = rusqlite::Connection::open(book.file())
        .unwrap()
        .pragma_query_value(None, "integrity_check", |row| row.get(0))
        .unwrap();
    if whole != "ok" {
        faults.push(format!("integrity: {whole}"));
    }
    let entries = book.entries(JOB).unwrap();
    faults.extend(entries.damaged);
    let there: BTreeSet<Uuid> = entries.whole.iter().map(|entry| entry.id).collect();
    faults.extend(
        told.entries
            .difference(&there)
            .map(|id| format!("entry {id} is lost")),
    );

    let text = book.draft(JOB, "pad").unwrap();
    let (keys, booked): (u64, usize) =
        text.map_or((0, 0), |text| serde_json::from_str(&text).unwrap());
    if keys < told.keys {
        faults.push(format!("keys {keys} of {}", told.keys));
    }
    let readings = entries
        .whole
        .iter()
        .filter(|entry| entry.kind == "reading")
        .count();
    if readings != booked {
        faults.push(format!(
            "{readings} readings stand and the draft knows of {booked}"
        ));
    }
    faults.extend(photos_in(&entries.whole).filter_map(|sha256| {
        let mut bytes = Vec::new();
        let read = book
            .photo(&sha256)
            .map(|mut file| file.read_to_end(&mut bytes));
        let whole = read.is_ok() && sha256_hex(&bytes) == sha256;
        (!whole).then(|| format!("photo {sha256} is booked and not whole"))
    }));
    let booked: BTreeSet<String> = photos_in(&entries.whole).collect();
    faults.extend(
        told.photos
            .difference(&booked)
            .map(|sha256| format!("photo {sha256} is lost")),
    );
    faults
}

fn photos_in(entries: &[Entry]) -> impl Iterator<Item = String> {
    entries
        .iter()
        .filter_map(|entry| match entry.parsed_body() {
            ParsedBody::Known(Kind::Photo(photo)) => Some(photo.sha256),
            ParsedBody::Known(_) | ParsedBody::Newer(_) | ParsedBody::Unknown => None,
        })
}

#[test]
fn a_hundred_kills_lose_nothing_that_was_acknowledged() {
    let mut noise = Noise(0x0eaf_eb00_c000_0001);
    let (mut lines, mut rounds) = (0, 0);
    // Ten kills of a book, then a new one.
    for _ in 0..size::<u32>("kills", 100, 1000).div_ceil(10) {
        let dir = tempfile::tempdir().unwrap();
        let mut told = Acknowledged::default();
        for _ in 0..10 {
            told.hear(&said_until_killed(writer(dir.path(), "honest"), &mut noise));
            rounds += 1;
            assert_eq!(
                faults(dir.path(), &told),
                Vec::<String>::new(),
                "round {rounds}"
            );
        }
        lines += told.lines;
    }
    assert!(
        lines > 1_000,
        "only {lines} lines: the writer hardly worked"
    );
    println!(
        "drill 1: {rounds} kills of the phone's store, {lines} acknowledged, 0 lost, seed 0x0eafeb00c0000001"
    );
}

/// How many of at most so many kills it takes until the check sees a fault of this kind.
fn kills_until_seen(manner: &str, fault: &str) -> Option<usize> {
    let mut noise = Noise(0x0eaf_eb00_c000_0002);
    (1..=100).find(|_| {
        let dir = tempfile::tempdir().unwrap();
        let mut told = Acknowledged::default();
        told.hear(&said_until_killed(writer(dir.path(), manner), &mut noise));
        faults(dir.path(), &told)
            .iter()
            .any(|seen| seen.contains(fault))
    })
}

#[test]
fn a_writer_that_says_so_before_it_is_so_is_seen() {
    let kills = kills_until_seen("says-first", " is lost").expect("a lost entry in 100 kills");
    println!("drill 1 control: a reply before its commit is seen after {kills} kills");
}

#[test]
fn a_writer_that_books_and_clears_its_draft_in_two_steps_is_seen() {
    let kills = kills_until_seen("two-steps", "the draft knows of").expect("a torn act");
    println!("a booking in two transactions is seen after {kills} kills");
}

#[test]
fn a_second_program_is_refused_while_the_first_lives_and_let_in_when_it_was_killed() {
    let dir = tempfile::tempdir().unwrap();
    let mut first = writer(dir.path(), "honest")
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut line = String::new();
    BufReader::new(first.stdout.as_mut().unwrap())
        .read_line(&mut line)
        .unwrap();
    let second = writer(dir.path(), "bookings").arg("1").output().unwrap();
    assert_eq!(second.status.code(), Some(2));
    assert_eq!(
        String::from_utf8_lossy(&second.stderr),
        format!(
            "the field book in {} is open in another program (process {}): close that one, or \
             name another folder\n",
            dir.path().display(),
            first.id()
        )
    );
    first.kill().unwrap();
    first.wait().unwrap();
    let third = writer(dir.path(), "bookings").arg("1").output().unwrap();
    assert!(third.status.success(), "{third:?}");
}
