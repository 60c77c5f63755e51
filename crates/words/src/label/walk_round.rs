//! Walk-round: photos of each part of the house, and what to look for.

labels! {
    /// Walk-round: photos of each part of the house, and what to look for.
    WalkRoundLabel, walk_round;
    ConfirmAll;
    NothingToConfirm: sentence;
    Photos;
    NoFront: sentence;
    WhichSide: heading;
    LookFor: heading;
    FoundSeen;
    FoundNone;
    FoundNotLooked;
    NotCounted;
    OneLess;
    OneMore;
}
