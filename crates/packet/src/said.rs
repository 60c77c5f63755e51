//! What is said of a job on several papers alike: how a reading came about and how well it is
//! known, what stands out of the roof, which photos there are, what is not known.

use crate::edition::Lang;
use crate::job::Job;
use crate::named::{NamedFace, Parts};
use crate::words;

use eavebook_core::book::counted::counts;
use eavebook_core::book::fold::{BookedReading, TakenOut};
use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{
    Followed, HowRead, ItemKind, PenetrationAdded, PitchRead, SaddleObserved, SizeOf, Thing,
};
use eavebook_core::book::{counted, on_roof};
use eavebook_core::check::State;
use eavebook_core::photo::{Shows, walk_photos};
use eavebook_core::takeoff::OrderLine;
use eavebook_core::units::RoundTo;

/// How well a reading is known: against the others of its thing, the loop, the photos.
pub fn state_of(job: &Job, read: &BookedReading) -> State {
    if read.struck.is_some() {
        State::Struck
    } else if !counts(read) {
        State::Hearsay
    } else {
        job.standing().state(&read.thing)
    }
}

/// Names of the photos taken of a thing.
pub fn photos_of(job: &Job, thing: &Thing) -> Vec<String> {
    let photos = job.book.photos.iter().zip(1..);
    photos
        .filter(|((_, photo), _)| photo.of.as_ref().map(Thing::whole) == Some(thing.whole()))
        .map(|(_, number): (_, usize)| format!("photo {number}"))
        .collect()
}

/// How a value was read, and of a side of the outline along what: `taped along the eave edge`.
pub fn how(read: &BookedReading) -> String {
    let how = match read.how {
        HowRead::Taped => "taped",
        HowRead::Paced => "paced",
        HowRead::OffPhoto => "read off a photo",
        HowRead::Told => "told, not read,",
    };
    if !read.thing.is_of_outline() {
        return how.trim_end_matches(',').to_owned();
    }
    let along = match read.followed {
        Followed::EaveEdge => "the eave edge",
        Followed::GutterFace => "the gutter face",
        Followed::Wall => "the wall",
    };
    format!("{how} along {along}")
}

/// A slope as it was read: `26.9°`, `6 in 12`.
pub fn slope(read: &PitchRead) -> String {
    match read {
        PitchRead::Number { in_12 } => format!("{in_12} in 12"),
        PitchRead::LevelAndTape { run_in, rise_in } => format!("{rise_in} in rise in {run_in} in"),
        PitchRead::Phone { degrees, .. } => format!("{degrees}°"),
        PitchRead::Sighted { degrees, .. } => format!("{degrees}°"),
        PitchRead::SameAs { leg } => format!("same as leg {leg}"),
        PitchRead::NotGot => "not got".to_owned(),
    }
}

/// How it was read.
pub fn slope_how(read: &PitchRead) -> &'static str {
    match read {
        PitchRead::Number { .. } => "given as a number",
        PitchRead::LevelAndTape { .. } => "level and tape",
        PitchRead::Phone {
            reversed: false, ..
        } => "phone on the slope",
        PitchRead::Phone { reversed: true, .. } => "phone, turned end for end",
        PitchRead::Sighted { .. } => "marked on a photo from the ground",
        PitchRead::SameAs { .. } => "taken as same, not read",
        PitchRead::NotGot => "looked for, not got",
    }
}

/// How a reading went out of use.
pub fn taken_out(how: TakenOut) -> &'static str {
    match how {
        TakenOut::Strike => "struck",
        TakenOut::Undo => "taken back",
        TakenOut::Replaced => "replaced",
    }
}

/// `2026-05-02 14:41`, as its place's clock said it.
pub fn local(time: &str) -> String {
    match (time.get(..10), time.get(11..16)) {
        (Some(day), Some(clock)) => format!("{day} {clock}"),
        _ => time.to_owned(),
    }
}

/// One thing that stands out of the roof.
pub struct Item<'a> {
    /// What it is.
    pub kind: ItemKind,
    /// Its number among those of its kind, as on the screens.
    pub number: u32,
    /// Its sizes as read, in the order in which they are asked: `3 in`, `2 ft x 2 ft`.
    pub size: Option<String>,
    /// What was seen of a saddle behind it.
    pub saddle: Option<SaddleObserved>,
    /// The largest face of the leg over which it was booked.
    pub face: Option<&'a NamedFace<'a>>,
    /// How well the least known of the sizes that are waited for is known.
    pub state: State,
    /// Names of its photos.
    pub photos: Vec<String>,
}

/// What stands out of the roof, in the order in which it was booked.
pub fn items<'a>(job: &Job, parts: &'a Parts<'a>) -> Vec<Item<'a>> {
    on_roof::items(job.book)
        .into_iter()
        .map(|seen| item(job, parts, seen))
        .collect()
}

