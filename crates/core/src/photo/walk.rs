//! The photos of a job, each with what it shows: as somebody said, or as it is guessed.

use super::guess::guess_sides;
use super::side::{Confirmed, Shot};
use crate::book::fold::FieldBook;
use crate::book::kinds::{PhotoDistance, PhotoFrom, PhotoPlace, PhotoWord, Thing, VisitNote};
use crate::book::lay_out::LaidOut;
use crate::units::Angle;
use std::collections::BTreeMap;
use uuid::Uuid;

/// What a photo shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Shows {
    /// A person said so.
    Confirmed(PhotoPlace),
    /// It is guessed; the second, where it may as well be that.
    Guess(PhotoPlace, Option<PhotoPlace>),
    /// Nothing tells.
    Unplaced,
}

impl Shows {
    /// The place, said or guessed.
    #[must_use]
    pub fn place(&self) -> Option<PhotoPlace> {
        match self {
            Shows::Confirmed(place) | Shows::Guess(place, _) => Some(*place),
            Shows::Unplaced => None,
        }
    }
}

/// One photo of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WalkPhoto {
    /// Its entry.
    pub entry: Uuid,
    /// What it shows.
    pub shows: Shows,
    /// From how far, where somebody said.
    pub distance: Option<PhotoDistance>,
    /// No packet holds it.
    pub private: bool,
    /// Out of sight.
    pub set_aside: bool,
}

/// All photos kept, in the order of the book: the guesses are worked out anew from what was said
/// since, and never booked.
#[must_use]
pub fn walk_photos(book: &FieldBook, laid: &LaidOut) -> Vec<WalkPhoto> {
    let mut photos: Vec<WalkPhoto> = book
        .photos
        .iter()
        .map(|(entry, photo)| {
            let of = photo.of.as_ref().and_then(|of| place_of(laid, of));
            let said = photo.place.or(of);
            WalkPhoto {
                entry: *entry,
                shows: said.map_or(Shows::Unplaced, Shows::Confirmed),
                distance: photo.distance,
                private: false,
                set_aside: false,
            }
        })
        .collect();
    let of_entry: BTreeMap<Uuid, usize> = photos
        .iter()
        .enumerate()
        .map(|(at, photo)| (photo.entry, at))
        .collect();
    for (_, said) in &book.photo_words {
        for at in said.photos.iter().filter_map(|entry| of_entry.get(entry)) {
            let photo = &mut photos[*at];
            match said.word {
                PhotoWord::Shows { place } => photo.shows = Shows::Confirmed(place),
                PhotoWord::From { distance } => photo.distance = Some(distance),
                PhotoWord::Private { on } => photo.private = on,
                PhotoWord::SetAside { on } => photo.set_aside = on,
            }
        }
    }
    guess(book, &mut photos);
    photos
}

/// Where a thing is: what stands in the roof, or is nailed under it, is a photo of the roof and no
/// proof of a side.
fn place_of(laid: &LaidOut, thing: &Thing) -> Option<PhotoPlace> {
    match thing {
        Thing::Leg { leg } | Thing::Overhang { leg } => {
            laid.side_of_leg(*leg).map(PhotoPlace::from)
        }
        Thing::Item { .. }
        | Thing::Size { .. }
        | Thing::Slope { .. }
        | Thing::Deck
        | Thing::DeckSize { .. }
        | Thing::Layers
        | Thing::Change { .. } => Some(PhotoPlace::Roof),
        Thing::Tie { .. } | Thing::EaveHeight | Thing::RidgeHeight => None,
    }
}

/// Where the back camera looked as somebody stood before the front, degrees from north.
#[must_use]
pub fn front_heading(book: &FieldBook) -> Option<f64> {
    let fronts = book.visited().rev().filter_map(|noted| match noted.what {
        VisitNote::Front { heading } => Some(heading),
        VisitNote::Here { .. }
        | VisitNote::GroundOnly { .. }
        | VisitNote::Permission { .. }
        | VisitNote::Hazard { .. }
        | VisitNote::CheckIn { .. }
        | VisitNote::Promise { .. }
        | VisitNote::Looked { .. }
        | VisitNote::Left { .. } => None,
    });
    fronts.into_iter().next().flatten()
}

fn guess(book: &FieldBook, photos: &mut [WalkPhoto]) {
    let front = front_heading(book);
    let mut walked = Vec::new();
    let mut shots: Vec<Shot> = Vec::new();
    let mut before: Option<u64> = None;
    for (place, (photo, (entry, taken))) in photos.iter().zip(&book.photos).enumerate() {
        let confirmed = match &photo.shows {
            Shows::Confirmed(said) => match said.side() {
                Some(side) => Confirmed::Side(side),
                None => continue,
            },
            Shows::Guess(..) | Shows::Unplaced if photo.set_aside => continue,
            Shows::Guess(..) | Shows::Unplaced => Confirmed::Not,
        };
        let at = (taken.from == PhotoFrom::Camera)
            .then(|| milliseconds(*entry))
            .flatten();
        let relative = taken
            .heading
            .zip(front)
            .map(|(heading, front)| heading - front);
        shots.push(Shot {
            heading: relative.map(Angle::degrees),
            heading_doubt: Angle::degrees(0.0),
            since_last: at
                .zip(before)
                .map(|(at, before)| at.saturating_sub(before) as f64 / 1000.0),
            confirmed,
        });
        walked.push(place);
        before = at.or(before);
    }
    let was_said = |word: &PhotoWord| matches!(word, PhotoWord::Shows { .. });
    let knows = shots.iter().any(|shot| shot.heading.is_some())
        || book
            .photo_words
            .iter()
            .any(|(_, said)| was_said(&said.word))
        || book.photos.iter().any(|(_, photo)| photo.place.is_some());
    if !knows {
        return;
    }
    let guesses = guess_sides(&shots);
    for (place, chances) in walked.into_iter().zip(&guesses.after) {
        if let Some(photo) = photos.get_mut(place)
            && photo.shows == Shows::Unplaced
        {
            let (first, second) = chances.chips();
            photo.shows = Shows::Guess(first.into(), second.map(PhotoPlace::from));
        }
    }
}

/// When an entry was made, by the clock of its device: the first 48 bits of its id (RFC 9562,
/// section 5.7); none where its id was made otherwise.
fn milliseconds(entry: Uuid) -> Option<u64> {
    (entry.get_version_num() == 7).then_some(entry.as_u64_pair().0 >> 16)
}
