//! The keypad: every key is on disk before its reply, and booking clears it in one transaction.

use crate::answer::Answer;
use crate::draft::{self, Draft, OpenPad};
use crate::open_job::{OpenJob, settings};
use crate::parts::{next, solved_job, things};
use crate::places::field_book::pad::{self, of_open, refused_key};
use crate::places::field_book::reply::PadView;
use crate::refusal::{Refusal, RequestRefusal};
use crate::reply::Reply;
use eavebook_core::book::keypad::{Key, Keypad, Meant};
use eavebook_core::book::kinds::{Followed, HowRead, Kind, Reading, Thing};
use eavebook_store::Store;
use uuid::Uuid;

/// Whether earlier values of a thing are in sight while it is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// They are.
    Open,
    /// They are not: a second reading is worth something only then.
    Blind,
}

/// One key as it was pressed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pressed {
    /// Presses before it.
    pub press: u32,
    /// The key.
    pub key: Key,
    /// Milliseconds since the press before.
    pub since_ms: Option<u32>,
}

/// Opens the keypad for a thing, or for the most useful one.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoTie`.
pub fn open(
    book: &mut Store,
    job: Uuid,
    thing: Option<Thing>,
    sight: Sight,
) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    if let Some(thing) = &thing {
        opened.check_taped(thing)?;
    }
    let (thing, sight) = match thing {
        Some(thing) => (thing, sight),
        None => most_useful(&opened, sight),
    };
    open_for(book, &mut opened, thing, sight)?;
    Ok(Answer::Job(job))
}

/// What to read next; what was read before is read without sight of it.
fn most_useful(opened: &OpenJob, sight: Sight) -> (Thing, Sight) {
    let laid = opened.laid_out();
    let solved = solved_job::solve(&laid);
    let seen = solved_job::SolvedJob::new(opened, &laid, solved.as_ref(), None);
    let thing = next::next_reading(&seen)
        .or_else(|| seen.read_first())
        .unwrap_or(Thing::Leg { leg: 1 });
    let sight = if seen.in_force(&thing).is_empty() {
        sight
    } else {
        Sight::Blind
    };
    (thing, sight)
}

/// Opens the keypad for a thing with what was half typed for it, and keeps that it is open.
///
/// # Errors
/// When the book cannot be written.
pub fn open_for(
    book: &mut Store,
    opened: &mut OpenJob,
    thing: Thing,
    sight: Sight,
) -> Result<(), Refusal> {
    lay_open(opened, thing, sight);
    draft::keep(book, opened.job, &opened.draft)
}

/// Opens the keypad for a thing in the draft alone: who books keeps it, in one transaction.
pub fn lay_open(opened: &mut OpenJob, thing: Thing, sight: Sight) {
    let blind = sight == Sight::Blind;
    let same = |open: &OpenPad| open.thing == thing && open.blind == blind;
    if opened.draft.open.as_ref().is_some_and(same) {
        return;
    }
    let laid = opened.laid_out();
    let title = {
        let seen = solved_job::SolvedJob::new(opened, &laid, None, None);
        things::title(&seen, &thing)
    };
    let settings = opened.settings;
    let draft = &mut opened.draft;
    draft.close();
    draft.read_back = None;
    let away = draft.take_away(&thing);
    let keypad = match &away {
        Some(away) => away.keypad.clone(),
        None => Keypad::new(thing.tape(settings.tape()), settings.fractions()),
    };
    let last_followed = if thing.is_of_outline() {
        draft.followed
    } else {
        Followed::default()
    };
    draft.open = Some(OpenPad {
        title,
        blind,
        corner_after: next::corner_after(&laid, &opened.book),
        keypad,
        how: away.as_ref().map_or(HowRead::Taped, |away| away.how),
        followed: away.map_or(last_followed, |away| away.followed),
        thing,
    });
}

/// Puts the keypad away; half-typed slots stay.
///
/// # Errors
/// `NoJob`.
pub fn close(book: &mut Store, job: Uuid) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    if opened.draft.open.is_some() {
        opened.draft.close();
        draft::keep(book, job, &opened.draft)?;
    }
    Ok(Answer::Job(job))
}

