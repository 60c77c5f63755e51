//! Every sentence and label for people, English and Spanish.
//!
//! A sentence is a variant of an area of [`Message`] with typed arguments; `words/src/<area>/en.rs`
//! and `es.rs` render it. Both are a `match` without a wildcard, so a missing translation does not
//! compile. A label has no arguments: see [`Label`]. Arguments are rendered by a [`Format`]: lengths,
//! counts, names of legs and faces, dates follow the language.

#[macro_use]
mod list;

mod catalog;
mod format;
mod language;
mod message;
mod samples;

pub mod change_paper;
pub mod closure;
pub mod difference;
pub mod entry;
pub mod label;
pub mod not_known;
pub mod order;
pub mod packet;
pub mod packet_check;
pub mod paper;
pub mod permit;
pub mod photo_sheet;
pub mod picture;
pub mod proposal;
pub mod reading;
pub mod safety;
pub mod story;
pub mod takeoff;
pub mod tape;

pub use catalog::{CatalogLine, Kind, catalog};
pub use eavebook_core::naming::{EdgeName, FaceName};
pub use format::{
    Count, CoveringName, DeckName, En, Es, Format, Gender, Noun, Quoted, ReadingText, capital,
};
pub use label::{Label, labels_module};
pub use language::Language;
pub use message::Message;
