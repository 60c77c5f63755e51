//! How far each reading is checked, and what a slip that nobody notices would do.

use crate::outline::{Checked, span_sigma};
use crate::solve::{AreaVariance, SolvedBody, SpanRow};
use crate::survey::Body;
use crate::units::{Area, Length};
use std::fmt::{self, Display, Formatter};

/// How far the others check one reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proof {
    /// Index of the body.
    pub body: usize,
    /// Index of the reading in the body.
    pub reading: usize,
    /// In a word.
    pub checked: Checked,
    /// Smallest slip that would be noticed; none where nothing checks it.
    pub smallest_slip: Option<Length>,
    /// What a slip just too small to be noticed would do to the area, where nothing checks the reading
    /// what a foot would do; of roof, or of plan while there is no roof. None where there is no area.
    pub moves: Option<Area>,
}

/// How far each reading is checked, in the order of the survey. A slip of d moves the area by
/// `d dA/dl`: the external reliability of Baarda (1968, from memory).
#[must_use]
pub fn proofs(bodies: &[Body], solved: &[SolvedBody], variance: &AreaVariance) -> Vec<Proof> {
    let mut proofs = Vec::new();
    for (k, (body, solved)) in bodies.iter().zip(solved).enumerate() {
        let figures = &solved.outline.readings;
        for (reading, (booked, figure)) in body.readings.iter().zip(figures).enumerate() {
            let sigma = span_sigma(booked, solved.outline.roughness);
            let per_foot = SpanRow::of(booked.span, body, solved)
                .and_then(|row| variance.per_foot(k, &row, sigma));
            let slip = figure.smallest_slip.unwrap_or(1.0);
            proofs.push(Proof {
                body: k,
                reading,
                checked: figure.checked(),
                smallest_slip: figure.smallest_slip.map(Length::feet),
                moves: per_foot.map(|by| Area::square_feet(by.abs() * slip)),
            });
        }
    }
    proofs
}

impl Display for Proof {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.checked)?;
        let area = self.moves.map(|moves| moves.in_square_feet());
        match (self.smallest_slip, area) {
            (None, None) => Ok(()),
            (None, Some(area)) => {
                write!(f, ": each foot of a slip moves the area by {area:.0} sq ft")
            }
            (Some(slip), None) => {
                write!(
                    f,
                    ": a slip under {:.1} ft may go unnoticed",
                    slip.in_feet()
                )
            }
            (Some(slip), Some(area)) => write!(
                f,
                ": a slip under {:.1} ft may go unnoticed and moves the area by up to {area:.0} sq ft",
                slip.in_feet()
            ),
        }
    }
}
