//! How the two sums of an outline come out: along its first leg and square to it.

use super::nominal::Nominal;
use super::words::{ClosureWords, GapHint, LastLeg, Miss, Sense, Unseen};
use crate::survey::{Reading, Span};
use crate::units::Length;

/// When a sum closes: within the larger of a floor and a part of the perimeter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Never less than this.
    pub floor: Length,
    /// Part of the perimeter.
    pub share_of_perimeter: f64,
    /// Length of the tape: a gap of just that is a full tape forgotten.
    pub tape_length: Length,
}

impl Default for Tolerance {
    fn default() -> Tolerance {
        Tolerance {
            floor: Length::feet(4.0 / 12.0),
            share_of_perimeter: 0.005,
            tape_length: Length::feet(100.0),
        }
    }
}

impl Tolerance {
    /// Returns the largest misclosure that closes, feet. `read`: length of each leg, feet.
    pub(super) fn for_legs(&self, read: &[Option<f64>]) -> f64 {
        let perimeter: f64 = read.iter().flatten().sum();
        self.floor
            .in_feet()
            .max(self.share_of_perimeter * perimeter)
    }
}

/// How the two sums of an outline come out.
#[derive(Clone, Debug, PartialEq)]
pub struct Closure {
    /// Misclosure along leg 0. `None` if a leg in that direction is not read.
    pub along: Option<Length>,
    /// Misclosure square to leg 0, left positive. `None` as for `along`.
    pub across: Option<Length>,
    /// What to call it.
    pub state: ClosureState,
    /// The same as a sentence; its `Display` is English.
    pub words: ClosureWords,
    /// What a gap of this size often comes from.
    pub hints: Vec<GapHint>,
    /// What closing cannot see; empty unless it closes.
    pub cannot_see: Vec<Unseen>,
}

/// What to call a closure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClosureState {
    /// Corners are still to come.
    Open,
    /// Both sums within tolerance.
    Closes,
    /// The turns close, the legs do not.
    Gap,
    /// A leg was worked out from the others: that is no check.
    NotChecked,
}

/// The two sums of a walk: (along, across), each none where a leg in that direction is not read.
pub(crate) fn sums(read: &[Option<f64>], shape: &Nominal) -> [Option<f64>; 2] {
    [0, 1].map(|axis| {
        read.iter()
            .zip(&shape.units)
            .try_fold(0.0, |sum, (length, unit)| match length {
                Some(length) => Some(sum + length * unit[axis]),
                None if unit[axis].abs() < 1e-6 => Some(sum),
                None => None,
            })
    })
}

/// The closure of an outline whose turns go once around. `read`: mean reading of each leg, feet.
pub(crate) fn close(read: &[Option<f64>], shape: &Nominal, tolerance: &Tolerance) -> Closure {
    close_walk(read, shape, tolerance, LastLeg::Known)
}

/// [`close`], where it may not be sure that the last leg is the last.
pub(crate) fn close_walk(
    read: &[Option<f64>],
    shape: &Nominal,
    tolerance: &Tolerance,
    last_leg: LastLeg,
) -> Closure {
    let [along, across] = sums(read, shape);
    let widest = tolerance.for_legs(read);
    // In words, across runs from the front into the depth of the house, whichever way it is walked.
    let toward = shape.way_round.sign();
    let misses = [
        along.and_then(|sum| miss(sum, widest)),
        across.and_then(|sum| miss(sum * toward, widest)),
    ];
    let worked_out = read.iter().filter(|length| length.is_none()).count();
    let closes = misses.iter().all(Option::is_none);
    let (state, words) = if worked_out > 0 {
        let words = ClosureWords::NotChecked {
            worked_out,
            along: misses[0],
            across: misses[1],
        };
        (ClosureState::NotChecked, words)
    } else if closes {
        let gap = along.unwrap_or_default().hypot(across.unwrap_or_default());
        let words = ClosureWords::Closes {
            within_inches: (gap * 12.0 - 1e-6).ceil().max(1.0) as u32,
        };
        (ClosureState::Closes, words)
    } else {
        let words = ClosureWords::Gap {
            along: misses[0],
            across: misses[1],
            last_leg,
        };
        (ClosureState::Gap, words)
    };
    let hints = [along, across]
        .into_iter()
        .enumerate()
        .filter_map(|(axis, sum)| Some((axis, sum.filter(|s| s.abs() > widest)?)))
        .flat_map(|(axis, sum)| hints(axis, sum, read, shape, tolerance))
        .collect();
    Closure {
        along: along.map(Length::feet),
        across: across.map(Length::feet),
        state,
        words,
        hints,
        cannot_see: match state {
            ClosureState::Closes => Unseen::all(pairs(read, shape)),
            ClosureState::Open | ClosureState::Gap | ClosureState::NotChecked => Vec::new(),
        },
    }
}

