//! The hub beside a bare store, turn by turn in one run: prints rows, which `cargo xtask bench`
//! judges. With the word `growth`: what a company, a job and a photo cost, and what many cost. With
//! the name of another part: that one alone.
//!
//! PostgreSQL and the object store are asked where `cargo xtask stores` says that they are.

mod database;
mod growth;
mod merging;
mod photos;
mod pushing;
mod yard;

use std::error::Error;
use std::time::{Duration, Instant};

type Done = Result<(), Box<dyn Error>>;

/// A part by its name.
type Part = (&'static str, fn() -> Done);

fn main() -> Done {
    let parts: [Part; 4] = [
        ("merging", merging::run),
        ("pushing", pushing::run),
        ("photos", photos::run),
        ("database", database::run),
    ];
    match std::env::args().nth(1).as_deref() {
        None => parts.iter().try_for_each(|(_, run)| run()),
        Some("growth") => growth::run(),
        Some(named) => match parts.iter().find(|(name, _)| *name == named) {
            Some((_, run)) => run(),
            None => Err(format!(
                "{named} is no part: growth, {}",
                parts.map(|(name, _)| name).join(", ")
            )
            .into()),
        },
    }
}

/// Prints one comparison: `at least` so many times the peer's figure.
fn row(name: &str, [ours, peer]: [f64; 2], unit: &str, ratio: f64) {
    println!("row\t{name}\t{ours:.3}\t{peer:.3}\t{unit}\tat least\t{ratio}");
}

/// So many per second.
fn rate(count: usize, took: Duration) -> f64 {
    count as f64 / took.as_secs_f64()
}

/// How long one act took.
fn timed<T>(act: impl FnOnce() -> Result<T, Box<dyn Error>>) -> Result<Duration, Box<dyn Error>> {
    let start = Instant::now();
    act()?;
    Ok(start.elapsed())
}
