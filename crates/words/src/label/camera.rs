//! The camera in the page.

labels! {
    /// The camera in the page.
    CameraLabel, camera;
    Title: heading;
    Finder;
    Shutter;
    Done;
    Opening: sentence;
    NotKept: sentence;
    Refused: sentence;
    AddPhotos;
}
