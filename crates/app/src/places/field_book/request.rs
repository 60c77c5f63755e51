//! What the field book is asked.

use eavebook_core::book::keypad::{Key, Meant};
use eavebook_core::book::kinds::{Followed, HowRead, Thing, Turn};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of the field book.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum FieldBookRequest {
    /// Open the keypad for a thing (none: the next useful one). Keeps a draft. Reply: `Job`.
    OpenPad {
        /// Which job.
        job: Uuid,
        /// What is to be read.
        thing: Option<Thing>,
        /// Hide every value of it that is booked already.
        blind: bool,
    },
    /// Put the keypad away; the half-typed slots stay. Reply: `Job`.
    ClosePad {
        /// Which job.
        job: Uuid,
    },
    /// One key of the keypad. Kept on disk before the reply. Reply: `Pad`; `Job` after `BookIt`.
    Press {
        /// Which job.
        job: Uuid,
        /// Count of presses on this pad before this one: the same press said twice is one press.
        press: u32,
        /// The key.
        key: Key,
        /// Milliseconds since the press before, where there was one: a bounce is asked about.
        since_ms: Option<u32>,
    },
    /// Answer to "two 2s?". Reply: `Pad`.
    AnswerDouble {
        /// Which job.
        job: Uuid,
        /// What was meant.
        meant: Meant,
    },
    /// How the open reading is read and what the tape follows. Reply: `Pad`.
    Chip {
        /// Which job.
        job: Uuid,
        /// How it is read.
        how: HowRead,
        /// What the tape follows.
        followed: Followed,
    },
    /// The read-back is right. Reply: `Job`.
    Right {
        /// Which job.
        job: Uuid,
        /// The reading.
        reading: Uuid,
    },
    /// Strike a reading or a slope. Reply: `Job`.
    Strike {
        /// Which job.
        job: Uuid,
        /// The entry to strike.
        entry: Uuid,
        /// Why, where a reason is given.
        reason: Option<String>,
    },
    /// Somebody looked at the desk and lets what was read stand. Reply: `Job`.
    SettleAtDesk {
        /// Which job.
        job: Uuid,
        /// Everything in force on which a thing rests.
        entries: Vec<Uuid>,
    },
    /// Take back the act named (the one `undo` in the job offers). Reply: `Job`.
    Undo {
        /// Which job.
        job: Uuid,
        /// The entry to take back.
        entry: Uuid,
    },
    /// Do again the act named (the one `redo` in the job offers). Reply: `Job`.
    Redo {
        /// Which job.
        job: Uuid,
        /// The undo entry to take back.
        entry: Uuid,
    },
    /// The corner at the far end of a leg; opens the keypad for the next. Reply: `Job`.
    Corner {
        /// Which job.
        job: Uuid,
        /// The leg that ends there, from 1.
        after_leg: u32,
        /// Which way the outline turns.
        turn: Turn,
    },
    /// A thing that cannot be read. Reply: `Job`.
    CannotGet {
        /// Which job.
        job: Uuid,
        /// What.
        thing: Thing,
        /// Why, where a reason is given.
        reason: Option<String>,
    },
}
