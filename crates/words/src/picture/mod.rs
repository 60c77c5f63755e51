//! What becomes of a picture file.

mod en;
mod es;
mod message;

pub use message::PictureMessage;
