//! What was found once the old roof was off, and who agreed.

mod en;
mod es;
mod message;

pub use message::ChangePaperMessage;
