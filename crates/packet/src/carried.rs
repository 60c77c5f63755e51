//! The firm's packet as a way from one book to another: it holds the entries of its job and the
//! photos as they were taken, so whoever has the file has the job.

use crate::check::{VerifyError, check};
use crate::contents::Role;
use crate::summary::file_in;
use eavebook_core::book::entry::Entry;
use std::path::Path;

/// The entries of a large job are a few million bytes.
const LARGEST_BOOK: u64 = 200_000_000;

/// What of a book lies in a packet.
#[derive(Clone, Debug, PartialEq)]
pub struct Carried {
    /// The entries of its job.
    pub entries: Vec<Entry>,
    /// Paths of its photos in the bag, for [`file_in`].
    pub photos: Vec<String>,
}

/// Proves a packet whole and reads the entries in it.
///
/// # Errors
/// As [`check()`]; `NoBook` where its reader was not to have the entries; `List` for a line that is
/// no entry.
pub fn carried(packet: &Path) -> Result<Carried, VerifyError> {
    let proved = check(packet)?;
    let of = |role: Role| proved.files.iter().filter(move |row| row.role == role);
    let Some(book) = of(Role::Book).next() else {
        return Err(VerifyError::NoBook(proved.edition));
    };
    let bad = |why: String| VerifyError::List {
        file: "book/entries.jsonl",
        why,
    };
    let lines = file_in(packet, &book.path, LARGEST_BOOK)?;
    let lines = String::from_utf8(lines).map_err(|why| bad(why.to_string()))?;
    let entries = lines
        .lines()
        .map(|line| Entry::from_json(line).map_err(|why| bad(why.to_string())))
        .collect::<Result<_, _>>()?;
    Ok(Carried {
        entries,
        photos: of(Role::Original).map(|row| row.path.clone()).collect(),
    })
}
