//! What was acknowledged is there: after kill -9 at any moment, by order of system calls, on a
//! full disk. Each check is also run on a writer that does it wrong, and must see it.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod disk;
mod full_disk;
mod kill;
mod killed;
mod noise;
mod packed;
mod power;
mod pressed;
mod size;
mod small_disk;
mod synced;

use std::path::Path;
use std::process::Command;

/// The writer at work in a folder, in a manner.
fn writer(dir: &Path, manner: &str) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_book-writer"));
    command.arg(dir).arg(manner);
    command
}