fn item<'a>(job: &Job, parts: &'a Parts<'a>, seen: &PenetrationAdded) -> Item<'a> {
    let thing_of = |size: &SizeOf| Thing::Size {
        item: seen.item,
        number: seen.number,
        size: *size,
    };
    let things: Vec<Thing> = seen.item.sizes().iter().map(thing_of).collect();
    let flashing = |thing: &&Thing| {
        !matches!(
            thing,
            Thing::Size {
                size: SizeOf::Height,
                ..
            }
        )
    };
    let read = |thing: &Thing| counted::measured(job.book, thing);
    let sizes: Vec<String> = things
        .iter()
        .filter(flashing)
        .filter_map(|thing| Some(read(thing)?.words(RoundTo::EighthInch)))
        .collect();
    let over = parts
        .faces
        .iter()
        .filter(|named| named.face.leg + 1 == seen.leg as usize);
    let larger = |a: &&NamedFace, b: &&NamedFace| {
        a.face
            .area
            .in_square_feet()
            .total_cmp(&b.face.area.in_square_feet())
    };
    Item {
        kind: seen.item,
        number: seen.number,
        size: (!sizes.is_empty()).then(|| sizes.join(" x ")),
        saddle: seen.saddle,
        face: over.max_by(larger),
        state: job.standing().state_of_sizes(&things),
        photos: photos_of(job, &seen.thing()),
    }
}

/// How much of a line is needed, and what is spare of the packs bought.
pub fn needed(line: &OrderLine, lang: Lang) -> String {
    let (needed, spare) = (line.needed.amount(), line.spare.amount());
    let digits = if (needed - needed.round()).abs() < 0.05 {
        0
    } else {
        1
    };
    let unit = line.needed.unit().name();
    match lang {
        Lang::En => format!("needs {needed:.digits$} {unit}, spare {spare:.1} {unit}"),
        Lang::Es => format!("hacen falta {needed:.digits$} {unit}, sobran {spare:.1} {unit}"),
    }
}

/// One photo as the list has it.
#[derive(Clone, Debug)]
pub struct PhotoRow {
    /// From 1, in the order in which they were kept.
    pub number: usize,
    /// Its SHA-256.
    pub sha256: String,
    /// The side of the house, where what it was taken of says so.
    pub side: Option<HouseSide>,
    /// What it was taken of.
    pub shows: Option<String>,
    /// How surely: what was in hand when it was taken is not a guess.
    pub state: &'static str,
    /// Its copy from `data/`; none where it cannot be shown.
    pub file: Option<String>,
    /// What stands under it on a paper.
    pub caption: String,
}

/// The photos of a job, by side in the order of a walk from the front, those without a side last.
pub fn photo_rows(job: &Job, parts: &Parts) -> Vec<PhotoRow> {
    // What somebody called private, or set aside, is in no packet; the others keep their numbers.
    let walked = walk_photos(job.book, job.laid);
    let numbered = job.book.photos.iter().zip(walked).zip(1..);
    let shown = numbered.filter(|((_, photo), _)| !photo.private && !photo.set_aside);
    let mut rows: Vec<PhotoRow> = shown
        .map(|(((_, taken), photo), number)| {
            let of = taken.of.as_ref();
            let on = of.and_then(|thing| side_of(job, parts, thing));
            let (side, state) = match photo.shows {
                _ if of.is_some() => (on, "confirmed"),
                Shows::Confirmed(place) => (place.side(), "confirmed"),
                Shows::Guess(place, _) => (place.side(), "guess"),
                Shows::Unplaced => (None, "unplaced"),
            };
            let caption = match (of, photo.shows.place()) {
                (None, Some(place)) => {
                    let sure = if state == "guess" { ", a guess" } else { "" };
                    let side = if place.is_side() { " side" } else { "" };
                    format!("Photo {number}. {}{side}{sure}.", place.title())
                }
                (Some(_), _) | (None, None) => caption(job, number, side, of),
            };
            PhotoRow {
                number,
                sha256: taken.sha256.clone(),
                side,
                shows: of.map(Thing::name),
                state,
                file: None,
                caption,
            }
        })
        .collect();
    rows.sort_by_key(|row| (row.side.is_none(), row.side, row.number));
    rows
}

/// How many photos somebody called private: no packet holds them.
pub fn private_photos(job: &Job) -> u32 {
    let walked = walk_photos(job.book, job.laid);
    let private = walked.iter().filter(|photo| photo.private).count();
    u32::try_from(private).unwrap_or(u32::MAX)
}

/// The side of the house on which a thing is, where it is on one.
fn side_of(job: &Job, parts: &Parts, thing: &Thing) -> Option<HouseSide> {
    let whole = thing.whole();
    let on_roof = || {
        let mut items = on_roof::items(job.book).into_iter();
        Some(items.find(|seen| seen.thing() == whole)?.leg)
    };
    let changed = || {
        let mut changes = job.book.changes.iter().rev();
        Some(changes.find(|noted| noted.what.thing() == whole)?.what.leg)
    };
    let leg = thing.leg().or_else(on_roof).or_else(changed)?;
    parts.side(leg)
}

/// `Photo 2. Left side, leg 2: read 14 ft 3 in.`
fn caption(job: &Job, number: usize, side: Option<HouseSide>, of: Option<&Thing>) -> String {
    let Some(thing) = of else {
        return format!("Photo {number}. Not placed.");
    };
    let place = match side {
        Some(side) => format!("{} side, {}", words::capital(side.word()), thing.name()),
        None => words::capital(&thing.name()),
    };
    let in_force =
        |read: &&BookedReading| read.thing.whole() == thing.whole() && read.struck.is_none();
    let last = job.book.readings.iter().rev().find(in_force);
    match last {
        Some(read) => format!("Photo {number}. {place}: read {}.", in_words(&read.text)),
        None => format!("Photo {number}. {place}."),
    }
}

/// A booked text in the one form of the papers.
pub fn in_words(text: &str) -> String {
    eavebook_core::units::Tape::read(text).map_or_else(|_| text.to_owned(), |tape| tape.canonical())
}
