//! Whether the outline comes back to its start, and what to read again.

mod en;
mod es;
mod message;

pub use message::ClosureMessage;
