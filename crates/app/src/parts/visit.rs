//! Notes of a visit, by name.

use eavebook_core::book::fold::{FieldBook, Noted};
use eavebook_core::book::kinds::{Found, Permission, VisitNote};

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

/// Whether somebody said that nobody goes up here.
#[must_use]
pub fn ground_only(book: &FieldBook) -> bool {
    stands(book, &VisitNote::GroundOnly { on: true })
}

/// Permissions that are asked: what needs a ladder is left out while nobody goes up.
pub fn asked(book: &FieldBook) -> impl Iterator<Item = Permission> {
    let below = ground_only(book);
    let all = Permission::ALL.into_iter();
    all.filter(move |what| !(below && what.is_climbing()))
}

/// The last note in force about what a note is about, if it says yes.
#[must_use]
pub fn so<'a>(book: &'a FieldBook, note: &VisitNote) -> Option<&'a Noted<VisitNote>> {
    let about = note.about();
    let mut in_force = book.visited().rev();
    let last = in_force.find(|noted| noted.what.about() == about);
    last.filter(|noted| is_so(&noted.what))
}

/// Permissions that are asked and not given, by their words.
#[must_use]
pub fn not_given(book: &FieldBook) -> Vec<String> {
    let given = |what: &Permission| {
        let note = VisitNote::Permission {
            what: *what,
            given: true,
            by: None,
        };
        so(book, &note).is_some()
    };
    let open = asked(book).filter(|what| !given(what));
    open.map(|what| what.word().to_lowercase()).collect()
}

/// Whether a note stands word for word.
#[must_use]
pub fn stands(book: &FieldBook, note: &VisitNote) -> bool {
    book.visited().any(|noted| noted.what == *note)
}

fn is_so(note: &VisitNote) -> bool {
    match note {
        VisitNote::GroundOnly { on: so }
        | VisitNote::Permission { given: so, .. }
        | VisitNote::Hazard { seen: so, .. } => *so,
        VisitNote::Looked { found, .. } => *found == Found::Seen,
        VisitNote::Front { .. }
        | VisitNote::Here { .. }
        | VisitNote::CheckIn { .. }
        | VisitNote::Promise { .. }
        | VisitNote::Left { .. } => true,
    }
}
