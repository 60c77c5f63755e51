//! Things that differ from the version before, and what each version has.

mod en;
mod es;
mod message;

pub use message::DifferenceMessage;
