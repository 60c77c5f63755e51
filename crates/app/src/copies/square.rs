//! The link of a hub, read off a photo of its QR code.

use crate::copies::reply::{CopiesReply, SquareView};
use crate::media::LARGEST_PHOTO;
use crate::refusal::{Refusal, RequestRefusal, too_large};
use eavebook_packet::picture::squares;
use eavebook_sync::Invitation;

/// The longest link of a hub, bytes. A link is checked before it is used: a longer one, or one with
/// signs that look alike, is not a hub's.
const LONGEST_LINK: usize = 400;

/// The link of a hub on a photo. Nothing is joined by it.
///
/// # Errors
/// `PhotoTooLarge`, `SquareNotSeen`, `NoSquare`, `OtherSquare`.
pub fn read(photo: &[u8]) -> Result<CopiesReply, Refusal> {
    if photo.len() > LARGEST_PHOTO {
        return Err(too_large(photo.len()).into());
    }
    let texts = squares(photo).map_err(|_| RequestRefusal::SquareNotSeen)?;
    if texts.is_empty() {
        return Err(RequestRefusal::NoSquare.into());
    }
    let is_link = |text: &String| {
        let plain = text.len() <= LONGEST_LINK && text.bytes().all(|sign| sign.is_ascii_graphic());
        plain && text.contains('#') && Invitation::read(text).is_ok()
    };
    let link = texts
        .into_iter()
        .find(is_link)
        .ok_or(RequestRefusal::OtherSquare)?;
    Ok(CopiesReply::Square(SquareView { link }))
}
