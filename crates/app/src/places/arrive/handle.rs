//! What is said and seen on a visit that no tape reads.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::places::arrive::request::ArriveRequest;
use crate::refusal::{Refusal, RequestRefusal};
use eavebook_core::book::kinds::{Found, Kind, VisitNote};
use eavebook_core::book::subject::Subject;
use eavebook_store::Store;
use uuid::Uuid;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: ArriveRequest) -> Result<Answer, Refusal> {
    match request {
        ArriveRequest::Visit { job, note: what } => note(store, job, what),
    }
}

/// The longest thing that is noted in words.
const MOST_LETTERS: usize = 400;

/// Books one note; it stands in the place of an earlier one about the same thing. The same note
/// said again books nothing.
///
/// # Errors
/// `NoJob`, `NoHeading`, `NoName`, `LongNote`.
pub fn note(book: &mut Store, job: Uuid, note: VisitNote) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let note = tidy(note)?;
    let about = note.about();
    let is_there = match &about {
        Some(about) => {
            let mut standing = opened.book.visited().rev();
            let last = standing.find(|noted| noted.what.about().as_ref() == Some(about));
            last.is_some_and(|noted| noted.what == note)
        }
        // A request that comes again is the last act of this device, word for word.
        None => {
            let mut acts = opened.book.acts.iter().rev();
            let last = acts.find(|act| act.device == opened.device);
            last.is_some_and(|act| act.in_force && act.kind == Kind::Visit(note.clone()))
        }
    };
    if !is_there {
        let replaced = about
            .map(|about| opened.book.replaced_by_new(&Subject::Visit(about)))
            .unwrap_or_default();
        opened.book(book, &Kind::Visit(note), replaced)?;
    }
    Ok(Answer::Job(job))
}

/// The same with the spaces around its words taken away.
fn tidy(note: VisitNote) -> Result<VisitNote, RequestRefusal> {
    let short = |words: String| {
        let words = words.trim().to_owned();
        if words.chars().count() > MOST_LETTERS {
            Err(RequestRefusal::LongNote)
        } else {
            Ok(words)
        }
    };
    let named = |words: String| {
        let words = short(words)?;
        if words.is_empty() {
            Err(RequestRefusal::NoName)
        } else {
            Ok(words)
        }
    };
    let perhaps = |words: Option<String>| -> Result<Option<String>, RequestRefusal> {
        let words = words.map(short).transpose()?;
        Ok(words.filter(|words| !words.is_empty()))
    };
    Ok(match note {
        VisitNote::Front { heading } => {
            if heading.is_some_and(|heading| !(0.0..=360.0).contains(&heading)) {
                return Err(RequestRefusal::NoHeading);
            }
            VisitNote::Front { heading }
        }
        VisitNote::Here { name, may_say_yes } => VisitNote::Here {
            name: named(name)?,
            may_say_yes,
        },
        VisitNote::Permission { what, given, by } => VisitNote::Permission {
            what,
            given,
            by: perhaps(by)?,
        },
        VisitNote::CheckIn { with, until } => VisitNote::CheckIn {
            with: named(with)?,
            until: short(until)?,
        },
        VisitNote::Promise { words } => VisitNote::Promise {
            words: short(words)?,
        },
        VisitNote::Left { reason } => VisitNote::Left {
            reason: perhaps(reason)?,
        },
        VisitNote::Looked { what, found, count } => VisitNote::Looked {
            what,
            found,
            // Nobody counts what is not there.
            count: count.filter(|_| found == Found::Seen && what.is_counted()),
        },
        VisitNote::GroundOnly { .. } | VisitNote::Hazard { .. } => note,
    })
}
