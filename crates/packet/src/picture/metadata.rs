//! All that is told of one picture file.

use super::camera_data::CameraData;
use super::heif;
use super::kind::PictureKind;
use crate::sheet::{self, PhotoCopyError, Sheet, Whole};

/// What comes of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Kept and shown.
    Shown,
    /// Kept, and shown as far as it goes.
    ShownInPart,
    /// Kept, and no more.
    KeptNotShown,
    /// Not kept.
    Refused,
}

impl Outcome {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Outcome::Shown => "shown",
            Outcome::ShownInPart => "shown in part",
            Outcome::KeptNotShown => "kept, cannot be shown",
            Outcome::Refused => "refused",
        }
    }
}

/// What a file says of itself.
#[derive(Clone, Debug, PartialEq)]
pub struct PictureMetadata {
    /// What it is.
    pub kind: PictureKind,
    /// What comes of it.
    pub outcome: Outcome,
    /// The sentence, unless it is shown whole.
    pub say: Option<String>,
    /// Points across and down, upright, where it has a size that can be shown.
    pub upright_size: Option<[u32; 2]>,
    /// What the camera wrote.
    pub camera: CameraData,
    /// The sheet copy, where it can be shown.
    pub sheet: Option<Vec<u8>>,
}

/// Tells what a file is, named in sentences by `name`.
#[must_use]
pub fn read_metadata(name: &str, bytes: &[u8]) -> PictureMetadata {
    let kind = PictureKind::from_bytes(bytes);
    if let Some(why) = refusal(name, kind) {
        return PictureMetadata {
            kind,
            outcome: Outcome::Refused,
            say: Some(why),
            upright_size: None,
            camera: CameraData::default(),
            sheet: None,
        };
    }
    let camera = CameraData::read(bytes, kind);
    let (outcome, say, sheet) = match sheet::sheet(bytes) {
        Ok(Sheet {
            jpeg,
            whole: Whole::Yes,
        }) => (Outcome::Shown, None, Some(jpeg)),
        Ok(Sheet {
            jpeg,
            whole: Whole::CutShort,
        }) => (
            Outcome::ShownInPart,
            Some(format!(
                "The end of {name} is missing. It is kept and shown as far as it goes."
            )),
            Some(jpeg),
        ),
        Err(why) => (Outcome::KeptNotShown, Some(kept_only(kind, why)), None),
    };
    PictureMetadata {
        kind,
        outcome,
        say,
        upright_size: size(bytes, kind, &camera),
        camera,
        sheet,
    }
}

fn refusal(name: &str, kind: PictureKind) -> Option<String> {
    let why = match kind {
        PictureKind::Empty => "holds nothing",
        PictureKind::Video => "is a film and no photo",
        PictureKind::Sidecar => "describes a picture and is none",
        PictureKind::Unknown => "is no picture that is known here",
        PictureKind::Jpeg
        | PictureKind::Png
        | PictureKind::Webp
        | PictureKind::Heic
        | PictureKind::Tiff => return None,
    };
    Some(format!("The file {name} {why}. Nothing was booked."))
}

fn kept_only(kind: PictureKind, why: PhotoCopyError) -> String {
    match (kind, why) {
        (PictureKind::Heic, _) => "This photo is kept. This version cannot show HEIC; send it \
                                   again as JPEG to see it."
            .to_owned(),
        (PictureKind::Tiff, _) => "This photo is kept. This version cannot show TIFF; send it \
                                   again as JPEG to see it."
            .to_owned(),
        (_, PhotoCopyError::TooLarge) => {
            "This photo is kept. It has more points than can be shown; send \
                                   a smaller one to see it."
                .to_owned()
        }
        (
            _,
            PhotoCopyError::Empty
            | PhotoCopyError::Heic
            | PhotoCopyError::OtherKind
            | PhotoCopyError::Broken,
        ) => "This photo is kept. It is damaged and cannot be shown; take it again if you can."
            .to_owned(),
    }
}

fn size(bytes: &[u8], kind: PictureKind, camera: &CameraData) -> Option<[u32; 2]> {
    let stored = match kind {
        // It is turned by its own boxes: the camera's word would turn it twice.
        PictureKind::Heic => return heif::upright_size(bytes),
        PictureKind::Tiff => camera.size,
        PictureKind::Jpeg | PictureKind::Png | PictureKind::Webp => sheet::stored_size(bytes),
        PictureKind::Video | PictureKind::Sidecar | PictureKind::Empty | PictureKind::Unknown => {
            None
        }
    };
    let [across, down] = stored.filter(|size| sheet::can_be_shown(*size))?;
    match camera.orientation {
        Some(5..=8) => Some([down, across]),
        Some(_) | None => Some([across, down]),
    }
}
