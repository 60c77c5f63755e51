//! A slope just read, as the region `Pitch` shows it: raw degrees first, the trade's pitch beside.

use crate::parts::roof;
use crate::places::plan::reply::CapturedView;
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::fold::BookedPitch;
use eavebook_core::book::kinds::PitchRead;
use eavebook_core::check::degrees;
use eavebook_core::sight::SightCaution;
use eavebook_core::units::{Angle, Pitch};
use eavebook_words::Language;

/// The last slope that was read of those in force at one face, in display order; none where none
/// was, or the last thing said is that it was not got or is the same as another.
#[must_use]
pub fn view(in_force: &[&BookedPitch], language: Language) -> Option<CapturedView> {
    let last = in_force.last()?;
    let read = match &last.read {
        PitchRead::Number { in_12 } => Pitch::rise_in_12(*in_12).angle().in_degrees(),
        PitchRead::Phone { .. } | PitchRead::LevelAndTape { .. } | PitchRead::Sighted { .. } => {
            degrees(&last.read)?
        }
        PitchRead::SameAs { .. } | PitchRead::NotGot => return None,
    };
    let pair = other_way(in_force);
    let shown = pair.map_or(read, |first| (first + read) / 2.0);
    let in_12 = Pitch::from_angle(Angle::degrees(shown)).in_12();
    Some(CapturedView {
        degrees: format!("{shown:.1}°"),
        in_12: format!(
            "{in_12:.1} in 12, near {}",
            roof::in_12((in_12 * 2.0).round() / 2.0)
        ),
        one_way: matches!(
            last.read,
            PitchRead::Phone {
                reversed: false,
                ..
            }
        ),
        zero_error: pair.map(|first| zero_error(first, read)),
        sighted: sighted(&last.read),
        spoken: language.format().spoken_degrees(shown),
    })
}

/// What a slope from a photo is good for, wherever it is shown.
fn sighted(read: &PitchRead) -> Option<Sentence> {
    let PitchRead::Sighted { sigma, .. } = read else {
        return None;
    };
    let words = format!(
        "± {sigma:.1}°, from marks on one photo. {}",
        SightCaution::PhotoAlone
    );
    Some(sentence("sighted", words))
}

/// Degrees of the phone's other way, where the last reading turned it end for end.
fn other_way(in_force: &[&BookedPitch]) -> Option<f64> {
    let [.., first, last] = in_force else {
        return None;
    };
    match (&first.read, &last.read) {
        (
            PitchRead::Phone {
                degrees,
                reversed: false,
            },
            PitchRead::Phone { reversed: true, .. },
        ) => Some(*degrees),
        (
            PitchRead::Phone { .. }
            | PitchRead::Number { .. }
            | PitchRead::LevelAndTape { .. }
            | PitchRead::Sighted { .. }
            | PitchRead::SameAs { .. }
            | PitchRead::NotGot,
            _,
        ) => None,
    }
}

/// Half the difference of the two ways is what the phone adds, as of a level read in two faces.
fn zero_error(first: f64, second: f64) -> Sentence {
    let adds = (first - second) / 2.0;
    let which = if adds < 0.0 { "low" } else { "high" };
    let words = if adds.abs() < 0.05 {
        format!("{first:.1}° and {second:.1}°: both ways read the same.")
    } else {
        format!(
            "{first:.1}° and {second:.1}°: this phone reads {:.1}° {which}, and the mean is free \
             of it.",
            adds.abs()
        )
    };
    sentence("zero_error", words)
}
