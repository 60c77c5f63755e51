//! Corners of the outline, and what cannot be reached.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::places::field_book::keypad;
use crate::refusal::{Refusal, RequestRefusal};
use crate::{names, stamp};
use eavebook_core::book::kinds::{CannotGet, Corner, Kind, Thing, Turn};
use eavebook_core::book::subject::Subject;
use eavebook_core::outline::{ClosureWords, LastLeg};
use eavebook_store::Store;
use uuid::Uuid;
/// The corner at the far end of a leg; opens the keypad for the next one, unless the line has come
/// round.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoTurn`.
pub fn corner(book: &mut Store, job: Uuid, after_leg: u32, turn: Turn) -> Result<Answer, Refusal> {
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
        keypad::lay_open(&mut opened, next, keypad::Sight::Open);
    }
    // The corner and the keypad that it opens are one: a kill between them would leave neither
    // the corner pad nor the keypad to come back to.
    opened.append(book, entry.as_slice())?;
    Ok(Answer::Job(job))
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
) -> Result<Answer, Refusal> {
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
    Ok(Answer::Job(job))
}
