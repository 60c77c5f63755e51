//! What a device may count on: each line of the protocol is a sentence here, asked of a real hub
//! over a socket.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod backups;
mod conflicts;
mod differences;
mod document;
mod doors;
mod entries;
mod feeds;
mod laws;
mod pairs;
mod photos;
mod pins;
#[path = "../../../../tests/crash/size.rs"]
mod size;
mod stores;
mod talk;
