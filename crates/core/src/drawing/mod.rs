//! One plan drawing of a whole roof, however many bodies it has: for the papers, a file and a screen.
//!
//! [`draw`] lays it out once for a [`Sheet`]: lines in the hand of their kind (`lines`), what is under
//! a higher roof (`hidden`), words where there is room for them (`room`, `words`), a key and a list of
//! what the drawing says by numbers (`foot`). [`svg`] writes it. Nothing is said by colour.
//!
//! What has no room is left off, the least needed first, and counted: the list that stands beside
//! every drawing ([`listed`]) has it all.

mod foot;
mod hidden;
mod house;
mod lay;
mod lines;
mod room;
mod svg;
mod words;

pub use house::{EdgeToDraw, FaceToDraw, Hand, House, Words, listed, wall_lines};
pub use lay::{Drawing, Mark, North, Slope, Text, TextRole, draw};
pub use lines::{Line, Piece, Sight};
pub use room::{Room, Sheet};
pub use svg::{Ground, escaped, svg};
