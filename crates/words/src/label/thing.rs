//! What can be done with one thing of a list.

labels! {
    /// What can be done with one thing of a list.
    ThingLabel, thing;
    ReadAgain;
    CannotReach;
    Strike;
    Story;
    NoStory: sentence;
    NothingToStrike: sentence;
    WorkedOut: sentence;
    PhotoOf;
}
