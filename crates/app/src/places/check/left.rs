//! What is open, the dearest to come back for first.

use crate::names;
use crate::parts::reply::NextAct;
use crate::parts::solved_job::SolvedJob;
use crate::parts::{closure, next, things, visit};
use crate::places::check::reply::OpenView;
use crate::places::plan::reply::{FaceView, ItemView};
use crate::places::walk_round::reply::{PhotoState, PhotoView};
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::kinds::{PhotoDistance, PhotoPlace, Thing};
use eavebook_core::check::State;
use eavebook_core::outline::ClosureState;

/// Everything open. First what nobody can work out from the truck: legs not read, sums that do not
/// close, readings that differ; then pitches; then what nothing checks; then photos.
#[must_use]
pub fn view(
    seen: &SolvedJob,
    faces: &[FaceView],
    items: &[ItemView],
    kept: &[PhotoView],
) -> Vec<OpenView> {
    let mut open = legs(seen);
    open.extend(sums(seen));
    open.extend(corner(seen));
    open.extend(suspects(seen));
    open.extend(pitches(faces));
    open.extend(unproved(seen));
    open.extend(pitches_read_once(faces));
    open.extend(on_roof(seen, items));
    open.extend(photos(seen));
    open.extend(sides(kept));
    open
}

/// "6 open, 3 unproved": what is read once and checked by nothing is open only for the doubtful.
#[must_use]
pub fn counts(left: &[OpenView]) -> Sentence {
    let once = |open: &&OpenView| matches!(open.words.code.as_str(), "unproved" | "pitch_once");
    let unproved = left.iter().filter(once).count();
    let open = left.len() - unproved;
    sentence("counts", format!("{open} open, {unproved} unproved"))
}

fn item(thing: &str, code: &str, en: String, next: NextAct) -> OpenView {
    OpenView {
        thing: thing.to_owned(),
        words: sentence(code, en),
        next,
    }
}

fn read(thing: &Thing) -> NextAct {
    NextAct::Read {
        thing: thing.clone(),
    }
}

fn legs(seen: &SolvedJob) -> Vec<OpenView> {
    let things = things::all(seen);
    let open = things.iter().filter_map(|thing| {
        let title = things::plain_title(thing);
        let (code, en) = match seen.state(thing) {
            State::NotLooked => ("leg_unread", format!("{title} is not read.")),
            State::CannotGet => (
                "leg_out_of_reach",
                format!("{title} can't be reached, and nothing else says how long it is."),
            ),
            State::WorkedOut => (
                "leg_worked_out",
                format!("{title} is worked out from the others, so nothing checks them."),
            ),
            State::Hearsay => ("leg_hearsay", format!("{title} is only told. Read it.")),
            State::ReadOnce
            | State::OffPhoto
            | State::SettledAtDesk
            | State::Agreed
            | State::Proved
            | State::Suspect
            | State::Struck => return None,
        };
        Some(item(&names::name(thing), code, en, read(thing)))
    });
    open.collect()
}

fn sums(seen: &SolvedJob) -> Option<OpenView> {
    if seen.laid.walk.closure.state != ClosureState::Gap {
        return None;
    }
    let next = next::next_reading(seen).map_or(NextAct::Plan, |thing| NextAct::Read { thing });
    let words = closure::words(seen).en;
    Some(item("closure", "closure_gap", words, next))
}

fn corner(seen: &SolvedJob) -> Option<OpenView> {
    let after_leg = next::corner_after(seen.laid, seen.book)?;
    let en = format!("The corner after leg {after_leg} is not tapped.");
    Some(item(
        "closure",
        "corner_wanted",
        en,
        NextAct::Corner { after_leg },
    ))
}

fn suspects(seen: &SolvedJob) -> Vec<OpenView> {
    let things = things::all(seen).into_iter();
    let open = things
        .filter(|thing| seen.state(thing) == State::Suspect)
        .map(|thing| {
            let en = format!(
                "{} is spoken against. Read it again.",
                things::plain_title(&thing)
            );
            item(&names::name(&thing), "suspect", en, read(&thing))
        });
    open.collect()
}

fn pitches(faces: &[FaceView]) -> Vec<OpenView> {
    let open = faces.iter().filter_map(|face| {
        let name = &face.face.title;
        let (code, en) = match face.face.state {
            State::NotLooked => (
                "pitch_unread",
                format!("{name}: nobody looked at its pitch."),
            ),
            State::WorkedOut => (
                "pitch_taken_over",
                format!("{name}: its pitch is taken over, not read."),
            ),
            State::Suspect if face.pitch.is_some() => (
                "pitch_differs",
                format!("{name}: the readings of its pitch differ."),
            ),
            State::CannotGet => (
                "pitch_not_got",
                format!("{name}: its pitch was looked for and not got."),
            ),
            State::Hearsay
            | State::ReadOnce
            | State::OffPhoto
            | State::SettledAtDesk
            | State::Agreed
            | State::Proved
            | State::Suspect
            | State::Struck => return None,
        };
        (face.pitch.is_some() || face.end.is_none_or(is_slope))
            .then(|| item(&face.face.thing, code, en, NextAct::Plan))
    });
    open.collect()
}

