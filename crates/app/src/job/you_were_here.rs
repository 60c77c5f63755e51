//! The last act and the next one, in words.

use crate::job::reply::{ActView, YouWereHere};
use crate::names;
use crate::parts::reply::NextAct;
use crate::parts::solved_job::SolvedJob;
use crate::parts::{next, things, visit};
use crate::sentence::sentence;
use eavebook_core::book::acts::Act;
use eavebook_core::book::kinds::{Kind, PhotoFacts, PhotoWord};

/// The last act on this device and the next; none in an empty job.
#[must_use]
pub fn you_were_here(seen: &SolvedJob) -> Option<YouWereHere> {
    let acts = seen.book.acts.iter().rev();
    let mut mine = acts.filter(|act| act.device == seen.device);
    let last = mine.find(|act| !matches!(act.kind, Kind::ReadBackRight(_)))?;
    if matches!(last.kind, Kind::JobStarted(_)) {
        return None;
    }
    let next = next::next(seen);
    let leads_on = match &next {
        NextAct::Read { thing } => match seen.in_force(thing).is_empty() {
            true => format!("Next: read {}.", names::name(thing)),
            false => format!("Next: read {} again.", names::name(thing)),
        },
        NextAct::Corner { after_leg } => format!("Next: the corner after leg {after_leg}."),
        NextAct::Plan => "Next: look at the plan.".to_owned(),
        NextAct::WalkRound => "Next: look at the photos.".to_owned(),
        NextAct::Arrive => "Next: say who is here.".to_owned(),
        NextAct::JobFile => "Next: look at the papers.".to_owned(),
        NextAct::Open { thing } => format!("Next: look at {thing}."),
    };
    let words = sentence("you_were_here", format!("{} {leads_on}", done(seen, last)));
    Some(YouWereHere { words, next })
}

/// What an act did: "Leg 4 booked."
fn done(seen: &SolvedJob, act: &Act) -> String {
    match &act.kind {
        Kind::JobStarted(_) => "Job begun.".to_owned(),
        Kind::Reading(read) => format!("{} booked.", things::plain_title(&read.thing)),
        Kind::ReadBackRight(_) => "Read-back right.".to_owned(),
        Kind::Corner(corner) => {
            format!(
                "At the {} after leg {}.",
                names::corner(corner.turn),
                corner.after_leg
            )
        }
        Kind::CannotGet(lack) => format!("{} can't be reached.", things::plain_title(&lack.thing)),
        Kind::LegEnd(at) => format!("Leg {} said: {}.", at.leg, names::end(at.end)),
        Kind::Pitch(pitch) => format!("Pitch at leg {} booked.", pitch.leg),
        Kind::Penetration(_)
        | Kind::Covering(_)
        | Kind::Deck(_)
        | Kind::RoofObserved(_)
        | Kind::Rate(_) => {
            format!("{} booked.", names::capital(&named(seen, act)))
        }
        Kind::Visit(note) => format!("{}.", names::capital(&visit::name(note))),
        Kind::Change(change) => format!("{} booked.", things::plain_title(&change.thing())),
        Kind::Photo(photo) => match &photo.of {
            Some(thing) => format!("Photo of {} kept.", names::name(thing)),
            None => "Photo kept.".to_owned(),
        },
        Kind::Clip(clip) => match &clip.of {
            Some(thing) => format!("What was said of {} is kept.", names::name(thing)),
            None => "What was said is kept.".to_owned(),
        },
        Kind::PhotoFacts(_) | Kind::SettledAtDesk(_) => {
            format!("{}.", names::capital(&named(seen, act)))
        }
        Kind::Strike(_) => format!("{} struck.", names::capital(&first_of(seen, act))),
        Kind::Undo(_) => format!("{} taken back.", names::capital(&first_of(seen, act))),
        Kind::Redo(_) => {
            // A redo names the undo, which names the act.
            let undone = act.supersedes.iter().find_map(|id| seen.book.act(*id));
            let again = undone.map(|undo| first_of(seen, undo));
            format!(
                "{} stands again.",
                names::capital(&again.unwrap_or_default())
            )
        }
        Kind::PacketFrozen(_) => "Packet made.".to_owned(),
        Kind::PacketSent(_) => "Packet on its way.".to_owned(),
    }
}

