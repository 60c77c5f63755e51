//! Which readings the others speak against, and what they would have been.

use super::SlipKind;
use super::net::Adjusted;
use super::slips::{Candidate, SlipPriors, candidates, usual_marks};
use crate::survey::{Body, Span};

/// What the readings speak against, all kinds of slip together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Suspects {
    /// Chance that nothing is wrong.
    pub nothing_wrong: f64,
    /// Fewest readings whose chance reaches 90 % of the rest, likeliest first; empty when the
    /// chance that nothing is wrong is one half or more.
    pub named: Vec<Suspect>,
}

impl Suspects {
    /// No reading speaks against another.
    #[must_use]
    pub fn nothing_speaks() -> Suspects {
        Suspects {
            nothing_wrong: 1.0,
            named: Vec::new(),
        }
    }
}

/// A reading that the others speak against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// Index of the reading in the survey.
    pub reading: usize,
    /// Likeliest kind of slip.
    pub kind: SlipKind,
    /// What it would have been, if this was the slip; feet.
    pub likely_value: f64,
    /// Chance of this reading, all kinds together.
    pub probability: f64,
}

/// Test values of two readings that go together this closely cannot tell them apart.
const ALIKE: f64 = 0.99;

/// One slip that may have been made, with the logarithm of its weight.
struct Hypothesis {
    observation: usize,
    kind: SlipKind,
    value: f64,
    log_weight: f64,
}

/// Weighs "nothing is wrong" against every kind of slip in every single reading.
///
/// No refit: had observation i been smaller by d, the sum of squares would be
/// `chi2 - 2 d v / s^2 + d^2 r / s^2` (Baarda 1968, from memory). A slip of no known kind is a normal
/// one, integrated out. `order[k]`: the reading behind observation k.
pub(crate) fn suspects(
    body: &Body,
    order: &[usize],
    adjusted: &Adjusted,
    priors: &SlipPriors,
) -> Suspects {
    if order.is_empty() {
        return Suspects::nothing_speaks();
    }
    let hypotheses = weigh(body, order, adjusted, priors);
    let nothing = order.len() as f64 * (1.0 - priors.per_reading).ln() - 0.5 * adjusted.chi2;
    let top = hypotheses
        .iter()
        .fold(nothing, |top, h| top.max(h.log_weight));
    let weight = |log_weight: f64| (log_weight - top).exp();
    let all: f64 = weight(nothing) + hypotheses.iter().map(|h| weight(h.log_weight)).sum::<f64>();
    let nothing_wrong = weight(nothing) / all;

    let mut accused: Vec<(usize, Suspect)> = hypotheses
        .chunk_by(|a, b| a.observation == b.observation)
        .filter_map(|own| {
            let k = own.first()?.observation;
            accuse(order[k], own, |h| weight(h.log_weight) / all).map(|suspect| (k, suspect))
        })
        .collect();
    accused.sort_by(|a, b| {
        b.1.probability
            .total_cmp(&a.1.probability)
            .then(a.0.cmp(&b.0))
    });
    if nothing_wrong >= priors.alarm_below {
        accused.clear();
    }
    Suspects {
        nothing_wrong,
        named: fewest(
            &accused,
            adjusted,
            priors.named_share * (1.0 - nothing_wrong),
        ),
    }
}

fn weigh(
    body: &Body,
    order: &[usize],
    adjusted: &Adjusted,
    priors: &SlipPriors,
) -> Vec<Hypothesis> {
    let usual = usual_marks(&body.readings);
    let one_slip = priors.per_reading.ln()
        + (order.len() as f64 - 1.0) * (1.0 - priors.per_reading).ln()
        - 0.5 * adjusted.chi2;
    let mut hypotheses = Vec::new();
    for (observation, &k) in order.iter().enumerate() {
        let reading = &body.readings[k];
        let o = &adjusted.observed[observation];
        let precision = 1.0 / (o.sigma * o.sigma);
        let booked = reading.value.in_feet();
        let overhangs = neighbouring_overhangs(body, reading.span);
        for Candidate { kind, value, part } in candidates(reading, usual, overhangs, priors) {
            let slip = booked - value;
            let saved = precision * slip * (2.0 * o.residual - slip * o.redundancy);
            hypotheses.push(Hypothesis {
                observation,
                kind,
                value,
                log_weight: one_slip + (priors.share(kind) * part).ln() + 0.5 * saved,
            });
        }
        let room = priors.other_sigma * priors.other_sigma * o.redundancy * precision;
        let (saved, shift) = if o.redundancy > 1e-6 {
            let w2 = precision * o.residual * o.residual / o.redundancy;
            (w2 * room / (1.0 + room), o.residual / o.redundancy)
        } else {
            (0.0, 0.0)
        };
        if booked - shift > 0.0 {
            hypotheses.push(Hypothesis {
                observation,
                kind: SlipKind::Other,
                value: booked - shift,
                log_weight: one_slip + priors.other.ln() + 0.5 * saved - 0.5 * room.ln_1p(),
            });
        }
    }
    hypotheses
}

/// Overhangs of the legs before and after, when a leg was taped at the eave.
fn neighbouring_overhangs(body: &Body, span: Span) -> [Option<f64>; 2] {
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

/// One reading with all its kinds together; its likeliest kind and the likeliest value of that kind.
fn accuse(
    reading: usize,
    own: &[Hypothesis],
    chance: impl Fn(&Hypothesis) -> f64,
) -> Option<Suspect> {
    let of_kind = |kind| {
        own.iter()
            .filter(|h| h.kind == kind)
            .map(&chance)
            .sum::<f64>()
    };
    let kind = own
        .iter()
        .max_by(|a, b| of_kind(a.kind).total_cmp(&of_kind(b.kind)))?
        .kind;
    let likeliest = own
        .iter()
        .filter(|h| h.kind == kind)
        .max_by(|a, b| a.log_weight.total_cmp(&b.log_weight))?;
    Some(Suspect {
        reading,
        kind,
        likely_value: likeliest.value,
        probability: own.iter().map(&chance).sum(),
    })
}

/// The fewest that together reach `enough`; never one alone whose test goes with another's.
fn fewest(accused: &[(usize, Suspect)], adjusted: &Adjusted, enough: f64) -> Vec<Suspect> {
    let mut named = Vec::new();
    let mut reached = 0.0;
    for (_, suspect) in accused {
        if reached >= enough {
            break;
        }
        reached += suspect.probability;
        named.push(*suspect);
    }
    if let ([_], Some((alone, _))) = (named.as_slice(), accused.first()) {
        let twin = accused.iter().skip(1).find(|(other, _)| {
            adjusted
                .correlation(*alone, *other)
                .is_some_and(|c| c.abs() > ALIKE)
        });
        named.extend(twin.map(|(_, suspect)| *suspect));
    }
    named
}
