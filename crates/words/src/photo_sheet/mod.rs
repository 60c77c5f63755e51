//! Captions of photos and sentences of the photo sheet.

mod en;
mod es;
mod message;

pub use message::PhotoSheetMessage;
