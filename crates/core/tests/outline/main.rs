//! Readings of one outline to corners, suspects and closure.

mod houses;
mod lacking;
mod laws;
mod refusals;
mod shapes;
mod two_slips;
mod wanted;
mod words;
