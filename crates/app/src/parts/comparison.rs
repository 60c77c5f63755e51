//! What was seen of the roof, compared with the computed one.

use crate::names;
use crate::parts::solved_job::SolvedJob;
use crate::sentence::{Sentence, sentence};
use eavebook_core::solve::{self, at_house};
use eavebook_core::survey;

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
        sentence(&format!("seen_{}", self.outcome.key()), words + end)
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
