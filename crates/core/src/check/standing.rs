//! How well a thing is known: a word of its own for each way, the same on every screen and paper.

use crate::book::agree::in_dispute;
use crate::book::counted::counts;
use crate::book::fold::{BookedReading, FieldBook};
use crate::book::kinds::{HowRead, SizeOf, Thing};
use crate::book::lay_out::LaidOut;
use crate::outline::{ClosureState, ClosureWords, LastLeg, LegFigure, Outline, Round, Suspect};
use crate::settled::SolvedBody;
use crate::survey::{Reading, Span};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// How well a thing is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// Nobody looked.
    NotLooked,
    /// Somebody else's figure.
    Hearsay,
    /// Worked out from others.
    WorkedOut,
    /// Read once.
    ReadOnce,
    /// Read off a photo.
    OffPhoto,
    /// Read once, and let stand by somebody who looked at it at the desk.
    SettledAtDesk,
    /// Two readings or a closed loop within tolerance.
    Agreed,
    /// Agreed, and a photo.
    Proved,
    /// Cannot be got.
    CannotGet,
    /// The others speak against it.
    Suspect,
    /// Struck.
    Struck,
}

impl State {
    /// In a word or two: `read once`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            State::NotLooked => "not looked",
            State::Hearsay => "hearsay",
            State::WorkedOut => "worked out",
            State::ReadOnce => "read once",
            State::OffPhoto => "off photo",
            State::SettledAtDesk => "settled at desk",
            State::Agreed => "agreed",
            State::Proved => "proved",
            State::CannotGet => "can't get",
            State::Suspect => "suspect",
            State::Struck => "struck",
        }
    }
}

/// One job, as far as it says how well its things are known.
#[derive(Clone, Copy)]
pub struct Standing<'a> {
    /// What was booked.
    pub book: &'a FieldBook,
    /// The same laid out.
    pub laid: &'a LaidOut,
    /// The bodies after the adjustment; empty while the walk is open.
    pub bodies: &'a [SolvedBody],
}

