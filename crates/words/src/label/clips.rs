//! Readings recorded as sound, to be typed later.

labels! {
    /// Readings recorded as sound, to be typed later.
    ClipsLabel, clips;
    Title: heading;
    RecordIt;
    Stop;
    Listening: sentence;
    Kept: sentence;
    NoMicrophone: sentence;
    NotKept: sentence;
    TypeIt;
    Typed;
    Recording;
}
