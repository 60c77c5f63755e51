//! The keypad, the read-back and the corner pad.

use crate::draft::OpenPad;
use crate::names;
use crate::open_job::OpenJob;
use crate::parts::solved_job::SolvedJob;
use crate::parts::{next, things};
use crate::places::field_book::reply::{OpenPadView, PadView, ReadBackView, SlotView};
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::agree::in_dispute;
use eavebook_core::book::fold::BookedReading;
use eavebook_core::book::keypad::KeyRefusal;
use eavebook_core::book::kinds::Thing;
use eavebook_core::check::State;
use eavebook_core::units::Tape;
use eavebook_words::Language;
use eavebook_words::reading::ReadingMessage;

/// All three as they stand.
#[must_use]
pub fn view(opened: &OpenJob, seen: &SolvedJob) -> PadView {
    let draft = &opened.draft;
    let language = opened.settings.language();
    PadView {
        open: draft
            .open
            .as_ref()
            .map(|open| of_open(open, draft.presses, language)),
        read_back: read_back(opened, seen),
        corner_after: next::corner_after(seen.laid, seen.book),
        // Said once, by the reply to the key that was refused.
        refused: None,
        double: draft.open.as_ref().and_then(|open| double(open, language)),
    }
}

/// The open keypad.
#[must_use]
pub fn of_open(open: &OpenPad, presses: u32, language: Language) -> OpenPadView {
    let format = language.format();
    let slots = open.keypad.slots().into_iter().map(|slot| SlotView {
        slot: slot.slot,
        typed: format.slot_content(&slot.content),
        unit: slot
            .unit
            .map_or("", |unit| format.slot_unit(unit))
            .to_owned(),
        active: slot.active,
    });
    OpenPadView {
        thing: open.thing.clone(),
        name: names::name(&open.thing),
        title: open.title.clone(),
        blind: open.blind,
        press: presses,
        tape: open.keypad.tape(),
        slots: slots.collect(),
        how: open.how,
        followed: open.followed,
    }
}

/// "two 2s?".
#[must_use]
pub fn double(open: &OpenPad, language: Language) -> Option<Sentence> {
    let digit = open.keypad.double()?;
    Some(rendered(&ReadingMessage::DoublePress { digit }, language))
}

/// Why a key did nothing.
#[must_use]
pub fn refused_key(refusal: KeyRefusal, language: Language) -> Sentence {
    rendered(&ReadingMessage::from(refusal), language)
}

fn rendered(message: &ReadingMessage, language: Language) -> Sentence {
    sentence(&message.id(), message.text(language))
}

fn read_back(opened: &OpenJob, seen: &SolvedJob) -> Option<ReadBackView> {
    let entry = opened.draft.read_back?;
    let read = seen.book.readings.iter().find(|read| read.entry == entry)?;
    if read.struck.is_some() || seen.hides(&read.thing) {
        return None;
    }
    let tape = Tape::read(&read.text);
    let value = tape
        .as_ref()
        .map_or_else(|_| read.text.clone(), Tape::canonical);
    Some(ReadBackView {
        reading: entry,
        thing: names::name(&read.thing),
        title: things::title(seen, &read.thing),
        spoken: tape.as_ref().map_or_else(
            |_| value.clone(),
            |tape| opened.settings.language().format().spoken(tape),
        ),
        value,
        answered: read.read_back,
        dispute: dispute(seen, &read.thing),
    })
}

/// "They differ by 18 ft": the newest reading of a thing against the others, while no two agree.
#[must_use]
pub fn dispute(seen: &SolvedJob, thing: &Thing) -> Option<Sentence> {
    let in_force = seen.in_force(thing);
    if !in_dispute(&in_force) || seen.state(thing) != State::Suspect {
        return None;
    }
    let words = |read: &&BookedReading| things::in_words(&read.text);
    let values: Vec<String> = in_force.iter().map(words).collect();
    let which = match values.len() {
        2 => "a third time",
        _ => "once more",
    };
    Some(sentence(
        "readings_differ",
        format!(
            "The readings of {} differ: {}. Read it {which} from the tape.",
            names::name(thing),
            names::listed(&values)
        ),
    ))
}
