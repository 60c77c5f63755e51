//! `eavebook solve` of the demo house beside the start of the program alone.

use crate::{median, row, timed};
use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

const ROUNDS: u32 = 101;

/// The program is the one `EAVEBOOK` names.
pub fn run() -> Result<(), Box<dyn Error>> {
    let program = std::env::var_os("EAVEBOOK").map(PathBuf::from);
    let program = program.ok_or("EAVEBOOK names no program: run `cargo xtask bench`")?;
    let house = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../assets/demo-house.json");
    let house = house.to_string_lossy();
    let (mut ours, mut peer) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        ours.push(time_of(&program, &["solve", &house])?);
        peer.push(time_of(&program, &["--version"])?);
    }
    let times = [ours, peer].map(|times| median(times).as_secs_f64() * 1000.0);
    row(
        "solve of the demo house, against the program's start",
        times,
        "ms",
        ("at most", 2.0),
    );
    Ok(())
}

fn time_of(program: &Path, words: &[&str]) -> Result<Duration, Box<dyn Error>> {
    let run = || {
        Command::new(program)
            .args(words)
            .stdout(Stdio::null())
            .status()
    };
    let (status, took) = timed(run);
    if !status?.success() {
        return Err(format!("eavebook {} failed", words.join(" ")).into());
    }
    Ok(took)
}
