//! How rough the work of a crew is, learned from what it read twice.

use super::observe::{default_sigma, span_key, span_length};
use crate::survey::{Body, Reading, Span};
use crate::units::Length;
use std::collections::BTreeMap;

/// Spread of what is thought of a crew before it has read anything twice: the logarithm of its
/// roughness is normal about 0. An assumption; ten repeats weigh about as much.
const BEFORE: f64 = 0.25;
/// Roughnesses that are weighed, as logarithms: every tenth of `BEFORE` out to four times it.
const STEPS: i32 = 40;
/// One of two readings holds a slip this often, and then says nothing of the roughness.
const SLIPPED: f64 = 0.06;
/// One standard deviation of what a slip adds, as a multiple of the usual spread.
const SLIP_SIGMA: f64 = 20.0;
/// Misses are told apart up to this, in usual spreads.
const FARTHEST: f64 = 100.0;

/// The factor by which the usual spread of readings is to be taken, from the differences between
/// repeats of one thing that state no spread of their own; 1 where there is none.
///
/// A root mean square over what the repeats leave of the prior, over that of the prior alone. Two
/// readings that lie feet apart are a slip, not rough work, and count for nothing.
pub(super) fn roughness(body: &Body) -> f64 {
    let misses = misses(body);
    if misses.is_empty() {
        return 1.0;
    }
    let mut sums = [0.0_f64; 4];
    let logs: Vec<(f64, f64, f64)> = (-STEPS..=STEPS)
        .map(|step| {
            let log = f64::from(step) * BEFORE / 10.0;
            let prior = -0.5 * (log / BEFORE).powi(2);
            let factor = log.exp();
            let says: f64 = misses
                .iter()
                .map(|(miss, weight)| weight * log_chance(*miss, factor))
                .sum();
            (factor * factor, prior, prior + says)
        })
        .collect();
    let top = logs
        .iter()
        .map(|(_, _, posterior)| *posterior)
        .fold(f64::NEG_INFINITY, f64::max);
    for (square, prior, posterior) in logs {
        let (before, after) = (prior.exp(), (posterior - top).exp());
        sums[0] += before;
        sums[1] += before * square;
        sums[2] += after;
        sums[3] += after * square;
    }
    (sums[3] / sums[2] * sums[0] / sums[1]).sqrt()
}

/// Logarithm of the chance of a miss in usual spreads, whether or not it holds a slip.
fn log_chance(miss: f64, factor: f64) -> f64 {
    // Further off than this all are alike, and nothing comes to a chance of exactly none.
    let miss = miss.clamp(-FARTHEST, FARTHEST);
    let bell = |sigma: f64| (-0.5 * (miss / sigma).powi(2)).exp() / sigma;
    ((1.0 - SLIPPED) * bell(factor) + SLIPPED * bell(SLIP_SIGMA)).ln()
}

/// What each repeat misses the middle of its like by, in usual spreads, and what it counts: k repeats
/// of one thing count as k - 1.
fn misses(body: &Body) -> Vec<(f64, f64)> {
    let mut alike: BTreeMap<(u8, usize, usize, usize), Vec<f64>> = BTreeMap::new();
    for reading in body.readings.iter().filter(|r| r.sigma.is_none()) {
        alike
            .entry(same_thing(reading))
            .or_default()
            .push(span_length(reading));
    }
    let mut misses = Vec::new();
    for mut lengths in alike.into_values().filter(|lengths| lengths.len() > 1) {
        lengths.sort_by(f64::total_cmp);
        let count = lengths.len();
        let middle = 0.5 * (lengths[(count - 1) / 2] + lengths[count / 2]);
        let weight = (count - 1) as f64 / count as f64;
        let usual = default_sigma(Length::feet(middle)).in_feet() * weight.sqrt();
        misses.extend(
            lengths
                .iter()
                .map(|length| ((length - middle) / usual, weight)),
        );
    }
    misses
}

/// What a reading is a repeat of. A wall with its overhangs is as rough as what was said of them.
fn same_thing(reading: &Reading) -> (u8, usize, usize, usize) {
    match reading.span {
        Span::Tie(from, to) => span_key(Span::Tie(from.min(to), from.max(to))),
        Span::Overall {
            from,
            to,
            along_leg,
        } => span_key(Span::Overall {
            from: from.min(to),
            to: from.max(to),
            along_leg,
        }),
        Span::Leg(_) | Span::WallOfLeg { .. } => span_key(reading.span),
    }
}

#[cfg(test)]
mod tests {
    use super::roughness;
    use crate::survey::{Body, Point, Reading, Sketch, Span};
    use crate::units::{Angle, Length};

    fn crew(pairs: &[[f64; 2]], sigma: Option<f64>) -> f64 {
        let turns = vec![Angle::degrees(90.0); 4];
        let reading = |(k, feet): (usize, &f64)| Reading {
            id: format!("t{k}"),
            span: Span::Leg(k / 2),
            value: Length::feet(*feet),
            text: None,
            sigma: sigma.map(Length::feet),
        };
        roughness(&Body {
            id: "main".to_owned(),
            eave_height: Length::feet(9.0),
            outline: Sketch::Turned {
                start: Point { x: 0.0, y: 0.0 },
                heading: Angle::degrees(0.0),
                turns,
                turn_sigma: Angle::degrees(0.21),
            },
            readings: pairs.iter().flatten().enumerate().map(reading).collect(),
            edges: Vec::new(),
            placed_from: None,
        })
    }

    #[test]
    fn a_crew_that_read_nothing_twice_is_as_rough_as_any() {
        assert!((crew(&[], None) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn two_repeats_do_not_decide_and_twenty_do() {
        let two = crew(&[[40.0, 40.0], [30.0, 30.0]], None);
        assert!((0.8..0.97).contains(&two), "{two}");
        let twenty = crew(&[[40.0, 40.05]; 20], None);
        assert!(twenty < 0.6, "{twenty}");
        let rough = crew(&[[40.0, 40.45]; 20], None);
        assert!(rough > 1.3, "{rough}");
    }

    #[test]
    fn repeats_ten_feet_apart_are_a_slip_and_no_rough_work() {
        let slipped = crew(&[[40.0, 50.0]], None);
        assert!((slipped - 1.0).abs() < 0.05, "{slipped}");
        let far = crew(&[[4.0, 9000.0]], None);
        assert!((far - 1.0).abs() < 0.05, "{far}");
    }

    #[test]
    fn a_stated_spread_teaches_nothing() {
        assert!((crew(&[[40.0, 40.7]; 9], Some(0.1)) - 1.0).abs() < 1e-12);
    }
}
