//! The story of a thing: everything booked about it, and everything that took any of that out of
//! use or let it stand again, in order. Nothing is left out: struck readings stay readable.

use super::acts::Act;
use super::fold::FieldBook;
use super::kinds::{Kind, ObservedOverLeg, Thing};
use std::collections::BTreeSet;
use uuid::Uuid;

/// What a story can be told of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Subject {
    /// Readings of a leg or a tie, and that it could not be read.
    Thing(Thing),
    /// The corner at the far end of a leg, from 1.
    CornerAfter(u32),
    /// What rises at a leg, from 1.
    EndOf(u32),
    /// Slopes of the face that rises from a leg, from 1.
    PitchOf(u32),
    /// What was seen of the covering at a leg, from 1, or at no place named.
    CoveringAt(Option<u32>),
    /// What was seen of the deck at a leg, from 1, or at no place named.
    DeckAt(Option<u32>),
    /// What was seen of the roof over a leg, from 1: of the sort of this.
    RoofObservedAt(u32, ObservedOverLeg),
    /// A rate of the firm, by the path of its key.
    Rate(String),
    /// What was said of one thing on a visit, by [`super::visit::VisitNote::about`].
    Visit(String),
}

impl Subject {
    fn is_of(&self, kind: &Kind) -> bool {
        match kind {
            Kind::Reading(read) => *self == Subject::Thing(read.thing.clone()),
            Kind::CannotGet(lack) => *self == Subject::Thing(lack.thing.clone()),
            Kind::Corner(corner) => *self == Subject::CornerAfter(corner.after_leg),
            Kind::LegEnd(at) => *self == Subject::EndOf(at.leg),
            Kind::Pitch(pitch) => *self == Subject::PitchOf(pitch.leg),
            Kind::Penetration(seen) => *self == Subject::Thing(seen.thing()),
            Kind::Covering(seen) => *self == Subject::CoveringAt(seen.leg),
            Kind::Deck(seen) => *self == Subject::DeckAt(seen.leg),
            Kind::RoofObserved(seen) => {
                matches!(self, Subject::RoofObservedAt(leg, over)
                    if *leg == seen.leg && over.is_like(seen.over))
            }
            Kind::Rate(set) => *self == Subject::Rate(set.key.clone()),
            Kind::Visit(note) => note.about().map(Subject::Visit).as_ref() == Some(self),
            Kind::Change(change) => *self == Subject::Thing(change.thing()),
            Kind::Clip(clip) => clip.of.clone().map(Subject::Thing).as_ref() == Some(self),
            Kind::Photo(photo) => photo.of.clone().map(Subject::Thing).as_ref() == Some(self),
            Kind::JobStarted(_)
            | Kind::PhotoFacts(_)
            | Kind::ReadBackRight(_)
            | Kind::SettledAtDesk(_)
            | Kind::Strike(_)
            | Kind::Undo(_)
            | Kind::Redo(_)
            | Kind::PacketFrozen(_)
            | Kind::PacketSent(_) => false,
        }
    }
}

impl FieldBook {
    /// Everything ever said of a subject, in display order: readings, read-backs, photos, what
    /// struck them, what took the strike back.
    pub fn story<'a>(&'a self, subject: &Subject) -> Vec<&'a Act> {
        let mut told: BTreeSet<Uuid> = self.entries_about(subject).collect();
        // A strike may come before its reading in display order when a clock was wrong, so follow
        // the links until nothing new is found.
        loop {
            let before = told.len();
            for act in &self.acts {
                let answers = match &act.kind {
                    Kind::ReadBackRight(about) => told.contains(&about.entry),
                    Kind::SettledAtDesk(settled) => {
                        settled.entries.iter().any(|entry| told.contains(entry))
                    }
                    Kind::Strike(_) | Kind::Undo(_) | Kind::Redo(_) => {
                        act.supersedes.iter().any(|id| told.contains(id))
                    }
                    Kind::JobStarted(_)
                    | Kind::Reading(_)
                    | Kind::Corner(_)
                    | Kind::CannotGet(_)
                    | Kind::LegEnd(_)
                    | Kind::Pitch(_)
                    | Kind::Penetration(_)
                    | Kind::Covering(_)
                    | Kind::Deck(_)
                    | Kind::RoofObserved(_)
                    | Kind::Rate(_)
                    | Kind::Visit(_)
                    | Kind::Change(_)
                    | Kind::Photo(_)
                    | Kind::Clip(_)
                    | Kind::PhotoFacts(_)
                    | Kind::PacketFrozen(_)
                    | Kind::PacketSent(_) => false,
                };
                if answers {
                    told.insert(act.entry);
                }
            }
            if told.len() == before {
                break;
            }
        }
        self.acts
            .iter()
            .filter(|act| told.contains(&act.entry))
            .collect()
    }

    /// What a new entry must supersede to stand in the place of all that was said of a subject:
    /// every earlier one, since the one before it would stand again if only the last were named.
    /// Empty for what is read: readings of one thing are all kept.
    pub fn replaced_by_new(&self, subject: &Subject) -> Vec<Uuid> {
        match subject {
            Subject::CornerAfter(_)
            | Subject::EndOf(_)
            | Subject::CoveringAt(_)
            | Subject::DeckAt(_)
            | Subject::RoofObservedAt(..)
            | Subject::Rate(_)
            | Subject::Visit(_) => self.entries_about(subject).collect(),
            Subject::Thing(_) | Subject::PitchOf(_) => Vec::new(),
        }
    }

    fn entries_about(&self, subject: &Subject) -> impl Iterator<Item = Uuid> {
        let about = self.acts.iter().filter(|act| subject.is_of(&act.kind));
        about.map(|act| act.entry)
    }
}
