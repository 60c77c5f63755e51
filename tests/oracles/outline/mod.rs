//! The adjustment of outlines against printed examples, another program's output, and simulations.

mod body;
mod cases;
mod network;
mod simulate;
mod swapped;
mod textbook;
