//! What a photo shows: the side of the house, guessed from where the camera looked and in which
//! order the photos were taken. A guess is derived each time and never booked; only a person's word
//! makes it so.

mod guess;
mod side;
mod walk;

pub use crate::book::house_side::HouseSide;
pub use guess::{Guesses, SideChances, guess_sides};
pub use side::{Confirmed, Shot};
pub use walk::{Shows, WalkPhoto, front_heading, walk_photos};
