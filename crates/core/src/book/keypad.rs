//! The keypad on which a length is typed: one slot per unit, no decimal point, and a reason for every
//! key that changes nothing.

pub use super::key_refusal::KeyRefusal;
use super::keypad_slots::TypedSlots;
pub use super::keypad_slots::{Slot, SlotContent, SlotState, SlotUnit};
pub use super::keys::{FractionStep, Key, Meant};
use super::tape_marks::TapeMarks;
use crate::units::Tape;
use serde::{Deserialize, Serialize};

/// A keypad and the keys that it took.
///
/// Slots are derived from the keys, so that taking a key back is exact and a stored keypad is restored
/// as it was.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Keypad {
    tape: TapeMarks,
    step: FractionStep,
    keys: Vec<Key>,
    /// The digit of a press so fast that it may have been a bounce.
    double: Option<u8>,
}

/// Presses of one digit closer than this may be one press of a soft or gloved finger that bounced,
/// milliseconds (our judgment).
const BOUNCE_MS: u32 = 120;

impl Keypad {
    /// Returns a keypad with nothing typed.
    #[must_use]
    pub fn new(tape: TapeMarks, step: FractionStep) -> Keypad {
        Keypad {
            tape,
            step,
            keys: Vec::new(),
            double: None,
        }
    }

    /// Returns how the tape is marked.
    #[must_use]
    pub fn tape(&self) -> TapeMarks {
        self.tape
    }

    /// Whether nothing is typed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.keys.is_empty()
    }

    /// Returns the digit that may have bounced, until it is answered or another key is pressed. The
    /// question does not block other keys.
    #[must_use]
    pub fn double(&self) -> Option<u8> {
        self.double
    }

    /// Takes one key. `since_ms`: milliseconds since the press before.
    ///
    /// # Errors
    /// Why the key changed nothing.
    pub fn press(&mut self, key: Key, since_ms: Option<u32>) -> Result<(), KeyRefusal> {
        if key == Key::TakeBackOne {
            self.keys.pop().ok_or(KeyRefusal::NothingTyped)?;
            self.double = None;
            return Ok(());
        }
        // Tried on a copy, so that a refused key leaves no trace.
        self.typed().take(key, self.tape, self.step)?;
        let bounced = since_ms.is_some_and(|since| since < BOUNCE_MS);
        self.double = match (key, self.keys.last()) {
            (Key::Digit { digit }, Some(last)) if bounced && *last == key => Some(digit),
            (Key::Digit { .. }, _)
            | (
                Key::Whole | Key::Inches | Key::Eighths { .. } | Key::TakeBackOne | Key::BookIt,
                _,
            ) => None,
        };
        self.keys.push(key);
        Ok(())
    }

    /// Answers the question about a double press; without a question nothing changes.
    pub fn answer_double(&mut self, meant: Meant) {
        if self.double.take().is_some() && meant == Meant::One {
            self.keys.pop();
        }
    }

    /// Returns the slots in order.
    #[must_use]
    pub fn slots(&self) -> Vec<SlotState> {
        self.typed().slots(self.tape)
    }

    /// Returns the typed length as canonical tape text: `42 ft 7 1/2 in`.
    ///
    /// # Errors
    /// Why the keys do not make a length yet.
    pub fn reading(&self) -> Result<String, KeyRefusal> {
        if self.keys.is_empty() {
            return Err(KeyRefusal::NothingTyped);
        }
        let text = self.typed().tape_text(self.tape)?;
        let tape = Tape::read(&text).map_err(|_| KeyRefusal::Zero)?;
        if tape.length().is_a_reading() {
            Ok(tape.canonical())
        } else {
            Err(KeyRefusal::Zero)
        }
    }

    fn typed(&self) -> TypedSlots {
        let mut typed = TypedSlots::default();
        for key in &self.keys {
            // Every stored key was accepted once, so it is accepted again.
            let taken = typed.take(*key, self.tape, self.step);
            debug_assert!(taken.is_ok(), "{key:?}");
        }
        typed
    }
}
