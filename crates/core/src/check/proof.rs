//! How far each reading is checked, and what a slip that nobody notices would do.

use crate::outline::{Checked, span_sigma};
use crate::settled::SolvedBody;
use crate::survey::Body;
use crate::uncertainty::{AreaVariance, SpanRow};
use crate::units::{Area, Length, Money, RoundTo};
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
            let sigma = span_sigma(booked, solved.outline.roughness).in_feet();
            let per_foot = SpanRow::new(booked.span, body, solved)
                .and_then(|row| variance.per_foot(k, &row, sigma));
            let slip = figure.smallest_slip.unwrap_or(Length::feet(1.0));
            proofs.push(Proof {
                body: k,
                reading,
                checked: figure.checked(),
                smallest_slip: figure.smallest_slip,
                moves: per_foot.map(|by| Area::square_feet(by.abs() * slip.in_feet())),
            });
        }
    }
    proofs
}

impl Proof {
    /// What a slip that nobody notices would do, with the price where that is known; none where nothing
    /// is known of it. Starts small, ends without a point.
    #[must_use]
    pub fn slip_words(&self, price: Option<Money>, to: RoundTo) -> Option<String> {
        // What rounds to nothing moves nothing.
        let moves = self.moves.filter(|area| area.in_square_feet() >= 0.5);
        let area = moves.map(|area| ("area", area.words()));
        let price = price.map(|price| ("price", price.words_to_dollar()));
        let moved: Vec<(&str, String)> = area.into_iter().chain(price).collect();
        let moves = |most: &str| {
            let each: Vec<String> = moved
                .iter()
                .map(|(what, by)| format!("the {what} by {most}{by}"))
                .collect();
            (!each.is_empty()).then(|| format!("moves {}", each.join(" and ")))
        };
        let Some(slip) = self.smallest_slip else {
            let foot = Length::feet(1.0).words(to);
            return moves("").map(|moves| format!("each slip of {foot} {moves}"));
        };
        let unnoticed = format!("a slip under {} may go unnoticed", slip.words(to));
        Some(match moves("up to ") {
            Some(moves) => format!("{unnoticed} and {moves}"),
            None => unnoticed,
        })
    }

    /// The sentence, in decimal feet.
    #[must_use]
    pub fn words(&self, price: Option<Money>) -> String {
        match self.slip_words(price, RoundTo::TenthFoot) {
            Some(slip) => format!("{}: {slip}", self.checked),
            None => self.checked.to_string(),
        }
    }
}

impl Display for Proof {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(None))
    }
}
