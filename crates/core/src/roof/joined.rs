//! All bodies together: the faces that are seen from above, and the pieces of edge around them.

use super::edges::Piece;
use super::raised::Raised;
use super::{BodyShape, Face, RoofRefusal};

/// The faces of all bodies and what bounds them.
pub(super) struct Joined {
    pub raised: Vec<Raised>,
    /// By body, leg, band, then least place along the leg.
    pub faces: Vec<Face>,
    pub pieces: Vec<Piece>,
}

impl Joined {
    /// Raises each body.
    pub fn new(bodies: &[BodyShape]) -> Result<Joined, RoofRefusal> {
        let [shape] = bodies else {
            return Err(match bodies.len() {
                0 => RoofRefusal::NoBodies,
                bodies => RoofRefusal::NotJoined { bodies },
            });
        };
        let raised = Raised::new(shape)?;
        let faces = raised.faces(0);
        let pieces = raised.pieces(0, &faces);
        Ok(Joined {
            raised: vec![raised],
            faces: faces.into_iter().map(|numbered| numbered.face).collect(),
            pieces,
        })
    }
}
