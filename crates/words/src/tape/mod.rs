//! Why a text is not a reading of a tape.

mod en;
mod es;
mod from_core;
mod message;

pub use message::TapeMessage;
