//! Which readings of a field book count, and the length they give a thing.

use super::fold::{BookedReading, FieldBook};
use super::kinds::{Followed, HowRead, Thing};
use crate::units::{Length, Tape};

/// Whether a reading counts: it is in force, was not reported by another person, and is not the
/// length of a wall without its overhangs.
#[must_use]
pub fn counts(reading: &BookedReading) -> bool {
    reading.struck.is_none() && reading.how != HowRead::Told && reading.followed != Followed::Wall
}

/// Returns the median of the readings of a thing that count, so that of three readings one slip
/// does not move it; `None` if no reading counts.
#[must_use]
pub fn measured(book: &FieldBook, thing: &Thing) -> Option<Length> {
    let counted = book.readings.iter().filter(|reading| counts(reading));
    let mut feet: Vec<f64> = counted
        .filter(|reading| reading.thing == *thing)
        .filter_map(|reading| Tape::read(&reading.text).ok())
        .map(|tape| tape.length().in_feet())
        .collect();
    feet.sort_by(f64::total_cmp);
    let upper = feet.get(feet.len() / 2)?;
    let lower = feet.get((feet.len() - 1) / 2)?;
    Some(Length::feet(f64::midpoint(*lower, *upper)))
}
