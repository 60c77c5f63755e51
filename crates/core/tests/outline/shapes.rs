//! Outlines of any number of steps, and readings of them.

use eavebook_core::survey::{Body, Point, Reading, Sketch, Span};
use eavebook_core::units::{Angle, Length};
use proptest::prelude::*;

/// An outline as a walk: length and turn at the far end of every leg, degrees, left positive.
#[derive(Clone, Debug)]
pub struct Shape {
    pub lengths: Vec<f64>,
    pub turns: Vec<f64>,
}

/// Houses that stand on one long leg and step up and down behind it, as letters do; with some
/// corners cut off at 45 degrees.
pub fn stepped() -> impl Strategy<Value = Shape> {
    let step = (10.0..40.0_f64, 0..5_usize, prop::bool::ANY);
    prop::collection::vec(step, 1..5).prop_map(|steps| {
        let heights: Vec<f64> = steps
            .iter()
            .scan(usize::MAX, |before, (_, k, _)| {
                // Two neighbours of one height would be one.
                let k = if *before == *k { (*k + 1) % 5 } else { *k };
                *before = k;
                Some(16.0 + 7.0 * k as f64)
            })
            .collect();
        let widths: Vec<f64> = steps.iter().map(|s| s.0).collect();
        let mut walk = vec![(widths.iter().sum::<f64>(), 90.0)];
        walk.push((heights[0], 90.0));
        for k in 0..widths.len() {
            match heights.get(k + 1) {
                Some(next) if *next < heights[k] => {
                    walk.push((widths[k], 90.0));
                    walk.push((heights[k] - next, -90.0));
                }
                Some(next) => {
                    walk.push((widths[k], -90.0));
                    walk.push((next - heights[k], 90.0));
                }
                None => {
                    walk.push((widths[k], 90.0));
                    walk.push((heights[k], 90.0));
                }
            }
        }
        let cut = steps[0].2;
        let (lengths, turns) = if cut {
            cut_corner(walk)
        } else {
            walk.into_iter().unzip()
        };
        Shape { lengths, turns }
    })
}

/// The corner after leg 0 cut off, three feet along either leg.
fn cut_corner(walk: Vec<(f64, f64)>) -> (Vec<f64>, Vec<f64>) {
    let mut cut = vec![(walk[0].0 - 3.0, 45.0), (3.0 * 2.0_f64.sqrt(), 45.0)];
    cut.push((walk[1].0 - 3.0, walk[1].1));
    cut.extend(&walk[2..]);
    cut.into_iter().unzip()
}

impl Shape {
    pub fn legs(&self) -> usize {
        self.turns.len()
    }

    /// The true corners, leg 0 along the first axis.
    pub fn corners(&self) -> Vec<[f64; 2]> {
        let (mut x, mut y, mut heading) = (0.0_f64, 0.0_f64, 0.0_f64);
        self.lengths
            .iter()
            .zip(&self.turns)
            .map(|(length, turn)| {
                let corner = [x, y];
                x += length * heading.to_radians().cos();
                y += length * heading.to_radians().sin();
                heading += turn;
                corner
            })
            .collect()
    }

    /// Every leg read once, off by `misses` in turn.
    pub fn read(&self, misses: &[f64]) -> Vec<Reading> {
        (0..self.legs())
            .map(|leg| {
                taped(
                    leg,
                    Span::Leg(leg),
                    self.lengths[leg] + misses[leg % misses.len()],
                )
            })
            .collect()
    }

    pub fn body(&self, readings: Vec<Reading>) -> Body {
        Body {
            id: "main".to_owned(),
            eave_height: Length::feet(9.0),
            outline: Sketch::Turned {
                start: Point { x: 0.0, y: 0.0 },
                heading: Angle::degrees(0.0),
                turns: self.turns.iter().map(|t| Angle::degrees(*t)).collect(),
                turn_sigma: Angle::degrees(0.21),
            },
            readings,
            edges: Vec::new(),
            placed_from: None,
        }
    }
}

/// A reading of one span, in feet and hundredths.
pub fn taped(number: usize, span: Span, feet: f64) -> Reading {
    Reading {
        id: format!("t{number}"),
        span,
        value: Length::feet((feet * 100.0).round() / 100.0),
        text: None,
        sigma: None,
    }
}

/// Small misses, feet.
pub fn misses() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(-0.3..0.3_f64, 7)
}
