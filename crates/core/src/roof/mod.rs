//! Outlines and pitches to faces, edges and areas.
//!
//! [`raise`] takes bodies whose corners are settled and whose legs are decided. Each pitched leg
//! carries a plane; where the planes rise to is found by letting the eaves move in with the height
//! as the clock (`wavefront`, `loops`), which leaves faces and creases behind (`sweep`). What a
//! crease is, is decided from the planes beside it (`edges`). Strips too thin to build go to the
//! slope beside them (`thin`, `given`). Where bodies meet, what is inside another
//! is taken out (`solid`, `overlay`, `joined`). [`spread`] says how the areas follow
//! what was measured. [`solid_view`] shows the same faces as a solid.

mod body;
mod edges;
mod loops;
mod overlay;
mod plan;
mod planes;
mod raise;
mod raised;
mod refusal;
mod rings;
mod sliver_transfer;
mod slivers;
mod solid;
mod spread;
mod squared;
mod surface;
mod sweep;
mod union;
mod view;
mod view_order;
mod view_svg;
mod walls;
mod wavefront;

pub use body::{BodyShape, LegRise, Rise};
pub use raise::raise;
pub use refusal::RaiseError;
pub use spread::{Gradient, SlopeGroup, Spread, spread};
pub use surface::{Edge, EdgeKind, Face, Roof, RoofCaution};
pub use view::{Part, Piece, SolidView, Viewpoint, WALLS, Walls, ground_under, solid_view};
pub use view_svg::{Painted, SolidPicture, solid_picture, solid_svg};
