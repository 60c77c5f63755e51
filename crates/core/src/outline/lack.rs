//! What the readings of an outline leave open.

use super::nominal::Nominal;
use crate::survey::{Point, Span};
use nalgebra::{DMatrix, SymmetricEigen};

/// Ways in which the outline can still move, each a change of its unread legs.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Freedom {
    /// The change of every leg's length, as parts of a unit vector; 0 for legs that were read.
    pub modes: Vec<Vec<f64>>,
}

/// A reading at less than this (the sine of about one degree) to what it should hold does not hold it:
/// it would leave a spread of some fifty times its own.
const HOLDS: f64 = 0.02;
/// A part of a mode this small is rounding noise.
const MOVES: f64 = 0.02;

impl Freedom {
    /// What legs without a reading can do while every read leg keeps its length and every leg its
    /// nominal direction. `places`: the corners as far as they are known, for the directions of ties.
    ///
    /// A net of exact right angles is judged at exact right angles: bent a little by its readings
    /// it would seem to be held, by next to nothing.
    pub(crate) fn of(
        shape: &Nominal,
        read: &[bool],
        spans: impl Iterator<Item = Span>,
        places: &[Point],
    ) -> Freedom {
        let unread: Vec<usize> = (0..shape.legs()).filter(|&leg| !read[leg]).collect();
        if unread.is_empty() {
            return Freedom::default();
        }
        let mut held = DMatrix::<f64>::zeros(unread.len(), unread.len());
        let mut hold = |row: Vec<f64>| {
            let touched: Vec<(usize, f64)> = row
                .into_iter()
                .enumerate()
                .filter(|(_, f)| f.abs() > 0.0)
                .collect();
            for (i, a) in &touched {
                for (j, b) in &touched {
                    held[(*i, *j)] += a * b;
                }
            }
        };
        hold(unread.iter().map(|&leg| shape.units[leg][0]).collect());
        hold(unread.iter().map(|&leg| shape.units[leg][1]).collect());
        for span in spans {
            let (from, to, axis) = match span {
                Span::Leg(_) | Span::WallOfLeg { .. } => continue,
                Span::Tie(from, to) => (from, to, toward(places[from], places[to])),
                Span::Overall {
                    from,
                    to,
                    along_leg,
                } => (from, to, shape.units[along_leg]),
            };
            let mut walked = vec![false; shape.legs()];
            shape
                .legs_between(from, to)
                .for_each(|leg| walked[leg] = true);
            hold(
                unread
                    .iter()
                    .map(|leg| {
                        let u = shape.units[*leg];
                        if walked[*leg] {
                            u[0] * axis[0] + u[1] * axis[1]
                        } else {
                            0.0
                        }
                    })
                    .collect(),
            );
        }
        let eigen = SymmetricEigen::new(held);
        let modes = (0..unread.len())
            .filter(|&k| eigen.eigenvalues[k] < HOLDS * HOLDS)
            .map(|k| {
                let mut mode = vec![0.0; shape.legs()];
                for (row, &leg) in unread.iter().enumerate() {
                    mode[leg] = eigen.eigenvectors[(row, k)];
                }
                mode
            })
            .collect();
        Freedom { modes }
    }

    /// Whether anything says how long a leg is.
    pub(crate) fn leaves_leg_open(&self, leg: usize) -> bool {
        self.modes.iter().any(|mode| mode[leg].abs() > MOVES)
    }

    /// Whether nothing says where a corner lies.
    pub(crate) fn leaves_corner_open(&self, shape: &Nominal, corner: usize) -> bool {
        self.modes.iter().any(|mode| {
            let (x, y) = (0..corner).fold((0.0, 0.0), |(x, y), leg| {
                let u = shape.units[leg];
                (x + mode[leg] * u[0], y + mode[leg] * u[1])
            });
            x.hypot(y) > MOVES
        })
    }
}

fn toward(from: Point, to: Point) -> [f64; 2] {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let length = dx.hypot(dy);
    if length > 0.0 {
        [dx / length, dy / length]
    } else {
        [0.0, 0.0]
    }
}
