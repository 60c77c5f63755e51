//! What a device and its company's hub say to each other, as the device sees it.
//!
//! [`Client`] is a machine without I/O: it is told what came and what time it is, and says what to
//! do. [`Shelf`] is the field book that it works for, [`Link`] the way to a hub over TLS with a
//! pinned key, and [`Runs`] lets the three run beside a program.
//!
//! Merging is the union of sets of entries: what came twice is kept once, and the order does not
//! matter. What the hub has acknowledged is on its disk; before that it waits, whatever happened.

mod client;
mod fetch;
mod link;
mod of_book;
mod packing;
mod pair;
mod pin;
mod repair;
mod rest;
mod runs;
mod send;
mod shelf;
mod wire;

pub use client::{Act, Client, Event, Standing};
pub use link::{Link, LinkError};
pub use of_book::OfBook;
pub use pair::{Invitation, Joined, PairError, ask_to_join, pair};
pub use runs::{Runs, Wake};
pub use shelf::{Life, Shelf, ShelfError};
pub use wire::{Method, Request, Response};
