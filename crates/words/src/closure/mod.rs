//! Whether an outline closes, why it does not, and what to read.

mod en;
mod es;
mod from_core;
mod message;

pub use message::ClosureMessage;
