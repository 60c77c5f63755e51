//! Copies on other devices: joining a hub, letting a device join.

labels! {
    /// Copies on other devices: joining a hub, letting a device join.
    OtherCopiesLabel, other_copies;
    Title: heading;
    Alone: sentence;
    HubLink;
    Join;
    Joining;
    PhotoOfCode;
    ReadingCode;
    CodeRead: sentence;
    Shares: sentence;
    LetJoin;
    HowToJoin: sentence;
    QrCode;
}
