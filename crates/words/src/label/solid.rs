//! The 3D view of the roof.

labels! {
    /// The 3D view of the roof.
    SolidLabel, solid;
    Title: heading;
    FromFront;
    FromRight;
    FromBack;
    FromLeft;
    FromStreetCorner;
    NotMeasured: sentence;
    WallsAssumed: sentence;
    NoRoof: sentence;
}
