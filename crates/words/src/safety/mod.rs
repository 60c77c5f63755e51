//! The usual cautions of roof work, as papers print them.

mod en;
mod es;
mod message;

pub use message::SafetyMessage;
