//! Outlines and pitches to a roof.

use super::edges::{self, Piece};
use super::plan::Plan;
use super::raised::Raised;
use super::union::RoofUnion;
use super::{BodyShape, EdgeKind, RaiseError, Roof, RoofCaution, walls};
use crate::survey::WallSegment;
use crate::units::Length;

/// Raises the roof over `bodies`: every pitched leg's slope rises inward until it meets another.
/// `walls` that stand along an end leg make its edges head walls and side walls.
///
/// Checked against an exact-arithmetic skeleton and against planes on scan lines.
///
/// # Errors
/// Names the body and leg that admit no roof, and what to do.
pub fn raise(bodies: &[BodyShape], walls: &[WallSegment]) -> Result<Roof, RaiseError> {
    let joined = RoofUnion::new(bodies)?;
    let known = joined.pieces.iter().filter_map(Piece::known).collect();
    let plans: Vec<&Plan> = joined.raised.iter().map(|raised| &raised.plan).collect();
    let (known, mut cautions) = walls::against(&plans, walls, known);
    let edges = edges::join(known);
    cautions.extend(joined.raised.iter().flat_map(Raised::inside_gables));
    cautions.extend(joined.raised.iter().flat_map(Raised::thin_strips));
    cautions.extend(
        edges
            .iter()
            .filter(|edge| {
                edge.kind == EdgeKind::Valley
                    && (edge.to.height() - edge.from.height()).abs() < LEVEL_VALLEY
            })
            .map(|edge| RoofCaution::LevelValley {
                from: edge.from,
                to: edge.to,
            }),
    );
    Ok(Roof {
        faces: joined.faces,
        edges,
        cautions,
    })
}

/// A valley that rises less than this from end to end is level.
const LEVEL_VALLEY: Length = Length::feet(1e-6);
