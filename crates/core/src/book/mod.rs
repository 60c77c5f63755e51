//! Entries, their fold into a field book, strikes, stories; the keypad that makes a reading.

pub mod acts;
pub mod agree;
pub mod change;
pub mod clock;
pub mod digest;
pub mod edition;
pub mod entry;
pub mod fold;
pub mod freeze;
pub mod heads;
pub mod keypad;
pub mod kinds;
pub mod lay_out;
pub mod names;
pub mod on_roof;
pub mod photo_facts;
pub mod roof_observed;
pub mod scope;
pub mod story;
pub mod thing;
pub mod visit;