/// The act that another takes out of use, in words without its value.
fn first_of(seen: &SolvedJob, act: &Act) -> String {
    let taken = act.supersedes.iter().find_map(|id| seen.book.act(*id));
    taken.map_or_else(|| "an entry".to_owned(), |taken| named(seen, taken))
}

fn named(seen: &SolvedJob, act: &Act) -> String {
    match &act.kind {
        Kind::JobStarted(_) => "the job".to_owned(),
        Kind::Reading(read) => names::name(&read.thing),
        Kind::ReadBackRight(_) => "read-back".to_owned(),
        Kind::Corner(corner) => format!("the corner after leg {}", corner.after_leg),
        Kind::CannotGet(lack) => format!("that {} can't be reached", names::name(&lack.thing)),
        Kind::LegEnd(at) => format!("what rises at leg {}", at.leg),
        Kind::Pitch(pitch) => format!("a pitch at leg {}", pitch.leg),
        Kind::Penetration(item) => names::name(&item.thing()),
        Kind::Covering(_) => "what lies on the roof".to_owned(),
        Kind::Deck(_) => "the deck".to_owned(),
        Kind::RoofObserved(seen) => format!("{} seen over leg {}", seen.over.words(), seen.leg),
        Kind::Rate(rate) => format!("the rate {}", rate.key),
        Kind::Visit(note) => visit::name(note),
        Kind::Change(change) => names::name(&change.thing()),
        Kind::Photo(photo) => match &photo.of {
            Some(thing) => format!("a photo of {}", names::name(thing)),
            None => "a photo".to_owned(),
        },
        Kind::Clip(clip) => match &clip.of {
            Some(thing) => format!("what was said of {}", names::name(thing)),
            None => "what was said".to_owned(),
        },
        Kind::PhotoFacts(said) => photo_word(said),
        Kind::SettledAtDesk(settled) => {
            let of = settled.entries.iter().find_map(|id| seen.book.act(*id));
            let what = of.map_or_else(|| "an entry".to_owned(), |of| named(seen, of));
            format!("{what} settled at the desk")
        }
        Kind::Strike(_) => format!("the strike of {}", first_of(seen, act)),
        Kind::Undo(_) | Kind::Redo(_) => first_of(seen, act),
        Kind::PacketFrozen(_) | Kind::PacketSent(_) => "a packet".to_owned(),
    }
}

/// A word about photos: `3 photos: Back`.
fn photo_word(said: &PhotoFacts) -> String {
    let which = match said.photos.len() {
        1 => "a photo".to_owned(),
        many => format!("{many} photos"),
    };
    let word = match said.word {
        PhotoWord::Shows { place } => place.title(),
        PhotoWord::From { distance } => distance.word(),
        PhotoWord::Private { on: true } => "private",
        PhotoWord::Private { on: false } => "no longer private",
        PhotoWord::SetAside { on: true } => "set aside",
        PhotoWord::SetAside { on: false } => "brought back",
    };
    format!("{which}: {word}")
}

/// An act as Undo and Redo name it: "leg 4, 42 ft 7 in".
fn with_value(seen: &SolvedJob, act: &Act) -> String {
    let words = named(seen, act);
    let Kind::Reading(read) = &act.kind else {
        return words;
    };
    if seen.hides(&read.thing) {
        words
    } else {
        format!("{words}, {}", things::in_words(&read.text))
    }
}

/// What Undo takes back.
#[must_use]
pub fn undo(seen: &SolvedJob) -> Option<ActView> {
    let act = seen.book.undo_of(seen.device)?;
    Some(ActView {
        entry: act.entry,
        words: with_value(seen, act),
    })
}

/// What Redo does again.
#[must_use]
pub fn redo(seen: &SolvedJob) -> Option<ActView> {
    let undo = seen.book.redo_of(seen.device)?;
    let words = seen.book.undone_by(undo).map(|act| with_value(seen, act));
    Some(ActView {
        entry: undo.entry,
        words: words.unwrap_or_default(),
    })
}
