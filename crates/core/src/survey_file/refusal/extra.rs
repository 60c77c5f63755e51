//! Walls, penetrations, deck, covering and hearsay.

/// A wall, penetration or settings that cannot be one.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ExtraFault {
    /// A wall from a place to itself.
    #[error("the wall runs from a place to itself: give its two ends")]
    WallWithoutLength,
    /// A kind of penetration that does not exist.
    #[error(
        "the kind \"{kind}\" is unknown: write pipe, mast, flue, chimney, skylight, box vent, fan, dish, solar or other"
    )]
    UnknownKind {
        /// As written.
        kind: String,
    },
    /// A penetration that needs its size.
    #[error("a {kind} needs {key}: add {example}")]
    SizeMissing {
        /// What it is.
        kind: &'static str,
        /// What lacks.
        key: &'static str,
        /// What to write.
        example: &'static str,
    },
    /// A size that goes with other kinds.
    #[error("a {kind} has no {key}: take it out, or look again at the kind")]
    SizeNotHere {
        /// What it is.
        kind: &'static str,
        /// The size given.
        key: &'static str,
    },
    /// A place in plan and a face.
    #[error("it gives both at and face_of: keep one of the two")]
    TwoPlaces,
}
