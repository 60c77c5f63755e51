//! Read-back, strike, undo and redo, corners, what cannot be reached.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::refusal::{Refusal, RequestRefusal};
use eavebook_core::book::acts::Act;
use eavebook_core::book::kinds::{About, Kind, Redo, SettledAtDesk, Strike, Undo};
use eavebook_store::Store;
use uuid::Uuid;

/// The read-back of a reading is right.
///
/// # Errors
/// `NoJob`, `NoEntry`.
pub fn right(book: &mut Store, job: Uuid, reading: Uuid) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let read = opened
        .book
        .readings
        .iter()
        .find(|read| read.entry == reading);
    let read = read.ok_or(RequestRefusal::NoEntry)?;
    if !read.read_back && read.struck.is_none() {
        opened.book(
            book,
            &Kind::ReadBackRight(About { entry: reading }),
            Vec::new(),
        )?;
    }
    Ok(Answer::Job(job))
}

/// Strikes an entry: it stays readable and counts no more.
///
/// # Errors
/// `NoJob`, `NoEntry`, `NotStruck`.
pub fn strike(
    book: &mut Store,
    job: Uuid,
    entry: Uuid,
    reason: Option<String>,
) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    let act = opened.book.act(entry).ok_or(RequestRefusal::NoEntry)?;
    if !act.kind.can_be_struck() {
        return Err(RequestRefusal::NotStruck.into());
    }
    if act.in_force {
        if opened.draft.read_back == Some(entry) {
            opened.draft.read_back = None;
        }
        let reason = reason
            .map(|why| why.trim().to_owned())
            .filter(|why| !why.is_empty());
        opened.book(book, &Kind::Strike(Strike { reason }), vec![entry])?;
    }
    Ok(Answer::Job(job))
}

/// Somebody looked at the desk and lets what was read stand. Said again, it books nothing.
///
/// # Errors
/// `NoJob`, `NoEntry` where one of them is struck or is nothing that was read or seen.
pub fn settle_at_desk(book: &mut Store, job: Uuid, entries: Vec<Uuid>) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let stands = |entry: &Uuid| {
        let act = opened.book.act(*entry);
        act.is_some_and(|act| act.in_force && act.kind.can_be_struck())
    };
    if entries.is_empty() || !entries.iter().all(stands) {
        return Err(RequestRefusal::NoEntry.into());
    }
    let is_settled = |entry: &Uuid| opened.book.settled.contains(entry);
    if !entries.iter().all(is_settled) {
        let settled = SettledAtDesk { entries };
        opened.book(book, &Kind::SettledAtDesk(settled), Vec::new())?;
    }
    Ok(Answer::Job(job))
}

/// Takes back the act that Undo names. Said twice, it is taken back once.
///
/// # Errors
/// `NoJob`, `NotNext` where another act is the last by now.
pub fn undo(book: &mut Store, job: Uuid, entry: Uuid) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    let last = opened.book.undo_of(opened.device).map(|act| act.entry);
    if last == Some(entry) {
        opened.draft.read_back = None;
        opened.draft.close();
        opened.book(book, &Kind::Undo(Undo {}), vec![entry])?;
    } else if !was_done(&opened, entry, |kind| matches!(kind, Kind::Undo(_))) {
        return Err(RequestRefusal::NotNext { act: "Undo" }.into());
    }
    Ok(Answer::Job(job))
}

/// Does again what the undo that Redo names took back. Said twice, it is done once.
///
/// # Errors
/// `NoJob`, `NotNext` where something was done since.
pub fn redo(book: &mut Store, job: Uuid, entry: Uuid) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    let last = opened.book.redo_of(opened.device).map(|act| act.entry);
    if last == Some(entry) {
        opened.draft.read_back = None;
        opened.book(book, &Kind::Redo(Redo {}), vec![entry])?;
    } else if !was_done(&opened, entry, |kind| matches!(kind, Kind::Redo(_))) {
        return Err(RequestRefusal::NotNext { act: "Redo" }.into());
    }
    Ok(Answer::Job(job))
}

/// Whether this device already did it: the request came twice.
fn was_done(opened: &OpenJob, entry: Uuid, done: impl Fn(&Kind) -> bool) -> bool {
    let does = |act: &&Act| act.device == opened.device && act.supersedes.contains(&entry);
    opened
        .book
        .acts
        .iter()
        .filter(does)
        .any(|act| act.in_force && done(&act.kind))
}
