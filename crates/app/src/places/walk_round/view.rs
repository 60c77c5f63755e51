//! The walk round a house: each photo under what it shows, what is wanted of each side, and what
//! else is looked for.

use crate::names;
use crate::parts::photos::photos_in;
use crate::places::walk_round::reply::{
    LookView, PhotoState, PhotoView, WalkPart, WalkView, WantedShot,
};
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::kinds::{Found, PhotoDistance, PhotoPlace, VisitNote, WalkTarget};
use eavebook_core::book::lay_out::LaidOut;
use eavebook_core::photo::{Shows, WalkPhoto, front_heading, walk_photos};

/// Photos with what they show, the newest first.
#[must_use]
pub fn photos(book: &FieldBook, laid: &LaidOut) -> Vec<PhotoView> {
    let named = photos_in(book);
    let kept = book.photos.iter().zip(walk_photos(book, laid)).rev();
    kept.zip(named)
        .map(|(((_, taken), photo), (thing, caption))| {
            let (state, place, or) = match photo.shows {
                Shows::Confirmed(place) => (PhotoState::Confirmed, Some(place), None),
                Shows::Guess(place, or) => (PhotoState::Guess, Some(place), or),
                Shows::Unplaced => (PhotoState::NotLooked, None, None),
            };
            PhotoView {
                thing,
                sha256: taken.sha256.clone(),
                of: taken.of.as_ref().map(names::name),
                caption,
                entry: photo.entry,
                state,
                words: words(&photo),
                place,
                or,
                distance: photo.distance,
                private: photo.private,
                set_aside: photo.set_aside,
            }
        })
        .collect()
}

/// "Back side", "Back side?", "Back or Left side?".
fn words(photo: &WalkPhoto) -> String {
    let side = |place: PhotoPlace| if place.is_side() { " side" } else { "" };
    match photo.shows {
        Shows::Confirmed(place) => format!("{}{}", place.title(), side(place)),
        Shows::Guess(place, None) => format!("{}{}?", place.title(), side(place)),
        Shows::Guess(place, Some(or)) => {
            format!("{} or {}{}?", place.title(), or.title(), side(or))
        }
        Shows::Unplaced => "Which side?".to_owned(),
    }
}

/// The walk as it is shown. `photos`: as they are shown, the newest first.
#[must_use]
pub fn view(book: &FieldBook, photos: &[PhotoView]) -> WalkView {
    let there = |photo: &&PhotoView| !photo.set_aside;
    let names = |held: &mut dyn Iterator<Item = &PhotoView>| {
        held.map(|photo| photo.thing.clone()).collect::<Vec<_>>()
    };
    let parts = PhotoPlace::ALL.map(|place| {
        let mut held: Vec<&PhotoView> = photos
            .iter()
            .rev()
            .filter(there)
            .filter(|photo| photo.place == Some(place))
            .collect();
        // What may as well be another side is looked at first, then what is guessed.
        held.sort_by_key(|photo| match (photo.or, photo.state) {
            (Some(_), _) => 0,
            (None, PhotoState::Guess) => 1,
            (None, PhotoState::Confirmed | PhotoState::NotLooked) => 2,
        });
        WalkPart {
            place,
            title: place.title().to_owned(),
            guessed: held
                .iter()
                .filter(|photo| photo.state == PhotoState::Guess)
                .map(|photo| photo.entry)
                .collect(),
            wanted: wanted(place, &held),
            photos: names(&mut held.iter().copied()),
        }
    });
    WalkView {
        knows_front: front_heading(book).is_some(),
        parts: parts.into(),
        unplaced: names(
            &mut photos
                .iter()
                .rev()
                .filter(there)
                .filter(|photo| photo.place.is_none()),
        ),
        set_aside: names(&mut photos.iter().rev().filter(|photo| photo.set_aside)),
        looks: WalkTarget::ALL.map(|what| look(book, what)).into(),
    }
}

/// Distances of which nobody said that a photo is one.
fn wanted(place: PhotoPlace, held: &[&PhotoView]) -> Vec<WantedShot> {
    let missing = PhotoDistance::ALL
        .into_iter()
        .filter(|distance| !held.iter().any(|photo| photo.distance == Some(*distance)));
    missing
        .map(|distance| WantedShot {
            distance,
            words: format!("{}: {}", place.title(), frame(place, distance)),
        })
        .collect()
}

/// What a shot shows, in words.
fn frame(place: PhotoPlace, distance: PhotoDistance) -> &'static str {
    match (place, distance) {
        (PhotoPlace::Roof, PhotoDistance::Whole) => "all of it that shows from the ground",
        (PhotoPlace::Roof, PhotoDistance::Middle) => "a face, its edges and what stands in it",
        (PhotoPlace::Under, PhotoDistance::Whole) => "the attic or the soffit from one end",
        (PhotoPlace::Under, PhotoDistance::Middle) => "a bay, with what holds the deck",
        (PhotoPlace::Ground, PhotoDistance::Whole) => "the driveway as it is now",
        (PhotoPlace::Ground, PhotoDistance::Middle) => {
            "where bin and delivery can stand, and wires"
        }
        (_, PhotoDistance::Whole) => "the whole side, corner to corner",
        (_, PhotoDistance::Middle) => "eave, wall and ground of a part",
        (_, PhotoDistance::Close) => "close, with the tape in the plane of the thing",
    }
}

fn look(book: &FieldBook, what: WalkTarget) -> LookView {
    let said = book.visited().rev().find_map(|noted| match noted.what {
        VisitNote::Looked {
            what: at,
            found,
            count,
        } if at == what => Some((found, count)),
        VisitNote::Looked { .. }
        | VisitNote::Front { .. }
        | VisitNote::Here { .. }
        | VisitNote::GroundOnly { .. }
        | VisitNote::Permission { .. }
        | VisitNote::Hazard { .. }
        | VisitNote::CheckIn { .. }
        | VisitNote::Promise { .. }
        | VisitNote::Left { .. } => None,
    });
    let (found, count) = said.unwrap_or((Found::NotLooked, None));
    LookView {
        what,
        title: names::capital(what.word()),
        found,
        counted: what.is_counted(),
        count: count.unwrap_or(0),
    }
}
