//! The story of the area: which readings most decide its spread.

use super::area::AreaVariance;
use super::span_row::SpanRow;
use crate::outline::span_sigma;
use crate::settled::SolvedBody;
use crate::survey::Body;
use crate::units::Area;

/// What a part of the area's spread comes from: what can be read again to narrow it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UncertaintySource {
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

/// The part of one reading in the area's spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// What.
    pub source: UncertaintySource,
    /// What its one standard deviation moves the area by: of roof, or of plan while there is no roof.
    pub area: Area,
    /// Its part of the area's variance, 0 to 1.
    pub part: f64,
}

/// Readings and slopes by their part in the area's variance, the greatest first. A reading of spread s
/// has the part `(dA/dl s)^2`: readings err independently of each other. What is left to a full 1 is
/// how square the corners are and how a body was found from another.
#[must_use]
pub fn shares(bodies: &[Body], solved: &[SolvedBody], variance: &AreaVariance) -> Vec<Share> {
    let total = variance.total();
    if total <= 0.0 {
        return Vec::new();
    }
    let share = |source, area: f64| Share {
        source,
        area: Area::square_feet(area),
        part: area * area / total,
    };
    let mut shares = Vec::new();
    for (k, (body, solved)) in bodies.iter().zip(solved).enumerate() {
        for (reading, booked) in body.readings.iter().enumerate() {
            let sigma = span_sigma(booked, solved.outline.roughness).in_feet();
            let by_foot = SpanRow::new(booked.span, body, solved)
                .and_then(|row| variance.per_foot(k, &row, sigma));
            if let Some(by_foot) = by_foot {
                let source = UncertaintySource::Reading { body: k, reading };
                shares.push(share(source, by_foot.abs() * sigma));
            }
        }
    }
    for slope in variance.slopes() {
        let (body, leg) = (slope.body, slope.read_at);
        let area = slope.variance().sqrt();
        if area > 0.0 {
            shares.push(share(UncertaintySource::Pitch { body, leg }, area));
        }
    }
    shares.sort_by(|a, b| b.part.total_cmp(&a.part));
    shares
}
