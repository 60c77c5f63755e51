//! What a packet lacks, why it was not made, and its start page.

mod en;
mod es;
mod message;

pub use message::PacketMessage;
