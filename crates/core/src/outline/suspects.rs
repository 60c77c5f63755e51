//! Which readings the others speak against, and what they would have been.

use super::SlipKind;
use super::fit::Alone;
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

/// How rough the work may be: (factor of the given spreads, logarithm of its chance given nothing).
struct Spread(Vec<(f64, f64)>);

impl Spread {
    /// A stated spread is taken at its word; the usual one may be rougher or finer.
    fn of(body: &Body, adjusted: &Adjusted, priors: &SlipPriors) -> Spread {
        if body.readings.iter().any(|r| r.sigma.is_some()) {
            return Spread(vec![(1.0, 0.0)]);
        }
        let freedom = adjusted.degrees_of_freedom as f64;
        let weigh = |&(factor, chance): &(f64, f64)| (factor, chance.ln() - freedom * factor.ln());
        Spread(priors.roughness.iter().map(weigh).collect())
    }

    /// Logarithm of the chance of a sum of squares, all roughnesses together.
    fn evidence(&self, chi2: f64) -> f64 {
        self.sum(|factor| -0.5 * chi2 / (factor * factor))
    }

    /// The same with one reading off by anything, as a normal slip of this spread, feet.
    fn evidence_of_any_slip(&self, alone: &Alone, slip_sigma: f64) -> f64 {
        self.sum(|factor| {
            let square = factor * factor;
            let room = slip_sigma * slip_sigma / (alone.variance * square);
            let left = alone.off * alone.off / alone.variance / (1.0 + room);
            -0.5 * (alone.rest + left) / square - 0.5 * room.ln_1p()
        })
    }

    fn sum(&self, log_likelihood: impl Fn(f64) -> f64) -> f64 {
        let logs: Vec<f64> = self
            .0
            .iter()
            .map(|(factor, log_chance)| log_chance + log_likelihood(*factor))
            .collect();
        let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        top + logs.iter().map(|l| (l - top).exp()).sum::<f64>().ln()
    }
}

/// Weighs "nothing is wrong" against every kind of slip in every single reading.
///
/// Had observation i been smaller by d, the sum of squares would be `chi2 - 2 d v / s^2 + d^2 r / s^2`
/// (Baarda 1968, from memory): the others' own sum, and how far the corrected value lies from what
/// they say. A slip of no known kind is a normal one, integrated out. `order[k]`: the reading behind
/// observation k; `without`: observation k against a fit of all the others.
pub(crate) fn suspects(
    body: &Body,
    order: &[usize],
    adjusted: &Adjusted,
    without: &dyn Fn(usize) -> Option<Alone>,
    priors: &SlipPriors,
) -> Suspects {
    if order.is_empty() {
        return Suspects::nothing_speaks();
    }
    let spread = Spread::of(body, adjusted, priors);
    let mut alone: Vec<Option<Alone>> = (0..order.len())
        .map(|k| Alone::within(adjusted, k))
        .collect();
    let weigh =
        |alone: &[Option<Alone>]| Weighed::of(body, order, adjusted, alone, &spread, priors);
    let mut weighed = weigh(&alone);
    if weighed.nothing_wrong < LOOK_AGAIN {
        for k in bends(&alone, adjusted) {
            alone[k] = without(k).or(alone[k]);
        }
        weighed = weigh(&alone);
    }
    weighed.into_suspects(order, adjusted, priors)
}

/// Below this chance that nothing is wrong, large slips are weighed against a fit without them.
const LOOK_AGAIN: f64 = 0.9;
/// A reading off by less than this bends nothing, feet.
const BENDS: f64 = 1.0;
/// Multiplications to spend on fits without one reading: some tens of milliseconds.
const SPEND: f64 = 2e8;

/// Observations whose slip may have bent the outline, the worst first, as many as time allows.
fn bends(alone: &[Option<Alone>], adjusted: &Adjusted) -> Vec<usize> {
    let mut off: Vec<(usize, f64)> = alone
        .iter()
        .enumerate()
        .filter_map(|(k, alone)| Some((k, (*alone)?)))
        .filter(|(k, alone)| alone.off.abs() > BENDS && adjusted.observed[*k].redundancy > 0.02)
        .map(|(k, alone)| (k, alone.off * alone.off / alone.variance))
        .collect();
    off.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let unknowns = 2.0 * adjusted.places.len() as f64;
    let rows = adjusted.observed.len() as f64;
    let one_fit = 2.0 * unknowns.powi(3) + 5_000.0 * rows;
    off.truncate((SPEND / one_fit) as usize);
    off.into_iter().map(|(k, _)| k).collect()
}

