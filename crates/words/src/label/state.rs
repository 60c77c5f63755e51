//! How well a thing is known.

labels! {
    /// How well a thing is known.
    StateLabel, state;
    NotLooked;
    Hearsay;
    WorkedOut;
    ReadOnce;
    OffPhoto;
    SettledAtDesk;
    Agreed;
    Proved;
    CannotGet;
    Suspect;
    Struck;
}
