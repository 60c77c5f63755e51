use super::PhotoSheetMessage;
use crate::capital;
use crate::{En, Format};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{PhotoPlace, Thing};

pub(super) fn text(message: &PhotoSheetMessage, f: &En) -> String {
    match message {
        PhotoSheetMessage::Opening { photos } => format!("{}, in the order of a walk around the house.", f.count(*photos)),
        PhotoSheetMessage::Copies => "Each copy is made from the picture alone and carries no camera data. An empty frame marks a side without a photo.".to_owned(),
        PhotoSheetMessage::NoPhotoOfSide { side } => format!("No photo of the {} side.", f.side(*side)),
        PhotoSheetMessage::NotPhotographed => "Not seen, or not photographed.".to_owned(),
        PhotoSheetMessage::Shows { photo, thing } => format!("Photo {photo}: {}", f.thing(thing)),
        PhotoSheetMessage::ShowsNotRecorded { photo } => format!("Photo {photo}: what it shows is not recorded"),
        PhotoSheetMessage::NotPlaced { photo } => format!("Photo {photo}. Not placed."),
        PhotoSheetMessage::OfPlace { photo, place } => format!("Photo {photo}. {}.", place_name(*place)),
        PhotoSheetMessage::OfPlaceUnconfirmed { photo, place } => format!("Photo {photo}. {}, not confirmed.", place_name(*place)),
        PhotoSheetMessage::OfThing { photo, side, thing } => format!("Photo {photo}. {}.", thing_on(*side, thing, f)),
        PhotoSheetMessage::OfReading { photo, side, thing, reading } => format!("Photo {photo}. {}: read {}.", thing_on(*side, thing, f), f.reading(reading)),
        PhotoSheetMessage::OfChange { change } => format!("Photos of change {change}"),
    }
}

fn place_name(place: PhotoPlace) -> &'static str {
    match place {
        PhotoPlace::Front => "Front side",
        PhotoPlace::Right => "Right side",
        PhotoPlace::Back => "Back side",
        PhotoPlace::Left => "Left side",
        PhotoPlace::Roof => "Roof",
        PhotoPlace::Under => "Under the roof",
        PhotoPlace::Ground => "Ground",
    }
}

fn thing_on(side: Option<HouseSide>, thing: &Thing, f: &En) -> String {
    match side {
        Some(side) => format!("{}, {}", place_name(side.into()), f.thing(thing)),
        None => capital(&f.thing(thing)),
    }
}
