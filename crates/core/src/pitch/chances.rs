//! How likely each trade pitch is after the looks at one slope: a roof is framed to a trade pitch
//! and comes out near it.

use super::footing::{Footing, Unevenness, unevenness};
use super::likelihood::{SlopeGrid, ZeroError, normal};
use super::looks::looks;
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
    /// Chance that the roof was framed to more than the likeliest pitch.
    pub more_than_likeliest: f64,
    /// Chance that it was framed to more than [`PitchChances::steeper_when_unsure`].
    pub more_than_steeper: f64,
    /// How many looks there were; a phone both ways is one.
    pub looks: usize,
    /// How many positions on the roof were looked at.
    pub positions: usize,
    /// On what it stands.
    pub footing: Footing,
    /// What the spread between places speaks of.
    pub unevenness: Option<Unevenness>,
    /// Zero error of the phone, where a flip showed it.
    pub zero_error: Option<Angle>,
    /// Zero errors as each flip showed them, in the order of the readings.
    pub flips: Vec<Angle>,
}

impl PitchChances {
    /// The likeliest trade pitch.
    #[must_use]
    pub fn likeliest(&self) -> Pitch {
        self.chances
            .first()
            .map_or(self.steeper_when_unsure, |(pitch, _)| *pitch)
    }

    /// The likeliest pitch, and the next where one alone is not sure; in per cent only where the
    /// looks carry it.
    #[must_use]
    pub fn words(&self) -> String {
        let said = |(pitch, chance): &(Pitch, f64)| {
            let pitch = pitch.in_12();
            if self.footing.carries_per_cent() {
                format!("{pitch} in 12, {:.0} %", (100.0 * chance).min(99.0))
            } else {
                format!("{pitch} in 12")
            }
        };
        let sure = self.chances.first().is_none_or(|first| first.1 >= SURE);
        let shown = if sure { 1 } else { 2 };
        let pitches: Vec<String> = self.chances.iter().take(shown).map(said).collect();
        let pitches = pitches.join(" or ");
        match (self.footing, sure) {
            (Footing::Enough, true) => pitches,
            (Footing::Enough, false) => format!("{pitches}: read another place"),
            (footing, _) => format!("{pitches}, {footing}"),
        }
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
    let more_than = |than: Pitch| -> f64 {
        let more = chances.iter().rev().take_while(|(pitch, _)| *pitch > than);
        more.map(|(_, chance)| chance).sum()
    };
    let best = chances.iter().max_by(|a, b| a.1.total_cmp(&b.1));
    let more_than_likeliest = best.map_or(0.0, |(pitch, _)| more_than(*pitch));
    let more_than_steeper = more_than(steeper_when_unsure);
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
        more_than_likeliest,
        more_than_steeper,
        looks: looks.len(),
        positions: looks.iter().filter(|look| look.is_position()).count(),
        footing: Footing::from_samples(&looks),
        unevenness: unevenness(&looks, &zero),
        zero_error: zero.shown.then_some(Angle::degrees(zero.mean)),
        flips: looks
            .iter()
            .filter_map(|look| look.zero_error)
            .map(Angle::degrees)
            .collect(),
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
    use crate::survey::{SlopePlace, Way};

    fn forward(degrees: f64) -> PitchReading {
        PitchReading::new(Angle::degrees(degrees), Way::Forward)
    }

    fn reversed(degrees: f64) -> PitchReading {
        PitchReading::new(Angle::degrees(degrees), Way::Reversed)
    }

    fn both(degrees: f64, place: SlopePlace) -> [PitchReading; 2] {
        [forward(degrees).at(place), reversed(degrees).at(place)]
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
    fn a_chance_in_per_cent_is_said_only_of_three_places() {
        let one = weighed(&[forward(26.5), reversed(26.6)]);
        assert_eq!(
            one.words(),
            "6 in 12, read at one place only: read two more above the second course"
        );
        let three = weighed(&[forward(26.5), reversed(26.6)].repeat(3));
        assert_eq!(three.words(), "6 in 12, 99 %");
        let eave = weighed(&[forward(24.0).at(SlopePlace::NearEave)].repeat(4));
        assert_eq!(eave.footing, Footing::NearEaveOnly);
        assert!(!eave.words().contains('%'));
    }

    #[test]
    fn ten_looks_on_a_kick_out_do_not_outvote_two_above_it() {
        let mut looks = both(23.0, SlopePlace::NearEave).repeat(10);
        looks.extend(both(26.6, SlopePlace::AboveSecondCourse));
        looks.extend(both(26.4, SlopePlace::NearRidge));
        let told = weighed(&looks);
        assert!((told.likeliest().in_12() - 6.0).abs() < 1e-9, "{told:?}");
        let uneven = told.unevenness.expect("a kick-out").to_string();
        assert_eq!(
            uneven,
            "it reads 3.5 degrees flatter near the eave than above: the eave kicks out, and the \
             places above count"
        );
    }

    #[test]
    fn places_that_differ_more_than_readings_do_are_humps() {
        let told = weighed(
            &[26.5, 26.3, 29.0]
                .map(|at| [forward(at), reversed(at)])
                .concat(),
        );
        assert!(matches!(told.unevenness, Some(Unevenness::Humps { .. })));
        let even = weighed(
            &[26.5, 26.3, 26.9]
                .map(|at| [forward(at), reversed(at)])
                .concat(),
        );
        assert_eq!(even.unevenness, None);
    }

    #[test]
    fn a_photo_and_a_number_join_the_likelihood_and_are_no_places() {
        let sighted = PitchReading {
            sigma: Some(Angle::degrees(1.0)),
            ..PitchReading::new(Angle::degrees(26.0), Way::Sighted)
        };
        let photo = weighed(&[sighted]);
        assert_eq!((photo.positions, photo.footing), (0, Footing::PhotoAlone));
        let number = PitchReading::new(Pitch::rise_in_12(6.0).angle(), Way::Number);
        let both = weighed(&[sighted, number]);
        assert!(both.chances[0].1 > photo.chances[0].1);
        let with_phone = weighed(&[sighted, forward(26.6), reversed(26.4)]);
        assert_eq!((with_phone.looks, with_phone.positions), (2, 1));
        assert!(with_phone.sigma < photo.sigma);
    }

    #[test]
    fn the_odds_of_too_little_fall_when_the_steeper_is_taken() {
        let told = weighed(&[forward(35.1), reversed(35.1)]);
        assert!(told.more_than_likeliest > 0.1);
        assert!(told.more_than_steeper <= 1.0 - SURE + 1e-12);
        assert!(told.more_than_steeper < told.more_than_likeliest);
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
