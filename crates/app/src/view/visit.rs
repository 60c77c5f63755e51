//! What was said and seen on a visit, in words.

use eavebook_core::book::kinds::{Found, VisitNote};

/// A note as Undo and the story name it: `permission to climb`.
#[must_use]
pub fn name(note: &VisitNote) -> String {
    match note {
        VisitNote::Front { heading: Some(_) } => "the front, by the compass".to_owned(),
        VisitNote::Front { heading: None } => "the front".to_owned(),
        VisitNote::Here { name, .. } => format!("who is here: {name}"),
        VisitNote::GroundOnly { on: true } => "ground only".to_owned(),
        VisitNote::GroundOnly { on: false } => "no longer ground only".to_owned(),
        VisitNote::Permission { what, given, .. } => {
            let said = if *given { "yes" } else { "not said" };
            format!("permission to {}: {said}", what.word())
        }
        VisitNote::Hazard { what, seen: true } => format!("{} seen", what.word()),
        VisitNote::Hazard { what, seen: false } => format!("{} not seen", what.word()),
        VisitNote::CheckIn { with, .. } => format!("check-in with {with}"),
        VisitNote::Promise { words } if words.is_empty() => "nothing promised".to_owned(),
        VisitNote::Promise { words } => format!("promised: {words}"),
        VisitNote::Looked { what, found, count } => match (found, count) {
            (Found::Seen, Some(count)) => format!("{}: {count} seen", what.word()),
            (Found::Seen, None) => format!("{}: seen", what.word()),
            (Found::None, _) => format!("{}: none", what.word()),
            (Found::NotLooked, _) => format!("{}: not looked", what.word()),
        },
        VisitNote::Left { .. } => "left the site".to_owned(),
    }
}
