//! What was seen of the roof, beside the computed one: asked at a face, judged there.

use super::items::{On, told};
use super::names;
use super::seen::Seen;
use crate::reply::{AskView, ChoiceView, Said, SeenView, StoryView};
use crate::request::Request;
use eavebook_core::book::fold::Noted;
use eavebook_core::book::kinds::{RoofSeen, SeenOver, Thing};
use eavebook_core::book::on_roof;
use eavebook_core::check::at_house;
use eavebook_core::solve::Judged;
use eavebook_core::survey;
use uuid::Uuid;

/// The most faces over one leg that are offered.
const MOST_FACES: u32 = 3;

/// What was seen over a leg, and what can be said of it.
#[must_use]
pub fn view(seen: &Seen, job: Uuid, leg: u32, judged: &[Judgement]) -> SeenView {
    let here = judged.iter().filter(|judged| judged.leg() == Some(leg));
    SeenView {
        asks: vec![ends(seen, job, leg), faces(seen, job, leg), ridge(job)],
        judged: here.map(Judgement::said).collect(),
    }
}

/// Something seen, with what comes of it.
pub struct Judgement {
    what: survey::Seen,
    judged: Judged,
}

impl Judgement {
    /// The leg over which it was seen, from 1.
    #[must_use]
    pub fn leg(&self) -> Option<u32> {
        match self.what {
            survey::Seen::End { leg, .. } | survey::Seen::Faces { leg, .. } => {
                u32::try_from(leg + 1).ok()
            }
            survey::Seen::Ridge { .. } => None,
        }
    }

    /// Whether it speaks against the computed roof.
    #[must_use]
    pub fn is_flagged(&self) -> bool {
        matches!(self.judged, Judged::Flagged(_))
    }

    /// Its sentence.
    #[must_use]
    pub fn said(&self) -> Said {
        let words = names::capital(self.judged.words());
        let end = if words.ends_with('.') { "" } else { "." };
        names::said(&format!("seen_{}", self.judged.key()), words + end)
    }
}

/// Everything seen of the roof, judged.
#[must_use]
pub fn judged(seen: &Seen) -> Vec<Judgement> {
    let Some((survey, solved)) = seen.laid.survey.as_ref().zip(seen.solved) else {
        return Vec::new();
    };
    let judged = at_house::seen(survey, solved);
    let both = survey.seen.iter().copied().zip(judged);
    both.map(|(what, judged)| Judgement { what, judged })
        .collect()
}

/// What comes of the ridge's height, where it was read.
#[must_use]
pub fn of_ridge(seen: &Seen) -> Option<Said> {
    let all = judged(seen);
    let ridge = all.iter().find(|judged| judged.leg().is_none());
    ridge.map(Judgement::said)
}

/// What was seen over a leg, the newest first, with what became of it.
#[must_use]
pub fn story(seen: &Seen, leg: u32) -> Vec<StoryView> {
    let here = seen.book.roof_seen.iter().rev();
    here.filter(|noted| noted.what.leg == leg)
        .map(|noted| {
            let words = noted.what.over.words();
            told(seen, &On::of(noted), words, format!("seen over leg {leg}"))
        })
        .collect()
}

fn standing(seen: &Seen, leg: u32, like: SeenOver) -> Option<SeenOver> {
    let here = on_roof::roof_seen(seen.book).map(|noted: &Noted<RoofSeen>| &noted.what);
    let here = here.filter(|what| what.leg == leg && what.over.is_like(like));
    here.last().map(|what| what.over)
}

fn choices(seen: &Seen, job: Uuid, leg: u32, offered: &[SeenOver]) -> Vec<ChoiceView> {
    let choice = |over: &SeenOver| ChoiceView {
        name: names::capital(&over.words()),
        chosen: standing(seen, leg, *over) == Some(*over),
        says: Request::RoofSeen {
            job,
            leg,
            over: *over,
        },
        opens: None,
    };
    offered.iter().map(choice).collect()
}

fn ends(seen: &Seen, job: Uuid, leg: u32) -> AskView {
    AskView {
        title: "What was seen over this leg".to_owned(),
        choices: choices(seen, job, leg, &[SeenOver::Slope, SeenOver::Gable]),
    }
}

fn faces(seen: &Seen, job: Uuid, leg: u32) -> AskView {
    let counts: Vec<SeenOver> = (1..=MOST_FACES)
        .map(|count| SeenOver::Faces { count })
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
