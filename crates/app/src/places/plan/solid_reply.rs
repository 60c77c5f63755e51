//! The roof as a solid, from one place.

use crate::places::plan::request::SeenFrom;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// The roof as a solid: a picture beside the list of faces, which says all of it in figures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SolidView {
    /// Which job.
    pub job: Uuid,
    /// From where.
    pub from: SeenFrom,
    /// Width of the drawing.
    pub width: f64,
    /// Its height.
    pub height: f64,
    /// What is painted, in this order; nothing while there is no roof.
    pub painted: Vec<PaintedView>,
    /// Names of faces on it.
    pub names: Vec<SolidName>,
    /// The faces that are turned to the viewer, in words.
    pub faces: Vec<String>,
    /// Nobody read how high the walls are.
    pub walls_supposed: bool,
}

/// One piece, by paths as SVG writes them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PaintedView {
    /// What it covers.
    pub fill: String,
    /// Its lines, where they are not all of its rim.
    pub lines: Option<String>,
    /// How dark, from 0 to 4.
    pub shade: u8,
}

/// The name of a face on the drawing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SolidName {
    /// `Back 2`.
    pub name: String,
    /// Its middle.
    pub at: [f64; 2],
}
