//! Roof observations.

/// Something seen that is none.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SeenFault {
    /// Over a leg stands a gable or a slope.
    #[error("\"{end}\" is nothing seen over a leg: write gable or slope")]
    UnknownEnd {
        /// As written.
        end: String,
    },
    /// Nothing said, or several things in one.
    #[error(
        "it must say one thing: \"leg\" with \"end\" or \"faces\", or \"ridge_of\" with \"over_eaves\""
    )]
    NotOneThing,
}
