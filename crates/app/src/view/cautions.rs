//! Cautions in the words of the screens, where legs are counted from 1 and there is one house.

use super::{names, totals};
use crate::reply::Said;
use eavebook_core::check::Caution;
use eavebook_core::roof::{RoofCaution, RoofRefusal};
use eavebook_core::solve::{NoRoof, OtherPicture};
use eavebook_core::units::RoundTo;

/// One caution.
#[must_use]
pub fn said(caution: &Caution) -> Said {
    names::said(caution.code(), words(caution))
}

/// Edges that readings as likely as those that were booked make longer or shorter.
#[must_use]
pub fn other_picture(picture: &OtherPicture, to: RoundTo) -> Said {
    let words = format!(
        "{}: {} as drawn, but readings as likely make it {}. The roof is near another shape: order \
         for the longer, or read the legs there again.",
        totals::name_of(picture.kind),
        picture.drawn.words(to),
        picture.other.words(to)
    );
    names::said("other_shape", words)
}

fn words(caution: &Caution) -> String {
    match caution {
        Caution::NoRoof(lack) => no_roof(lack),
        Caution::NotChecked { .. } => "A leg is worked out from the others, so the outline is not \
             checked. Read that leg, or a tie."
            .to_owned(),
        Caution::Lacks { lack, .. } => format!("{}.", names::capital(&lack.words(1))),
        Caution::InParts { parts, .. } => format!(
            "Nothing joins the {} parts of the outline. Read a leg or a tie between them.",
            parts.len()
        ),
        Caution::Roof(RoofCaution::GableAtInsideCorner { leg, .. }) => format!(
            "The gable at leg {} stands at an inside corner. Look whether two roofs meet there.",
            leg + 1
        ),
        Caution::Roof(RoofCaution::ThinStrip {
            leg,
            taken_by,
            width,
            length,
            ..
        }) => format!(
            "A strip of the slope at leg {}, {:.0} in wide and {length:.0} ft long, is not drawn: \
             the slope at leg {} takes it. Read the legs beside it again if its edges matter.",
            leg + 1,
            (width * 12.0).max(1.0),
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

fn no_roof(lack: &NoRoof) -> String {
    match lack {
        NoRoof::NoBodies => "No roof yet. Walk round the house and read its legs.".to_owned(),
        NoRoof::OutlineOpen {
            lack: Some(lack), ..
        } => format!("No roof yet: {}.", lack.words(1)),
        NoRoof::OutlineOpen { leg, .. } => format!(
            "No roof yet: nothing says how long leg {} is. Read it, or a tie across it.",
            leg + 1
        ),
        NoRoof::RiseUnknown { leg, .. } => format!(
            "No roof yet: nobody said what rises at leg {}. Read its pitch, or call it a gable.",
            leg + 1
        ),
        NoRoof::OutlineAmiss(refusal) | NoRoof::Refused(refusal) => refused(refusal),
    }
}

#[expect(
    clippy::wildcard_enum_match_arm,
    reason = "the rest says the same to a person at a house, whatever it says to a program"
)]
fn refused(refusal: &RoofRefusal) -> String {
    match refusal {
        RoofRefusal::CrossesItself { leg, other, .. } => format!(
            "No roof yet: leg {} crosses leg {}. Look at the corners between them again.",
            leg.max(other) + 1,
            leg.min(other) + 1
        ),
        RoofRefusal::NeverCloses { .. } => {
            "No roof yet: every leg is an end. Give at least one leg a pitch.".to_owned()
        }
        RoofRefusal::LegsInOneLine { leg, other, .. } => format!(
            "No roof yet: legs {} and {} run in one line and rise differently, which is two roofs.",
            leg + 1,
            other + 1
        ),
        RoofRefusal::Overtaking { leg, other, .. } => format!(
            "No roof yet: the slopes of legs {} and {} overlap. Look at their pitches again.",
            leg + 1,
            other + 1
        ),
        _ => "No roof stands on this outline as it is read. Look at its corners, pitches and ends \
             again."
            .to_owned(),
    }
}