impl Closure {
    /// A leg read more than once, or spanned by a tie or an overall, is not checked by closing alone.
    pub(crate) fn leave_out_checked_pairs(&mut self, readings: &[Reading]) {
        let read_once = |leg: usize| {
            let of_leg = |reading: &&Reading| match reading.span {
                Span::Leg(k) | Span::WallOfLeg { leg: k, .. } => k == leg,
                Span::Tie(..) | Span::Overall { .. } => false,
            };
            readings.iter().filter(of_leg).count() < 2
        };
        for unseen in &mut self.cannot_see {
            if let Unseen::PairedSlip { pairs } = unseen {
                pairs.retain(|pair| pair.iter().all(|leg| read_once(*leg)));
            }
        }
    }
}

/// Legs that run against each other, each with the one nearest to it in length: the same slip on both
/// adds nothing to either sum. Longest first.
fn pairs(read: &[Option<f64>], shape: &Nominal) -> Vec<[usize; 2]> {
    let lengths: Vec<(usize, f64)> = read
        .iter()
        .enumerate()
        .filter_map(|(leg, length)| Some((leg, (*length)?)))
        .collect();
    let against = |a: usize, b: usize| {
        let (u, v) = (shape.units[a], shape.units[b]);
        u[0] * v[0] + u[1] * v[1] < -0.999
    };
    let nearest = |leg: usize, length: f64| {
        let others = lengths.iter().filter(|(other, _)| against(leg, *other));
        let apart = |other: &(usize, f64)| (other.1 - length).abs();
        others
            .min_by(|a, b| apart(a).total_cmp(&apart(b)))
            .map(|(other, _)| *other)
    };
    let mut pairs: Vec<([usize; 2], f64)> = Vec::new();
    for (leg, length) in &lengths {
        if let Some(other) = nearest(*leg, *length) {
            let pair = [(*leg).min(other), (*leg).max(other)];
            if !pairs.iter().any(|(there, _)| *there == pair) {
                pairs.push((pair, *length));
            }
        }
    }
    pairs.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    pairs.into_iter().map(|(pair, _)| pair).collect()
}

fn miss(sum: f64, widest: f64) -> Option<Miss> {
    (sum.abs() > widest).then(|| Miss {
        by: Length::feet(sum.abs()),
        sense: if sum < 0.0 { Sense::Short } else { Sense::Long },
    })
}

/// What a gap along one axis often comes from. Arithmetic, never a correction.
fn hints(
    axis: usize,
    sum: f64,
    read: &[Option<f64>],
    shape: &Nominal,
    tolerance: &Tolerance,
) -> Vec<GapHint> {
    let gap = sum.abs();
    let widest = tolerance.for_legs(read);
    let near = |value: f64| (gap - value).abs() <= widest;
    let running: Vec<(usize, f64, f64)> = read
        .iter()
        .enumerate()
        .filter_map(|(leg, length)| Some((leg, (*length)?, shape.units[leg][axis])))
        .filter(|(_, _, part)| part.abs() > 0.7)
        .collect();
    let legs_where = |holds: &dyn Fn(f64, f64) -> bool| -> Vec<usize> {
        running
            .iter()
            .filter(|(_, length, part)| holds(*length, *part))
            .map(|(leg, _, _)| *leg)
            .collect()
    };
    let mut hints = Vec::new();
    let mut hint = |legs: Vec<usize>, of: fn(Vec<usize>) -> GapHint| {
        if !legs.is_empty() {
            hints.push(of(legs));
        }
    };
    hint(
        legs_where(&|length, part| {
            tens_and_units_turned(length)
                .is_some_and(|turned| (sum + (turned - length) * part).abs() <= widest)
        }),
        |legs| GapHint::SwappedDigits { legs },
    );
    hint(legs_where(&|length, _| near(length)), |legs| {
        GapHint::LegMissing { as_long_as: legs }
    });
    hint(
        legs_where(&|length, part| near(2.0 * length) && part * sum > 0.0),
        |legs| GapHint::TurnedWrongWay { legs },
    );
    if near(10.0) {
        hints.push(GapHint::DroppedTen);
    }
    if near(tolerance.tape_length.in_feet()) {
        hints.push(GapHint::FullTape {
            length: tolerance.tape_length,
        });
    }
    hints.push(GapHint::ReadOneAgain {
        legs: legs_where(&|_, _| true),
    });
    hints
}

/// The length with the tens and units of its whole feet turned; none where that changes nothing.
fn tens_and_units_turned(length: f64) -> Option<f64> {
    let whole = length.floor();
    let (tens, units) = ((whole / 10.0).floor() % 10.0, whole % 10.0);
    (whole >= 10.0 && (tens - units).abs() > 0.5).then_some(length + 9.0 * (units - tens))
}
