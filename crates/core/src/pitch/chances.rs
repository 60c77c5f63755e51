//! How likely each trade pitch is after the looks at one slope.
//!
//! A phone reads the slope plus its zero error; turned end for end it reads the slope less that
//! error, so the mean of the two is free of it and half their difference shows it. One place on a
//! roof is not the whole of it: boards sag, shingles curl, eaves kick out. A roof is framed to a
//! trade pitch and comes out near it.

use super::trade::trade_pitches;
use crate::survey::{PitchReading, Way};
use crate::units::{Angle, Pitch};

/// Spread of one phone reading about slope and zero error, degrees (judged; a phone held still
/// against a robot arm stays within 0.3: Mourcou et al., Sensors 15(9):23168, 2015).
const READING_SIGMA: f64 = 0.35;
/// Spread of one place about the slope of the face, degrees (judged).
const PLACE_SIGMA: f64 = 0.15;
/// Spread of a level and tape over a foot of run read to an eighth of an inch, degrees (judged).
const LEVEL_AND_TAPE_SIGMA: f64 = 0.5;
/// Spread of the zero error over phones, degrees (judged).
const ZERO_ERROR_SIGMA: f64 = 0.7;
/// Share of places that are no fair sample of the face, and their spread, degrees (judged).
const ODD_PLACES: f64 = 0.15;
const ODD_PLACE_SIGMA: f64 = 2.5;
/// Spread of a face as built about the pitch it was framed to, degrees (judged).
const AS_BUILT_SIGMA: f64 = 0.35;
/// How sure one must be before the steeper of two pitches can be left out.
const SURE: f64 = 0.90;

/// One position on a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Look {
    /// A phone, forward and reversed: the mean, and the zero error that half the difference shows.
    BothWays {
        /// Mean of the two.
        slope: Angle,
        /// Half of forward less reversed.
        zero_error: Angle,
    },
    /// A phone one way only; `zero_error_sign` is +1 forward, -1 reversed.
    OneWay {
        /// As read.
        read: Angle,
        /// How the zero error enters.
        zero_error_sign: f64,
    },
    /// A level and a tape.
    LevelAndTape {
        /// As read.
        read: Angle,
    },
}

/// The looks in a row of readings: a forward one and the next reversed one are one position.
fn looks(readings: &[PitchReading]) -> Vec<Look> {
    let mut looks = Vec::new();
    let mut rest = readings;
    while let [first, after @ ..] = rest {
        rest = after;
        match first.way {
            Way::LevelAndTape => looks.push(Look::LevelAndTape { read: first.angle }),
            Way::Reversed => looks.push(one_way(first.angle, -1.0)),
            Way::Forward => match after {
                [second, after @ ..] if second.way == Way::Reversed => {
                    rest = after;
                    let (forward, reversed) = (first.angle.in_degrees(), second.angle.in_degrees());
                    looks.push(Look::BothWays {
                        slope: Angle::degrees((forward + reversed) / 2.0),
                        zero_error: Angle::degrees((forward - reversed) / 2.0),
                    });
                }
                _ => looks.push(one_way(first.angle, 1.0)),
            },
        }
    }
    looks
}

fn one_way(read: Angle, zero_error_sign: f64) -> Look {
    Look::OneWay {
        read,
        zero_error_sign,
    }
}

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
        for ((at, likelihood), total) in slopes.at.iter().zip(&slopes.likelihood).zip(&mut by_slope)
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

/// What is known of the zero error of the phone.
struct ZeroError {
    mean: f64,
    sigma: f64,
    shown: bool,
}

impl ZeroError {
    /// Before any flip it is spread about nothing; each flip shows it with the spread of a mean
    /// of two readings.
    fn shown_by(looks: &[Look]) -> ZeroError {
        let mut weight = ZERO_ERROR_SIGMA.powi(-2);
        let mut sum = 0.0;
        let mut shown = false;
        for look in looks {
            if let Look::BothWays { zero_error, .. } = look {
                let each = 2.0 / READING_SIGMA.powi(2);
                weight += each;
                sum += each * zero_error.in_degrees();
                shown = true;
            }
        }
        ZeroError {
            mean: sum / weight,
            sigma: weight.sqrt().recip(),
            shown,
        }
    }
}

