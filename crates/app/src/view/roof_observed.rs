//! What was seen of the roof, beside the computed one: asked at a face, judged there.

use super::items::{On, told};
use super::names;
use super::solved_job::SolvedJob;
use crate::reply::{AskView, ChoiceView, SeenView, Sentence, StoryView};
use crate::request::Request;
use eavebook_core::book::kinds::{ObservedOverLeg, Thing};
use eavebook_core::book::on_roof;
use eavebook_core::check::at_house;
use eavebook_core::solve;
use eavebook_core::survey;
use uuid::Uuid;

/// The most faces over one leg that are offered.
const MOST_FACES: u32 = 3;

/// What was seen over a leg, and what can be said of it.
#[must_use]
pub fn view(seen: &SolvedJob, job: Uuid, leg: u32, judged: &[Comparison]) -> SeenView {
    let here = judged.iter().filter(|judged| judged.leg() == Some(leg));
    SeenView {
        asks: vec![ends(seen, job, leg), faces(seen, job, leg), ridge(job)],
        judged: here.map(Comparison::said).collect(),
    }
}

/// Something seen, with what comes of it.
pub struct Comparison {
    observed: survey::RoofObservation,
    outcome: solve::Comparison,
}

impl Comparison {
    /// The leg over which it was seen, from 1.
    #[must_use]
    pub fn leg(&self) -> Option<u32> {
        match self.observed {
            survey::RoofObservation::End { leg, .. }
            | survey::RoofObservation::Faces { leg, .. } => u32::try_from(leg + 1).ok(),
            survey::RoofObservation::Ridge { .. } => None,
        }
    }

    /// Whether it speaks against the computed roof.
    #[must_use]
    pub fn is_flagged(&self) -> bool {
        matches!(self.outcome, solve::Comparison::Flagged(_))
    }

    /// Its sentence.
    #[must_use]
    pub fn said(&self) -> Sentence {
        let words = names::capital(self.outcome.words());
        let end = if words.ends_with('.') { "" } else { "." };
        names::said(&format!("seen_{}", self.outcome.key()), words + end)
    }
}

/// Everything seen of the roof, judged.
#[must_use]
pub fn judged(seen: &SolvedJob) -> Vec<Comparison> {
    let Some((survey, solved)) = seen.laid.survey.as_ref().zip(seen.solved) else {
        return Vec::new();
    };
    let outcomes = at_house::seen(survey, solved);
    let both = survey.seen.iter().copied().zip(outcomes);
    both.map(|(observed, outcome)| Comparison { observed, outcome })
        .collect()
}

/// What comes of the ridge's height, where it was read.
#[must_use]
pub fn of_ridge(seen: &SolvedJob) -> Option<Sentence> {
    let all = judged(seen);
    let ridge = all.iter().find(|judged| judged.leg().is_none());
    ridge.map(Comparison::said)
}

/// What was seen over a leg, the newest first, with what became of it.
#[must_use]
pub fn story(seen: &SolvedJob, leg: u32) -> Vec<StoryView> {
    let here = seen.book.roof_seen.iter().rev();
    here.filter(|noted| noted.what.leg == leg)
        .map(|noted| {
            let words = noted.what.over.words();
            told(seen, &On::new(noted), words, format!("seen over leg {leg}"))
        })
        .collect()
}

fn choices(seen: &SolvedJob, job: Uuid, leg: u32, offered: &[ObservedOverLeg]) -> Vec<ChoiceView> {
    let choice = |over: &ObservedOverLeg| ChoiceView {
        name: names::capital(&over.words()),
        chosen: on_roof::observed_over_leg(seen.book, leg, (*over).into()) == Some(*over),
        says: Request::RoofObserved {
            job,
            leg,
            over: *over,
        },
        opens: None,
    };
    offered.iter().map(choice).collect()
}

fn ends(seen: &SolvedJob, job: Uuid, leg: u32) -> AskView {
    AskView {
        title: "What was seen over this leg".to_owned(),
        choices: choices(
            seen,
            job,
            leg,
            &[ObservedOverLeg::Slope, ObservedOverLeg::Gable],
        ),
    }
}

fn faces(seen: &SolvedJob, job: Uuid, leg: u32) -> AskView {
    let counts: Vec<ObservedOverLeg> = (1..=MOST_FACES)
        .map(|count| ObservedOverLeg::Faces { count })
        .collect();
    AskView {
        title: "Faces seen over this leg".to_owned(),
        choices: choices(seen, job, leg, &counts),
    }
}

fn ridge(job: Uuid) -> AskView {
    AskView {
        title: "The ridge over the eaves".to_owned(),
        choices: vec![ChoiceView {
            name: "Read its height".to_owned(),
            chosen: false,
            says: Request::OpenPad {
                job,
                thing: Some(Thing::RidgeHeight),
                blind: false,
            },
            opens: None,
        }],
    }
}
