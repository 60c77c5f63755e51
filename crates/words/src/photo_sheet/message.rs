use crate::format::ReadingText;
use crate::{Count, Noun};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{ItemKind, PhotoPlace, SizeOf, Thing};

messages! {
    /// Captions of photos and sentences of the photo sheet.
    PhotoSheetMessage, "photo_sheet";
    /// How many photos the sheet holds, in which order.
    Opening {
        /// How many.
        photos: Count,
    } = { photos: Count::new(1, Noun::Photo) },
        { photos: Count::new(2, Noun::Photo) };
    /// How copies of photos are made.
    Copies;
    /// A side without a photo.
    NoPhotoOfSide {
        /// The side.
        side: HouseSide,
    } = { side: HouseSide::Front };
    /// Caption of a side without a photo.
    NotPhotographed;
    /// What a photo was taken of.
    Shows {
        /// Its number, from 1.
        photo: u32,
        /// What it was taken of.
        thing: Thing,
    } = { photo: 2, thing: Thing::Item { item: ItemKind::Pipe, number: 1 } };
    /// Nobody recorded what a photo was taken of.
    ShowsNotRecorded {
        /// Its number, from 1.
        photo: u32,
    } = { photo: 3 };
    /// Caption of a photo of which nobody knows what it shows.
    NotPlaced {
        /// Its number, from 1.
        photo: u32,
    } = { photo: 3 };
    /// Caption of a photo that a person placed.
    OfPlace {
        /// Its number, from 1.
        photo: u32,
        /// What it shows.
        place: PhotoPlace,
    } = { photo: 3, place: PhotoPlace::Roof };
    /// Caption of a photo whose place is a guess.
    OfPlaceUnconfirmed {
        /// Its number, from 1.
        photo: u32,
        /// What it may show.
        place: PhotoPlace,
    } = { photo: 3, place: PhotoPlace::Left };
    /// Caption of a photo of one thing.
    OfThing {
        /// Its number, from 1.
        photo: u32,
        /// The side of the house; `None` if it is on no one side.
        side: Option<HouseSide>,
        /// What it was taken of.
        thing: Thing,
    } = {
        photo: 2,
        side: Some(HouseSide::Back),
        thing: Thing::Item { item: ItemKind::Pipe, number: 1 },
    },
        { photo: 4, side: None, thing: Thing::EaveHeight };
    /// Caption of a photo of one thing that was read.
    OfReading {
        /// Its number, from 1.
        photo: u32,
        /// The side of the house; `None` if it is on no one side.
        side: Option<HouseSide>,
        /// What it was taken of.
        thing: Thing,
        /// The last reading in force.
        reading: ReadingText,
    } = {
        photo: 2,
        side: Some(HouseSide::Back),
        thing: Thing::Size { item: ItemKind::Pipe, number: 1, size: SizeOf::Across },
        reading: ReadingText::from("3\""),
    };
    /// Heading over the photos of one change.
    OfChange {
        /// Its number, from 1.
        change: u32,
    } = { change: 1 };
}
