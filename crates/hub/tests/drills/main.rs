//! Drills of the hub over its file and folder: kills, cuts of the power, failing calls. Small in
//! every run, at full size with `EAVEBOOK_DRILL=full`; each prints its line and its control's.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

#[path = "../../../../tests/crash/disk.rs"]
mod disk;
#[path = "../contract/document.rs"]
mod document;
mod errors;
mod killed;
#[path = "../../../../tests/crash/noise.rs"]
mod noise;
mod power;
#[path = "../../../../tests/crash/size.rs"]
mod size;
#[path = "../contract/stores.rs"]
mod stores;
#[path = "../contract/talk.rs"]
mod talk;
mod work;
