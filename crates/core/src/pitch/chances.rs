//! How likely each trade pitch is after the looks at one slope: a roof is framed to a trade pitch
//! and comes out near it.

use super::likelihood::{SlopeGrid, ZeroError, looks, normal};
use super::trade::trade_pitches;
use crate::survey::PitchReading;
use crate::units::{Angle, Pitch};

/// Spread of a face as built about the pitch it was framed to, degrees (judged).
const AS_BUILT_SIGMA: f64 = 0.35;
/// No face is built further than this from the pitch it was framed to, degrees.
const BUILT_WITHIN: f64 = 6.0 * AS_BUILT_SIGMA;
/// How sure one must be before the steeper of two pitches can be left out.
const SURE: f64 = 0.90;

/// What the looks at one slope say.
#[derive(Clone, Debug, PartialEq)]
pub struct PitchChances {
    /// Trade pitches and their chances, likeliest first, those under one in a thousand left out.
    pub chances: Vec<(Pitch, f64)>,
    /// The smallest pitch that the slope does not exceed with nine chances in ten.
    pub steeper_when_unsure: Pitch,
    /// Standard deviation of the slope about the likeliest pitch.
    pub sigma: Angle,
    /// How many positions were looked at.
    pub positions: usize,
    /// Zero error of the phone, where a flip showed it.
    pub zero_error: Option<Angle>,
}

impl PitchChances {
    /// The likeliest trade pitch.
    #[must_use]
    pub fn likeliest(&self) -> Pitch {
        self.chances
            .first()
            .map_or(self.steeper_when_unsure, |(pitch, _)| *pitch)
    }
}

/// Weighs the trade pitches against the readings of one slope; none without a reading.
///
/// Readings in the order in which they were taken. The likelihood of a position is a mixture of
/// fair and odd places; zero errors of one-way readings are integrated over what is known of the
/// phone, the flips of this slope included.
#[must_use]
pub fn weigh(readings: &[PitchReading]) -> Option<PitchChances> {
    let looks = looks(readings);
    if looks.is_empty() {
        return None;
    }
    let zero = ZeroError::shown_by(&looks);
    let slopes = SlopeGrid::around(&looks, &zero);
    let mut chances = Vec::new();
    let mut by_slope = vec![0.0; slopes.at.len()];
    for (pitch, weight) in trade_pitches() {
        let framed = pitch.angle().in_degrees();
        let mut chance = 0.0;
        let near = slopes.between(framed - BUILT_WITHIN, framed + BUILT_WITHIN);
        for ((at, likelihood), total) in slopes.at[near.clone()]
            .iter()
            .zip(&slopes.likelihood[near.clone()])
            .zip(&mut by_slope[near])
        {
            let share = weight * normal(at - framed, AS_BUILT_SIGMA) * likelihood;
            chance += share;
            *total += share;
        }
        chances.push((pitch, chance));
    }
    let sum: f64 = chances.iter().map(|(_, chance)| chance).sum();
    for (_, chance) in &mut chances {
        *chance /= sum;
    }
    let steeper_when_unsure = smallest_not_exceeded(&chances);
    chances.retain(|(_, chance)| *chance >= 1e-3);
    chances.sort_by(|a, b| b.1.total_cmp(&a.1));
    let likeliest = chances
        .first()
        .map_or(steeper_when_unsure, |(pitch, _)| *pitch)
        .angle()
        .in_degrees();
    let variance: f64 = slopes
        .at
        .iter()
        .zip(&by_slope)
        .map(|(at, share)| share / sum * (at - likeliest).powi(2))
        .sum();
    Some(PitchChances {
        chances,
        steeper_when_unsure,
        sigma: Angle::degrees(variance.sqrt()),
        positions: looks.len(),
        zero_error: zero.shown.then_some(Angle::degrees(zero.mean)),
    })
}

/// `chances` from the flattest up.
fn smallest_not_exceeded(chances: &[(Pitch, f64)]) -> Pitch {
    let mut so_far = 0.0;
    for (pitch, chance) in chances {
        so_far += chance;
        if so_far >= SURE {
            return *pitch;
        }
    }
    chances
        .last()
        .map_or(Pitch::rise_in_12(0.0), |(pitch, _)| *pitch)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::survey::Way;

    fn forward(degrees: f64) -> PitchReading {
        PitchReading {
            angle: Angle::degrees(degrees),
            way: Way::Forward,
        }
    }

    fn reversed(degrees: f64) -> PitchReading {
        PitchReading {
            angle: Angle::degrees(degrees),
            way: Way::Reversed,
        }
    }

    fn weighed(readings: &[PitchReading]) -> PitchChances {
        weigh(readings).expect("there are readings")
    }

    #[test]
    fn a_flip_cancels_the_zero_error_and_shows_it() {
        let told = weighed(&[forward(21.4), reversed(23.6)].repeat(3));
        assert!((told.likeliest().in_12() - 5.0).abs() < 1e-9);
        assert!(told.chances[0].1 > 0.95, "{:?}", told.chances);
        assert_eq!(told.positions, 3);
        let zero_error = told.zero_error.expect("three flips").in_degrees();
        assert!((zero_error + 1.1).abs() < 0.1, "{zero_error}");
    }

    #[test]
    fn one_look_one_way_is_less_sure_than_the_same_look_both_ways() {
        let once = weighed(&[forward(26.6)]);
        let both = weighed(&[forward(26.6), reversed(26.6)]);
        assert!((once.likeliest().in_12() - 6.0).abs() < 1e-9);
        assert!(once.chances[0].1 < both.chances[0].1);
        assert!(once.sigma.in_degrees() > both.sigma.in_degrees());
        assert_eq!(once.zero_error, None);
    }

    #[test]
    fn between_two_pitches_the_steeper_is_named_when_unsure() {
        // Half way between 8 in 12 (33.69) and 9 in 12 (36.87).
        let told = weighed(&[forward(35.1), reversed(35.1)]);
        assert!(told.chances[0].1 < SURE, "{:?}", told.chances);
        assert!((told.steeper_when_unsure.in_12() - 9.0).abs() < 1e-9);
    }

    #[test]
    fn a_flip_elsewhere_on_the_slope_tells_a_one_way_reading_its_zero_error() {
        let told = weighed(&[forward(28.2), reversed(25.0), forward(28.2), forward(28.1)]);
        assert_eq!(told.positions, 3);
        assert!((told.likeliest().in_12() - 6.0).abs() < 1e-9);
        assert!(told.chances[0].1 > 0.9, "{:?}", told.chances);
    }

    #[test]
    fn chances_sum_to_one_but_for_those_left_out() {
        let told = weighed(&[forward(18.4)]);
        let sum: f64 = told.chances.iter().map(|(_, chance)| chance).sum();
        assert!((0.99..=1.0 + 1e-12).contains(&sum), "{sum}");
    }

    #[test]
    fn no_reading_says_nothing() {
        assert_eq!(weigh(&[]), None);
    }

    #[test]
    fn a_phone_that_stood_upright_still_names_a_trade_pitch() {
        for degrees in [0.0, 89.9] {
            let told = weighed(&[forward(degrees)]);
            assert!(told.sigma.in_degrees().is_finite());
            assert!(told.chances[0].1 > 0.0);
        }
    }

    #[test]
    fn many_readings_are_weighed_too() {
        let told = weighed(&[forward(26.5), forward(26.7), reversed(27.0)].repeat(500));
        assert!((told.likeliest().in_12() - 6.0).abs() < 1e-9);
    }
}