/// Likelihood of the looks at slopes close together.
struct SlopeGrid {
    at: Vec<f64>,
    likelihood: Vec<f64>,
}

/// Between slopes of the grid, and how far past the readings it goes, degrees.
const STEP: f64 = 0.05;
const MARGIN: f64 = 9.0;
/// Zero errors over which one-way readings are integrated, by half a standard deviation.
const ZERO_ERRORS: i32 = 8;

impl SlopeGrid {
    fn around(looks: &[Look], zero: &ZeroError) -> SlopeGrid {
        let read = looks.iter().map(|look| match look {
            Look::BothWays { slope, .. } => slope.in_degrees(),
            Look::OneWay { read, .. } | Look::LevelAndTape { read } => read.in_degrees(),
        });
        let (low, high) = read.fold((90.0_f64, 0.0_f64), |(low, high), read| {
            (low.min(read), high.max(read))
        });
        let (low, high) = ((low - MARGIN).max(0.0), (high + MARGIN).min(90.0));
        let mut at = Vec::new();
        let mut slope = low;
        while slope <= high {
            at.push(slope);
            slope += STEP;
        }
        let logs: Vec<f64> = at
            .iter()
            .map(|slope| log_likelihood(looks, zero, *slope))
            .collect();
        let best = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let likelihood = logs.iter().map(|log| (log - best).exp()).collect();
        SlopeGrid { at, likelihood }
    }
}

fn log_likelihood(looks: &[Look], zero: &ZeroError, slope: f64) -> f64 {
    let mut log = 0.0;
    let mut one_way = Vec::new();
    for look in looks {
        match look {
            Look::BothWays { slope: read, .. } => {
                let sigma = (READING_SIGMA.powi(2) / 2.0 + PLACE_SIGMA.powi(2)).sqrt();
                log += place(read.in_degrees() - slope, sigma).ln();
            }
            Look::LevelAndTape { read } => {
                let sigma = LEVEL_AND_TAPE_SIGMA.hypot(PLACE_SIGMA);
                log += place(read.in_degrees() - slope, sigma).ln();
            }
            Look::OneWay {
                read,
                zero_error_sign,
            } => one_way.push((read.in_degrees(), *zero_error_sign)),
        }
    }
    if !one_way.is_empty() {
        let sigma = READING_SIGMA.hypot(PLACE_SIGMA);
        let over_zero_errors: f64 = (-ZERO_ERRORS..=ZERO_ERRORS)
            .map(|half| {
                let off = f64::from(half) / 2.0;
                let zero_error = zero.mean + off * zero.sigma;
                let together: f64 = one_way
                    .iter()
                    .map(|(read, sign)| place(read - sign * zero_error - slope, sigma))
                    .product();
                normal(off, 1.0) * together
            })
            .sum();
        log += over_zero_errors.ln();
    }
    log
}

/// Likelihood of one place `off` degrees from the slope of its face.
fn place(off: f64, sigma: f64) -> f64 {
    (1.0 - ODD_PLACES) * normal(off, sigma) + ODD_PLACES * normal(off, ODD_PLACE_SIGMA)
}

fn normal(off: f64, sigma: f64) -> f64 {
    (-0.5 * (off / sigma).powi(2)).exp() / sigma
}

#[cfg(test)]
mod tests {
    use super::*;

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
    fn a_reversed_reading_with_no_forward_one_before_it_is_a_look_of_its_own() {
        let looks = looks(&[reversed(20.0), forward(21.0), forward(22.0), reversed(23.0)]);
        assert_eq!(looks.len(), 3);
        assert_eq!(looks[0], one_way(Angle::degrees(20.0), -1.0));
        assert_eq!(looks[1], one_way(Angle::degrees(21.0), 1.0));
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
}
