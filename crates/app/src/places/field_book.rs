//! Read-back, strike, undo and redo, corners, what cannot be reached.

use super::job::{self, OpenJob};
use super::pad;
use crate::refusal::{Refusal, RequestRefusal};
use crate::reply::Reply;
use crate::stamp;
use crate::view::names;
use eavebook_core::book::acts::Act;
use eavebook_core::book::kinds::{
    About, CannotGet, Corner, Kind, Redo, SettledAtDesk, Strike, Thing, Turn, Undo,
};
use eavebook_core::book::subject::Subject;
use eavebook_core::outline::{ClosureWords, LastLeg};
use eavebook_store::Store;
use uuid::Uuid;

/// The read-back of a reading is right.
///
/// # Errors
/// `NoJob`, `NoEntry`.
pub fn right(book: &mut Store, job: Uuid, reading: Uuid) -> Result<Reply, Refusal> {
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
    job::reply(book, job)
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
) -> Result<Reply, Refusal> {
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
    job::reply(book, job)
}

/// Somebody looked at the desk and lets what was read stand. Said again, it books nothing.
///
/// # Errors
/// `NoJob`, `NoEntry` where one of them is struck or is nothing that was read or seen.
pub fn settle_at_desk(book: &mut Store, job: Uuid, entries: Vec<Uuid>) -> Result<Reply, Refusal> {
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
    job::reply(book, job)
}

/// Takes back the act that Undo names. Said twice, it is taken back once.
///
/// # Errors
/// `NoJob`, `NotNext` where another act is the last by now.
pub fn undo(book: &mut Store, job: Uuid, entry: Uuid) -> Result<Reply, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    let last = opened.book.undo_of(opened.device).map(|act| act.entry);
    if last == Some(entry) {
        opened.draft.read_back = None;
        opened.draft.close();
        opened.book(book, &Kind::Undo(Undo {}), vec![entry])?;
    } else if !was_done(&opened, entry, |kind| matches!(kind, Kind::Undo(_))) {
        return Err(RequestRefusal::NotNext { act: "Undo" }.into());
    }
    job::reply(book, job)
}

/// Does again what the undo that Redo names took back. Said twice, it is done once.
///
/// # Errors
/// `NoJob`, `NotNext` where something was done since.
pub fn redo(book: &mut Store, job: Uuid, entry: Uuid) -> Result<Reply, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    let last = opened.book.redo_of(opened.device).map(|act| act.entry);
    if last == Some(entry) {
        opened.draft.read_back = None;
        opened.book(book, &Kind::Redo(Redo {}), vec![entry])?;
    } else if !was_done(&opened, entry, |kind| matches!(kind, Kind::Redo(_))) {
        return Err(RequestRefusal::NotNext { act: "Redo" }.into());
    }
    job::reply(book, job)
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

/// The corner at the far end of a leg; opens the keypad for the next one, unless the line has come
/// round.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoTurn`.
pub fn corner(book: &mut Store, job: Uuid, after_leg: u32, turn: Turn) -> Result<Reply, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    opened.check_thing(&Thing::Leg { leg: after_leg })?;
    if let Turn::Angled { degrees } = turn
        && !(degrees.is_finite() && degrees.abs() <= 135.0)
    {
        return Err(RequestRefusal::NoTurn { degrees }.into());
    }
    let building_on = opened.settings.building_on();
    let corner = Corner {
        after_leg,
        turn,
        building_on,
    };
    let is_there = |(_, there): &(Uuid, Corner)| *there == corner;
    let entry = if opened.book.corners.iter().any(is_there) {
        None
    } else {
        let replaced = opened
            .book
            .replaced_by_new(&Subject::CornerAfter(after_leg));
        opened.draft.read_back = None;
        let entry = stamp::entry(book, job, &Kind::Corner(corner), replaced)?;
        opened = opened.with(book, &entry)?;
        Some(entry)
    };
    let next = Thing::Leg { leg: after_leg + 1 };
    let is_read = opened.book.in_force_of(&next).next().is_some();
    if goes_on(&opened) && !is_read {
        pad::lay_open(&mut opened, next, pad::Sight::Open);
    }
    // The corner and the keypad that it opens are one: a kill between them would leave neither
    // the corner pad nor the keypad to come back to.
    opened.append(book, entry.as_slice())?;
    job::reply(book, job)
}

/// Whether legs are still to come: the walk has not come round, or it only may have.
fn goes_on(opened: &OpenJob) -> bool {
    let walk = opened.laid_out().walk;
    match walk.closure.words {
        ClosureWords::ToClose { .. } => true,
        ClosureWords::Gap { last_leg, .. } => last_leg == LastLeg::Perhaps,
        ClosureWords::Closes { .. } | ClosureWords::NotChecked { .. } => false,
    }
}

/// A thing that cannot be reached. The keypad for it is put away.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoTie`, `IsRead`.
pub fn cannot_get(
    book: &mut Store,
    job: Uuid,
    thing: Thing,
    reason: Option<String>,
) -> Result<Reply, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    opened.check_thing(&thing)?;
    if opened.book.in_force_of(&thing).next().is_some() {
        return Err(RequestRefusal::IsRead {
            title: names::capital(&names::name(&thing)),
        }
        .into());
    }
    let reason = reason
        .map(|why| why.trim().to_owned())
        .filter(|why| !why.is_empty());
    let there = |(_, lack, why): &(Uuid, Thing, Option<String>)| *lack == thing && *why == reason;
    if !opened.book.cannot_get.iter().any(there) {
        opened.draft.put_away(&thing);
        opened.draft.read_back = None;
        let earlier = opened
            .book
            .cannot_get
            .iter()
            .filter(|(_, lack, _)| *lack == thing);
        let earlier = earlier.map(|(entry, _, _)| *entry).collect();
        opened.book(book, &Kind::CannotGet(CannotGet { thing, reason }), earlier)?;
    }
    job::reply(book, job)
}
