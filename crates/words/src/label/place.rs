//! Names of the places of the program.

labels! {
    /// Names of the places of the program.
    PlaceLabel, place;
    Today: heading;
    Arrive: heading;
    WalkRound: heading;
    FieldBook: heading;
    Plan: heading;
    LeaveSiteCheck: heading;
    Takeoff: heading;
    JobFile: heading;
}