/// Every slip weighed against nothing.
struct Weighed {
    hypotheses: Vec<Hypothesis>,
    /// Logarithm of the weight that counts as 1.
    top: f64,
    /// Sum of all weights.
    all: f64,
    nothing_wrong: f64,
}

impl Weighed {
    fn of(
        body: &Body,
        order: &[usize],
        adjusted: &Adjusted,
        alone: &[Option<Alone>],
        spread: &Spread,
        priors: &SlipPriors,
    ) -> Weighed {
        let hypotheses = hypotheses(body, order, adjusted, alone, spread, priors);
        let nothing =
            order.len() as f64 * (1.0 - priors.per_reading).ln() + spread.evidence(adjusted.chi2);
        let top = hypotheses
            .iter()
            .fold(nothing, |top, h| top.max(h.log_weight));
        let slips: f64 = hypotheses.iter().map(|h| (h.log_weight - top).exp()).sum();
        let nothing = (nothing - top).exp();
        Weighed {
            hypotheses,
            top,
            all: nothing + slips,
            nothing_wrong: nothing / (nothing + slips),
        }
    }

    fn into_suspects(self, order: &[usize], adjusted: &Adjusted, priors: &SlipPriors) -> Suspects {
        if self.nothing_wrong >= priors.alarm_below {
            return Suspects {
                nothing_wrong: self.nothing_wrong,
                named: Vec::new(),
            };
        }
        let chance = |h: &Hypothesis| (h.log_weight - self.top).exp() / self.all;
        let mut accused: Vec<(usize, Suspect)> = self
            .hypotheses
            .chunk_by(|a, b| a.observation == b.observation)
            .filter_map(|own| {
                let k = own.first()?.observation;
                accuse(order[k], own, chance).map(|suspect| (k, suspect))
            })
            .collect();
        accused.sort_by(|a, b| {
            b.1.probability
                .total_cmp(&a.1.probability)
                .then(a.0.cmp(&b.0))
        });
        let enough = priors.named_share * (1.0 - self.nothing_wrong);
        Suspects {
            nothing_wrong: self.nothing_wrong,
            named: fewest(&accused, adjusted, enough),
        }
    }
}

fn hypotheses(
    body: &Body,
    order: &[usize],
    adjusted: &Adjusted,
    alone: &[Option<Alone>],
    spread: &Spread,
    priors: &SlipPriors,
) -> Vec<Hypothesis> {
    let usual = usual_marks(&body.readings);
    let one_slip =
        priors.per_reading.ln() + (order.len() as f64 - 1.0) * (1.0 - priors.per_reading).ln();
    let mut hypotheses = Vec::new();
    for (observation, &k) in order.iter().enumerate() {
        let reading = &body.readings[k];
        // Where the others say nothing, any value fits as well as the booked one.
        let alone = alone[observation].unwrap_or(Alone {
            rest: adjusted.chi2,
            off: 0.0,
            variance: f64::INFINITY,
        });
        let booked = reading.value.in_feet();
        let overhangs = neighbouring_overhangs(body, reading.span);
        for Candidate { kind, value, part } in candidates(reading, usual, overhangs, priors) {
            let left = alone.off - (booked - value);
            hypotheses.push(Hypothesis {
                observation,
                kind,
                value,
                log_weight: one_slip
                    + (priors.share(kind) * part).ln()
                    + spread.evidence(alone.rest + left * left / alone.variance),
            });
        }
        if booked - alone.off > 0.0 {
            hypotheses.push(Hypothesis {
                observation,
                kind: SlipKind::Other,
                value: booked - alone.off,
                log_weight: one_slip
                    + priors.other.ln()
                    + spread.evidence_of_any_slip(&alone, priors.other_sigma),
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
