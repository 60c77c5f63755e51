//! The field book: keypad, read-back, strikes, corners, closure.

pub mod acts;
pub mod clips;
pub mod closure;
pub mod corners;
pub mod handle;
pub mod keypad;
pub mod pad;
pub mod reply;
pub mod request;
