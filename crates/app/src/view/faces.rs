//! Faces as list items: one a leg as soon as the outline closes.

use super::captured;
use super::items;
use super::names;
use super::plan::end_of;
use super::roof::{self, Raised, face_names};
use super::seen::Seen;
use super::things;
use crate::reply::{ChoiceView, FaceView, Figure, State, StoryView, ThingView};
use crate::request::Request;
use eavebook_core::book::fold::BookedPitch;
use eavebook_core::book::kinds::{EndKind, ItemKind, PitchRead, Thing};
use eavebook_core::pitch::{SettledPitch, SettledRise};
use eavebook_core::solve::Solved;
use eavebook_core::units::Pitch;
use uuid::Uuid;

/// Two readings of a slope that differ by no more than this agree: the odd place on a roof is the
/// larger doubt (our judgement).
const SLOPES_AGREE_DEG: f64 = 1.5;

/// Every face, in the order of the walk; none while the line is open.
#[must_use]
pub fn view(
    seen: &Seen,
    job: Uuid,
    solved: Option<&Solved>,
    raised: Option<&Raised>,
) -> Vec<FaceView> {
    if !seen.is_shut() {
        return Vec::new();
    }
    let rises = solved
        .and_then(|solved| solved.bodies.first())
        .map(|body| body.rises.as_slice());
    let faces = Faces {
        seen,
        job,
        names: face_names(seen),
        rises: rises.unwrap_or_default(),
        raised,
    };
    (1..=seen.laid.legs)
        .filter_map(|leg| u32::try_from(leg).ok())
        .map(|leg| faces.one(leg))
        .collect()
}

struct Faces<'a> {
    seen: &'a Seen<'a>,
    job: Uuid,
    names: Vec<String>,
    rises: &'a [SettledRise],
    raised: Option<&'a Raised<'a>>,
}

