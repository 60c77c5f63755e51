//! Two slips at once: weighed only where one alone does not account for what is off.

use super::fit::LeaveTwoOut;
use super::hypothesis::{Candidates, Hypothesis, Others, SPEND, Slip, Spread, one_fit};
use super::net::Adjusted;
use super::slips::{Candidate, SlipKind, SlipPriors};
use nalgebra::{Matrix2, Vector2};

/// With the likeliest slip left out, a reading off by this many standard deviations squared still
/// stands out: two slips are a hundred times rarer than one, and rough work explains a factor of 1.8.
const STILL_OFF: f64 = 14.0;
/// Readings tried as the first and as the second of two.
const FIRST: usize = 6;
const SECOND: usize = 6;
/// A kind of slip less fitting than the best by this much in the logarithm is not told.
const HOPELESS: f64 = 25.0;

/// Every pair of slips worth weighing; none where one accounts for all. `likely`: observations by the
/// chance that they alone hold a slip.
pub(super) fn two_slips(
    candidates: &Candidates,
    likely: &[usize],
    adjusted: &Adjusted,
    others: &dyn Others,
    spread: &Spread,
    priors: &SlipPriors,
) -> Vec<Hypothesis> {
    let fits = (FIRST + FIRST * SECOND) as f64;
    if fits * one_fit(adjusted) > SPEND {
        return Vec::new();
    }
    let mut pairs: Vec<[usize; 2]> = Vec::new();
    for (place, &first) in likely.iter().take(FIRST).enumerate() {
        let mut off = stands_out(first, adjusted, others);
        if place == 0 && off.first().is_none_or(|(_, square)| *square < STILL_OFF) {
            return Vec::new();
        }
        off.truncate(SECOND);
        for (second, _) in off {
            let pair = [first.min(second), first.max(second)];
            if !pairs.contains(&pair) {
                pairs.push(pair);
            }
        }
    }
    pairs.sort_unstable();
    let mut hypotheses: Vec<Hypothesis> = pairs
        .into_iter()
        .filter_map(|pair| Some((pair, others.without_both(pair)?)))
        .flat_map(|(pair, alone)| of_pair(candidates, pair, &alone, spread, priors))
        .collect();
    let best = hypotheses
        .iter()
        .fold(f64::NEG_INFINITY, |best, h| best.max(h.log_weight));
    hypotheses.retain(|h| h.log_weight > best - HOPELESS);
    hypotheses
}

/// What still stands out without one observation: others by how far they are off, in standard
/// deviations squared, the farthest first. The other of a pair that only closing checks is checked by
/// nothing once the first is out.
fn stands_out(first: usize, adjusted: &Adjusted, others: &dyn Others) -> Vec<(usize, f64)> {
    let Some(alone) = others.rest_without(first) else {
        return Vec::new();
    };
    let mut off: Vec<(usize, f64)> = alone
        .into_iter()
        .enumerate()
        .filter(|(k, _)| *k != first && adjusted.observed[*k].redundancy > 0.02)
        .filter_map(|(k, alone)| alone.map(|a| (k, a.off * a.off / a.variance)))
        .collect();
    off.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    off
}

/// A slip in one of two readings: a known kind, or none of them.
#[derive(Clone, Copy)]
struct Kind {
    kind: SlipKind,
    /// What it would have been; none for a slip of no known kind.
    value: Option<f64>,
    log_share: f64,
}

fn kinds(known: &[Candidate], priors: &SlipPriors) -> Vec<Kind> {
    let of_known = known.iter().map(|candidate| Kind {
        kind: candidate.kind,
        value: Some(candidate.value),
        log_share: (priors.share(candidate.kind) * candidate.part).ln(),
    });
    let other = Kind {
        kind: SlipKind::Other,
        value: None,
        log_share: priors.other.ln(),
    };
    of_known.chain([other]).collect()
}

fn of_pair(
    candidates: &Candidates,
    pair: [usize; 2],
    alone: &LeaveTwoOut,
    spread: &Spread,
    priors: &SlipPriors,
) -> Vec<Hypothesis> {
    let count = candidates.booked.len() as f64;
    let two = 2.0 * priors.per_reading.ln() + (count - 2.0) * (1.0 - priors.per_reading).ln();
    let booked = pair.map(|k| candidates.booked[k]);
    let mut hypotheses = Vec::new();
    for one in kinds(&candidates.known[pair[0]], priors) {
        for other in kinds(&candidates.known[pair[1]], priors) {
            let both = [one, other];
            let Some((fits, values)) = fit_of(both, booked, alone, spread, priors) else {
                continue;
            };
            let slip = |k: usize| Slip {
                observation: pair[k],
                kind: both[k].kind,
                value: values[k],
            };
            hypotheses.push(Hypothesis {
                slips: vec![slip(0), slip(1)],
                log_weight: two + one.log_share + other.log_share + fits,
            });
        }
    }
    hypotheses
}

/// Logarithm of how well two slips fit, and what the two readings would have been. As for one slip: a
/// known kind takes a known part off, an unknown one is a normal one, integrated out.
fn fit_of(
    both: [Kind; 2],
    booked: [f64; 2],
    alone: &LeaveTwoOut,
    spread: &Spread,
    priors: &SlipPriors,
) -> Option<(f64, [f64; 2])> {
    let known = |k: usize| both[k].value.map_or(0.0, |value| booked[k] - value);
    let left = alone.off - Vector2::new(known(0), known(1));
    let room = |k: usize| match both[k].value {
        Some(_) => 0.0,
        None => priors.other_sigma.in_feet() * priors.other_sigma.in_feet(),
    };
    let room = Vector2::new(room(0), room(1));
    let fits = spread.sum(|factor| {
        let square = factor * factor;
        let bare = alone.covariance * square;
        let wide = bare + Matrix2::from_diagonal(&room);
        let Some(inverse) = wide.try_inverse() else {
            return f64::NEG_INFINITY;
        };
        let explained = (left.transpose() * inverse * left)[(0, 0)];
        -0.5 * (alone.rest / square + explained)
            - 0.5 * (wide.determinant() / bare.determinant()).ln()
    });
    // An unknown slip is what the others leave of it, the other slip taken off.
    let c = alone.covariance;
    let value = |k: usize| match both[k].value {
        Some(value) => value,
        None => {
            let other = 1 - k;
            let follows = match both[other].value {
                Some(_) => c[(k, other)] / c[(other, other)] * left[other],
                None => 0.0,
            };
            booked[k] - (alone.off[k] - follows)
        }
    };
    let values = [value(0), value(1)];
    (fits.is_finite() && values.iter().all(|v| *v > 0.0)).then_some((fits, values))
}
