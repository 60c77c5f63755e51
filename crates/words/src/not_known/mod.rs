//! What is not known of a house.

mod en;
mod es;
mod message;

pub use message::NotKnownMessage;
