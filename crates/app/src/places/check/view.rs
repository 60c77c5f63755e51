//! The Leave-site check: what is open before driving off, with its evidence, by the cost of coming
//! back for it and by what it does to the price.

use crate::names;
use crate::parts::comparison::Comparison;
use crate::parts::reply::NextAct;
use crate::parts::solved_job::SolvedJob;
use crate::parts::{closure, next, things, visit};
use crate::places::check::left;
use crate::places::check::reply::{CheckItem, CheckView, OpenView};
use crate::places::plan::reply::{FaceView, ItemView};
use crate::places::walk_round::reply::PhotoView;
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::kinds::{EndKind, Found, Kind, PhotoPlace, Thing, VisitNote, WalkTarget};
use eavebook_core::check::State;
use eavebook_core::check::spanned;
use eavebook_core::outline::ClosureState;
use eavebook_core::solve::Solved;
use eavebook_core::uncertainty::UncertaintySource;

/// What a screen of the check is made from.
pub struct Parts<'a> {
    /// Where copies are.
    pub copies: &'a Sentence,
    /// The job.
    pub seen: &'a SolvedJob<'a>,
    /// Its faces.
    pub faces: &'a [FaceView],
    /// What stands out of its roof, lies on it, is nailed to.
    pub items: &'a [ItemView],
    /// What is left, as one list.
    pub left: &'a [OpenView],
    /// Its photos, the newest first.
    pub photos: &'a [PhotoView],
    /// What was seen of the roof, judged.
    pub judged: &'a [Comparison],
    /// The card from which somebody went to mend something.
    pub at: Option<String>,
}

/// The most photos on one card: it is read in seconds.
const MOST_PHOTOS: usize = 2;

/// The check as it stands.
#[must_use]
pub fn view(parts: &Parts) -> CheckView {
    let below = visit::ground_only(parts.seen.book);
    // Only there, with a ladder or a tape: dear to come back for. Then what a call settles, then
    // what a desk settles.
    let mut open: Vec<CheckItem> = Vec::new();
    open.extend(pitches(parts).filter(|_| !has_area(parts.seen)));
    open.extend(outline(parts));
    open.extend(pitches(parts).filter(|_| has_area(parts.seen)));
    open.extend(seen_otherwise(parts));
    open.extend(sizes(parts).filter(|_| !below));
    open.extend(deck(parts).filter(|_| !below));
    open.extend(sides(parts));
    open.extend(driveway(parts));
    open.extend(permissions(parts));
    open.extend(promise(parts));
    open.extend(copies(parts));
    open.extend(again(parts));
    CheckView {
        counts: left::counts(parts.left),
        open,
        at: parts.at.clone(),
        complete: complete(parts),
    }
}

fn item(thing: &str, title: &str, words: String, next: NextAct) -> CheckItem {
    CheckItem {
        thing: thing.to_owned(),
        title: title.to_owned(),
        words: sentence(&format!("check_{}", thing.replace(' ', "_")), words),
        photos: Vec::new(),
        next,
    }
}

fn has_area(seen: &SolvedJob) -> bool {
    seen.solved
        .is_some_and(|solved| solved.totals.area.is_some())
}

fn outline(parts: &Parts) -> Option<CheckItem> {
    let seen = parts.seen;
    if seen.laid.walk.closure.state == ClosureState::Closes && seen.suspects().is_empty() {
        return None;
    }
    let suspects: Vec<Thing> = seen
        .suspects()
        .into_iter()
        .map(|(thing, _)| thing)
        .collect();
    let next = match next::corner_after(seen.laid, seen.book) {
        Some(after_leg) => NextAct::Corner { after_leg },
        None => suspects
            .first()
            .cloned()
            .or_else(|| next::next_reading(seen))
            .map_or(NextAct::Plan, |thing| NextAct::Read { thing }),
    };
    let words = if seen.laid.legs == 0 {
        "No leg is read, so there is no outline.".to_owned()
    } else {
        closure::words(seen).en
    };
    let mut card = item("closure", "Closure", words, next);
    // What the tape said where a slip is looked for; of a line still open no one photo tells.
    let photos = suspects
        .iter()
        .filter_map(|suspect| things::photos(seen, suspect).into_iter().next());
    card.photos = photos.take(MOST_PHOTOS).collect();
    Some(card)
}

