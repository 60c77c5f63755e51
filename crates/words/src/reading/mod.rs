//! Sentences of the keypad and of readings that differ.

mod en;
mod es;
mod from_core;
mod message;

pub use message::ReadingMessage;