impl Faces<'_> {
    fn one(&self, leg: u32) -> FaceView {
        let said = self
            .seen
            .book
            .leg_ends
            .iter()
            .rev()
            .find(|(_, at, _)| *at == leg);
        let in_force = self.in_force(leg).into_iter();
        let state = self
            .seen
            .at_desk(self.state(leg), in_force.map(|pitch| pitch.entry));
        let area = self.raised.and_then(|raised| raised.area_of(leg));
        let slope = self.slope(leg);
        FaceView {
            face: ThingView {
                thing: format!("face {leg}"),
                read: None,
                title: self.name(leg),
                state,
                state_word: names::state_word(state).to_owned(),
                value: area.map(|area| Figure {
                    words: area.words(),
                    give_or_take: Some(area.give_or_take()),
                }),
                about: self.about(leg),
                story: self.story(leg, state),
                photos: Vec::new(),
            },
            leg,
            end: said.map(|(_, _, end)| *end),
            pitch: slope.map(figure),
            captured: captured::view(&self.in_force(leg)),
            slopes_before: u32::try_from(self.seen.book.pitches.len()).unwrap_or(u32::MAX),
            same_as: if self.is_sloped(leg) && slope.is_none() {
                self.others(leg)
            } else {
                Vec::new()
            },
            add: if self.is_sloped(leg) {
                self.add(leg)
            } else {
                Vec::new()
            },
            sizes: vec![items::size_view(self.seen, &Thing::Overhang { leg })],
            asks: vec![
                items::ask_layers(self.seen, self.job, Some(leg)),
                items::ask_deck(self.seen, self.job, Some(leg)),
            ],
        }
    }

    /// What can be added on the face of a leg.
    fn add(&self, leg: u32) -> Vec<ChoiceView> {
        let noted = &self.seen.book.penetrations;
        let choice = |item: ItemKind| {
            let same = noted.iter().filter(|noted| noted.what.item == item);
            let number = same.map(|noted| noted.what.number).max().unwrap_or(0) + 1;
            ChoiceView {
                name: names::capital(item.word()),
                chosen: false,
                says: Request::AddItem {
                    job: self.job,
                    leg,
                    item,
                    after: u32::try_from(noted.len()).unwrap_or(u32::MAX),
                },
                opens: Some(names::name(&Thing::Item { item, number })),
            }
        };
        ItemKind::ALL.into_iter().map(choice).collect()
    }

    fn name(&self, leg: u32) -> String {
        let index = (leg as usize).saturating_sub(1);
        self.names.get(index).cloned().unwrap_or_default()
    }

    fn is_sloped(&self, leg: u32) -> bool {
        end_of(self.seen, leg) == EndKind::Sloped
    }

    fn slope(&self, leg: u32) -> Option<&SettledPitch> {
        match self.rises.get((leg as usize).checked_sub(1)?)? {
            SettledRise::Slope(pitch) => Some(pitch),
            SettledRise::Unknown
            | SettledRise::Bands(_)
            | SettledRise::Gable
            | SettledRise::Wall => None,
        }
    }

    /// Slopes booked at a leg and in force.
    fn in_force(&self, leg: u32) -> Vec<&BookedPitch> {
        let here = self
            .seen
            .book
            .pitches
            .iter()
            .filter(|pitch| pitch.leg == leg);
        here.filter(|pitch| pitch.struck.is_none()).collect()
    }

    fn state(&self, leg: u32) -> State {
        if !self.is_sloped(leg) {
            // What rises there was seen, and has no figure but that of its leg.
            return self.seen.state(&Thing::Leg { leg });
        }
        let in_force = self.in_force(leg);
        let not_got = matches!(
            in_force.last().map(|pitch| &pitch.read),
            Some(PitchRead::NotGot)
        );
        let told = in_force
            .iter()
            .any(|pitch| matches!(pitch.read, PitchRead::Number { .. }));
        // A phone both ways round is one position: its mean is free of the phone's zero error.
        let positions = positions(&in_force);
        let least = positions.iter().copied().fold(f64::INFINITY, f64::min);
        let most = positions.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        match positions.len() {
            0 if not_got => State::CannotGet,
            0 if told => State::ReadOnce,
            0 if self.slope(leg).is_some() => State::WorkedOut,
            0 => State::NotLooked,
            1 => State::ReadOnce,
            _ if most - least <= SLOPES_AGREE_DEG => State::Agreed,
            _ => State::Suspect,
        }
    }

    fn about(&self, leg: u32) -> String {
        let rises = match end_of(self.seen, leg) {
            EndKind::Gable => return format!("a gable end over leg {leg}"),
            EndKind::Wall => return format!("a wall that rises past the roof at leg {leg}"),
            EndKind::Sloped => format!("rises from leg {leg}"),
        };
        let in_force = self.in_force(leg);
        let taken = in_force.iter().rev().find_map(|pitch| match pitch.read {
            PitchRead::SameAs { leg } => Some(leg),
            PitchRead::Number { .. }
            | PitchRead::LevelAndTape { .. }
            | PitchRead::Phone { .. }
            | PitchRead::NotGot => None,
        });
        let read = positions(&in_force).len();
        match (read, taken) {
            (0, Some(other)) => format!("{rises}, taken as the same as {}", self.name(other)),
            (0, None) if in_force.is_empty() => format!("{rises}, pitch not looked at"),
            (0, None) if self.state(leg) == State::CannotGet => {
                format!("{rises}, pitch looked for and not got")
            }
            (0, None) => format!("{rises}, pitch given as a number"),
            (count, _) => format!("{rises}, pitch {}", names::times(count)),
        }
    }

    /// Faces whose pitch is known and may be taken over, the same pitch once: (leg, name).
    fn others(&self, leg: u32) -> Vec<(u32, String)> {
        let mut known: Vec<(u32, String)> = Vec::new();
        let mut read_at = Vec::new();
        for other in (1..=self.seen.laid.legs).filter_map(|leg| u32::try_from(leg).ok()) {
            if let Some(slope) = self.slope(other)
                && other != leg
                && !read_at.contains(&slope.read_at)
            {
                read_at.push(slope.read_at);
                known.push((other, self.name(other)));
            }
        }
        known
    }

    fn story(&self, leg: u32, of_face: State) -> Vec<StoryView> {
        let here = self
            .seen
            .book
            .pitches
            .iter()
            .rev()
            .filter(|pitch| pitch.leg == leg);
        let item = |pitch: &BookedPitch| {
            let state = if pitch.struck.is_some() {
                State::Struck
            } else {
                of_face
            };
            let mut about = vec![
                how(&pitch.read).to_owned(),
                names::time_of_day(&pitch.local_time),
            ];
            about.extend(pitch.struck.as_ref().map(things::struck));
            StoryView {
                entry: pitch.entry,
                value: self.value(&pitch.read),
                state,
                state_word: names::state_word(state).to_owned(),
                about: about.join(", "),
                may_strike: pitch.struck.is_none(),
            }
        };
        here.map(item).collect()
    }

    fn value(&self, read: &PitchRead) -> String {
        match read {
            PitchRead::Number { in_12 } => roof::in_12(*in_12),
            PitchRead::LevelAndTape { run_in, rise_in } => {
                format!(
                    "{rise_in} in over {run_in} in, {}",
                    in_degrees(*rise_in, *run_in)
                )
            }
            PitchRead::Phone { degrees, .. } => format!("{degrees:.1}°"),
            PitchRead::SameAs { leg } => format!("as {}", self.name(*leg)),
            PitchRead::NotGot => "not got".to_owned(),
        }
    }
}