impl<'a> Standing<'a> {
    /// The adjusted outline, once its line has come round.
    #[must_use]
    pub fn outline(&self) -> Option<&'a Outline> {
        Some(&self.bodies.first()?.outline)
    }

    /// Readings of a thing that are in force, the newest last.
    #[must_use]
    pub fn in_force(&self, thing: &Thing) -> Vec<&'a BookedReading> {
        let readings = self.book.readings.iter();
        let standing = readings.filter(|read| read.struck.is_none());
        standing.filter(|read| read.thing == *thing).collect()
    }

    /// What is known of a leg, from 1, after the adjustment.
    #[must_use]
    pub fn leg_figure(&self, leg: u32) -> Option<&'a LegFigure> {
        self.outline()?.legs.get((leg as usize).checked_sub(1)?)
    }

    /// The readings that the adjustment took.
    #[must_use]
    pub fn survey_readings(&self) -> &'a [Reading] {
        let survey = self.laid.survey.as_ref();
        let body = survey.and_then(|survey| survey.bodies.first());
        body.map(|body| body.readings.as_slice())
            .unwrap_or_default()
    }

    /// Things that the readings speak against, likeliest first, each once.
    #[must_use]
    pub fn suspects(&self) -> Vec<(Thing, &'a Suspect)> {
        if self.only_looks_finished() {
            return Vec::new();
        }
        let named = self
            .outline()
            .map(|outline| outline.suspects.named.as_slice());
        let mut things: Vec<(Thing, &Suspect)> = Vec::new();
        for suspect in named.unwrap_or_default() {
            let reading = self.survey_readings().get(suspect.reading);
            if let Some(thing) = reading.and_then(|reading| spanned(reading.span))
                && !things.iter().any(|(there, _)| *there == thing)
            {
                things.push((thing, suspect));
            }
        }
        things
    }

    /// Every corner so far is tapped and they come to once around, yet the sums miss in a way that no
    /// one slip makes: legs are still to come, and nobody is to be suspected for them.
    fn only_looks_finished(&self) -> bool {
        let walk = &self.laid.walk;
        walk.round == Round::EveryCornerTapped
            && matches!(
                walk.closure.words,
                ClosureWords::Gap {
                    last_leg: LastLeg::Perhaps,
                    ..
                }
            )
    }

    /// Things whose only reading nothing checks.
    #[must_use]
    pub fn unproved(&self) -> Vec<Thing> {
        let figures = self
            .outline()
            .map(|outline| outline.readings.as_slice())
            .unwrap_or_default();
        let readings = self.survey_readings().iter().zip(figures);
        readings
            .filter(|(_, figure)| figure.is_unproved())
            .filter_map(|(reading, _)| spanned(reading.span))
            .collect()
    }

    /// Whether both sums close and no leg was worked out: then every leg of the loop is checked by
    /// the others.
    #[must_use]
    pub fn loop_agrees(&self) -> bool {
        self.laid.walk.closure.state == ClosureState::Closes
    }

    /// How well a thing with a length is known.
    #[must_use]
    pub fn state(&self, thing: &Thing) -> State {
        let in_force = self.in_force(thing);
        let counted: Vec<&BookedReading> = in_force
            .iter()
            .copied()
            .filter(|read| counts(read))
            .collect();
        let Some(last) = counted.last() else {
            return self.unread_state(thing, &in_force);
        };
        let spoken_against = self.suspects().iter().any(|(suspect, _)| suspect == thing);
        let is_leg = matches!(thing, Thing::Leg { .. });
        let loop_checks = self.loop_agrees()
            && thing.is_of_outline()
            && (is_leg || !self.unproved().contains(thing));
        let entries = || counted.iter().map(|read| read.entry);
        if spoken_against || in_dispute(&counted) {
            // Somebody at the desk who lets it stand saw that; closure goes on saying it.
            if self.at_desk(State::ReadOnce, entries()) == State::SettledAtDesk {
                State::SettledAtDesk
            } else {
                State::Suspect
            }
        } else if counted.len() >= 2 || loop_checks {
            if self.has_photo(thing) {
                State::Proved
            } else {
                State::Agreed
            }
        } else {
            let once = if last.how == HowRead::OffPhoto {
                State::OffPhoto
            } else {
                State::ReadOnce
            };
            self.at_desk(once, entries())
        }
    }

    /// How well something with sizes is known: as well as the least known of them. The height of a
    /// chimney is worth having, and nothing waits for it.
    #[must_use]
    pub fn state_of_sizes(&self, sizes: &[Thing]) -> State {
        // Worst first.
        const RANKS: [State; 9] = [
            State::Suspect,
            State::NotLooked,
            State::CannotGet,
            State::Hearsay,
            State::OffPhoto,
            State::ReadOnce,
            State::SettledAtDesk,
            State::Agreed,
            State::Proved,
        ];
        let height = |size: &&Thing| {
            matches!(
                size,
                Thing::Size {
                    size: SizeOf::Height,
                    ..
                }
            )
        };
        let waited_for = sizes.iter().filter(|size| !height(size));
        let states: Vec<State> = waited_for.map(|size| self.state(size)).collect();
        let worst = RANKS.into_iter().find(|rank| states.contains(rank));
        // What has no size was seen, and that is all there is to it.
        worst.unwrap_or(State::ReadOnce)
    }

    /// The state of something that rests on these entries, once somebody at the desk let all of them
    /// stand. What is better known stays so.
    #[must_use]
    pub fn at_desk(&self, state: State, mut entries: impl Iterator<Item = Uuid>) -> State {
        let is_once = matches!(state, State::ReadOnce | State::OffPhoto);
        let first = entries.next();
        let settled = |entry: Uuid| self.book.settled.contains(&entry);
        if is_once && first.is_some_and(settled) && entries.all(settled) {
            State::SettledAtDesk
        } else {
            state
        }
    }

    /// Whether a photo shows a thing, or the whole of which it is a size.
    #[must_use]
    pub fn has_photo(&self, thing: &Thing) -> bool {
        let whole = thing.whole();
        let photos = self.book.photos.iter().map(|(_, photo)| photo);
        photos
            .filter_map(|photo| photo.of.as_ref())
            .any(|of| of.whole() == whole)
    }

    fn unread_state(&self, thing: &Thing, in_force: &[&BookedReading]) -> State {
        let worked_out = match thing {
            Thing::Leg { leg } => self
                .leg_figure(*leg)
                .is_some_and(|leg| leg.length.is_some()),
            Thing::Tie { .. }
            | Thing::Item { .. }
            | Thing::Size { .. }
            | Thing::Overhang { .. }
            | Thing::Slope { .. }
            | Thing::EaveHeight
            | Thing::RidgeHeight
            | Thing::Deck
            | Thing::DeckSize { .. }
            | Thing::Layers
            | Thing::Change { .. } => false,
        };
        let lacks = &self.book.cannot_get;
        if worked_out {
            State::WorkedOut
        } else if lacks.iter().any(|(_, lack, _)| lack == thing) {
            State::CannotGet
        } else if !in_force.is_empty() {
            State::Hearsay
        } else {
            State::NotLooked
        }
    }
}

/// The leg or tie, counted from 1, that a tape spanned.
#[must_use]
pub fn spanned(span: Span) -> Option<Thing> {
    let count = |index: usize| u32::try_from(index + 1).ok();
    match span {
        Span::Leg(leg) | Span::WallOfLeg { leg, .. } => Some(Thing::Leg { leg: count(leg)? }),
        Span::Tie(from, to) => Some(Thing::Tie {
            from: count(from)?,
            to: count(to)?,
        }),
        Span::Overall { .. } => None,
    }
}
