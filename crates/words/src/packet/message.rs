use crate::Quoted;
use crate::label::paper::PaperLabel;
use crate::samples::local_time;
use chrono::{DateTime, FixedOffset};

messages! {
    /// What a packet lacks, why it was not made, and its start page.
    PacketMessage, "packet";
    /// A photo by its number.
    Photo {
        /// From 1.
        photo: u32,
    } = { photo: 7 };
    /// Title of an original.
    OriginalPhoto {
        /// From 1.
        photo: u32,
    } = { photo: 7 };
    /// The original of a photo is missing.
    PhotoNotHere;
    /// Remedy of a missing original.
    FetchPhoto;
    /// The end of a photo is missing.
    PhotoCutShort;
    /// Remedy of a photo that is cut short.
    SendWhole;
    /// A photo without a byte.
    PhotoEmpty;
    /// Remedy of an empty photo.
    TakeAgain;
    /// A photo with more pixels than are shown.
    PhotoTooLarge;
    /// Remedy of a photo that is too large.
    SendSmaller;
    /// A photo in HEIC.
    PhotoHeic;
    /// A photo of another kind of file.
    PhotoOtherKind;
    /// A photo that does not decode.
    PhotoDamaged;
    /// Remedy of a photo that cannot be shown.
    SendJpeg;
    /// A paper without its font.
    FontMissing {
        /// Its title.
        paper: PaperLabel,
    } = { paper: PaperLabel::CrewSheet };
    /// Remedy of a missing font.
    InstallAgain;
    /// A paper that the typesetter refused.
    PaperRefused {
        /// Its title.
        paper: PaperLabel,
        /// Of the typesetter.
        reason: Quoted,
    } = { paper: PaperLabel::CrewSheet, reason: "no such image".into() };
    /// Remedy of a paper that was refused.
    MakeAgain;
    /// A paper with letters that no font has.
    LettersMissing {
        /// Its title.
        paper: PaperLabel,
        /// The first few.
        letters: Quoted,
    } = { paper: PaperLabel::CrewSheet, letters: "屋".into() };
    /// Remedy of letters that no font has.
    WriteLatin;
    /// The disk is full.
    NoRoom {
        /// At most.
        megabytes: u64,
        /// Where.
        folder: Quoted,
    } = { megabytes: 7, folder: "out".into() };
    /// The folder cannot be written.
    NotWritten {
        /// Where.
        folder: Quoted,
        /// Of the system.
        cause: Quoted,
    } = { folder: "out".into(), cause: "permission denied".into() };
    /// Version and time of a packet, on its start page.
    Made {
        /// From 1.
        version: u32,
        /// `None` if its time is not readable.
        at: Option<DateTime<FixedOffset>>,
    } = { version: 1, at: local_time() };
    /// The firm's packet must not be passed on.
    FirmOnly;
    /// How to check a packet, and what made it.
    HowToCheck {
        /// The program and its version.
        program: Quoted,
    } = { program: "eavebook 0.1.0".into() };
}
