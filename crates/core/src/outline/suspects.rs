//! Which readings the others speak against, and what they would have been.

use super::fit::LeaveOneOut;
use super::hypothesis::{Candidates, Hypothesis, Others, SPEND, Slip, Spread, one_fit};
use super::net::Adjusted;
use super::slips::{Candidate, SlipKind, SlipPriors};
use super::two_slips::two_slips;
use crate::survey::Body;
use crate::units::Length;

/// What the readings speak against, all kinds of slip together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Suspects {
    /// Chance that nothing is wrong.
    pub nothing_wrong: f64,
    /// Fewest readings whose chance reaches 90 % of the rest, likeliest first; empty when the
    /// chance that nothing is wrong is one half or more.
    pub named: Vec<Suspect>,
    /// What may have been slipped, likeliest first, down to a thousandth; empty while nobody is named.
    pub possible: Vec<Possible>,
}

/// A slip, or two at once, that may have been made.
#[derive(Clone, Debug, PartialEq)]
pub struct Possible {
    /// Index of the reading in the survey, and the slip: recorded less true value.
    pub slips: Vec<(usize, Length)>,
    /// Chance of just this.
    pub chance: f64,
}

impl Suspects {
    /// No reading speaks against another.
    #[must_use]
    pub fn nothing_speaks() -> Suspects {
        Suspects {
            nothing_wrong: 1.0,
            named: Vec::new(),
            possible: Vec::new(),
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
    /// What it would have been without the slip.
    pub likely_value: Length,
    /// Chance of this reading, all kinds together, alone or with another.
    pub probability: f64,
}

/// Test values of two readings that go together this closely cannot tell them apart.
const ALIKE: f64 = 0.99;

/// Weighs "nothing is wrong" against every kind of slip in every single reading.
///
/// Had observation i been smaller by d, the sum of squares would be `chi2 - 2 d v / s^2 + d^2 r / s^2`
/// (Baarda 1968, from memory): the others' own sum, and how far the corrected value lies from what
/// they say. A slip of no known kind is a normal one, integrated out. Where one slip leaves another
/// reading far off, two at once are weighed too.
pub(super) fn suspects(
    body: &Body,
    order: &[usize],
    adjusted: &Adjusted,
    others: &dyn Others,
    roughness: f64,
    priors: &SlipPriors,
) -> Suspects {
    if order.is_empty() {
        return Suspects::nothing_speaks();
    }
    let spread = Spread::from_body(body, adjusted, roughness, priors);
    let candidates = Candidates::new(body, order, priors);
    let mut alone: Vec<Option<LeaveOneOut>> = (0..order.len())
        .map(|k| LeaveOneOut::within(adjusted, k))
        .collect();
    let weigh = |alone: &[Option<LeaveOneOut>]| {
        let nothing =
            order.len() as f64 * (1.0 - priors.per_reading).ln() + spread.evidence(adjusted.chi2);
        Weighed::new(
            nothing,
            hypotheses(&candidates, adjusted, alone, &spread, priors),
        )
    };
    let mut weighed = weigh(&alone);
    if weighed.nothing_wrong < LOOK_AGAIN {
        for k in bends(&alone, adjusted) {
            alone[k] = others.without(k).or(alone[k]);
        }
        weighed = weigh(&alone);
        let likely = weighed.likely_observations();
        let pairs = two_slips(&candidates, &likely, adjusted, others, &spread, priors);
        weighed = weighed.with(pairs);
    }
    weighed.into_suspects(body, order, adjusted, priors)
}

/// Below this chance that nothing is wrong, large slips are weighed against a fit without them.
const LOOK_AGAIN: f64 = 0.9;
/// A reading off by less than this bends nothing, feet.
const BENDS: f64 = 1.0;
/// Observations whose slip may have bent the outline, the worst first, as many as time allows.
fn bends(alone: &[Option<LeaveOneOut>], adjusted: &Adjusted) -> Vec<usize> {
    let mut off: Vec<(usize, f64)> = alone
        .iter()
        .enumerate()
        .filter_map(|(k, alone)| Some((k, (*alone)?)))
        .filter(|(k, alone)| alone.off.abs() > BENDS && adjusted.observed[*k].redundancy > 0.02)
        .map(|(k, alone)| (k, alone.off * alone.off / alone.variance))
        .collect();
    off.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    off.truncate((SPEND / one_fit(adjusted)) as usize);
    off.into_iter().map(|(k, _)| k).collect()
}

/// Every slip weighed against nothing.
struct Weighed {
    hypotheses: Vec<Hypothesis>,
    /// Logarithm of the weight of nothing.
    nothing: f64,
    /// Logarithm of the weight that counts as 1.
    top: f64,
    /// Sum of all weights.
    all: f64,
    nothing_wrong: f64,
}

impl Weighed {
    fn new(nothing: f64, hypotheses: Vec<Hypothesis>) -> Weighed {
        let top = hypotheses
            .iter()
            .fold(nothing, |top, h| top.max(h.log_weight));
        let slips: f64 = hypotheses.iter().map(|h| (h.log_weight - top).exp()).sum();
        let still = (nothing - top).exp();
        Weighed {
            hypotheses,
            nothing,
            top,
            all: still + slips,
            nothing_wrong: still / (still + slips),
        }
    }

    /// The same with more that may have happened.
    fn with(mut self, more: Vec<Hypothesis>) -> Weighed {
        if more.is_empty() {
            return self;
        }
        self.hypotheses.extend(more);
        Weighed::new(self.nothing, self.hypotheses)
    }

    fn chance(&self, hypothesis: &Hypothesis) -> f64 {
        (hypothesis.log_weight - self.top).exp() / self.all
    }

    /// Every observation with its chance and those of its kinds, likeliest first.
    fn accused(&self) -> Vec<Accused> {
        let mut charges: Vec<(Slip, f64)> = self
            .hypotheses
            .iter()
            .flat_map(|h| h.slips.iter().map(|slip| (*slip, self.chance(h))))
            .collect();
        charges.sort_by_key(|(slip, _)| slip.observation);
        let mut accused: Vec<Accused> = charges
            .chunk_by(|a, b| a.0.observation == b.0.observation)
            .filter_map(accuse)
            .collect();
        accused.sort_by(|a, b| {
            b.probability
                .total_cmp(&a.probability)
                .then(a.slip.observation.cmp(&b.slip.observation))
        });
        accused
    }

    fn likely_observations(&self) -> Vec<usize> {
        self.accused()
            .iter()
            .map(|accused| accused.slip.observation)
            .collect()
    }

    fn into_suspects(
        self,
        body: &Body,
        order: &[usize],
        adjusted: &Adjusted,
        priors: &SlipPriors,
    ) -> Suspects {
        if self.nothing_wrong >= priors.alarm_below {
            return Suspects {
                nothing_wrong: self.nothing_wrong,
                named: Vec::new(),
                possible: Vec::new(),
            };
        }
        let accused = self.accused();
        let enough = priors.named_share * (1.0 - self.nothing_wrong);
        let suspect = |accused: &Accused| Suspect {
            reading: order[accused.slip.observation],
            kind: accused.slip.kind,
            likely_value: Length::feet(accused.slip.value),
            probability: accused.probability,
        };
        let booked = |slip: &Slip| body.readings[order[slip.observation]].value.in_feet();
        let mut possible: Vec<Possible> = self
            .hypotheses
            .iter()
            .map(|h| Possible {
                slips: h
                    .slips
                    .iter()
                    .map(|slip| {
                        let off = Length::feet(booked(slip) - slip.value);
                        (order[slip.observation], off)
                    })
                    .collect(),
                chance: self.chance(h),
            })
            .filter(|possible| possible.chance > POSSIBLE)
            .collect();
        possible.sort_by(|a, b| b.chance.total_cmp(&a.chance));
        Suspects {
            nothing_wrong: self.nothing_wrong,
            named: self
                .fewest(&accused, adjusted, enough)
                .map(suspect)
                .collect(),
            possible,
        }
    }

    /// The fewest that together reach `enough`: with what would have happened in them alone. Never one
    /// whose test goes with another's without that other.
    fn fewest<'a>(
        &self,
        accused: &'a [Accused],
        adjusted: &Adjusted,
        enough: f64,
    ) -> impl Iterator<Item = &'a Accused> {
        let mut named: Vec<usize> = Vec::new();
        let pairs: Vec<(&[Slip], f64)> = self
            .hypotheses
            .iter()
            .filter(|h| h.slips.len() > 1)
            .map(|h| (h.slips.as_slice(), self.chance(h)))
            .collect();
        let holds = |slips: &[Slip], k: usize| slips.iter().any(|slip| slip.observation == k);
        let mut reached = 0.0;
        for accused in accused {
            if reached >= enough {
                break;
            }
            let k = accused.slip.observation;
            let with_another = pairs.iter().filter(|(slips, _)| holds(slips, k));
            // Of two at once the first alone accounts for nothing.
            let (all, both) = with_another.fold((0.0, 0.0), |(all, both), (slips, chance)| {
                let is_whole = named.iter().any(|other| holds(slips, *other));
                (all + chance, if is_whole { both + chance } else { both })
            });
            reached += accused.probability - all + both;
            named.push(k);
        }
        let two_at_once: f64 = pairs.iter().map(|(_, chance)| chance).sum();
        if named.len() == 1 || (named.len() == 2 && two_at_once > 0.5) {
            for one in named.clone() {
                let twin = accused
                    .iter()
                    .map(|accused| accused.slip.observation)
                    .filter(|other| *other != one)
                    .find(|other| {
                        adjusted
                            .correlation(one, *other)
                            .is_some_and(|c| c.abs() > ALIKE)
                    });
                named.extend(twin.filter(|twin| !named.contains(twin)));
            }
        }
        accused
            .iter()
            .filter(move |accused| named.contains(&accused.slip.observation))
    }
}

