//! Sentences of the order list and of the tear-off.

mod en;
mod es;
mod message;

pub use message::OrderMessage;
