//! The photo sheet: sides in the order of a walk from the front, what is not placed last, an empty
//! frame where a photo cannot be shown or a side has none.

use super::PaperInput;
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Picture};
use crate::said::PhotoRow;
use crate::words;
use eavebook_core::book::house_side::HouseSide;

pub fn leaf(told: &PaperInput) -> Leaf {
    let address = &told.job.book.address;
    let count = told.photos.len();
    let opening = format!(
        "These are the photos of {address}, side by side in the order of a walk round the house: {}.",
        words::counted(count, "photo", "photos")
    );
    let mut leaf = told.begin(PaperKind::Photos, Lang::En, opening);
    leaf.say("Each copy is made from the points of its photo alone and holds no data of the camera. Where a side has no photo an empty frame stands.");
    for side in [
        HouseSide::Front,
        HouseSide::Right,
        HouseSide::Back,
        HouseSide::Left,
    ] {
        let mut pictures: Vec<Picture> = of_side(told.photos, Some(side)).map(picture).collect();
        if pictures.is_empty() {
            pictures.push(Picture {
                file: None,
                alt: format!("{} side: no photo", words::capital(side.word())),
                caption: "Not looked, or not photographed.".to_owned(),
            });
        }
        let heading = format!("{} side", words::capital(side.word()));
        leaf.under(&heading, vec![grid(pictures)]);
    }
    let others: Vec<Picture> = of_side(told.photos, None).map(picture).collect();
    if !others.is_empty() {
        leaf.under("Not on one side", vec![grid(others)]);
    }
    leaf
}

fn of_side(photos: &[PhotoRow], side: Option<HouseSide>) -> impl Iterator<Item = &PhotoRow> {
    photos.iter().filter(move |photo| photo.side == side)
}

pub(super) fn picture(photo: &PhotoRow) -> Picture {
    let shows = photo
        .shows
        .as_deref()
        .unwrap_or("what it shows is not booked");
    Picture {
        file: photo
            .file
            .as_ref()
            .map(|_| format!("photo-{}.jpg", photo.number)),
        alt: format!("Photo {}: {shows}", photo.number),
        caption: photo.caption.clone(),
    }
}

fn grid(pictures: Vec<Picture>) -> Block {
    let across = if pictures.len() > 4 { 3 } else { 2 };
    Block::Photos { pictures, across }
}
