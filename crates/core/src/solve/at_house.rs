//! Cautions, and what was seen of the roof, in the words that screens and papers share: there is one
//! house, and its legs count from 1.

use super::compare::{Comparison, Named, judge_seen};
use super::solved::Solved;
use crate::book::names::capital;
use crate::check::Caution;
use crate::roof::{RaiseError, RoofCaution};
use crate::settled::RoofUnavailable;
use crate::survey::Survey;

/// What was seen of the roof beside the computed one, in the order of the survey.
#[must_use]
pub fn seen(survey: &Survey, solved: &Solved) -> Vec<Comparison> {
    judge_seen(survey, solved, &OneHouse)
}

/// Names where there is one body.
struct OneHouse;

impl Named for OneHouse {
    fn leg(&self, _: usize, leg: usize) -> String {
        format!("leg {}", leg + 1)
    }

    fn ridge(&self, _: usize) -> String {
        "the ridge".to_owned()
    }
}

/// A caution in those words.
#[must_use]
pub fn words(caution: &Caution) -> String {
    match caution {
        Caution::RoofUnavailable(lack) => no_roof(lack),
        Caution::NotChecked { .. } => "A leg is worked out from the others, so the outline is not \
             checked. Read that leg, or a tie."
            .to_owned(),
        Caution::Lacks { lack, .. } => format!("{}.", capital(&lack.words(1))),
        Caution::InParts { parts, .. } => format!(
            "Nothing joins the {} parts of the outline. Read a leg or a tie between them.",
            parts.len()
        ),
        Caution::Roof(RoofCaution::GableAtInsideCorner { leg, .. }) => format!(
            "The gable at leg {} stands at an inside corner. Look whether two roofs meet there.",
            leg + 1
        ),
        Caution::Roof(RoofCaution::Sliver {
            leg,
            taken_by,
            width,
            length,
            ..
        }) => format!(
            "A strip of the slope at leg {}, {:.0} in wide and {:.0} ft long, is not drawn: \
             the slope at leg {} takes it. Read the legs beside it again if its edges matter.",
            leg + 1,
            width.in_inches().max(1.0),
            length.in_feet(),
            taken_by + 1
        ),
        Caution::PitchStands { slope, on } => {
            format!("The pitch at leg {}: {on}.", slope.leg + 1)
        }
        Caution::PitchUneven { slope, how } => {
            format!("The pitch at leg {}: {how}.", slope.leg + 1)
        }
        Caution::PhoneAskew { slope, flip, by } => format!(
            "The pitch at leg {}, flip {flip}: the phone's zero error stands {:.1} degrees off \
             that of the other flips, so the phone lay askew, or it was another phone. Lay it again.",
            slope.leg + 1,
            by.in_degrees().abs()
        ),
        Caution::Roof(RoofCaution::IdleWall { .. } | RoofCaution::LevelValley { .. })
        | Caution::Hearsay { .. }
        | Caution::OverEight { .. }
        | Caution::UnderFour { .. }
        | Caution::WideChimney { .. }
        | Caution::Layers { .. }
        | Caution::PlankGaps { .. }
        | Caution::AsbestosCement
        | Caution::OnNoFace { .. } => caution.to_string(),
    }
}

fn no_roof(lack: &RoofUnavailable) -> String {
    match lack {
        RoofUnavailable::NoBodies => {
            "No roof yet. Walk round the house and read its legs.".to_owned()
        }
        RoofUnavailable::OutlineOpen {
            lack: Some(lack), ..
        } => format!("No roof yet: {}.", lack.words(1)),
        RoofUnavailable::OutlineOpen { leg, .. } => format!(
            "No roof yet: nothing says how long leg {} is. Read it, or a tie across it.",
            leg + 1
        ),
        RoofUnavailable::RiseUnknown { leg, .. } => format!(
            "No roof yet: nobody said what rises at leg {}. Read its pitch, or call it a gable.",
            leg + 1
        ),
        RoofUnavailable::OutlineAmiss(refusal) | RoofUnavailable::Refused(refusal) => {
            refused(refusal)
        }
    }
}

#[expect(
    clippy::wildcard_enum_match_arm,
    reason = "the rest says the same to a person at a house, whatever it says to a program"
)]
fn refused(refusal: &RaiseError) -> String {
    match refusal {
        RaiseError::CrossesItself { leg, other, .. } => format!(
            "No roof yet: leg {} crosses leg {}. Look at the corners between them again.",
            leg.max(other) + 1,
            leg.min(other) + 1
        ),
        RaiseError::NeverCloses { .. } => {
            "No roof yet: every leg is an end. Give at least one leg a pitch.".to_owned()
        }
        RaiseError::LegsInOneLine { leg, other, .. } => format!(
            "No roof yet: legs {} and {} run in one line and rise differently, which is two roofs.",
            leg + 1,
            other + 1
        ),
        RaiseError::Overtaking { leg, other, .. } => format!(
            "No roof yet: the slopes of legs {} and {} overlap. Look at their pitches again.",
            leg + 1,
            other + 1
        ),
        _ => "No roof stands on this outline as it is read. Look at its corners, pitches and ends \
             again."
            .to_owned(),
    }
}
