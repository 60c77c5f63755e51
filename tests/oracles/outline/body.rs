//! Surveys of one outline, as the solver is given them.

use eavebook_core::survey::{Body, Point, Reading, Sketch, Span};
use eavebook_core::units::{Angle, Length};

/// A body with these turns (left positive, degrees) and readings.
pub fn body(turns: &[f64], turn_sigma_deg: f64, readings: Vec<Reading>) -> Body {
    Body {
        id: "main".to_owned(),
        eave_height: Length::feet(9.0),
        outline: Sketch::Turned {
            start: Point { x: 0.0, y: 0.0 },
            heading: Angle::degrees(0.0),
            turns: turns.iter().map(|t| Angle::degrees(*t)).collect(),
            turn_sigma: Angle::degrees(turn_sigma_deg),
        },
        readings,
        edges: Vec::new(),
        placed_from: None,
    }
}

/// One reading.
pub fn reading(
    id: &str,
    span: Span,
    feet: f64,
    sigma: Option<f64>,
    text: Option<String>,
) -> Reading {
    Reading {
        id: id.to_owned(),
        span,
        value: Length::feet(feet),
        text,
        sigma: sigma.map(Length::feet),
    }
}

/// Area of a ring of corners, square feet, left positive.
pub fn area(corners: &[[f64; 2]]) -> f64 {
    (0..corners.len())
        .map(|i| {
            let (a, b) = (corners[i], corners[(i + 1) % corners.len()]);
            0.5 * (a[0] * b[1] - b[0] * a[1])
        })
        .sum()
}
