//! Readings of a body as observations of its corners.

use super::net::{Observation, Row};
use crate::survey::{Body, Reading, Span};
use crate::units::Length;

/// One standard deviation that each stated overhang adds to a wall, feet.
const OVERHANG_SIGMA: f64 = 0.1;

/// The leg that a reading spans from end to end.
pub(crate) fn leg_of(span: Span, corners: usize) -> Option<usize> {
    match span {
        Span::Leg(leg) | Span::WallOfLeg { leg, .. } => Some(leg),
        Span::Tie(from, to) if (from + 1) % corners == to => Some(from),
        Span::Tie(from, to) if (to + 1) % corners == from => Some(to),
        Span::Tie(..) | Span::Overall { .. } => None,
    }
}

/// What a reading says of its span, feet: a wall is taken out to the eaves.
pub(super) fn span_length(reading: &Reading) -> f64 {
    match reading.span {
        Span::WallOfLeg { overhangs, .. } => overhangs
            .iter()
            .fold(reading.value.in_feet(), |sum, o| sum + o.in_feet()),
        Span::Leg(_) | Span::Tie(..) | Span::Overall { .. } => reading.value.in_feet(),
    }
}

/// Returns one standard deviation of a reading as an observation of its span: the stated one, or
/// [`default_sigma`] times `roughness`; for a wall, with the spread of both overhangs added.
#[must_use]
pub fn span_sigma(reading: &Reading, roughness: f64) -> Length {
    let tape = match reading.sigma {
        Some(sigma) => sigma.in_feet(),
        None => roughness * default_sigma(reading.value).in_feet(),
    };
    Length::feet(match reading.span {
        Span::WallOfLeg { .. } => tape.hypot(OVERHANG_SIGMA).hypot(OVERHANG_SIGMA),
        Span::Leg(_) | Span::Tie(..) | Span::Overall { .. } => tape,
    })
}

/// Returns one standard deviation of a taped length that states none: 0.18 ft of sighting, combined
/// with 0.0005 of the length.
#[must_use]
pub fn default_sigma(length: Length) -> Length {
    Length::feet(0.18_f64.hypot(0.0005 * length.in_feet()))
}

/// The readings of a body as observations of its corners.
pub(crate) struct Readings {
    /// The reading behind each observation: in an order that does not depend on theirs, so that
    /// sums round alike whichever way a survey was written.
    pub order: Vec<usize>,
    /// What each observation spans.
    pub spans: Vec<Span>,
    /// Rows between the corners.
    pub observations: Vec<Observation>,
}

impl Readings {
    /// `axes`: unit vector of each leg, for spans along it.
    /// `roughness`: see [`span_sigma`].
    pub(crate) fn new(body: &Body, axes: &[[f64; 2]], roughness: f64) -> Readings {
        let mut order: Vec<usize> = (0..body.readings.len()).collect();
        order.sort_by(|&a, &b| {
            let (a, b) = (&body.readings[a], &body.readings[b]);
            span_key(a.span)
                .cmp(&span_key(b.span))
                .then(span_length(a).total_cmp(&span_length(b)))
                .then({
                    let [a, b] = [a, b].map(|reading| span_sigma(reading, 1.0).in_feet());
                    a.total_cmp(&b)
                })
                .then(a.id.cmp(&b.id))
        });
        let observe = |reading: &Reading| Observation {
            row: row_of(reading.span, axes),
            value: span_length(reading),
            sigma: span_sigma(reading, roughness).in_feet(),
        };
        Readings {
            spans: order.iter().map(|&k| body.readings[k].span).collect(),
            observations: order.iter().map(|&k| observe(&body.readings[k])).collect(),
            order,
        }
    }

    /// Mean of the readings of each leg, feet; none where there is none. `left_out`: observations
    /// that do not count.
    pub(crate) fn mean_lengths(&self, corners: usize, left_out: &[usize]) -> Vec<Option<f64>> {
        let mut sums = vec![(0.0, 0.0); corners];
        for (k, (span, o)) in self.spans.iter().zip(&self.observations).enumerate() {
            if let (Some(leg), false) = (leg_of(*span, corners), left_out.contains(&k)) {
                sums[leg].0 += o.value;
                sums[leg].1 += 1.0;
            }
        }
        let mean = |(sum, count): (f64, f64)| (count > 0.0).then(|| sum / count);
        sums.into_iter().map(mean).collect()
    }
}

fn row_of(span: Span, axes: &[[f64; 2]]) -> Row {
    match span {
        Span::Leg(leg) | Span::WallOfLeg { leg, .. } => Row::Distance {
            from: leg,
            to: (leg + 1) % axes.len(),
        },
        Span::Tie(from, to) => Row::Distance { from, to },
        Span::Overall {
            from,
            to,
            along_leg,
        } => Row::Projection {
            from,
            to,
            axis: axes[along_leg],
        },
    }
}

pub(super) fn span_key(span: Span) -> (u8, usize, usize, usize) {
    match span {
        Span::Leg(leg) => (0, leg, 0, 0),
        Span::WallOfLeg { leg, .. } => (1, leg, 0, 0),
        Span::Tie(from, to) => (2, from, to, 0),
        Span::Overall {
            from,
            to,
            along_leg,
        } => (3, from, to, along_leg),
    }
}
