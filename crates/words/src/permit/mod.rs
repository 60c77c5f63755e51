//! Sentences of the permit sheet and the notes of a code profile.

mod en;
mod es;
mod message;

pub use message::PermitMessage;
