//! Why a roof cannot be taken off.

/// Why there is no takeoff of a roof.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NoTakeoff {
    /// A roof past all building.
    #[error("the roof is over 1,000,000,000 sq ft: look at the lengths of its legs")]
    TooLarge,
    /// Courses so narrow that counting them would not end soon.
    #[error(
        "leg {leg} of body {body} makes the faces take more courses than are counted: write a wider exposure_in in the rates, or look at the lengths of the legs"
    )]
    TooManyCourses {
        /// Index of the body.
        body: usize,
        /// The leg.
        leg: usize,
    },
}
