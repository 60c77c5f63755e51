//! Which reading or slope to look at again first.

use crate::outline::default_sigma;
use crate::pitch::SettledRise;
use crate::solve::{AreaVariance, SolvedBody, SpanRow};
use crate::survey::{Body, Reading, Span};
use crate::units::Length;
use std::collections::BTreeMap;

/// Something to look at again.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadFirst {
    /// What.
    pub again: ReadAgain,
    /// Why it stands where it stands.
    pub why: Why,
    /// What a second look would take off the variance of the area, sq ft squared; none where
    /// there is no roof yet.
    pub gain: Option<f64>,
}

/// What can be looked at again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadAgain {
    /// A taped value: index of the body and of its reading.
    Reading {
        /// Index of the body.
        body: usize,
        /// Index of the reading in the body.
        reading: usize,
    },
    /// The slope read at a leg.
    Pitch {
        /// Index of the body.
        body: usize,
        /// The leg.
        leg: usize,
    },
}

/// Why something should be looked at again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Why {
    /// The others speak against it, with this chance.
    Suspect(f64),
    /// Nothing checks it.
    Unproved,
    /// The area would be known better.
    Narrows,
}

/// Spread of one more position both ways with a phone, degrees.
const NEXT_LOOK_SIGMA: f64 = 0.29;
/// One standard deviation that each stated overhang adds to a wall, feet.
const OVERHANG_SIGMA: f64 = 0.1;

/// Everything that was read, in the order in which to look at it again: what the others speak
/// against, then what nothing checks, then by what a second look takes off the area's variance.
///
/// A variance supposes that nothing is wrong, so it cannot rank what may be.
#[must_use]
pub fn read_first(
    bodies: &[Body],
    solved: &[SolvedBody],
    variance: &AreaVariance,
) -> Vec<ReadFirst> {
    let mut all = Vec::new();
    for (k, (body, solved)) in bodies.iter().zip(solved).enumerate() {
        readings(k, body, solved, variance, &mut all);
        slopes(k, solved, variance, &mut all);
    }
    all.sort_by(|a, b| {
        rank(a.why)
            .total_cmp(&rank(b.why))
            .then(b.gain.unwrap_or(0.0).total_cmp(&a.gain.unwrap_or(0.0)))
    });
    all
}

/// Suspects by falling chance, then the unproved, then the rest.
fn rank(why: Why) -> f64 {
    match why {
        Why::Suspect(chance) => -chance,
        Why::Unproved => 1.0,
        Why::Narrows => 2.0,
    }
}

fn readings(
    k: usize,
    body: &Body,
    solved: &SolvedBody,
    variance: &AreaVariance,
    all: &mut Vec<ReadFirst>,
) {
    let suspects: BTreeMap<usize, f64> = solved
        .outline
        .suspects
        .named
        .iter()
        .map(|suspect| (suspect.reading, suspect.probability))
        .collect();
    for (reading, (booked, figure)) in body
        .readings
        .iter()
        .zip(&solved.outline.readings)
        .enumerate()
    {
        let why = match suspects.get(&reading) {
            Some(chance) => Why::Suspect(*chance),
            None if figure.is_unproved() => Why::Unproved,
            None => Why::Narrows,
        };
        all.push(ReadFirst {
            again: ReadAgain::Reading { body: k, reading },
            why,
            gain: row(booked.span, solved)
                .and_then(|row| variance.gain_of_reading(k, &row, sigma_of(booked))),
        });
    }
}

fn slopes(k: usize, solved: &SolvedBody, variance: &AreaVariance, all: &mut Vec<ReadFirst>) {
    for (leg, rise) in solved.rises.iter().enumerate() {
        let SettledRise::Slope(pitch) = rise else {
            continue;
        };
        let Some(read) = pitch.read.as_ref().filter(|_| pitch.read_at == leg) else {
            continue;
        };
        all.push(ReadFirst {
            again: ReadAgain::Pitch { body: k, leg },
            why: if read.positions < 2 {
                Why::Unproved
            } else {
                Why::Narrows
            },
            gain: variance.gain_of_look(k, leg, NEXT_LOOK_SIGMA),
        });
    }
}

/// One standard deviation of another reading like this one, feet.
fn sigma_of(reading: &Reading) -> f64 {
    let feet = reading.value.in_feet();
    let tape = reading
        .sigma
        .map_or_else(|| default_sigma(feet), Length::in_feet);
    match reading.span {
        Span::WallOfLeg { .. } => tape.hypot(OVERHANG_SIGMA).hypot(OVERHANG_SIGMA),
        Span::Leg(_) | Span::Tie(..) | Span::Overall { .. } => tape,
    }
}

/// How a span changes with the corners of its body; none while one of them is not known.
pub(super) fn row(span: Span, solved: &SolvedBody) -> Option<SpanRow> {
    let corners = &solved.outline.corners;
    let n = corners.len();
    let along = |from: usize, to: usize| {
        let (from, to) = (corners[from % n]?.at, corners[to % n]?.at);
        let (x, y) = (to.x - from.x, to.y - from.y);
        let length = x.hypot(y);
        (length > 0.0).then(|| [x / length, y / length])
    };
    let (from, to, along) = match span {
        Span::Leg(leg) | Span::WallOfLeg { leg, .. } => (leg, leg + 1, along(leg, leg + 1)?),
        Span::Tie(from, to) => (from, to, along(from, to)?),
        Span::Overall {
            from,
            to,
            along_leg,
        } => (from, to, along(along_leg, along_leg + 1)?),
    };
    Some(SpanRow {
        from: from % n,
        to: to % n,
        along,
    })
}
