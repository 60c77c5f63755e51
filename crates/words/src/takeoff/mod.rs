//! What to check before a takeoff is used, and why a roof has none.

mod en;
mod es;
mod from_core;
mod message;

pub use message::TakeoffMessage;
