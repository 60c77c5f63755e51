//! What is half typed in a job, and the read-back that nobody answered yet: no entries, of this
//! device only, kept at each key so that a kill at any moment loses none.

use crate::refusal::Refusal;
use crate::sentence::Sentence;
use eavebook_core::book::keypad::{FractionStep, Keypad};
use eavebook_core::book::kinds::{Followed, HowRead, TapeMarks, Thing};
use eavebook_store::Store;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The name of the draft of a job.
pub const NAME: &str = "pad";

/// The draft of one job.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Draft {
    /// Presses so far on all keypads of the job: a press said twice has a number already given.
    pub presses: u32,
    /// The keypad that is open.
    pub open: Option<OpenPad>,
    /// Keypads put away with something typed.
    pub away: Vec<OpenPad>,
    /// The reading that is read back.
    pub read_back: Option<Uuid>,
    /// Why the last key did nothing.
    pub refused: Option<Sentence>,
    /// The card of the Leave-site check from which somebody went to mend something.
    pub check_at: Option<String>,
    /// What the tape followed last: a walk seldom changes it.
    pub followed: Followed,
}

/// A keypad for one thing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OpenPad {
    /// What is read.
    pub thing: Thing,
    /// In words, as it was when the keypad was opened: a key press works nothing out anew.
    pub title: String,
    /// Earlier values are out of sight.
    pub blind: bool,
    /// The leg whose corner was still to be tapped when it was opened.
    pub corner_after: Option<u32>,
    /// What was typed.
    pub keypad: Keypad,
    /// How it is read.
    pub how: HowRead,
    /// What the tape follows.
    pub followed: Followed,
}

impl Draft {
    /// As it is kept.
    #[must_use]
    pub fn text(&self) -> String {
        // Names, numbers and texts: shapes that cannot fail to be written.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The thing whose values are out of sight.
    #[must_use]
    pub fn hidden(&self) -> Option<Thing> {
        self.open
            .as_ref()
            .filter(|open| open.blind)
            .map(|open| open.thing.clone())
    }

    /// Puts the open keypad away; what was typed on it stays for the next time.
    pub fn close(&mut self) {
        if let Some(open) = self.open.take()
            && !open.keypad.is_empty()
        {
            self.away.retain(|away| away.thing != open.thing);
            self.away.push(open);
        }
        self.refused = None;
    }

    /// Puts the keypad away if it is open for this thing, and forgets what was typed for it.
    pub fn put_away(&mut self, thing: &Thing) {
        if self.open.as_ref().is_some_and(|open| open.thing == *thing) {
            self.open = None;
            self.refused = None;
        }
        self.away.retain(|away| away.thing != *thing);
    }

    /// The keypad put away for a thing, with what was typed on it.
    pub fn take_away(&mut self, thing: &Thing) -> Option<OpenPad> {
        let place = self.away.iter().position(|away| away.thing == *thing)?;
        Some(self.away.remove(place))
    }

    /// Gives the open keypad other marks while nothing is typed on it; tells whether it did.
    pub fn take_tape(&mut self, tape: TapeMarks, step: FractionStep) -> bool {
        match &mut self.open {
            Some(open) if open.keypad.is_empty() => {
                open.keypad = Keypad::new(open.thing.tape(tape), step);
                self.refused = None;
                true
            }
            Some(_) | None => false,
        }
    }
}

/// The draft of a job as it was last kept. One that another version wrote is as if there were none.
///
/// # Errors
/// When the book cannot be read.
pub fn read(book: &Store, job: Uuid) -> Result<Draft, Refusal> {
    let text = book.draft(job, NAME)?;
    Ok(text
        .and_then(|text| serde_json::from_str(&text).ok())
        .unwrap_or_default())
}

/// Keeps a draft: when this returns it outlives a kill.
///
/// # Errors
/// When the book cannot be written.
pub fn keep(book: &mut Store, job: Uuid, draft: &Draft) -> Result<(), Refusal> {
    Ok(book.keep_draft(job, NAME, &draft.text())?)
}
