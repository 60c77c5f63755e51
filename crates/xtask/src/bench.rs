//! `cargo xtask bench`: every benchmark in one run, ours and its peer side by side.
//!
//! Benchmarks are programs that print rows, tab between the fields; this file alone judges them:
//!
//! ```text
//! row <name> <ours> <peer> <unit> <at least | at most> <ratio>
//! ```

use crate::ground::Ground;
use crate::run;
use crate::setup;
use crate::stores::{self, Objects, Stores};
use crate::trouble::Trouble;

/// One comparison.
#[derive(Clone, Debug, PartialEq)]
struct Row {
    name: String,
    ours: f64,
    peer: f64,
    unit: String,
    goal: Goal,
}

/// What ours over the peer's must come to.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Goal {
    AtLeast(f64),
    AtMost(f64),
}

/// Builds in release, runs every benchmark, prints a line each and how many hold.
///
/// A row that falls short is a finding, no failure.
///
/// # Errors
/// What kept a benchmark from running, in a sentence.
pub fn run(ground: &Ground) -> Result<(), Trouble> {
    println!("==> build");
    setup::node_modules(ground, "ui")?;
    setup::node_modules(ground, "tests/browser")?;
    let python = setup::python(ground, "tests/bench/requirements.txt")?;
    setup::packages(&setup::BENCH_PACKAGES)?;
    run::must(&mut ground.command("npm", "ui", &["run", "build"]))?;
    let build = [
        "build",
        "--release",
        "-p",
        "eavebook-cli",
        "-p",
        "eavebook-bench",
        "-p",
        "eavebook-roofs",
        "-p",
        HUB,
    ];
    run::must(&mut ground.command("cargo", ".", &build))?;
    let peer = ground.target.join("release/roofs-peer");
    let compile = [
        "-std=c++17",
        "-O2",
        "-DNDEBUG",
        "peer.cpp",
        "-lgmp",
        "-lmpfr",
        "-o",
    ];
    run::must(ground.command("c++", "tests/roofs", &compile).arg(&peer))?;

    println!("==> run");
    let release = ground.target.join("release");
    let kernels = release.join("eavebook-bench");
    let mut kernels = ground.command(&kernels.to_string_lossy(), ".", &[]);
    let roofs = release.join("eavebook-roofs-bench");
    let mut roofs = ground.command(&roofs.to_string_lossy(), ".", &[]);
    roofs.env("EAVEBOOK_ROOFS_PEER", &peer);
    let mut page = ground.command("node", "tests/browser", &["../bench/page.mjs"]);
    let hub = release.join(HUB);
    let mut hub = ground.command(&hub.to_string_lossy(), ".", &[]);
    stores::install(ground)?;
    let servers = Stores::begin(ground, Objects::Files)?;
    servers.tell(&mut hub);
    let mut rows = Vec::new();
    for benchmark in [&mut kernels, &mut roofs, &mut page, &mut hub] {
        benchmark.env("EAVEBOOK", release.join("eavebook"));
        benchmark.env("EAVEBOOK_PYTHON", &python);
        let output = run::must(benchmark)?;
        rows.extend(output.lines.iter().filter_map(|line| row(line)));
    }

    println!("\n==> all of it\n");
    for row in &rows {
        println!("{}", line(row));
    }
    println!(
        "{} of {} hold",
        rows.iter().filter(|row| holds(row)).count(),
        rows.len()
    );
    Ok(())
}

const HUB: &str = "eavebook-hub-bench";

/// What a company, a job and a photo cost a hub, and what many cost.
///
/// # Errors
/// What kept it from running, in a sentence.
pub fn growth(ground: &Ground) -> Result<(), Trouble> {
    run::must(&mut ground.command("cargo", ".", &["build", "--release", "-p", HUB]))?;
    stores::install(ground)?;
    let servers = Stores::begin(ground, Objects::Files)?;
    let hub = ground.target.join("release").join(HUB);
    let mut hub = ground.command(&hub.to_string_lossy(), ".", &["growth"]);
    servers.tell(&mut hub);
    run::must(&mut hub).map(drop)
}

/// Reads a row; any other line a benchmark prints is none.
fn row(line: &str) -> Option<Row> {
    let fields: Vec<&str> = line.split('\t').collect();
    let ["row", name, ours, peer, unit, side, ratio] = fields.as_slice() else {
        return None;
    };
    let ratio = ratio.parse().ok()?;
    let goal = match *side {
        "at least" => Goal::AtLeast(ratio),
        "at most" => Goal::AtMost(ratio),
        _ => return None,
    };
    let (name, unit) = ((*name).to_owned(), (*unit).to_owned());
    Some(Row {
        name,
        ours: ours.parse().ok()?,
        peer: peer.parse().ok()?,
        unit,
        goal,
    })
}

fn holds(row: &Row) -> bool {
    let ratio = row.ours / row.peer;
    match row.goal {
        Goal::AtLeast(goal) => ratio >= goal,
        Goal::AtMost(goal) => ratio <= goal,
    }
}

fn line(row: &Row) -> String {
    let goal = match row.goal {
        Goal::AtLeast(goal) => format!(">= {goal}"),
        Goal::AtMost(goal) => format!("<= {goal}"),
    };
    format!(
        "{:<52} ours {:>9.2} peer {:>9.2} {:<10} ratio {:>6.2} goal {goal:<8} {}",
        row.name,
        row.ours,
        row.peer,
        row.unit,
        row.ours / row.peer,
        if holds(row) { "holds" } else { "falls short" },
    )
}

#[cfg(test)]
mod tests {
    use super::{holds, line, row};

    #[test]
    fn a_rate_that_reaches_its_share_of_the_peer_holds() {
        let parsed = row("row\tbook\t70\t100\tper s\tat least\t0.7").unwrap();
        assert!(holds(&parsed));
        assert!(
            line(&parsed).ends_with("ratio   0.70 goal >= 0.7   holds"),
            "{}",
            line(&parsed)
        );
    }

    #[test]
    fn a_time_past_its_share_of_the_peer_falls_short() {
        let parsed = row("row\tsolve\t21\t10\tms\tat most\t2").unwrap();
        assert!(!holds(&parsed));
        assert!(
            line(&parsed).ends_with("ratio   2.10 goal <= 2     falls short"),
            "{}",
            line(&parsed)
        );
    }

    #[test]
    fn a_line_that_is_no_row_is_none() {
        assert_eq!(row("row solve 21 10 ms"), None);
        assert_eq!(row("row\tsolve\tfast\t10\tms\tat most\t2"), None);
    }

    #[test]
    fn a_peer_that_measured_nothing_never_lets_a_row_hold() {
        assert!(!holds(&row("row\tsolve\t0\t0\tms\tat most\t2").unwrap()));
        assert!(!holds(
            &row("row\tbook\tNaN\t100\tper s\tat least\t0.7").unwrap()
        ));
    }
}
