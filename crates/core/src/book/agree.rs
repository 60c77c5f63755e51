//! Whether readings of one thing agree.

use super::fold::BookedReading;
use super::kinds::HowRead;
use super::thing::{Scale, Thing};
use crate::units::Tape;

/// The largest difference of two readings of one thing that the way of reading explains, feet.
/// From memory and our own judgement: for a tape the tolerance of a closing loop, 4 inches or half
/// a hundredth of the length; a pace in twenty; what can be scaled off a photo. Of what is read in
/// the hand, half an inch; of a gap, an eighth.
#[must_use]
pub fn tolerance(thing: &Thing, how: HowRead, length: f64) -> f64 {
    match (thing.scale(), how) {
        (Scale::Hand, HowRead::Taped) => 0.5 / 12.0,
        (Scale::Hand, HowRead::OffPhoto | HowRead::Paced | HowRead::Told) => 2.0 / 12.0,
        (Scale::Fine, HowRead::Taped) => 0.125 / 12.0,
        (Scale::Fine, HowRead::OffPhoto | HowRead::Paced | HowRead::Told) => 0.25 / 12.0,
        (Scale::House, HowRead::Taped) => (4.0_f64 / 12.0).max(0.005 * length),
        (Scale::House, HowRead::OffPhoto) => 0.75_f64.max(0.01 * length),
        (Scale::House, HowRead::Paced | HowRead::Told) => 2.5_f64.max(0.05 * length),
    }
}

/// Whether two readings of one thing agree within what both ways of reading explain. A text that
/// cannot be read agrees with nothing.
#[must_use]
pub fn agree(one: &BookedReading, other: &BookedReading) -> bool {
    let feet = |read: &BookedReading| Tape::read(&read.text).map(|tape| tape.length().in_feet());
    let (Ok(a), Ok(b)) = (feet(one), feet(other)) else {
        return false;
    };
    let longer = a.max(b);
    let slack =
        tolerance(&one.thing, one.how, longer).max(tolerance(&other.thing, other.how, longer));
    // A hair above, so that a difference of exactly 4 inches is within 4 inches.
    (a - b).abs() <= slack + 1e-9
}

/// Two readings of one thing or more, of which no two agree: another reading is wanted.
#[must_use]
pub fn in_dispute(readings: &[&BookedReading]) -> bool {
    let pairs = readings.iter().enumerate();
    let mut pairs = pairs.flat_map(|(i, one)| readings[..i].iter().map(move |other| (one, other)));
    readings.len() >= 2 && !pairs.any(|(one, other)| agree(one, other))
}
