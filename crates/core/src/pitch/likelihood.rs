//! How likely the looks at one slope are at each slope it may have.
//!
//! A phone reads the slope plus its zero error; turned end for end it reads the slope less that
//! error, so the mean of the two is free of it and half their difference shows it. One place on a
//! roof is not the whole of it: boards sag, shingles curl, eaves kick out.

use crate::survey::{PitchReading, Way};
use crate::units::Angle;

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
/// One position on a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Look {
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
pub(super) fn looks(readings: &[PitchReading]) -> Vec<Look> {
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

pub(super) fn one_way(read: Angle, zero_error_sign: f64) -> Look {
    Look::OneWay {
        read,
        zero_error_sign,
    }
}

/// What is known of the zero error of the phone.
pub(super) struct ZeroError {
    /// Best guess, degrees.
    pub mean: f64,
    /// Spread of the guess, degrees.
    pub sigma: f64,
    /// Whether a flip showed it.
    pub shown: bool,
}

impl ZeroError {
    /// Before any flip it is spread about nothing; each flip shows it with the spread of a mean
    /// of two readings.
    pub fn shown_by(looks: &[Look]) -> ZeroError {
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
pub(super) struct SlopeGrid {
    /// Slopes, degrees, rising.
    pub at: Vec<f64>,
    /// Likelihood at each, the greatest 1.
    pub likelihood: Vec<f64>,
}

/// Between slopes of the grid, degrees: a third of the narrowest spread, and sums over normal
/// curves are exact to many digits from half of it down.
const STEP: f64 = 0.1;
/// How far past the readings it goes, degrees.
const MARGIN: f64 = 9.0;
/// Zero errors over which one-way readings are integrated, by half a standard deviation.
const ZERO_ERRORS: i32 = 8;

impl SlopeGrid {
    pub fn around(looks: &[Look], zero: &ZeroError) -> SlopeGrid {
        let read = looks.iter().map(|look| match look {
            Look::BothWays { slope, .. } => slope.in_degrees(),
            Look::OneWay { read, .. } | Look::LevelAndTape { read } => read.in_degrees(),
        });
        let (low, high) = read.fold((90.0_f64, 0.0_f64), |(low, high), read| {
            (low.min(read), high.max(read))
        });
        // However the phone lay, a trade pitch stands within the grid.
        let low = (low - MARGIN).clamp(0.0, 75.0);
        let high = (high + MARGIN).clamp(5.0, 90.0);
        let at = grid(low, high);
        let mut logs = LogCurve::of(looks, Kind::NoZeroError, low, high).logs;
        add_one_way(&mut logs, &at, looks, zero);
        let best = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let likelihood = logs.iter().map(|log| (log - best).exp()).collect();
        SlopeGrid { at, likelihood }
    }

    /// Places of the grid between two slopes.
    pub fn between(&self, low: f64, high: f64) -> std::ops::Range<usize> {
        let from = self.at.partition_point(|at| *at < low);
        from..self.at.partition_point(|at| *at <= high).max(from)
    }
}

fn grid(low: f64, high: f64) -> Vec<f64> {
    let mut at = Vec::new();
    let mut slope = low;
    while slope <= high {
        at.push(slope);
        slope += STEP;
    }
    at
}

/// Adds the one-way readings to `logs`, integrated over the zero error that they share.
///
/// A forward reading says something of slope plus zero error, a reversed one of slope less it, so
/// each kind is summed once over its own curve, however many readings there are.
fn add_one_way(logs: &mut [f64], at: &[f64], looks: &[Look], zero: &ZeroError) {
    let is_one_way = |look: &Look| matches!(look, Look::OneWay { .. });
    let (Some(low), Some(high)) = (at.first(), at.last()) else {
        return;
    };
    if !looks.iter().any(is_one_way) {
        return;
    }
    let reach = zero.mean.abs() + f64::from(ZERO_ERRORS) / 2.0 * zero.sigma;
    let forward = LogCurve::of(looks, Kind::Forward, low - reach, high + reach);
    let reversed = LogCurve::of(looks, Kind::Reversed, low - reach, high + reach);
    let mut each = Vec::new();
    for (log, slope) in logs.iter_mut().zip(at) {
        each.clear();
        each.extend((-ZERO_ERRORS..=ZERO_ERRORS).map(|half| {
            let off = f64::from(half) / 2.0;
            let zero_error = zero.mean + off * zero.sigma;
            -0.5 * off * off + forward.at(slope + zero_error) + reversed.at(slope - zero_error)
        }));
        // Many readings make likelihoods too small for a number unless the best is taken out.
        let best = each.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = each.iter().map(|log| (log - best).exp()).sum();
        *log += best + sum.ln();
    }
}

/// What a look says of.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    /// The slope itself.
    NoZeroError,
    /// The slope plus the zero error.
    Forward,
    /// The slope less the zero error.
    Reversed,
}

/// Log likelihood of all looks of one kind along a grid.
struct LogCurve {
    low: f64,
    logs: Vec<f64>,
}

impl LogCurve {
    fn of(looks: &[Look], kind: Kind, low: f64, high: f64) -> LogCurve {
        let read: Vec<(f64, f64)> = looks
            .iter()
            .map(read_as)
            .filter(|(found, ..)| *found == kind)
            .map(|(_, read, sigma)| (read, sigma))
            .collect();
        let logs = grid(low, high)
            .iter()
            .map(|at| {
                read.iter()
                    .map(|(read, sigma)| place(read - at, *sigma).ln())
                    .sum()
            })
            .collect();
        LogCurve { low, logs }
    }

    /// Between two places of the grid, along a line.
    fn at(&self, slope: f64) -> f64 {
        let steps = ((slope - self.low) / STEP).max(0.0);
        let below = (steps as usize).min(self.logs.len().saturating_sub(1));
        let above = (below + 1).min(self.logs.len().saturating_sub(1));
        let share = (steps - below as f64).min(1.0);
        self.logs[below] + share * (self.logs[above] - self.logs[below])
    }
}

/// What a look says of, what it reads and with what spread, degrees.
fn read_as(look: &Look) -> (Kind, f64, f64) {
    match look {
        Look::BothWays { slope, .. } => (
            Kind::NoZeroError,
            slope.in_degrees(),
            (READING_SIGMA.powi(2) / 2.0 + PLACE_SIGMA.powi(2)).sqrt(),
        ),
        Look::LevelAndTape { read } => (
            Kind::NoZeroError,
            read.in_degrees(),
            LEVEL_AND_TAPE_SIGMA.hypot(PLACE_SIGMA),
        ),
        Look::OneWay {
            read,
            zero_error_sign,
        } => (
            if *zero_error_sign > 0.0 {
                Kind::Forward
            } else {
                Kind::Reversed
            },
            read.in_degrees(),
            READING_SIGMA.hypot(PLACE_SIGMA),
        ),
    }
}

/// Likelihood of one place `off` degrees from the slope of its face.
fn place(off: f64, sigma: f64) -> f64 {
    (1.0 - ODD_PLACES) * normal(off, sigma) + ODD_PLACES * normal(off, ODD_PLACE_SIGMA)
}

pub(super) fn normal(off: f64, sigma: f64) -> f64 {
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

    #[test]
    fn a_reversed_reading_with_no_forward_one_before_it_is_a_look_of_its_own() {
        let looks = looks(&[reversed(20.0), forward(21.0), forward(22.0), reversed(23.0)]);
        assert_eq!(looks.len(), 3);
        assert_eq!(looks[0], one_way(Angle::degrees(20.0), -1.0));
        assert_eq!(looks[1], one_way(Angle::degrees(21.0), 1.0));
    }
}
