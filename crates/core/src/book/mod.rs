//! Entries, their fold into a field book, strikes, stories; the keypad that makes a reading.
//!
//! Modules import one way: bodies (`reading`, `corner`, `slope`, ..) < `kinds` < `entry` < `fold` <
//! `story`, `undo`, `counted` < `on_roof` < `lay_out` < `names`.

pub mod acts;
pub mod agree;
pub mod answers;
pub mod change;
pub mod clock;
pub mod corner;
pub mod counted;
pub mod digest;
pub mod edition;
pub mod entry;
pub mod fold;
pub mod freeze;
pub mod heads;
pub mod house_side;
pub mod job_started;
pub mod key_refusal;
pub mod keypad;
pub mod keypad_slots;
pub mod keys;
pub mod kinds;
pub mod lay_out;
pub mod names;
pub mod on_roof;
pub mod packet_notes;
pub mod photo_facts;
pub mod photo_taken;
pub mod reading;
pub mod roof_observed;
pub mod scope;
pub mod slope;
pub mod story;
pub mod subject;
pub mod tape_marks;
pub mod thing;
pub mod undo;
pub mod visit;
