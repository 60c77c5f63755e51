//! What stands out of a roof: boots, openings and what flashes them.

use super::shadow::Cut;
use super::slope::{Slope, Uv, middle};
use crate::roof::Face;
use crate::settings::BootKind;
use crate::survey::{Penetration, PenetrationKind, Place};
use crate::units::Length;

/// A chimney or skylight on a face.
#[derive(Clone, Copy, Debug)]
pub(super) struct Opening {
    /// Index among the penetrations.
    pub penetration: usize,
    /// Index of the face.
    pub face: usize,
    /// Across the slope, feet.
    pub width: f64,
    /// Up the slope, feet on the slope.
    pub up_slope: f64,
    /// Where it lies on the face.
    pub cut: Cut,
}

impl Opening {
    /// Its area on the slope, sq ft.
    pub fn area(&self) -> f64 {
        self.width * self.up_slope
    }
}

/// Chimneys and skylights, each on the first face that carries it; one that stands on no face has
/// nothing to be flashed to.
///
/// `faces`: indices in the order in which faces are laid.
pub(super) fn openings(
    penetrations: &[Penetration],
    faces: &[Face],
    order: &[usize],
    rings: &[Vec<Uv>],
) -> Vec<Opening> {
    let mut openings = Vec::new();
    for (index, it) in penetrations.iter().enumerate() {
        let Some([width, depth]) = size(it.kind) else {
            continue;
        };
        let Some(face) = order.iter().copied().find(|&at| faces[at].carries(it.at)) else {
            continue;
        };
        let slope = Slope::from_face(&faces[face]);
        let [u, v] = match it.at {
            Place::Plan(at) => slope.drop(at),
            Place::FaceOf { .. } => middle(&rings[face]),
        };
        let up_slope = depth.in_feet() * slope.factor;
        let (half_width, half_depth) = (6.0 * width.in_feet(), 6.0 * up_slope);
        openings.push(Opening {
            penetration: index,
            face,
            width: width.in_feet(),
            up_slope,
            cut: Cut {
                u: [u - half_width, u + half_width],
                v: [v - half_depth, v + half_depth],
            },
        });
    }
    openings
}

/// Width and depth of what is flashed all round.
pub(super) fn size(kind: PenetrationKind) -> Option<[Length; 2]> {
    match kind {
        PenetrationKind::Chimney { width, depth } | PenetrationKind::Skylight { width, depth } => {
            Some([width, depth])
        }
        PenetrationKind::Pipe { .. }
        | PenetrationKind::Mast { .. }
        | PenetrationKind::Flue { .. }
        | PenetrationKind::BoxVent
        | PenetrationKind::Fan
        | PenetrationKind::Dish
        | PenetrationKind::Solar
        | PenetrationKind::Other => None,
    }
}

/// The boot of a penetration, its size in inches as text.
pub(super) fn boot(kind: PenetrationKind) -> Option<(BootKind, String)> {
    let (kind, size) = match kind {
        PenetrationKind::Pipe { size } => (BootKind::Pipe, size),
        PenetrationKind::Mast { size } => (BootKind::Mast, size),
        PenetrationKind::Flue { size } => (BootKind::Flue, size),
        PenetrationKind::Chimney { .. }
        | PenetrationKind::Skylight { .. }
        | PenetrationKind::BoxVent
        | PenetrationKind::Fan
        | PenetrationKind::Dish
        | PenetrationKind::Solar
        | PenetrationKind::Other => return None,
    };
    Some((kind, size_text(size)))
}

/// Inches to six digits, without trailing zeros: `1.5`, `3`.
fn size_text(size: Length) -> String {
    let inches = size.in_inches();
    let whole_digits = inches.abs().max(1e-9).log10().floor() as i32 + 1;
    let decimals = usize::try_from(6 - whole_digits).unwrap_or(0);
    let text = format!("{inches:.decimals$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}
