//! Entries, their fold into a field book, strikes, stories.

pub mod fold;
pub mod kinds;
