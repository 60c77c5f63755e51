//! The keypad, the read-back and the corner pad.

use super::solved_job::SolvedJob;
use super::{here, names, things};
use crate::draft::OpenPad;
use crate::places::job::OpenJob;
use crate::reply::{OpenPadView, PadView, ReadBackView, Sentence, SlotView};
use eavebook_core::book::keypad::KeyRefusal;
use eavebook_core::units::Tape;

/// All three as they stand.
#[must_use]
pub fn view(opened: &OpenJob, seen: &SolvedJob) -> PadView {
    let draft = &opened.draft;
    PadView {
        open: draft.open.as_ref().map(|open| of_open(open, draft.presses)),
        read_back: read_back(opened, seen),
        corner_after: here::corner_after(seen.laid, seen.book),
        // Said once, by the reply to the key that was refused.
        refused: None,
        double: draft.open.as_ref().and_then(double),
    }
}

/// The open keypad.
#[must_use]
pub fn of_open(open: &OpenPad, presses: u32) -> OpenPadView {
    let slots = open.keypad.slots().into_iter().map(|slot| SlotView {
        slot: slot.slot,
        typed: slot.typed,
        unit: slot.unit.to_owned(),
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
pub fn double(open: &OpenPad) -> Option<Sentence> {
    let digit = open.keypad.double()?;
    Some(names::said("double_press", format!("two {digit}s?")))
}

/// Why a key did nothing.
#[must_use]
pub fn refused_key(why: &KeyRefusal) -> Sentence {
    names::said(why.code(), why.to_string())
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
        .map_or_else(|_| read.text.clone(), Tape::words);
    Some(ReadBackView {
        reading: entry,
        thing: names::name(&read.thing),
        title: things::title(seen, &read.thing),
        spoken: tape.as_ref().map_or_else(
            |_| value.clone(),
            |tape| tape.spoken(opened.settings.tongue()),
        ),
        value,
        answered: read.read_back,
        dispute: here::dispute(seen, &read.thing),
    })
}
