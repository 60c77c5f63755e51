//! Why a record is not a valid entry.

mod en;
mod es;
mod from_core;
mod message;

pub use message::EntryMessage;
