//! Takeoff and price of the demo house beside a second reading of the same rules in Python. Both get
//! the same roof, and must come to the same price to the cent.

use crate::{median, row, timed};
use eavebook_core::solve::{solve, take_off_and_price};
use eavebook_core::survey_file;
use serde_json::Value;
use std::error::Error;
use std::fs::File;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

/// Both sides take turns, so that a slow minute of the machine is one of both.
const TURNS: usize = 7;
/// Rounds of each side in a turn: each works for about as long.
const OUR_ROUNDS: u32 = 2000;
const PEER_ROUNDS: &str = "20";

/// What the peer is told and what its roof is: the program that `EAVEBOOK` names solves it.
pub fn run() -> Result<(), Box<dyn Error>> {
    let bench = Path::new(env!("CARGO_MANIFEST_DIR"));
    let assets = bench.join("../../assets");
    let house = assets.join("demo-house.json");
    let file = survey_file::read(&std::fs::read(&house)?)?;
    let solved = solve(&file.survey)?;
    let terms = file.terms(None);
    let priced = take_off_and_price(&file.survey, &solved, &terms)?;
    let total = priced.price.total.as_decimal().to_string();
    let folder = tempfile::tempdir()?;
    let result = folder.path().join("result.json");
    solve_to(&house, &result)?;
    let (mut ours, mut peer) = (Vec::new(), Vec::new());
    for _ in 0..TURNS {
        let (done, took) = timed(|| {
            (0..OUR_ROUNDS).try_for_each(|_| {
                let again = take_off_and_price(&file.survey, &solved, &terms)?;
                // Something depends on every round, so that none is left out.
                if again.price.total != priced.price.total {
                    return Err("the price of one house changed from one round to the next".into());
                }
                Ok::<(), Box<dyn Error>>(())
            })
        });
        done?;
        ours.push(took / OUR_ROUNDS);
        let said = Command::new("python3")
            .arg(bench.join("takeoff_peer.py"))
            .arg(PEER_ROUNDS)
            .args([&house, &result])
            .args(["rates-demo.toml", "code-demo.toml"].map(|name| assets.join(name)))
            .output()?;
        let said: Value = serde_json::from_slice(&said.stdout)
            .map_err(|why| format!("the peer said nothing that reads ({why}): {said:?}"))?;
        if said["total"].as_str() != Some(&total) {
            return Err(format!("ours comes to {total}, the peer to {said}").into());
        }
        let took = said["seconds"].as_f64().ok_or("the peer timed nothing")?;
        peer.push(Duration::from_secs_f64(took));
    }
    println!("takeoff and price: both come to {total}");
    let [ours, peer] = [ours, peer].map(|times| median(times).as_secs_f64());
    // How many houses each does in a second.
    row(
        "takeoff and price of the demo house",
        [1.0 / ours, 1.0 / peer],
        "per s",
        ("at least", 100.0),
    );
    Ok(())
}

fn solve_to(house: &Path, result: &Path) -> Result<(), Box<dyn Error>> {
    let program = std::env::var_os("EAVEBOOK").map(PathBuf::from);
    let program = program.ok_or("EAVEBOOK names no program: run `cargo xtask bench`")?;
    let status = Command::new(program)
        // The order list stands on the squared roof, so the peer is given that one.
        .args(["solve", "--squared"])
        .arg(house)
        .stdin(Stdio::null())
        .stdout(File::create(result)?)
        .status()?;
    status
        .success()
        .then_some(())
        .ok_or_else(|| "eavebook solve of the demo house failed".into())
}
