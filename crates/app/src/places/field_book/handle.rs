//! What the field book is asked.

use crate::answer::Answer;
use crate::places::field_book::request::FieldBookRequest;
use crate::places::field_book::{acts, corners, keypad};
use crate::refusal::Refusal;
use eavebook_store::Store;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: FieldBookRequest) -> Result<Answer, Refusal> {
    match request {
        FieldBookRequest::OpenPad { job, thing, blind } => {
            let sight = if blind {
                keypad::Sight::Blind
            } else {
                keypad::Sight::Open
            };
            keypad::open(store, job, thing, sight)
        }
        FieldBookRequest::ClosePad { job } => keypad::close(store, job),
        FieldBookRequest::Press {
            job,
            press,
            key,
            since_ms,
        } => {
            let pressed = keypad::Pressed {
                press,
                key,
                since_ms,
            };
            keypad::press(store, job, &pressed)
        }
        FieldBookRequest::AnswerDouble { job, meant } => keypad::answer_double(store, job, meant),
        FieldBookRequest::Chip { job, how, followed } => keypad::chip(store, job, how, followed),
        FieldBookRequest::Right { job, reading } => acts::right(store, job, reading),
        FieldBookRequest::Strike { job, entry, reason } => acts::strike(store, job, entry, reason),
        FieldBookRequest::SettleAtDesk { job, entries } => {
            acts::settle_at_desk(store, job, entries)
        }
        FieldBookRequest::Undo { job, entry } => acts::undo(store, job, entry),
        FieldBookRequest::Redo { job, entry } => acts::redo(store, job, entry),
        FieldBookRequest::Corner {
            job,
            after_leg,
            turn,
        } => corners::corner(store, job, after_leg, turn),
        FieldBookRequest::CannotGet { job, thing, reason } => {
            corners::cannot_get(store, job, thing, reason)
        }
    }
}
