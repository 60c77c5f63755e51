//! What rises at a leg, and slopes.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::refusal::{Refusal, RequestRefusal};
use eavebook_core::book::kinds::{EndKind, Kind, LegEnd, PitchBooked, PitchRead};
use eavebook_core::book::subject::Subject;
use eavebook_core::units::Pitch;
use eavebook_store::Store;
use uuid::Uuid;

/// What rises at a leg: a slope, a gable, a wall.
///
/// # Errors
/// `NoJob`, `NoLeg`.
pub fn leg_end(book: &mut Store, job: Uuid, leg: u32, end: EndKind) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    opened.check_leg(leg)?;
    let there = opened
        .book
        .leg_ends
        .iter()
        .any(|(_, at, said)| *at == leg && *said == end);
    if !there {
        let replaced = opened.book.replaced_by_new(&Subject::EndOf(leg));
        opened.book(book, &Kind::LegEnd(LegEnd { leg, end }), replaced)?;
    }
    Ok(Answer::Job(job))
}

/// A slope read, told, or taken over. A leg that was called an end is a slope from then on.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoSlope`, `NoOtherSlope`.
pub fn pitch(book: &mut Store, job: Uuid, leg: u32, read: PitchRead) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    opened.check_leg(leg)?;
    check(&opened, leg, &read)?;
    // A request that comes again is the last act of this device, word for word.
    let acts = opened.book.acts.iter().rev();
    let last = acts.into_iter().find(|act| act.device == opened.device);
    let booked = Kind::Pitch(PitchBooked {
        leg,
        read: read.clone(),
    });
    if last.is_none_or(|act| act.kind != booked || !act.in_force) {
        book_pitch(&opened, book, leg, read)?;
    }
    Ok(Answer::Job(job))
}

/// Books a slope. A leg that was called an end is a slope from then on; not so where nothing was
/// got.
///
/// # Errors
/// `NoSlope`, `NoOtherSlope`; says why nothing was booked.
pub fn book_pitch(
    opened: &OpenJob,
    book: &mut Store,
    leg: u32,
    read: PitchRead,
) -> Result<(), Refusal> {
    check(opened, leg, &read)?;
    let mut acts = Vec::new();
    let ends = opened.book.leg_ends.iter();
    let ended = ends
        .into_iter()
        .any(|(_, at, end)| *at == leg && *end != EndKind::Sloped);
    if ended && read != PitchRead::NotGot {
        let replaced = opened.book.replaced_by_new(&Subject::EndOf(leg));
        let end = EndKind::Sloped;
        acts.push((Kind::LegEnd(LegEnd { leg, end }), replaced));
    }
    acts.push((Kind::Pitch(PitchBooked { leg, read }), Vec::new()));
    opened.book_all(book, acts)
}

/// The steepest slope that a roof is asked for, rise in 12: a mansard's lower face has less.
const STEEPEST_IN_12: f64 = 48.0;

fn check(opened: &OpenJob, leg: u32, read: &PitchRead) -> Result<(), Refusal> {
    let slope = |in_12: f64| in_12 > 0.0 && in_12 <= STEEPEST_IN_12;
    let refuse = |said: String, remedy| Err(RequestRefusal::NoSlope { said, remedy }.into());
    match read {
        PitchRead::Number { in_12 } if !slope(*in_12) => {
            refuse(format!("{in_12} in 12"), "a rise above 0, at most 48 in 12")
        }
        PitchRead::LevelAndTape { run_in, rise_in }
            if !(*run_in > 0.0 && slope(12.0 * rise_in / run_in)) =>
        {
            let said = format!("{rise_in} in over {run_in} in");
            refuse(
                said,
                "the level's length along the run, and the tape from its end to the roof",
            )
        }
        PitchRead::Phone { degrees, .. } if !slope(in_12(*degrees)) => refuse(
            format!("{degrees}°"),
            "the phone flat on the slope, between 0° and 75°",
        ),
        PitchRead::Sighted { degrees, .. } if !slope(in_12(*degrees)) => refuse(
            format!("{degrees}°"),
            "marks on a photo of the gable end, between 0° and 75°",
        ),
        PitchRead::SameAs { leg: other } => {
            let is_leg = *other != leg && opened.check_leg(*other).is_ok();
            let has_slope = opened.book.pitches.iter().any(|pitch| {
                pitch.leg == *other
                    && pitch.struck.is_none()
                    && pitch.read != PitchRead::SameAs { leg }
            });
            if is_leg && has_slope {
                Ok(())
            } else {
                Err(RequestRefusal::NoOtherSlope.into())
            }
        }
        PitchRead::Number { .. }
        | PitchRead::LevelAndTape { .. }
        | PitchRead::Phone { .. }
        | PitchRead::Sighted { .. }
        | PitchRead::NotGot => Ok(()),
    }
}

/// Rise in 12 of an angle; none of it where the angle is no slope.
fn in_12(degrees: f64) -> f64 {
    if degrees > 0.0 && degrees < 90.0 {
        Pitch::from_angle(eavebook_core::units::Angle::degrees(degrees)).in_12()
    } else {
        0.0
    }
}
