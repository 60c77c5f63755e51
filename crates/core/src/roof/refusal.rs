/// Why no roof can be raised. Each sentence names the body, the leg and the remedy.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RaiseError {
    /// There is nothing to raise a roof over.
    #[error("there is no roof body: give at least one outline")]
    NoBodies,
    /// Fewer than three corners.
    #[error("{body} has {corners} corners: an outline needs at least 3")]
    TooFewCorners {
        /// Name of the body.
        body: String,
        /// How many there are.
        corners: usize,
    },
    /// More legs than any house has.
    #[error("{body} has {legs} legs: draw it as bodies of at most {most} legs")]
    TooManyLegs {
        /// Name of the body.
        body: String,
        /// How many there are.
        legs: usize,
        /// How many are taken.
        most: usize,
    },
    /// Not one rise a leg.
    #[error("{body} has {legs} legs but {rises} edges: give each leg its pitch or its end")]
    EdgesCount {
        /// Name of the body.
        body: String,
        /// How many legs there are.
        legs: usize,
        /// How many edges were given.
        rises: usize,
    },
    /// A corner or height that is no number.
    #[error("{body}: {what} is not a number: read it again")]
    NotANumber {
        /// Name of the body.
        body: String,
        /// What is no number.
        what: String,
    },
    /// A leg without length.
    #[error(
        "leg {leg} of {body} has no length: corners {from} and {to} are one place, leave one out"
    )]
    CornersEqual {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
        /// Its first corner.
        from: usize,
        /// Its last corner.
        to: usize,
    },
    /// All corners in one line.
    #[error("the outline of {body} holds no area: its corners lie in one line, read a turn again")]
    WithoutArea {
        /// Name of the body.
        body: String,
    },
    /// Two legs cross or touch.
    #[error(
        "the outline of {body} crosses itself: legs {leg} and {other} meet, move a corner or split the body there"
    )]
    CrossesItself {
        /// Name of the body.
        body: String,
        /// One leg.
        leg: usize,
        /// The other.
        other: usize,
    },
    /// A pitch that no roof has.
    #[error(
        "leg {leg} of {body} has the pitch {pitch}: a pitch is more than 0 and at most 48 in 12"
    )]
    Pitch {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
        /// What was given.
        pitch: String,
    },
    /// Bands that do not stand on each other.
    #[error(
        "leg {leg} of {body}: bands go from the eave up, 1 to 4 of them, each but the last with a rise above 0 and the last with none"
    )]
    Bands {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
    },
    /// Neighbouring legs in one line that rise differently.
    #[error(
        "legs {leg} and {other} of {body} lie in one line and rise differently: give one of them its own body"
    )]
    LegsInOneLine {
        /// Name of the body.
        body: String,
        /// One leg.
        leg: usize,
        /// The other.
        other: usize,
    },
    /// Fronts that face the same way meet at unequal pitches.
    #[error(
        "legs {leg} and {other} of {body} face the same way at {one} and {two} and their slopes overlap: give one of them its own body"
    )]
    Overtaking {
        /// Name of the body.
        body: String,
        /// The lower-numbered leg.
        leg: usize,
        /// The other.
        other: usize,
        /// How the first rises.
        one: String,
        /// How the other rises.
        two: String,
    },
    /// All legs are ends.
    #[error(
        "every leg of {body} is an end, so the roof never closes: give at least one leg a pitch"
    )]
    NeverCloses {
        /// Name of the body.
        body: String,
    },
    /// The slopes run out between ends.
    #[error(
        "the roof of {body} never closes: no slope reaches what lies between the ends at legs {legs}, give one of them a pitch"
    )]
    LeavesOpen {
        /// Name of the body.
        body: String,
        /// The ends that stand around the open part, in words.
        legs: String,
    },
    /// The fronts came to no end.
    #[error(
        "the slopes of {body} could not be followed past leg {leg}: move a corner near it by an inch or split the body there"
    )]
    LostTrack {
        /// Name of the body.
        body: String,
        /// A leg near the trouble.
        leg: usize,
    },
    /// More bodies than any house has.
    #[error("there are {bodies} roof bodies: one roof takes at most {most}, make it two jobs")]
    TooManyBodies {
        /// How many there are.
        bodies: usize,
        /// How many are taken.
        most: usize,
    },
}
