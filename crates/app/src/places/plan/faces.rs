//! Faces as list items: one a leg as soon as the outline closes.

use crate::names;
use crate::parts::comparison::Comparison;
use crate::parts::reply::{ChoiceView, Figure, StoryView, ThingView};
use crate::parts::roof::{self, Raised, face_names};
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::plan::reply::FaceView;
use crate::places::plan::request::PlanRequest;
use crate::places::plan::sketch::end_of;
use crate::places::plan::{captured, items, roof_observed};
use eavebook_core::book::fold::BookedPitch;
use eavebook_core::book::kinds::{EndKind, ItemKind, PitchRead, Thing};
use eavebook_core::check::{State, positions};
use eavebook_core::pitch::SettledPitch;
use eavebook_core::units::Pitch;
use uuid::Uuid;

/// Every face, in the order of the walk; none while the line is open.
#[must_use]
pub fn view(
    seen: &SolvedJob,
    job: Uuid,
    raised: Option<&Raised>,
    judged: &[Comparison],
) -> Vec<FaceView> {
    if !seen.is_shut() {
        return Vec::new();
    }
    let faces = Faces {
        seen,
        job,
        names: face_names(seen),
        raised,
        judged,
    };
    (1..=seen.laid.legs)
        .filter_map(|leg| u32::try_from(leg).ok())
        .map(|leg| faces.one(leg))
        .collect()
}

struct Faces<'a> {
    seen: &'a SolvedJob<'a>,
    job: Uuid,
    names: Vec<String>,
    raised: Option<&'a Raised<'a>>,
    judged: &'a [Comparison],
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
        let state = self.seen.slope_state(leg);
        let area = self.raised.and_then(|raised| raised.area_of(leg));
        let slope = self.seen.settled_slope(leg);
        FaceView {
            face: ThingView {
                thing: format!("face {leg}"),
                read: None,
                title: self.name(leg),
                state,
                state_word: state.word().to_owned(),
                value: area.map(|area| Figure {
                    words: area.words(),
                    give_or_take: Some(area.give_or_take()),
                }),
                about: self.about(leg),
                story: self.story(leg, state),
                photos: things::photos(self.seen, &Thing::Slope { leg }),
            },
            leg,
            end: said.map(|(_, _, end)| *end),
            pitch: slope.map(figure),
            captured: captured::view(&self.seen.slopes_in_force(leg), self.seen.language),
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
            seen: roof_observed::view(self.seen, self.job, leg, self.judged),
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
                says: PlanRequest::AddItem {
                    job: self.job,
                    leg,
                    item,
                    after: u32::try_from(noted.len()).unwrap_or(u32::MAX),
                }
                .into(),
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

    fn about(&self, leg: u32) -> String {
        let rises = match end_of(self.seen, leg) {
            EndKind::Gable => return format!("a gable end over leg {leg}"),
            EndKind::Wall => return format!("a wall that rises past the roof at leg {leg}"),
            EndKind::Sloped => format!("rises from leg {leg}"),
        };
        let in_force = self.seen.slopes_in_force(leg);
        let taken = in_force.iter().rev().find_map(|pitch| match pitch.read {
            PitchRead::SameAs { leg } => Some(leg),
            PitchRead::Number { .. }
            | PitchRead::LevelAndTape { .. }
            | PitchRead::Phone { .. }
            | PitchRead::Sighted { .. }
            | PitchRead::NotGot => None,
        });
        let read = positions(&in_force).len();
        match (read, taken) {
            (0, Some(other)) => format!("{rises}, taken as the same as {}", self.name(other)),
            (0, None) if in_force.is_empty() => format!("{rises}, pitch not looked at"),
            (0, None) if self.seen.slope_state(leg) == State::CannotGet => {
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
            if let Some(slope) = self.seen.settled_slope(other)
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
                state_word: state.word().to_owned(),
                about: about.join(", "),
                may_strike: pitch.struck.is_none(),
            }
        };
        let mut story: Vec<StoryView> = here.map(item).collect();
        story.extend(roof_observed::story(self.seen, leg));
        story
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
            PitchRead::Sighted { degrees, sigma, .. } => format!("{degrees:.1}° ± {sigma:.1}°"),
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

fn how(read: &PitchRead) -> &'static str {
    match read {
        PitchRead::Number { .. } => "given as a number",
        PitchRead::LevelAndTape { .. } => "by level and tape",
        PitchRead::Phone {
            reversed: false, ..
        } => "by a phone laid on the slope",
        PitchRead::Phone { reversed: true, .. } => "by a phone turned end for end",
        PitchRead::Sighted { .. } => "by marks on a photo from the ground",
        PitchRead::SameAs { .. } => "taken over, not read",
        PitchRead::NotGot => "looked for, not got",
    }
}
