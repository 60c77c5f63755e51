//! The review at the desk by single keys.

labels! {
    /// The review at the desk by single keys.
    DeskLabel, desk;
    NothingChosen: sentence;
    NoPhoto: sentence;
    NothingToSettle: sentence;
    AllProved: sentence;
    AllVisited: sentence;
}
