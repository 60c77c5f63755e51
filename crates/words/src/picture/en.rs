use super::PictureMessage;
use crate::{En, Format};

pub(super) fn text(message: &PictureMessage, f: &En) -> String {
    match message {
        PictureMessage::Empty { file } => format!("The file {} is empty. Nothing was recorded.", f.quoted(file)),
        PictureMessage::Video { file } => format!("The file {} is a video, not a photo. Nothing was recorded.", f.quoted(file)),
        PictureMessage::Sidecar { file } => format!("The file {} only describes a picture. Nothing was recorded.", f.quoted(file)),
        PictureMessage::NotPicture { file } => format!("The file {} is not a picture of a known kind. Nothing was recorded.", f.quoted(file)),
        PictureMessage::EndMissing { file } => format!("The end of {} is missing. It is kept and shown as far as it goes.", f.quoted(file)),
        PictureMessage::Heic => "This photo is kept. This version cannot show HEIC. Send it again as JPEG to see it.".to_owned(),
        PictureMessage::Tiff => "This photo is kept. This version cannot show TIFF. Send it again as JPEG to see it.".to_owned(),
        PictureMessage::TooLarge => "This photo is kept. It has more pixels than can be shown. Send a smaller one to see it.".to_owned(),
        PictureMessage::Damaged => "This photo is kept. It is damaged and cannot be shown. Take it again if you can.".to_owned(),
        PictureMessage::SameAs { file, first } => format!("The file {} holds the same picture as {}. It is recorded once.", f.quoted(file), f.quoted(first)),
        PictureMessage::FileTooLarge { file, mebibytes, most } => format!("The file {} has {mebibytes} MiB. Photos have {most} MiB at most. Nothing was recorded.", f.quoted(file)),
        PictureMessage::Unreadable { file, cause } => format!("The file {} cannot be read ({}). Nothing was recorded.", f.quoted(file), f.quoted(cause)),
    }
}
