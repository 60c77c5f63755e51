//! Slips that may have been made, and what their weights are computed from.

use super::fit::{LeaveOneOut, LeaveTwoOut};
use super::net::Adjusted;
use super::slips::{Candidate, SlipKind, SlipPriors, candidates, usual_marks};
use crate::survey::{Body, Span};

/// One slip that may have been made, or two at once, with the logarithm of its weight.
pub(super) struct Hypothesis {
    pub slips: Vec<Slip>,
    pub log_weight: f64,
}

/// A slip in one observation.
#[derive(Clone, Copy)]
pub(super) struct Slip {
    pub observation: usize,
    pub kind: SlipKind,
    /// What it would have been, feet.
    pub value: f64,
}

/// How rough the work may be: (factor of the given spreads, logarithm of its chance given nothing).
pub(super) struct Spread(Vec<(f64, f64)>);

impl Spread {
    /// A stated spread is taken at its word; the usual one may be rougher or finer. `roughness`: the
    /// factor that the given spreads hold already, which is no news here.
    pub(super) fn from_body(
        body: &Body,
        adjusted: &Adjusted,
        roughness: f64,
        priors: &SlipPriors,
    ) -> Spread {
        if body.readings.iter().any(|r| r.sigma.is_some()) {
            return Spread(vec![(1.0, 0.0)]);
        }
        let freedom = adjusted.degrees_of_freedom as f64;
        let weigh = |&(factor, chance): &(f64, f64)| {
            let factor = factor / roughness;
            (factor, chance.ln() - freedom * factor.ln())
        };
        Spread(priors.roughness.iter().map(weigh).collect())
    }

    /// Logarithm of the chance of a sum of squares, all roughnesses together.
    pub(super) fn evidence(&self, chi2: f64) -> f64 {
        self.sum(|factor| -0.5 * chi2 / (factor * factor))
    }

    /// The same with one reading off by anything, as a normal slip of this spread, feet.
    pub(super) fn evidence_of_any_slip(&self, alone: &LeaveOneOut, slip_sigma: f64) -> f64 {
        self.sum(|factor| {
            let square = factor * factor;
            let room = slip_sigma * slip_sigma / (alone.variance * square);
            let left = alone.off * alone.off / alone.variance / (1.0 + room);
            -0.5 * (alone.rest + left) / square - 0.5 * room.ln_1p()
        })
    }

    pub(super) fn sum(&self, log_likelihood: impl Fn(f64) -> f64) -> f64 {
        let logs: Vec<f64> = self
            .0
            .iter()
            .map(|(factor, log_chance)| log_chance + log_likelihood(*factor))
            .collect();
        let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        top + logs.iter().map(|l| (l - top).exp()).sum::<f64>().ln()
    }
}

/// Fits that leave something out.
pub(super) trait Others {
    /// One observation against all the others.
    fn without(&self, k: usize) -> Option<LeaveOneOut>;
    /// What every observation is off by when one is left out.
    fn rest_without(&self, k: usize) -> Option<Vec<Option<LeaveOneOut>>>;
    /// Two observations against all the others.
    fn without_both(&self, pair: [usize; 2]) -> Option<LeaveTwoOut>;
}

/// What each observation may have been before a slip.
pub(super) struct Candidates {
    /// What was booked, feet.
    pub booked: Vec<f64>,
    pub known: Vec<Vec<Candidate>>,
}

impl Candidates {
    pub(super) fn new(body: &Body, order: &[usize], priors: &SlipPriors) -> Candidates {
        let usual = usual_marks(&body.readings);
        let readings = order.iter().map(|&k| &body.readings[k]);
        Candidates {
            booked: readings.clone().map(|r| r.value.in_feet()).collect(),
            known: readings
                .map(|reading| {
                    let overhangs = neighboring_overhangs(body, reading.span);
                    candidates(reading, usual, overhangs, priors)
                })
                .collect(),
        }
    }
}

/// Multiplications to spend on fits without one reading: some tens of milliseconds.
pub(super) const SPEND: f64 = 2e8;

/// Multiplications of one fit, roughly.
pub(super) fn one_fit(adjusted: &Adjusted) -> f64 {
    let unknowns = 2.0 * adjusted.places.len() as f64;
    let rows = adjusted.observed.len() as f64;
    2.0 * unknowns.powi(3) + 5_000.0 * rows
}

/// Overhangs of the legs before and after, when a leg was taped at the eave.
fn neighboring_overhangs(body: &Body, span: Span) -> [Option<f64>; 2] {
    let Span::Leg(leg) = span else {
        return [None, None];
    };
    let legs = body.edges.len();
    if legs == 0 {
        return [None, None];
    }
    let overhang = |k: usize| body.edges[k % legs].overhang.map(|o| o.in_feet());
    [overhang(leg + legs - 1), overhang(leg + 1)]
}
