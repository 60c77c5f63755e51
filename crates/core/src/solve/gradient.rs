//! How the area of the roof changes with its corners and slopes.

use crate::roof::{BodyShape, Rise, raise};
use crate::survey::WallSegment;
use crate::units::Pitch;

/// Derivatives of the whole roof's area by what makes one body.
#[derive(Clone, Debug, PartialEq)]
pub struct AreaGradient {
    /// By the two axes of each corner, sq ft per ft.
    pub corners: Vec<[f64; 2]>,
    /// By the slope of each leg, sq ft per 1 in 12; 0 where it has not one slope.
    pub pitches: Vec<f64>,
}

/// Step of the differences, feet and rises in 12: corners nearer than a ten-millionth are one, so
/// no less than a hundred times that would do.
const STEP: f64 = 1e-3;

/// One gradient a body, by central differences of the raised roof.
pub(super) fn area_gradient(shapes: &[BodyShape], walls: &[WallSegment]) -> Vec<AreaGradient> {
    // Squaring would hide what one corner does.
    let mut shapes: Vec<BodyShape> = shapes
        .iter()
        .map(|shape| BodyShape {
            nominal_directions: None,
            ..shape.clone()
        })
        .collect();
    let area = |shapes: &[BodyShape]| raise(shapes, walls).ok().map(|roof| roof.area());
    let mut gradients = Vec::new();
    for body in 0..shapes.len() {
        let legs = shapes[body].corners.len();
        let mut corners = Vec::new();
        for corner in 0..legs {
            let mut by_axis = [0.0; 2];
            for (axis, by) in by_axis.iter_mut().enumerate() {
                let was = shapes[body].corners[corner];
                let mut moved = |step: f64| {
                    let at = &mut shapes[body].corners[corner];
                    *at = was;
                    if axis == 0 {
                        at.x += step;
                    } else {
                        at.y += step;
                    }
                    let area = area(&shapes);
                    shapes[body].corners[corner] = was;
                    area
                };
                *by = slope_of(moved(STEP), moved(-STEP));
            }
            corners.push(by_axis);
        }
        let mut pitches = Vec::new();
        for leg in 0..legs {
            let was = shapes[body].legs[leg].rise.clone();
            let Some(pitch) = one_slope(&was) else {
                pitches.push(0.0);
                continue;
            };
            let mut tilted = |step: f64| {
                shapes[body].legs[leg].rise = Rise::slope(Pitch::rise_in_12(pitch.in_12() + step));
                area(&shapes)
            };
            pitches.push(slope_of(tilted(STEP), tilted(-STEP)));
            shapes[body].legs[leg].rise = was;
        }
        gradients.push(AreaGradient { corners, pitches });
    }
    gradients
}

fn slope_of(above: Option<f64>, below: Option<f64>) -> f64 {
    match (above, below) {
        (Some(above), Some(below)) => (above - below) / (2.0 * STEP),
        (None, _) | (_, None) => 0.0,
    }
}

fn one_slope(rise: &Rise) -> Option<Pitch> {
    match rise {
        Rise::Slopes(slopes) => match slopes.as_slice() {
            [(pitch, None)] => Some(*pitch),
            _ => None,
        },
        Rise::Gable | Rise::Wall => None,
    }
}
