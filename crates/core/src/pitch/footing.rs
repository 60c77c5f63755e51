//! On how many places a pitch stands, and what their spread speaks of.

use super::likelihood::ZeroError;
use super::looks::SlopeSample;
use crate::units::Angle;
use std::fmt;

/// On what a pitch stands. A chance in per cent is said only of [`Footing::Enough`]: the model of
/// one place is not the roof, and one place on a kick-out is sure of the wrong pitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Footing {
    /// Three places or more on the roof, two of them not near the eave.
    Enough,
    /// One place on the roof.
    OnePlace,
    /// Two places on the roof.
    TwoPlaces,
    /// All near the eave.
    NearEaveOnly,
    /// All near the eave but one.
    OneAboveEave,
    /// Nobody was on the roof: sighted from the ground.
    PhotoAlone,
    /// Nobody was on the roof: a number from elsewhere.
    ToldAlone,
}

/// Places that carry a chance in per cent, and how many of them not near the eave.
const PLACES: usize = 3;
const PLACES_ABOVE: usize = 2;

impl Footing {
    pub(super) fn from_samples(looks: &[SlopeSample]) -> Footing {
        let positions = || looks.iter().filter(|look| look.is_position());
        let above = positions().filter(|look| !look.is_near_eave()).count();
        match (positions().count(), above) {
            (0, _)
                if looks
                    .iter()
                    .any(|look| look.kind == super::looks::Kind::Sighted) =>
            {
                Footing::PhotoAlone
            }
            (0, _) => Footing::ToldAlone,
            (_, 0) => Footing::NearEaveOnly,
            (1, _) => Footing::OnePlace,
            (places, _) if places < PLACES => Footing::TwoPlaces,
            (_, above) if above < PLACES_ABOVE => Footing::OneAboveEave,
            (_, _) => Footing::Enough,
        }
    }

    /// A word for it, by which a program finds its own.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Footing::Enough => "enough_places",
            Footing::OnePlace => "one_place",
            Footing::TwoPlaces => "two_places",
            Footing::NearEaveOnly => "near_eave_only",
            Footing::OneAboveEave => "one_above_eave",
            Footing::PhotoAlone => "photo_alone",
            Footing::ToldAlone => "told_alone",
        }
    }

    /// Whether a chance may be said in per cent.
    #[must_use]
    pub fn carries_per_cent(self) -> bool {
        self == Footing::Enough
    }
}

impl fmt::Display for Footing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Footing::Enough => "read at three places or more",
            Footing::OnePlace => "read at one place only: read two more above the second course",
            Footing::TwoPlaces => "read at two places only: read one more above the second course",
            Footing::NearEaveOnly => {
                "read near the eave only, where roofs kick out flatter: read two places above the \
                 second course"
            }
            Footing::OneAboveEave => {
                "read at one place only above the second course: read one more there"
            }
            Footing::PhotoAlone => {
                "from a photo alone, good to a quarter inch in 12 at best: read it on the roof or \
                 with a level and tape"
            }
            Footing::ToldAlone => "a number from elsewhere, not read",
        })
    }
}

/// What the spread between places speaks of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unevenness {
    /// Places differ by more than their readings explain.
    Humps {
        /// Greatest difference between two places.
        apart: Angle,
    },
    /// Flatter near the eave than above.
    KickOut {
        /// By how much.
        flatter: Angle,
    },
}

/// So many standard deviations apart two places are no chance (Baarda 1968 tests one residual at
/// 3.29; here the worst of a few pairs is looked at).
const APART: f64 = 3.0;
/// A kick-out less than this is not worth a word, degrees (judged).
const LEAST_KICK: f64 = 0.6;

pub(super) fn unevenness(looks: &[SlopeSample], zero: &ZeroError) -> Option<Unevenness> {
    let places: Vec<&SlopeSample> = looks.iter().filter(|look| look.is_position()).collect();
    kick_out(&places, zero).or_else(|| humps(&places, zero))
}

/// Mean and standard deviation of the mean, the phone's zero error taken off.
fn mean<'a>(
    places: impl Iterator<Item = &'a &'a SlopeSample>,
    zero: &ZeroError,
) -> Option<(f64, f64)> {
    let (mut weight, mut sum) = (0.0, 0.0);
    for look in places {
        let sigma = look.about_face().hypot(look.zero_sign * zero.sigma);
        weight += sigma.powi(-2);
        sum += sigma.powi(-2) * (look.read - look.zero_sign * zero.mean);
    }
    (weight > 0.0).then(|| (sum / weight, weight.sqrt().recip()))
}