fn pitches_read_once(faces: &[FaceView]) -> Vec<OpenView> {
    let once = faces
        .iter()
        .filter(|face| face.pitch.is_some() && face.face.state == State::ReadOnce);
    let open = once.map(|face| {
        let en = format!(
            "{}: its pitch is read once and nothing checks it.",
            face.face.title
        );
        item(&face.face.thing, "pitch_once", en, NextAct::Plan)
    });
    open.collect()
}

/// What nobody looked at or sized on the roof, and sizes that differ.
fn on_roof(seen: &SolvedJob, items: &[ItemView]) -> Vec<OpenView> {
    if !seen.is_shut() {
        return Vec::new();
    }
    let below = visit::ground_only(seen.book);
    let open = items.iter().filter_map(|item| {
        let thing = &item.item.thing;
        let title = &item.item.title;
        let (code, en) = match (item.item.state, thing.as_str()) {
            // Nobody is asked to go up where one stays on the ground.
            (_, "layers" | "deck") if below => return None,
            (State::NotLooked, "layers") => (
                "layers_unseen",
                "Nobody counted the layers: the tear-off weight is a wide guess.".to_owned(),
            ),
            (State::NotLooked, "deck") => (
                "deck_unseen",
                "Nobody saw the deck: it is priced as an allowance.".to_owned(),
            ),
            (State::NotLooked, "eave height") => (
                "eave_height_unread",
                "Nobody read how high the eaves lie.".to_owned(),
            ),
            (State::NotLooked, _) => ("size_unread", format!("{title} has no size read.")),
            (State::Suspect, _) => ("sizes_differ", format!("{title}: what was read differs.")),
            (
                State::Hearsay
                | State::WorkedOut
                | State::ReadOnce
                | State::OffPhoto
                | State::SettledAtDesk
                | State::Agreed
                | State::Proved
                | State::CannotGet
                | State::Struck,
                _,
            ) => return None,
        };
        let next = NextAct::Open {
            thing: thing.clone(),
        };
        Some(self::item(thing, code, en, next))
    });
    open.collect()
}

fn is_slope(end: eavebook_core::book::kinds::EndKind) -> bool {
    end == eavebook_core::book::kinds::EndKind::Sloped
}

fn unproved(seen: &SolvedJob) -> Vec<OpenView> {
    let things = things::all(seen).into_iter();
    let once = things.filter(|thing| {
        matches!(seen.state(thing), State::ReadOnce | State::OffPhoto) && seen.is_shut()
    });
    let open = once.map(|thing| {
        let en = format!(
            "{} is read once and nothing checks it.",
            things::plain_title(&thing)
        );
        item(&names::name(&thing), "unproved", en, read(&thing))
    });
    open.collect()
}

fn photos(seen: &SolvedJob) -> Option<OpenView> {
    let none = seen.book.photos.is_empty() && !seen.book.readings.is_empty();
    let en = "No photo is kept yet. One of each side answers most questions later.".to_owned();
    none.then(|| item("photo", "no_photos", en, NextAct::WalkRound))
}

/// Sides that no photo shows, once there is any; then what was only guessed, and what is wanted of
/// the sides that are there.
fn sides(kept: &[PhotoView]) -> Vec<OpenView> {
    let kept: Vec<&PhotoView> = kept.iter().filter(|photo| !photo.set_aside).collect();
    let walk = |code, en| item("sides", code, en, NextAct::WalkRound);
    let mut open = Vec::new();
    if kept.is_empty() {
        return open;
    }
    let all = PhotoPlace::ALL.into_iter().filter(|place| place.is_side());
    let of = |place: PhotoPlace| kept.iter().filter(move |photo| photo.place == Some(place));
    let (there, lacking): (Vec<_>, Vec<_>) = all.partition(|place| of(*place).next().is_some());
    open.extend(lacking.iter().map(|place| {
        let side = place.title().to_lowercase();
        walk("side_skipped", format!("No photo shows the {side} side."))
    }));
    let guessed = kept.iter().filter(|photo| photo.state == PhotoState::Guess);
    match guessed.count() {
        0 => {}
        1 => open.push(walk(
            "side_guessed",
            "The side of 1 photo is a guess. Confirm it.".to_owned(),
        )),
        many => open.push(walk(
            "side_guessed",
            format!("The sides of {many} photos are guesses. Confirm them."),
        )),
    }
    open.extend(there.iter().filter_map(|place| {
        let lacks = PhotoDistance::ALL
            .into_iter()
            .filter(|distance| !of(*place).any(|photo| photo.distance == Some(*distance)));
        let lacks: Vec<String> = lacks.map(|distance| distance.word().to_owned()).collect();
        (!lacks.is_empty()).then(|| {
            let en = format!(
                "{}: no photo is said to be {}.",
                place.title(),
                lacks.join(", ")
            );
            walk("shots_wanted", en)
        })
    }));
    open
}