fn pitches(parts: &Parts) -> impl Iterator<Item = CheckItem> {
    let open: Vec<(&FaceView, &str)> = parts
        .faces
        .iter()
        .filter(|face| face.end.is_none_or(|end| end == EndKind::Sloped))
        .filter_map(|face| {
            let why = match face.face.state {
                State::NotLooked => "nobody looked",
                State::WorkedOut => "taken over, not read",
                State::ReadOnce | State::OffPhoto => "read once",
                State::Suspect => "readings differ",
                State::Hearsay => "only told",
                State::CannotGet => "not got",
                State::SettledAtDesk | State::Agreed | State::Proved | State::Struck => {
                    return None;
                }
            };
            Some((face, why))
        })
        .collect();
    // What nobody looked at first: without it there is no area.
    let first = open
        .iter()
        .find(|(face, _)| face.face.state == State::NotLooked)
        .or(open.first());
    let card = first.map(|(face, _)| {
        let told: Vec<String> = open
            .iter()
            .map(|(face, why)| format!("{}: {why}", face.face.title))
            .collect();
        let thing = face.face.thing.clone();
        let words = format!("{}.", told.join(". "));
        let mut card = item("pitches", "Pitches", words, NextAct::Open { thing });
        // A tape along an eave says nothing of the slope above it.
        let photos = open
            .iter()
            .filter_map(|(face, _)| face.face.photos.first().cloned());
        card.photos = photos.take(MOST_PHOTOS).collect();
        card
    });
    card.into_iter()
}

/// What was seen of the roof and speaks against the computed one: another roof is another order.
fn seen_otherwise(parts: &Parts) -> Option<CheckItem> {
    let flagged = || parts.judged.iter().filter(|judged| judged.is_flagged());
    let first = flagged().next()?;
    let said: Vec<String> = flagged().map(|judged| judged.said().en).collect();
    let next = match first.leg() {
        Some(leg) => NextAct::Open {
            thing: format!("face {leg}"),
        },
        None => NextAct::Open {
            thing: names::name(&Thing::RidgeHeight),
        },
    };
    Some(item("roof seen", "Roof as seen", said.join(" "), next))
}

fn sizes(parts: &Parts) -> impl Iterator<Item = CheckItem> {
    let lacking: Vec<&ItemView> = parts
        .items
        .iter()
        .filter(|item| {
            !matches!(
                item.item.thing.as_str(),
                "deck" | "layers" | "eave height" | "ridge height"
            )
        })
        .filter(|item| matches!(item.item.state, State::NotLooked | State::Suspect))
        .collect();
    let card = lacking.first().map(|first| {
        let titles: Vec<String> = lacking
            .iter()
            .map(|item| item.item.title.to_lowercase())
            .collect();
        let words = format!("No size that agrees: {}.", names::listed(&titles));
        let unread = first.sizes.iter().find(|size| size.value.is_none());
        let next = match unread {
            Some(size) => NextAct::Read {
                thing: size.thing.clone(),
            },
            None => NextAct::Open {
                thing: first.item.thing.clone(),
            },
        };
        let mut card = item("sizes", "Sizes", words, next);
        card.photos = lacking
            .iter()
            .filter_map(|item| item.item.photos.first().cloned())
            .take(MOST_PHOTOS)
            .collect();
        card
    });
    card.into_iter()
}

fn deck(parts: &Parts) -> impl Iterator<Item = CheckItem> {
    let unseen: Vec<&str> = ["deck", "layers"]
        .into_iter()
        .filter(|name| {
            let there = parts.items.iter().find(|item| item.item.thing == *name);
            there.is_none_or(|item| item.item.state == State::NotLooked)
        })
        .collect();
    let card = unseen.first().map(|first| {
        let words = match unseen.len() {
            1 => format!("Nobody saw the {first}. It is priced as an allowance, as a wide guess."),
            _ => "Seen at 0 places: neither deck nor layers. Both are priced as a wide guess."
                .to_owned(),
        };
        let thing = (*first).to_owned();
        let mut card = item("deck", "Deck", words, NextAct::Open { thing });
        card.photos = newest_of(parts.seen, |thing| {
            matches!(thing, Thing::Deck | Thing::DeckSize { .. } | Thing::Layers)
        });
        card
    });
    card.into_iter()
}

/// Sides of which no photo that stands is said or guessed to show them.
fn sides(parts: &Parts) -> Option<CheckItem> {
    let sides = PhotoPlace::ALL.into_iter().filter(|place| place.is_side());
    let shown = |place: &PhotoPlace| {
        let mut kept = parts.photos.iter().filter(|photo| !photo.set_aside);
        kept.any(|photo| photo.place == Some(*place))
    };
    let lacking: Vec<String> = sides
        .filter(|place| !shown(place))
        .map(|place| place.title().to_lowercase())
        .collect();
    if lacking.is_empty() {
        return None;
    }
    let words = format!("No photo shows: {}.", names::listed(&lacking));
    let mut card = item("sides", "Sides", words, NextAct::WalkRound);
    // What there is of the sides: a photo of something else proves nothing of them.
    card.photos = newest_of_place(parts, PhotoPlace::is_side);
    Some(card)
}

