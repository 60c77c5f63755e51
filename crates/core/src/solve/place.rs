//! Bodies found from a corner of another are moved to where that corner came out.

use crate::outline::Outline;
use crate::survey::{Body, Point};

/// Moves each body whose place is given from another body.
///
/// A body found from one that is not in the survey, or in a circle, stays where its sketch starts.
pub(super) fn put_in_place(bodies: &[Body], outlines: &mut [Outline]) {
    let mut in_place: Vec<bool> = bodies
        .iter()
        .map(|body| body.placed_from.is_none())
        .collect();
    // Each round places at least one body, or nothing more can be placed.
    for _ in bodies {
        for (k, body) in bodies.iter().enumerate() {
            let Some(from) = body.placed_from.as_ref().filter(|_| !in_place[k]) else {
                continue;
            };
            let Some(other) = bodies.iter().position(|other| other.id == from.body) else {
                continue;
            };
            if !in_place[other] {
                continue;
            }
            in_place[k] = true;
            let here = outlines[k].corners.first().copied().flatten();
            let there = outlines[other].corners.get(from.corner).copied().flatten();
            if let (Some(here), Some(there)) = (here, there) {
                let by = Point {
                    x: there.at.x + from.offset.x - here.at.x,
                    y: there.at.y + from.offset.y - here.at.y,
                };
                for corner in outlines[k].corners.iter_mut().flatten() {
                    corner.at.x += by.x;
                    corner.at.y += by.y;
                }
            }
        }
    }
}
