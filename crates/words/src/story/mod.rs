//! How the figures of a job came out of its readings.

mod en;
mod es;
mod message;

pub use message::StoryMessage;