fn kick_out(places: &[&SlopeSample], zero: &ZeroError) -> Option<Unevenness> {
    let near = mean(places.iter().filter(|look| look.is_near_eave()), zero)?;
    let above = mean(places.iter().filter(|look| !look.is_near_eave()), zero)?;
    let flatter = above.0 - near.0;
    (flatter > LEAST_KICK && flatter > APART * near.1.hypot(above.1)).then(|| Unevenness::KickOut {
        flatter: Angle::degrees(flatter),
    })
}

fn humps(places: &[&SlopeSample], zero: &ZeroError) -> Option<Unevenness> {
    let by_read = |a: &&&SlopeSample, b: &&&SlopeSample| a.read.total_cmp(&b.read);
    let worst_of = |sign: f64| {
        let mut same_way = places
            .iter()
            .filter(move |look| (look.zero_sign - sign).abs() < 0.5);
        let low = same_way.clone().min_by(by_read)?;
        let high = same_way.by_ref().max_by(by_read)?;
        Some((low, high))
    };
    // The lowest and the highest of each way round against those of the others: enough to find
    // the greatest difference without looking at every pair of very many.
    let ends: Vec<&&SlopeSample> = [0.0, 1.0, -1.0]
        .into_iter()
        .filter_map(worst_of)
        .flat_map(|(low, high)| [low, high])
        .collect();
    let least = APART + 0.25 * (places.len() as f64 / 2.0).max(1.0).ln();
    let apart = ends
        .iter()
        .flat_map(|a| ends.iter().map(move |b| (a, b)))
        .filter_map(|(a, b)| {
            let sign = a.zero_sign - b.zero_sign;
            let apart = a.read - b.read - sign * zero.mean;
            let sigma = a.about_face().hypot(b.about_face());
            (apart > least * sigma.hypot(sign * zero.sigma)).then_some(apart)
        })
        .fold(0.0, f64::max);
    (apart > 0.0).then(|| Unevenness::Humps {
        apart: Angle::degrees(apart),
    })
}

impl fmt::Display for Unevenness {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unevenness::Humps { apart } => write!(
                f,
                "its places differ by {:.1} degrees, more than the readings do: it sags or humps, \
                 or one was read on another face; read one more place",
                apart.in_degrees()
            ),
            Unevenness::KickOut { flatter } => write!(
                f,
                "it reads {:.1} degrees flatter near the eave than above: the eave kicks out, and \
                 the places above count",
                flatter.in_degrees()
            ),
        }
    }
}

/// Zero errors of one phone further apart than this are no chance, degrees: over three standard
/// deviations of the difference of two flips.
const JUMP: f64 = 1.1;

/// The flips whose zero error jumps from that of the others, with by how much: one phone has one
/// zero error all day, so there it lay askew, or it was another phone. Of two that differ both are
/// named, since nothing says which.
#[must_use]
pub fn zero_jumps(zero_errors: &[Angle]) -> Vec<(usize, Angle)> {
    let mut sorted: Vec<f64> = zero_errors.iter().map(|zero| zero.in_degrees()).collect();
    sorted.sort_by(f64::total_cmp);
    let mut jumps = Vec::new();
    for (flip, zero) in zero_errors.iter().enumerate() {
        let others = match (sorted.as_slice(), zero.in_degrees()) {
            ([] | [_], _) => continue,
            ([low, high], own) => low + high - own,
            // The middle of all bears with one that is far off, that of the others would not.
            (all, _) => (all[(all.len() - 1) / 2] + all[all.len() / 2]) / 2.0,
        };
        let by = zero.in_degrees() - others;
        if by.abs() > JUMP {
            jumps.push((flip, Angle::degrees(by)));
        }
    }
    jumps
}

#[cfg(test)]
mod tests {
    use super::*;

    fn jumps(degrees: &[f64]) -> Vec<usize> {
        let zero_errors: Vec<Angle> = degrees.iter().map(|zero| Angle::degrees(*zero)).collect();
        zero_jumps(&zero_errors).iter().map(|jump| jump.0).collect()
    }

    #[test]
    fn a_phone_that_lay_askew_once_is_named_there() {
        assert_eq!(jumps(&[0.6, 0.5, 2.4, 0.8]), [2]);
        assert_eq!(jumps(&[0.5, 2.6, 0.6]), [1]);
        assert_eq!(jumps(&[0.6, 0.5, 0.9, 0.8]), [] as [usize; 0]);
    }

    #[test]
    fn of_two_flips_that_differ_both_are_named_and_one_alone_says_nothing() {
        assert_eq!(jumps(&[0.6, -1.2]), [0, 1]);
        assert_eq!(jumps(&[3.0]), [] as [usize; 0]);
    }
}
