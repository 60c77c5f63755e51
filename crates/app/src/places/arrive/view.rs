//! What was said and seen on a visit, in words.

use crate::names;
use crate::parts::visit;
use crate::places::arrive::reply::{ArriveView, TickView};
use eavebook_core::book::fold::{FieldBook, Noted};
use eavebook_core::book::kinds::{Found, Hazard, VisitNote, WalkTarget};

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

fn permissions(book: &FieldBook) -> Vec<TickView> {
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
    visit::asked(book)
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
    let on = visit::so(book, &tick);
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
