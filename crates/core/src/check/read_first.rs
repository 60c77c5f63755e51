//! Which reading or slope to look at again first.

use crate::outline::span_sigma;
use crate::pitch::SettledRise;
use crate::settled::SolvedBody;
use crate::survey::Body;
use crate::uncertainty::{AreaVariance, SpanRow, UncertaintySource};
use std::collections::BTreeMap;

/// Something to look at again.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadFirst {
    /// What.
    pub again: UncertaintySource,
    /// Why it stands where it stands.
    pub why: Why,
    /// What a second look would take off the variance of the area, sq ft squared; none where
    /// there is no area yet.
    pub gain: Option<f64>,
    /// How well a second look tells the suspects apart, 0 to 1.
    pub separates: f64,
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
        let sigma = span_sigma(booked, solved.outline.roughness).in_feet();
        let gain = SpanRow::new(booked.span, body, solved)
            .and_then(|row| variance.gain_of_reading(k, &row, sigma));
        all.push(ReadFirst {
            again: UncertaintySource::Reading { body: k, reading },
            why,
            gain: gain.map(|gain| gain.variance),
            separates: gain.map_or(0.0, |gain| gain.separates),
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
            again: UncertaintySource::Pitch { body: k, leg },
            why: if read.looks < 2 {
                Why::Unproved
            } else {
                Why::Narrows
            },
            gain: variance.gain_of_look(k, leg, NEXT_LOOK_SIGMA),
            separates: 0.0,
        });
    }
}
