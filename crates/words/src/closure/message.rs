use eavebook_core::book::kinds::Thing;
use eavebook_core::units::Length;

messages! {
    /// What the two sums of an outline say.
    ClosureMessage, "closure";
    /// No leg is read.
    NoLegs;
    /// Both sums are within tolerance.
    Closes {
        /// Whole inches that hold the gap.
        within: Length,
    } = { within: Length::inches(2.0) };
    /// One leg or two to read again; `or_another` when there are more suspects.
    ReadAgain {
        /// Likeliest first.
        things: Vec<Thing>,
        /// There are more suspects than these.
        or_another: bool,
    } = { things: vec![Thing::Leg { leg: 2 }], or_another: false },
        { things: vec![Thing::Leg { leg: 2 }, Thing::Leg { leg: 6 }], or_another: true };
}
