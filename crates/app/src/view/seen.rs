//! What a job comes to, worked out once for all that is shown of it.

use crate::places::job::Opened;
use crate::reply::State;
use eavebook_core::book::agree::in_dispute;
use eavebook_core::book::fold::{BookedReading, FieldBook};
use eavebook_core::book::kinds::{HowRead, Side, TapeMarks, Thing};
use eavebook_core::book::lay_out::{LaidOut, counts};
use eavebook_core::check::{Proof, ReadAgain};
use eavebook_core::outline::{
    ClosureState, ClosureWords, LastLeg, LegFigure, Outline, Round, Suspect,
};
use eavebook_core::solve::{self, Solved};
use eavebook_core::survey::{Reading, Span};
use eavebook_core::units::RoundTo;
use uuid::Uuid;

/// One job, folded and worked out, with what must not be seen.
pub struct Seen<'a> {
    /// What was booked.
    pub book: &'a FieldBook,
    /// The same laid out.
    pub laid: &'a LaidOut,
    /// What it comes to, once its line has come round.
    pub solved: Option<&'a Solved>,
    /// The thing that is being read again without sight of its value.
    pub hidden: Option<&'a Thing>,
    /// This device.
    pub device: Uuid,
    /// On which side of the walker the building stands.
    pub building_on: Side,
    /// How the tape of this device is marked.
    pub tape: TapeMarks,
}

/// What a job comes to; none while its line is open, or where its readings make no outline.
#[must_use]
pub fn solve(laid: &LaidOut) -> Option<Solved> {
    solve::solve(laid.survey.as_ref()?).ok()
}

impl<'a> Seen<'a> {
    /// A job with what it comes to. `hidden`: what is being read again without sight.
    #[must_use]
    pub fn new(
        opened: &'a Opened,
        laid: &'a LaidOut,
        solved: Option<&'a Solved>,
        hidden: Option<&'a Thing>,
    ) -> Seen<'a> {
        let walked_on = opened
            .book
            .corners
            .first()
            .map(|(_, corner)| corner.building_on);
        Seen {
            book: &opened.book,
            laid,
            solved,
            hidden,
            device: opened.device,
            building_on: walked_on.unwrap_or(opened.settings.building_on()),
            tape: opened.settings.tape(),
        }
    }

    /// The adjusted outline, once its line has come round.
    #[must_use]
    pub fn outline(&self) -> Option<&'a Outline> {
        Some(&self.solved?.bodies.first()?.outline)
    }

    /// How finely worked-out lengths are shown.
    #[must_use]
    pub fn round_to(&self) -> RoundTo {
        match self.tape {
            TapeMarks::FeetInches => RoundTo::Inch,
            TapeMarks::FeetTenths => RoundTo::TenthFoot,
            TapeMarks::Metres => RoundTo::Centimetre,
        }
    }

    /// Whether the value of a thing must not be seen now.
    #[must_use]
    pub fn hides(&self, thing: &Thing) -> bool {
        self.hidden == Some(thing)
    }

    /// Readings of a thing that are in force, the newest last.
    #[must_use]
    pub fn in_force(&self, thing: &Thing) -> Vec<&'a BookedReading> {
        let standing = self
            .book
            .readings
            .iter()
            .filter(|read| read.struck.is_none());
        standing.filter(|read| read.thing == *thing).collect()
    }

    /// What is known of a leg, from 1, after the adjustment.
    #[must_use]
    pub fn leg_figure(&self, leg: u32) -> Option<&'a LegFigure> {
        self.outline()?.legs.get((leg as usize).checked_sub(1)?)
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

    /// The readings that the adjustment took.
    #[must_use]
    pub fn survey_readings(&self) -> &'a [Reading] {
        let body = self
            .laid
            .survey
            .as_ref()
            .and_then(|survey| survey.bodies.first());
        body.map(|body| body.readings.as_slice())
            .unwrap_or_default()
    }

    /// The thing of which a second reading would gain the most.
    #[must_use]
    pub fn read_first(&self) -> Option<Thing> {
        self.solved?
            .read_first
            .iter()
            .find_map(|first| match first.again {
                ReadAgain::Reading { reading, .. } => {
                    spanned(self.survey_readings().get(reading)?.span)
                }
                ReadAgain::Pitch { .. } => None,
            })
    }

    /// How far the others check the only reading of a leg or a tie; none where it was read more often,
    /// or not at all.
    #[must_use]
    pub fn proof(&self, thing: &Thing) -> Option<&'a Proof> {
        let proofs = self.solved?.proofs.iter();
        let mut of_it = proofs.filter(|proof| {
            let reading = self.survey_readings().get(proof.reading);
            reading.and_then(|reading| spanned(reading.span)).as_ref() == Some(thing)
        });
        let first = of_it.next()?;
        of_it.next().is_none().then_some(first)
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

    /// Whether the line has come round to its start.
    #[must_use]
    pub fn is_shut(&self) -> bool {
        self.laid.is_round()
    }

    /// Whether both sums close and no leg was worked out: then every leg of the loop is checked by
    /// the others.
    #[must_use]
    pub fn loop_agrees(&self) -> bool {
        self.laid.walk.closure.state == ClosureState::Closes
    }

    /// How well a leg or a tie is known.
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
        if spoken_against || in_dispute(&counted) {
            State::Suspect
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
            self.at_desk(once, counted.iter().map(|read| read.entry))
        }
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
            | Thing::EaveHeight
            | Thing::Deck
            | Thing::DeckSize { .. }
            | Thing::Layers
            | Thing::Change { .. } => false,
        };
        if worked_out {
            State::WorkedOut
        } else if self
            .book
            .cannot_get
            .iter()
            .any(|(_, lack, _)| lack == thing)
        {
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
