//! Marks that a person sets on a photo.

/// What a mark is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Spot {
    /// An eave corner of [`super::House::corners`].
    Eave(usize),
    /// The ground straight under one.
    Foot(usize),
    /// One of [`super::House::peaks`].
    Peak(usize),
}

/// A mark set on a photo.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Pixels from the left and from the top of the picture.
    pub at: [f64; 2],
    /// What it is of.
    pub of: Spot,
}