/// One key. Nothing but the draft is read and written, so that keys do not lag; only `BookIt`
/// works the job out.
///
/// # Errors
/// `NoJob`, `PadAway`, `PressOutOfOrder`. An impossible key is no error: the reply says why.
pub fn press(book: &mut Store, job: Uuid, pressed: &Pressed) -> Result<Answer, Refusal> {
    let mut draft = draft::read(book, job)?;
    if pressed.press < draft.presses {
        return match (pressed.key, &draft.open) {
            (Key::BookIt, None) => Ok(Answer::Job(job)),
            (_, Some(open)) => Ok(pad(book, &draft, open).into()),
            (_, None) => Err(RequestRefusal::PadAway.into()),
        };
    }
    let Some(mut open) = draft.open.take() else {
        return Err(RequestRefusal::PadAway.into());
    };
    if pressed.press > draft.presses {
        return Err(RequestRefusal::PressOutOfOrder.into());
    }
    draft.presses += 1;
    draft.refused = None;
    let language = settings(book).language();
    if pressed.key == Key::BookIt {
        match open.keypad.reading() {
            Ok(text) => return book_it(book, job, draft, open, text),
            Err(why) => draft.refused = Some(refused_key(why, language)),
        }
    } else if let Err(why) = open.keypad.press(pressed.key, pressed.since_ms) {
        draft.refused = Some(refused_key(why, language));
    }
    draft.open = Some(open);
    keep_and_show(book, job, &draft)
}

/// Books the reading and leaves the draft with its read-back, in one transaction.
fn book_it(
    book: &mut Store,
    job: Uuid,
    mut draft: Draft,
    open: OpenPad,
    text: String,
) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    let lacks = opened
        .book
        .cannot_get
        .iter()
        .filter(|(_, thing, _)| *thing == open.thing);
    let replaced: Vec<Uuid> = lacks.map(|(entry, _, _)| *entry).collect();
    draft.away.retain(|away| away.thing != open.thing);
    if open.thing.is_of_outline() {
        draft.followed = open.followed;
    }
    let reading = Kind::Reading(Reading {
        thing: open.thing,
        text,
        tape: open.keypad.tape(),
        how: open.how,
        followed: open.followed,
        blind: open.blind,
    });
    opened.draft = draft;
    opened.book_with_read_back(book, &reading, replaced)?;
    Ok(Answer::Job(job))
}

/// Answers "two 2s?".
///
/// # Errors
/// `PadAway`.
pub fn answer_double(book: &mut Store, job: Uuid, meant: Meant) -> Result<Answer, Refusal> {
    let mut draft = draft::read(book, job)?;
    let open = draft.open.as_mut().ok_or(RequestRefusal::PadAway)?;
    open.keypad.answer_double(meant);
    draft.refused = None;
    keep_and_show(book, job, &draft)
}

/// How the open reading is read and what the tape follows.
///
/// # Errors
/// `PadAway`.
pub fn chip(
    book: &mut Store,
    job: Uuid,
    how: HowRead,
    followed: Followed,
) -> Result<Answer, Refusal> {
    let mut draft = draft::read(book, job)?;
    let open = draft.open.as_mut().ok_or(RequestRefusal::PadAway)?;
    open.how = how;
    open.followed = followed;
    keep_and_show(book, job, &draft)
}

fn keep_and_show(book: &mut Store, job: Uuid, draft: &Draft) -> Result<Answer, Refusal> {
    draft::keep(book, job, draft)?;
    match &draft.open {
        Some(open) => Ok(pad(book, draft, open).into()),
        None => Ok(Answer::Job(job)),
    }
}

fn pad(book: &Store, draft: &Draft, open: &OpenPad) -> Reply {
    let language = settings(book).language();
    Reply::Pad(Box::new(PadView {
        open: Some(of_open(open, draft.presses, language)),
        read_back: None,
        corner_after: open.corner_after,
        refused: draft.refused.clone(),
        double: pad::double(open, language),
    }))
}
