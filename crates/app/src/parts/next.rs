//! What to read or tap next.

use crate::parts::reply::NextAct;
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use eavebook_core::book::agree::in_dispute;
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::kinds::Thing;
use eavebook_core::book::lay_out::LaidOut;
use eavebook_core::outline::{ClosureState, Round};

/// The leg whose far corner is the next to be tapped: read or out of reach, with no corner, and
/// the line not come round.
#[must_use]
pub fn corner_after(laid: &LaidOut, in_book: &FieldBook) -> Option<u32> {
    match (laid.walk.round, laid.walk.closure.state) {
        (Round::EveryCornerTapped, _)
        | (Round::LastCornerUntapped, ClosureState::Closes | ClosureState::NotChecked) => {
            return None;
        }
        // A leg that leaves a gap may not be the last.
        (Round::LastCornerUntapped, ClosureState::Gap | ClosureState::Open)
        | (Round::NotYet, _) => {}
    }
    let done = |leg: u32| {
        let thing = Thing::Leg { leg };
        in_book.in_force_of(&thing).next().is_some()
            || in_book.cannot_get.iter().any(|(_, lack, _)| *lack == thing)
    };
    let tapped = |leg: u32| {
        in_book
            .corners
            .iter()
            .any(|(_, corner)| corner.after_leg == leg)
    };
    (1..=u32::try_from(laid.legs).ok()?).find(|leg| done(*leg) && !tapped(*leg))
}

/// What leads on.
#[must_use]
pub fn next(seen: &SolvedJob) -> NextAct {
    if let Some(after_leg) = corner_after(seen.laid, seen.book) {
        return NextAct::Corner { after_leg };
    }
    next_reading(seen).map_or(NextAct::Plan, |thing| NextAct::Read { thing })
}

/// The thing that is the most useful to read next; none when every leg is read and agrees.
#[must_use]
pub fn next_reading(seen: &SolvedJob) -> Option<Thing> {
    let legs = (1..=seen.laid.legs).filter_map(|leg| u32::try_from(leg).ok());
    let unread = legs.map(|leg| Thing::Leg { leg }).find(|thing| {
        seen.in_force(thing).is_empty()
            && !seen
                .book
                .cannot_get
                .iter()
                .any(|(_, lack, _)| lack == thing)
    });
    if let Some(thing) = unread {
        return Some(thing);
    }
    if !seen.is_shut() {
        return Some(Thing::Leg {
            leg: u32::try_from(seen.laid.legs).ok()? + 1,
        });
    }
    let all = things::all(seen);
    let disputed = all.iter().find(|thing| in_dispute(&seen.in_force(thing)));
    let suspects = seen.suspects();
    disputed
        .cloned()
        .or_else(|| suspects.first().map(|(thing, _)| thing.clone()))
}