/// "6 in 12, 26.6°" with its ± where it was read.
fn figure(slope: &SettledPitch) -> Figure {
    let words = format!(
        "{}, {:.1}°",
        roof::in_12(slope.used.in_12()),
        slope.used.angle().in_degrees()
    );
    let sigma = slope.sigma.in_degrees();
    let give_or_take = slope
        .read
        .as_ref()
        .map(|_| format!("± {:.1}°", (sigma * 10.0).ceil() / 10.0));
    Figure {
        words,
        give_or_take,
    }
}

fn in_degrees(rise: f64, run: f64) -> String {
    format!(
        "{:.1}°",
        Pitch::rise_in_12(12.0 * rise / run).angle().in_degrees()
    )
}

/// Degrees of a slope that was read on the roof; none where it was told or taken over.
#[must_use]
pub fn degrees(read: &PitchRead) -> Option<f64> {
    match read {
        PitchRead::Phone { degrees, .. } => Some(*degrees),
        PitchRead::LevelAndTape { run_in, rise_in } => Some(
            Pitch::rise_in_12(12.0 * rise_in / run_in)
                .angle()
                .in_degrees(),
        ),
        PitchRead::Number { .. } | PitchRead::SameAs { .. } | PitchRead::NotGot => None,
    }
}

/// Degrees of each position that was read, a forward and the next reversed reading as their mean.
fn positions(pitches: &[&BookedPitch]) -> Vec<f64> {
    let mut values = Vec::new();
    let mut forward: Option<f64> = None;
    for pitch in pitches {
        match &pitch.read {
            PitchRead::Phone {
                degrees,
                reversed: false,
            } => {
                values.extend(forward.replace(*degrees));
            }
            PitchRead::Phone {
                degrees,
                reversed: true,
            } => {
                values.push(
                    forward
                        .take()
                        .map_or(*degrees, |first| (first + degrees) / 2.0),
                );
            }
            PitchRead::Number { .. }
            | PitchRead::LevelAndTape { .. }
            | PitchRead::SameAs { .. }
            | PitchRead::NotGot => values.extend(degrees(&pitch.read)),
        }
    }
    values.extend(forward);
    values
}

fn how(read: &PitchRead) -> &'static str {
    match read {
        PitchRead::Number { .. } => "given as a number",
        PitchRead::LevelAndTape { .. } => "by level and tape",
        PitchRead::Phone {
            reversed: false, ..
        } => "by a phone laid on the slope",
        PitchRead::Phone { reversed: true, .. } => "by a phone turned end for end",
        PitchRead::SameAs { .. } => "taken over, not read",
        PitchRead::NotGot => "looked for, not got",
    }
}
