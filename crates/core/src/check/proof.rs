//! How far each reading is checked, and what a slip that nobody notices would do.

use crate::outline::{Checked, span_sigma};
use crate::solve::{AreaVariance, SolvedBody, SpanRow};
use crate::survey::Body;
use crate::units::{Area, Length, Money};
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

impl Proof {
    /// The sentence, with what the slip would do to the price where that is known.
    #[must_use]
    pub fn words(&self, price: Option<Money>) -> String {
        let mut moved = Vec::new();
        if let Some(area) = self.moves {
            moved.push(format!(
                "the area by {{}}{:.0} sq ft",
                area.in_square_feet()
            ));
        }
        if let Some(price) = price {
            moved.push(format!("the price by {{}}{}", price.words_to_dollar()));
        }
        let moves = |most: &str| match moved.as_slice() {
            [] => String::new(),
            moved => format!("moves {}", moved.join(" and ").replace("{}", most)),
        };
        let checked = self.checked;
        match self.smallest_slip.map(|slip| slip.in_feet()) {
            None if moved.is_empty() => checked.to_string(),
            None => format!("{checked}: each foot of a slip {}", moves("")),
            Some(slip) if moved.is_empty() => {
                format!("{checked}: a slip under {slip:.1} ft may go unnoticed")
            }
            Some(slip) => format!(
                "{checked}: a slip under {slip:.1} ft may go unnoticed and {}",
                moves("up to ")
            ),
        }
    }
}

impl Display for Proof {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(None))
    }
}
