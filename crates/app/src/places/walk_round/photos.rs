//! Photos: on disk and hashed before anything refers to them.

use crate::answer::Answer;
use crate::media::{LARGEST_PHOTO, Media, Sound};
use crate::names;
use crate::open_job::OpenJob;
use crate::refusal::{Refusal, RequestRefusal, too_large};
use eavebook_core::book::kinds::{
    ClipTaken, Kind, PhotoDistance, PhotoFacts, PhotoFrom, PhotoPlace, PhotoTaken, PhotoWord,
    TiltFelt,
};
use eavebook_core::photo::{Shows, walk_photos};
use eavebook_store::Store;
use serde::Deserialize;
use std::io::Read;
use uuid::Uuid;

/// What is said of a photo beside its bytes.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct AboutPhoto {
    /// Which job.
    pub job: Uuid,
    /// The thing it was taken of, by name: `leg 4`.
    #[serde(default)]
    pub of: Option<String>,
    /// Where it came from; a file unless it says the camera.
    #[serde(default = "brought_in")]
    pub from: PhotoFrom,
    /// Where the back camera looked, degrees clockwise from north.
    #[serde(default)]
    pub heading: Option<f64>,
    /// How the phone was held, `beta,gamma,screen` in degrees.
    #[serde(default)]
    pub tilt: Option<String>,
    /// What it shows, where somebody said so before the shutter.
    #[serde(default)]
    pub place: Option<PhotoPlace>,
    /// From how far, where somebody said so.
    #[serde(default)]
    pub distance: Option<PhotoDistance>,
    /// The bytes are no picture but what somebody said.
    #[serde(default)]
    pub said_aloud: bool,
}

fn brought_in() -> PhotoFrom {
    PhotoFrom::File
}

/// A photo as it was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptPhoto {
    /// `image/jpeg`.
    pub media: &'static str,
    /// The file, byte for byte.
    pub bytes: Vec<u8>,
}

/// Keeps a photo, or what was said aloud, and books it. The same of the same thing is booked once.
///
/// # Errors
/// `NoJob`, `NoPhoto`, `NoSound`, `PhotoTooLarge`, and what the thing is not.
pub fn keep(book: &mut Store, bytes: &[u8], about: &AboutPhoto) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, about.job)?;
    if bytes.len() > LARGEST_PHOTO {
        return Err(too_large(bytes.len()).into());
    }
    if about.said_aloud && Sound::from_bytes(bytes).is_none() {
        return Err(RequestRefusal::NoSound.into());
    }
    let media = match Sound::from_bytes(bytes).filter(|_| about.said_aloud) {
        Some(sound) => sound.name(),
        None => Media::from_bytes(bytes)
            .ok_or(RequestRefusal::NoPhoto)?
            .name(),
    };
    let of = match about.of.as_deref() {
        None | Some("") => None,
        // A photo of a size is one of the whole thing.
        Some(name) => Some(names::thing(name).ok_or(RequestRefusal::NoEntry)?.whole()),
    };
    if let Some(thing) = &of {
        opened.check_thing(thing)?;
    }
    let mut reader = bytes;
    let kept = book.put_photo(&mut reader)?;
    let media = media.to_owned();
    if about.said_aloud {
        let mut there = opened.book.clips.iter();
        if !there.any(|clip| clip.what.sha256 == kept.sha256 && clip.what.of == of) {
            let clip = ClipTaken {
                sha256: kept.sha256,
                size: kept.size,
                media,
                of,
            };
            opened.book(book, &Kind::Clip(clip), Vec::new())?;
        }
        return Ok(Answer::Job(about.job));
    }
    let there = opened.book.photos.iter().map(|(_, photo)| photo);
    if !there
        .into_iter()
        .any(|photo| photo.sha256 == kept.sha256 && photo.of == of)
    {
        let photo = PhotoTaken {
            sha256: kept.sha256,
            size: kept.size,
            media,
            of,
            from: about.from,
            heading: about
                .heading
                .filter(|heading| (0.0..=360.0).contains(heading)),
            tilt: about.tilt.as_deref().and_then(tilt_felt),
            place: about.place,
            distance: about.distance,
        };
        opened.book(book, &Kind::Photo(photo), Vec::new())?;
    }
    Ok(Answer::Job(about.job))
}

/// `80,1.5,0` as how a phone was held; what is no such thing was not felt.
fn tilt_felt(text: &str) -> Option<TiltFelt> {
    let mut angles = text.split(',').map(|angle| angle.parse::<f64>().ok());
    let mut next = || angles.next()?.filter(|angle| angle.abs() <= 360.0);
    Some(TiltFelt {
        beta: next()?,
        gamma: next()?,
        screen: next()?,
    })
}

/// Books a word about photos. Said again, it books nothing.
///
/// # Errors
/// `NoJob`, `NoSuchPhoto`.
pub fn note(
    book: &mut Store,
    job: Uuid,
    photos: &[Uuid],
    word: PhotoWord,
) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let known = walk_photos(&opened.book, &opened.laid_out());
    let mut of = Vec::new();
    for entry in photos {
        let photo = known.iter().find(|photo| photo.entry == *entry);
        let photo = photo.ok_or(RequestRefusal::NoSuchPhoto)?;
        let is_said = match word {
            PhotoWord::Shows { place } => photo.shows == Shows::Confirmed(place),
            PhotoWord::From { distance } => photo.distance == Some(distance),
            PhotoWord::Private { on } => photo.private == on,
            PhotoWord::SetAside { on } => photo.set_aside == on,
        };
        if !is_said && !of.contains(entry) {
            of.push(*entry);
        }
    }
    if !of.is_empty() {
        opened.book(
            book,
            &Kind::PhotoFacts(PhotoFacts { photos: of, word }),
            Vec::new(),
        )?;
    }
    Ok(Answer::Job(job))
}

/// A photo by its name in the photo folder.
///
/// # Errors
/// `NoPhoto` of the store.
pub fn read(book: &Store, sha256: &str) -> Result<KeptPhoto, Refusal> {
    let mut file = book.photo(sha256)?;
    let mut bytes = Vec::new();
    file.read_to_end(&mut bytes)
        .map_err(|_| RequestRefusal::BrokeOff)?;
    let media = Media::from_bytes(&bytes)
        .map(Media::name)
        .or_else(|| Sound::from_bytes(&bytes).map(Sound::name))
        .unwrap_or("application/octet-stream");
    Ok(KeptPhoto { media, bytes })
}
