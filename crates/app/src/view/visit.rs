//! What was said and seen on a visit, in words.

use super::names;
use crate::reply::{ArriveView, TickView};
use eavebook_core::book::fold::{FieldBook, Noted};
use eavebook_core::book::kinds::{Found, Hazard, Permission, VisitNote, WalkTarget};

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

/// What the place Arrive shows.
#[must_use]
pub fn view(book: &FieldBook) -> ArriveView {
    ArriveView {
        front: book.visited().rev().find_map(front),
        here: book.visited().filter_map(here).collect(),
        permissions: permissions(book),
        ground_only: tick(
            book,
            "Nobody home: ground only",
            VisitNote::GroundOnly { on: true },
            VisitNote::GroundOnly { on: false },
        ),
        hazards: Hazard::ALL
            .into_iter()
            .map(|what| {
                tick(
                    book,
                    &names::capital(what.word()),
                    VisitNote::Hazard { what, seen: true },
                    VisitNote::Hazard { what, seen: false },
                )
            })
            .collect(),
        driveway: tick(
            book,
            "Driveway seen before work",
            driveway(Found::Seen),
            driveway(Found::NotLooked),
        ),
        check_in: book.visited().rev().find_map(check_in),
        promises: book.visited().filter_map(promise).collect(),
    }
}

fn driveway(found: Found) -> VisitNote {
    VisitNote::Looked {
        what: WalkTarget::Driveway,
        found,
        count: None,
    }
}

/// Whether somebody said that nobody goes up here.
#[must_use]
pub fn ground_only(book: &FieldBook) -> bool {
    stands(book, &VisitNote::GroundOnly { on: true })
}

/// Permissions that are asked and not given, by their words.
#[must_use]
pub fn not_given(book: &FieldBook) -> Vec<String> {
    let asked = permissions(book).into_iter();
    asked
        .filter(|asked| !asked.on)
        .map(|asked| asked.name.to_lowercase())
        .collect()
}

/// Whether a note stands word for word.
#[must_use]
pub fn stands(book: &FieldBook, note: &VisitNote) -> bool {
    book.visited().any(|noted| noted.what == *note)
}

fn permissions(book: &FieldBook) -> Vec<TickView> {
    let below = ground_only(book);
    let asked = Permission::ALL.into_iter();
    // Who may say yes is taken to be who said so: the last one named.
    let by = book.visited().rev().find_map(|noted| {
        if let VisitNote::Here {
            name,
            may_say_yes: true,
        } = &noted.what
        {
            Some(name.clone())
        } else {
            None
        }
    });
    asked
        .filter(|what| !(below && what.is_climbing()))
        .map(|what| {
            let note = |given| VisitNote::Permission {
                what,
                given,
                by: by.clone().filter(|_| given),
            };
            tick(book, &names::capital(what.word()), note(true), note(false))
        })
        .collect()
}

/// Something that is so or not, as it stands.
fn tick(book: &FieldBook, name: &str, tick: VisitNote, clear: VisitNote) -> TickView {
    let about = tick.about();
    let mut standing = book.visited().rev();
    let last = standing.find(|noted| noted.what.about() == about);
    let on = last.filter(|noted| is_so(&noted.what));
    TickView {
        name: name.to_owned(),
        on: on.is_some(),
        about: on.map(|noted| {
            let by = if let VisitNote::Permission { by: Some(by), .. } = &noted.what {
                format!("{by}, ")
            } else {
                String::new()
            };
            format!("{by}{}", names::time_of_day(&noted.local_time))
        }),
        tick,
        clear,
    }
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

fn front(noted: &Noted<VisitNote>) -> Option<String> {
    let VisitNote::Front { heading } = noted.what else {
        return None;
    };
    let at = names::time_of_day(&noted.local_time);
    Some(match heading {
        Some(degrees) => format!("The front is noted, looking {degrees:.0}° by the compass, {at}."),
        None => format!("The front is noted without a compass, {at}. Set sides by hand."),
    })
}

fn here(noted: &Noted<VisitNote>) -> Option<String> {
    let VisitNote::Here { name, may_say_yes } = &noted.what else {
        return None;
    };
    let yes = if *may_say_yes { ", may say yes" } else { "" };
    Some(format!(
        "{name}{yes}, {}",
        names::time_of_day(&noted.local_time)
    ))
}

fn check_in(noted: &Noted<VisitNote>) -> Option<String> {
    let VisitNote::CheckIn { with, until } = &noted.what else {
        return None;
    };
    let until = if until.is_empty() {
        String::new()
    } else {
        format!(" expects to hear by {until}")
    };
    Some(format!(
        "{with}{until}, told {}",
        names::time_of_day(&noted.local_time)
    ))
}

fn promise(noted: &Noted<VisitNote>) -> Option<String> {
    let VisitNote::Promise { words } = &noted.what else {
        return None;
    };
    let words = if words.is_empty() {
        "Nothing promised"
    } else {
        words
    };
    Some(format!(
        "{words}, {}",
        names::time_of_day(&noted.local_time)
    ))
}
