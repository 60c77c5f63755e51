//! Why a file is not a whole packet.

mod en;
mod es;
mod message;

pub use message::PacketCheckMessage;
