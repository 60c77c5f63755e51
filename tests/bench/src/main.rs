//! Ours beside a peer, turn by turn in one run. Prints rows; `cargo xtask bench` judges them.

mod booking;
mod opening;
mod outline;
mod packing;
mod program;
mod taking_off;

use std::error::Error;
use std::time::{Duration, Instant};

fn main() -> Result<(), Box<dyn Error>> {
    booking::run()?;
    opening::run()?;
    outline::run()?;
    taking_off::run()?;
    packing::run()?;
    program::run()
}

/// Prints one comparison. The goal is in words and a number: `at least 0.7` times the peer's figure.
fn row(name: &str, [ours, peer]: [f64; 2], unit: &str, (side, ratio): (&str, f64)) {
    println!("row\t{name}\t{ours:.3}\t{peer:.3}\t{unit}\t{side}\t{ratio}");
}

/// How long one act took.
fn timed<T>(act: impl FnOnce() -> T) -> (T, Duration) {
    let start = Instant::now();
    let done = act();
    (done, start.elapsed())
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap_or_default()
}
