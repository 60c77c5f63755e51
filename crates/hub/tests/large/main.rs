//! The suite of `../contract`, line by line, over PostgreSQL and an object store; and what only
//! they can do: several hubs at once.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

#[path = "../contract/backups.rs"]
mod backups;
mod cluster;
#[path = "../contract/conflicts.rs"]
mod conflicts;
#[path = "../contract/differences.rs"]
mod differences;
#[path = "../contract/document.rs"]
mod document;
#[path = "../contract/doors.rs"]
mod doors;
#[path = "../contract/entries.rs"]
mod entries;
#[path = "../contract/feeds.rs"]
mod feeds;
#[path = "../contract/laws.rs"]
mod laws;
mod moves;
#[path = "../contract/pairs.rs"]
mod pairs;
#[path = "../contract/photos.rs"]
mod photos;
#[path = "../contract/pins.rs"]
mod pins;
mod replicas;
#[path = "../../../../tests/crash/size.rs"]
mod size;
mod stops;
mod stores;
#[path = "../contract/talk.rs"]
mod talk;
mod tls;
mod two;
