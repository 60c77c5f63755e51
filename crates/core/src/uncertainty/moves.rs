//! Shapes with a corner or a pitch moved by a little, for derivatives by difference.

use crate::pitch::SettledRise;
use crate::roof::{BodyShape, Rise};
use crate::units::{Angle, Pitch};
use std::collections::BTreeMap;

/// How far a corner is moved, feet: far above rounding, far below any edge that counts.
pub const MOVE_FT: f64 = 0.002;
/// How far a slope is turned, degrees.
pub const MOVE_DEG: f64 = 0.005;
/// Slopes of a body that are unsure, each once: where they were read, and degrees.
#[must_use]
pub fn unsure_pitches(rises: &[SettledRise]) -> BTreeMap<usize, f64> {
    let slopes = rises.iter().filter_map(|rise| match rise {
        SettledRise::Slope(pitch) => Some((pitch.read_at, pitch.sigma.in_degrees())),
        SettledRise::Unknown | SettledRise::Bands(_) | SettledRise::Gable | SettledRise::Wall => {
            None
        }
    });
    slopes.filter(|(_, sigma)| *sigma > 0.0).collect()
}

/// Coordinate `k` (x0 y0 x1 ..) of a body moved.
#[must_use]
pub fn with_corner(shapes: &[BodyShape], body: usize, k: usize) -> Vec<BodyShape> {
    let mut moved = shapes.to_vec();
    let corner = &mut moved[body].corners[k / 2];
    if k.is_multiple_of(2) {
        corner.x += MOVE_FT;
    } else {
        corner.y += MOVE_FT;
    }
    moved
}

/// Every leg of a body whose slope was read at one leg, turned by some degrees.
#[must_use]
pub fn with_slope(
    shapes: &[BodyShape],
    body: usize,
    rises: &[SettledRise],
    by: (usize, f64),
) -> Vec<BodyShape> {
    let mut moved = shapes.to_vec();
    turn_slopes(&mut moved[body], rises, by);
    moved
}

/// Turns every leg of a body whose slope was read at one leg by some degrees.
pub fn turn_slopes(body: &mut BodyShape, rises: &[SettledRise], (read_at, by): (usize, f64)) {
    for (leg, rise) in body.legs.iter_mut().zip(rises) {
        if let SettledRise::Slope(pitch) = rise
            && pitch.read_at == read_at
        {
            let degrees = pitch.used.angle().in_degrees() + by;
            leg.rise = Rise::slope(Pitch::from_angle(Angle::degrees(degrees)));
        }
    }
}
