//! Settled outlines and slopes to the shapes that the roof is raised over.

use super::body::SolvedBody;
use crate::outline::Lack;
use crate::pitch::SettledRise;
use crate::roof::{BodyShape, LegRise, RaiseError, Rise};
use crate::survey::{Body, Sketch};
use crate::units::{Angle, Length};

/// The outline over which a roof is raised, if the outline was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// The corners as the readings place them. A front that was read a hair out of line makes a hair
    /// of a face.
    AsAdjusted,
    /// The outline as it was meant: legs of one direction made parallel, those nearly in one line put
    /// in one line. The order list takes this one, since a hair of a face makes hips of many feet.
    Squared,
}

/// Why there is no roof.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RoofUnavailable {
    /// Nobody booked a body.
    #[error("there is no outline yet: walk round the house and read its legs")]
    NoBodies,
    /// Corners that no reading places.
    #[error("the outline of {body} lacks a reading: {}", wanted(*leg, lack.as_deref()))]
    OutlineOpen {
        /// Name of the body.
        body: String,
        /// A leg that can still grow or shrink.
        leg: usize,
        /// What lacks.
        lack: Option<Box<Lack>>,
    },
    /// Slopes that nobody looked at.
    #[error("nobody said what rises at leg {leg} of {body}: read its pitch or call it a gable")]
    RiseUnknown {
        /// Name of the body.
        body: String,
        /// The first such leg.
        leg: usize,
    },
    /// An outline from readings that no roof can stand on: its readings want another look.
    #[error("{0}")]
    OutlineAmiss(RaiseError),
    /// The shape admits no roof.
    #[error("{0}")]
    Refused(RaiseError),
}

fn wanted(leg: usize, lack: Option<&Lack>) -> String {
    lack.map_or_else(
        || format!("nothing says how long leg {leg} is: read it or a tie across it"),
        Lack::to_string,
    )
}

impl RoofUnavailable {
    /// What a refusal means for this survey: an outline that was read may come out amiss without
    /// anybody having written nonsense; one that was given may not.
    #[must_use]
    pub fn from_refusal(refusal: RaiseError, bodies: &[Body]) -> RoofUnavailable {
        let was_read = |name: &str| {
            bodies
                .iter()
                .any(|body| body.id == name && matches!(body.outline, Sketch::Turned { .. }))
        };
        let may_pass = if let RaiseError::CornersEqual { body, .. }
        | RaiseError::WithoutArea { body }
        | RaiseError::CrossesItself { body, .. } = &refusal
        {
            was_read(body)
        } else {
            false
        };
        if may_pass {
            RoofUnavailable::OutlineAmiss(refusal)
        } else {
            RoofUnavailable::Refused(refusal)
        }
    }
}

/// Returns the shapes of all bodies, as the roof is raised over them.
///
/// # Errors
/// The first thing that one of them lacks.
pub fn shapes(
    bodies: &[Body],
    solved: &[SolvedBody],
    ground: Ground,
) -> Result<Vec<BodyShape>, RoofUnavailable> {
    if bodies.is_empty() {
        return Err(RoofUnavailable::NoBodies);
    }
    bodies
        .iter()
        .zip(solved)
        .map(|(body, solved)| shape(body, solved, ground))
        .collect()
}

fn shape(body: &Body, solved: &SolvedBody, ground: Ground) -> Result<BodyShape, RoofUnavailable> {
    let open = |leg: usize| RoofUnavailable::OutlineOpen {
        body: body.id.clone(),
        leg,
        lack: solved
            .outline
            .lacks
            .iter()
            .find(|lack| lack.legs.contains(&leg))
            .cloned()
            .map(Box::new),
    };
    if let Some(leg) = solved
        .outline
        .legs
        .iter()
        .position(|leg| leg.length.is_none())
    {
        return Err(open(leg));
    }
    let mut corners = Vec::new();
    for (k, corner) in solved.outline.corners.iter().enumerate() {
        corners.push(corner.ok_or_else(|| open(k))?.at);
    }
    let mut legs = Vec::new();
    for (leg, rise) in solved.rises.iter().enumerate() {
        let rise = match rise {
            SettledRise::Unknown => {
                return Err(RoofUnavailable::RiseUnknown {
                    body: body.id.clone(),
                    leg,
                });
            }
            SettledRise::Slope(pitch) => Rise::slope(pitch.used),
            SettledRise::Bands(bands) => Rise::Slopes(bands.clone()),
            SettledRise::Gable => Rise::Gable,
            SettledRise::Wall => Rise::Wall,
        };
        let overhang = body
            .edges
            .get(leg)
            .and_then(|edge| edge.overhang)
            .unwrap_or(Length::ZERO);
        legs.push(LegRise { rise, overhang });
    }
    Ok(BodyShape {
        id: body.id.clone(),
        corners,
        nominal_directions: match ground {
            Ground::AsAdjusted => None,
            Ground::Squared => nominal_directions(&body.outline),
        },
        legs,
        eave_height: body.eave_height,
    })
}

/// Directions from the first axis, one a leg; `None` if the corners are known.
fn nominal_directions(sketch: &Sketch) -> Option<Vec<Angle>> {
    match sketch {
        Sketch::Known(_) => None,
        Sketch::Turned { heading, turns, .. } => {
            let mut direction = heading.in_degrees();
            let mut directions = Vec::new();
            for turn in turns {
                directions.push(Angle::degrees(direction));
                direction += turn.in_degrees();
            }
            Some(directions)
        }
    }
}