/// The driveway, before any work: somebody looked at it.
fn driveway(parts: &Parts) -> Option<CheckItem> {
    let noted = parts.seen.book.visited().any(|noted| {
        matches!(
            noted.what,
            VisitNote::Looked {
                what: WalkTarget::Driveway,
                found: Found::Seen | Found::None,
                ..
            }
        )
    });
    let words = "Nobody looked at the driveway before the work.".to_owned();
    (!noted).then(|| {
        let mut card = item("driveway", "Driveway", words, NextAct::Arrive);
        card.photos = newest_of_place(parts, |place| place == PhotoPlace::Ground);
        card
    })
}

fn permissions(parts: &Parts) -> Option<CheckItem> {
    let lacking = visit::not_given(parts.seen.book);
    (!lacking.is_empty()).then(|| {
        let words = format!(
            "Nobody is noted to have allowed: {}.",
            names::listed(&lacking)
        );
        item("permissions", "Permissions", words, NextAct::Arrive)
    })
}

fn promise(parts: &Parts) -> Option<CheckItem> {
    let mut notes = parts.seen.book.visited();
    let said = notes.any(|noted| matches!(noted.what, VisitNote::Promise { .. }));
    let words = "Nobody noted what was promised, or that nothing was.".to_owned();
    (!said).then(|| item("promise", "Promise", words, NextAct::Arrive))
}

fn copies(parts: &Parts) -> Option<CheckItem> {
    let copies = parts.copies;
    let words = format!("{}. A second one outlives a lost phone.", copies.en);
    (copies.code != "copies_2").then(|| item("copies", "Copies", words, NextAct::JobFile))
}

/// The most readings that are offered to be read again.
const MOST_AGAIN: usize = 3;

/// What is most worth reading again, with what it would do to the ± of the roof.
fn again(parts: &Parts) -> Vec<CheckItem> {
    let worth = |solved: &Solved| {
        let area = solved.totals.area.as_ref()?;
        let now = area.sigma.in_square_feet();
        let found = solved.read_first.iter().filter_map(|first| {
            let left = (now * now - first.gain?).max(0.0).sqrt();
            // Less than a foot of the ± is not worth the cold.
            let (now, then) = (now.ceil(), left.ceil());
            if now - then < 1.0 {
                return None;
            }
            let (thing, title, next) = named(parts, first.again)?;
            let words = format!(
                "Read once more, the roof would be known to ± {then:.0} sq ft instead of ± \
                 {now:.0}."
            );
            Some(item(&thing, &title, words, next))
        });
        Some(found.take(MOST_AGAIN).collect())
    };
    parts.seen.solved.and_then(worth).unwrap_or_default()
}

fn named(parts: &Parts, again: UncertaintySource) -> Option<(String, String, NextAct)> {
    match again {
        UncertaintySource::Reading { reading, .. } => {
            let span = parts.seen.survey_readings().get(reading)?.span;
            let thing = spanned(span)?;
            let title = things::plain_title(&thing);
            Some((names::name(&thing), title, NextAct::Read { thing }))
        }
        UncertaintySource::Pitch { leg, .. } => {
            let face = parts
                .faces
                .iter()
                .find(|face| face.leg as usize == leg + 1)?;
            let thing = face.face.thing.clone();
            let title = format!("{} pitch", face.face.title);
            Some((thing.clone(), title, NextAct::Open { thing }))
        }
    }
}

/// The newest photo of things that are asked for.
fn newest_of(seen: &SolvedJob, asked: impl Fn(&Thing) -> bool) -> Vec<String> {
    let mut photos = seen.book.photos.iter().rev();
    let newest = photos.find(|(_, photo)| photo.of.as_ref().is_some_and(&asked));
    newest
        .map(|(_, photo)| photo.sha256.clone())
        .into_iter()
        .collect()
}

/// The newest photo that shows a place that is asked for.
fn newest_of_place(parts: &Parts, asked: impl Fn(PhotoPlace) -> bool) -> Vec<String> {
    let mut there = parts.photos.iter().filter(|photo| !photo.set_aside);
    let newest = there.find(|photo| photo.place.is_some_and(&asked));
    newest
        .map(|photo| photo.sha256.clone())
        .into_iter()
        .collect()
}

/// The visit is over while nothing was booked since, here or elsewhere.
fn complete(parts: &Parts) -> Option<Sentence> {
    let last = parts.seen.book.acts.iter().rev().find(|act| act.in_force)?;
    let Kind::Visit(VisitNote::Left { reason }) = &last.kind else {
        return None;
    };
    let why = reason
        .as_ref()
        .map(|why| format!(" Left because: {why}."))
        .unwrap_or_default();
    let words = format!(
        "Check complete. {} at {}.{why} What nobody read goes into the packet as not known.",
        left::counts(parts.left).en,
        names::time_of_day(&last.local_time)
    );
    Some(sentence("check_complete", words))
}
