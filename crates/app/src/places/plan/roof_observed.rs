//! What was seen of the roof, beside the computed one: asked at a face, judged there.

use crate::names;
use crate::parts::comparison::Comparison;
use crate::parts::noted::{On, told};
use crate::parts::reply::{AskView, ChoiceView, StoryView};
use crate::parts::solved_job::SolvedJob;
use crate::places::field_book::request::FieldBookRequest;
use crate::places::plan::reply::SeenView;
use crate::places::plan::request::PlanRequest;
use eavebook_core::book::kinds::{ObservedOverLeg, Thing};
use eavebook_core::book::on_roof;
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
        says: PlanRequest::RoofObserved {
            job,
            leg,
            over: *over,
        }
        .into(),
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
            says: FieldBookRequest::OpenPad {
                job,
                thing: Some(Thing::RidgeHeight),
                blind: false,
            }
            .into(),
            opens: None,
        }],
    }
}