/// One observation with all that may have happened to it.
struct Accused {
    /// Its likeliest kind and the likeliest value of that kind.
    slip: Slip,
    probability: f64,
}

/// What is less likely than this is not told one by one.
const POSSIBLE: f64 = 1e-3;

fn hypotheses(
    candidates: &Candidates,
    adjusted: &Adjusted,
    alone: &[Option<LeaveOneOut>],
    spread: &Spread,
    priors: &SlipPriors,
) -> Vec<Hypothesis> {
    let count = candidates.booked.len() as f64;
    let one_slip = priors.per_reading.ln() + (count - 1.0) * (1.0 - priors.per_reading).ln();
    let mut hypotheses = Vec::new();
    for (observation, booked) in candidates.booked.iter().enumerate() {
        // Where the others say nothing, any value fits as well as the booked one.
        let alone = alone[observation].unwrap_or(LeaveOneOut {
            rest: adjusted.chi2,
            off: 0.0,
            variance: f64::INFINITY,
        });
        let mut weigh = |kind, value, log_weight| {
            hypotheses.push(Hypothesis {
                slips: vec![Slip {
                    observation,
                    kind,
                    value,
                }],
                log_weight,
            });
        };
        for Candidate { kind, value, part } in &candidates.known[observation] {
            let left = alone.off - (booked - value);
            let fits = spread.evidence(alone.rest + left * left / alone.variance);
            weigh(
                *kind,
                *value,
                one_slip + (priors.share(*kind) * part).ln() + fits,
            );
        }
        if booked - alone.off > 0.0 {
            let fits = spread.evidence_of_any_slip(&alone, priors.other_sigma.in_feet());
            weigh(
                SlipKind::Other,
                booked - alone.off,
                one_slip + priors.other.ln() + fits,
            );
        }
    }
    hypotheses
}

/// One observation with all its kinds together.
fn accuse(own: &[(Slip, f64)]) -> Option<Accused> {
    let of_kind = |kind: SlipKind| {
        own.iter()
            .filter(|(slip, _)| slip.kind == kind)
            .map(|(_, chance)| chance)
            .sum::<f64>()
    };
    let kind = own
        .iter()
        .max_by(|a, b| of_kind(a.0.kind).total_cmp(&of_kind(b.0.kind)))?
        .0
        .kind;
    let (slip, _) = own
        .iter()
        .filter(|(slip, _)| slip.kind == kind)
        .max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(Accused {
        slip: *slip,
        probability: own.iter().map(|(_, chance)| chance).sum(),
    })
}
