//! What a photo shows, from how far, and its place in the job.

labels! {
    /// What a photo shows, from how far, and its place in the job.
    PhotoLabel, photo;
    Tag;
    Yes;
    Other;
    PlaceFront;
    PlaceRight;
    PlaceBack;
    PlaceLeft;
    PlaceRoof;
    PlaceUnder;
    PlaceGround;
    FromHowFar;
    DistanceWhole;
    DistanceMiddle;
    DistanceClose;
    StateConfirmed;
    StateGuess;
    StateNotLooked;
    Private;
    SetAside;
    BringBack;
    NotHere: sentence;
}
