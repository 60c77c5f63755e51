//! `cargo xtask test`: sets up, then runs every test, nearest first, and ends with a table of counts.

use crate::count::{self, Count};
use crate::fallen::fallen;
use crate::ground::{Ground, answers};
use crate::run::{self, End, Said};
use crate::setup;
use crate::stores::{self, Objects, Stores};
use crate::trouble::Trouble;
use std::process::Command;
use std::time::{Duration, Instant};

/// One row of the table.
struct Row {
    name: &'static str,
    outcome: Outcome,
    took: Duration,
}

/// How a step went.
enum Outcome {
    /// Every command ended well; the counts its runners printed, where they count.
    Held(Option<Count>),
    /// Some did not, and their lines that say so.
    Fell(Option<Count>, Vec<String>),
    /// Could not run here, and why.
    NotHere(String),
}

/// Runs all of it. A step that fails does not keep the later ones from running.
///
/// # Errors
/// `Steps` if any step failed; what stopped the set-up otherwise.
pub fn run(ground: &Ground) -> Result<(), Trouble> {
    let mut table = Table::default();
    table.step("set-up", || {
        setup::packages(&setup::COMPILER_PACKAGES)?;
        setup::packages(&setup::TEST_PACKAGES)?;
        setup::packages(&setup::SHELL_PACKAGES)?;
        setup::tool(ground, "cargo-deny")?;
        stores::install(ground)?;
        Ok(Outcome::Held(None))
    });
    table.step("format", || {
        all(&mut [ground.command("cargo", ".", &["fmt", "--all", "--check"])])
    });
    table.step("ui, built and checked", || ui(ground));
    table.step("lint", || {
        let (lint, strict) = (["clippy", "--all-targets"], ["--", "-D", "warnings"]);
        let words = [&lint[..], &ALL, &strict].concat();
        all(&mut [ground.command("cargo", ".", &words)])
    });
    rust(ground, &mut table);
    for (name, objects) in LARGE {
        table.step(name, || large(ground, objects));
    }
    table.step("hub's document, by others", || {
        let python = setup::python(ground, "tests/stores/requirements.txt")?;
        let words = [
            "-m",
            "openapi_spec_validator",
            "crates/hub/src/openapi.json",
        ];
        all(&mut [ground.command(&python.to_string_lossy(), ".", &words)])
    });
    table.step("hub's unit, by systemd", || unit(ground));
    table.step("rust, in the docs", || {
        let words = [&["test", "--doc"][..], &ALL].concat();
        all(&mut [ground.command("cargo", ".", &words)])
    });
    table.step("packets, by others", || packets(ground));
    table.step("browser", || browser(ground));
    table.step("fuzz", || fuzz(ground));
    table.step("licences", || {
        let words = ["check", "licenses", "bans", "sources"];
        all(&mut [ground.command("cargo-deny", ".", &words)])
    });
    table.step("shell", || shell(ground));
    table.print()
}

const SHELL: &str = "eavebook-shell";

/// All of it, always by this one selection: with fewer crates chosen, their dependencies would be
/// built with fewer features, and the typesetter a second time, which alone takes ten minutes.
pub const ALL: [&str; 3] = [
    "--workspace",
    "--features",
    "eavebook-shell/custom-protocol",
];

/// How long each fuzz target runs.
const FUZZ_TIME: &str = "-max_total_time=20";

/// How long one input may take, seconds, under the sanitizer: a longer one is a hang.
const INPUT_TIME: &str = "-timeout=10";

fn ui(ground: &Ground) -> Result<Outcome, Trouble> {
    setup::node_modules(ground, "ui")?;
    all(&mut [
        ground.command("npm", "ui", &["run", "build"]),
        ground.command("npm", "ui", &["run", "check"]),
    ])
}

/// The kernels first, then the rooms around them, then what goes across, with the tables it prints.
/// All is compiled at once, before the first.
const PARTS: [(&str, &str, &[&str]); 3] = [
    ("rust, the kernels", "package(eavebook-core)", &[]),
    (
        "rust, around them",
        "not package(eavebook-core) - package(eavebook-tests) - package(eavebook-roofs) - binary(large)",
        &[],
    ),
    (
        "rust, across crates",
        "package(eavebook-tests) + package(eavebook-roofs)",
        &["--success-output", "immediate"],
    ),
];

fn rust(ground: &Ground, table: &mut Table) {
    if !setup::has_tool(ground, "cargo-nextest") {
        table.step("rust", || {
            let tests = ["test", "--all-targets", "--no-fail-fast"];
            let words = [&tests[..], &ALL].concat();
            let mut command = ground.command("cargo", ".", &words);
            // That runner runs the suite over the large stores with all the others.
            let stores = Stores::begin(ground, Objects::Moto)?;
            stores.tell(&mut command);
            all(&mut [command])
        });
        return;
    }
    for (name, which, more) in PARTS {
        table.step(name, || {
            let tests = ["nextest", "run", "--no-fail-fast", "-E", which];
            let words = [&tests[..], &ALL, more].concat();
            let mut command = ground.command("cargo", ".", &words);
            // Other people's roofs are asked through it.
            command.env(
                "EAVEBOOK_PYTHON",
                setup::python(ground, "tests/roofs/requirements.txt")?,
            );
            all(&mut [command])
        });
    }
}

/// The hub over PostgreSQL and each of two object stores: the suite that it passes over a file and a
/// folder.
const LARGE: [(&str, Objects); 2] = [
    ("hub, PostgreSQL, moto", Objects::Moto),
    ("hub, PostgreSQL, s3s-fs", Objects::Files),
];

fn large(ground: &Ground, objects: Objects) -> Result<Outcome, Trouble> {
    let stores = Stores::begin(ground, objects)?;
    let tests: &[&str] = if setup::has_tool(ground, "cargo-nextest") {
        &["nextest", "run", "--no-fail-fast", "-E", "binary(large)"]
    } else {
        &["test", "--no-fail-fast", "--test", "large"]
    };
    let words = [tests, &ALL].concat();
    let mut command = ground.command("cargo", ".", &words);
    stores.tell(&mut command);
    all(&mut [command])
}

/// The unit with which a machine begins a hub, read by systemd. It looks for the program too, so it
/// is told of the one that was built.
fn unit(ground: &Ground) -> Result<Outcome, Trouble> {
    if !answers(Command::new("systemd-analyze").arg("--version")) {
        return Ok(Outcome::NotHere(
            "there is no systemd-analyze here".to_owned(),
        ));
    }
    build_programs(ground)?;
    const UNIT: &str = "eavebook-hub.service";
    let named = ground.root.join("assets/hub").join(UNIT);
    let file = |path: &std::path::Path| {
        let path = path.to_path_buf();
        move |cause| Trouble::File { path, cause }
    };
    let text = std::fs::read_to_string(&named).map_err(file(&named))?;
    let built = ground.built("eavebook").to_string_lossy().into_owned();
    let copy = ground.target.join(UNIT);
    std::fs::write(&copy, text.replace("/usr/local/bin/eavebook", &built)).map_err(file(&copy))?;
    let copy = copy.to_string_lossy().into_owned();
    let outputs = run::show(&mut ground.command("systemd-analyze", ".", &["verify", &copy]))?;
    // A word that it does not know it names and passes over.
    let named = outputs.lines.iter().any(|line| line.contains(UNIT));
    Ok(if outputs.end == End::Well && !named {
        Outcome::Held(None)
    } else {
        Outcome::Fell(None, outputs.lines)
    })
}

/// Packets of every edition, looked at by programs that are not ours.
fn packets(ground: &Ground) -> Result<Outcome, Trouble> {
    build_programs(ground)?;
    let eavebook = ground.built("eavebook");
    if !answers(Command::new(&eavebook).args(["packet", "--help"])) {
        let why = "this program has no command that makes a packet yet";
        return Ok(Outcome::NotHere(why.to_owned()));
    }
    let python = setup::python(ground, "tests/packet/requirements.txt")?;
    let python = python.to_string_lossy().into_owned();
    let mut look = ground.command(&python, "tests/packet", &["outside.py"]);
    look.arg(eavebook);
    all(&mut [look])
}

fn browser(ground: &Ground) -> Result<Outcome, Trouble> {
    setup::node_modules(ground, "tests/browser")?;
    build_programs(ground)?;
    // The picture of the README is taken anew, so that it shows what is there.
    let mut commands =
        ["test", "shot"].map(|script| ground.command("npm", "tests/browser", &["run", script]));
    for command in &mut commands {
        command.env("EAVEBOOK", ground.built("eavebook"));
    }
    all(&mut commands)
}

/// The program and the window, as the tests drive them.
fn build_programs(ground: &Ground) -> Result<(), Trouble> {
    let words = [&["build", "--bins"][..], &ALL].concat();
    run::must(&mut ground.command("cargo", ".", &words)).map(drop)
}

fn fuzz(ground: &Ground) -> Result<Outcome, Trouble> {
    if !answers(&mut ground.command("rustup", ".", &["run", "nightly", "rustc", "--version"])) {
        let why = "fuzzing needs a nightly compiler; the parsers' crashers ran as plain tests";
        return Ok(Outcome::NotHere(why.to_owned()));
    }
    setup::tool(ground, "cargo-fuzz")?;
    let nightly = ["run", "nightly", "cargo", "fuzz"];
    let listed = run::must(ground.command("rustup", "tests/fuzz", &nightly).args([
        "list",
        "--fuzz-dir",
        ".",
    ]))?;
    let mut runs: Vec<Command> = Vec::new();
    for target in &listed.lines {
        // What a run finds worth keeping goes into the first folder; the seeds stay as they are.
        let (found, seeds) = (format!("corpus/{target}"), format!("seeds/{target}"));
        let folder = ground.root.join("tests/fuzz").join(&found);
        std::fs::create_dir_all(&folder).map_err(|cause| Trouble::File {
            path: folder,
            cause,
        })?;
        let mut command = ground.command("rustup", "tests/fuzz", &nightly);
        command.args(["run", "--fuzz-dir", ".", target, &found, &seeds, "--"]);
        command.args([FUZZ_TIME, INPUT_TIME, "-rss_limit_mb=2048"]);
        // Built with a sanitizer by another compiler: a target folder of its own.
        command.env("CARGO_TARGET_DIR", ground.target.join("fuzz"));
        runs.push(command);
    }
    all(&mut runs)
}

fn shell(ground: &Ground) -> Result<Outcome, Trouble> {
    setup::tool(ground, "tauri-driver")?;
    build_programs(ground)?;
    // A window at a time: each has the whole display.
    let drive = [
        "--",
        "xvfb-run",
        "-a",
        "node",
        "--test",
        "--test-concurrency=1",
        "drive.mjs",
        "rectangle.mjs",
        "refused_keys.mjs",
        "copies.mjs",
        "by_hand.mjs",
        "square.mjs",
    ];
    let mut drive = ground.command("dbus-run-session", "tests/shell", &drive);
    drive.env("EAVEBOOK_SHELL", ground.built(SHELL));
    drive.env("EAVEBOOK", ground.built("eavebook"));
    all(&mut [drive])
}

/// Runs each, even after one fails, and adds up what they count.
fn all(commands: &mut [Command]) -> Result<Outcome, Trouble> {
    let outputs = commands
        .iter_mut()
        .map(run::show)
        .collect::<Result<Vec<Said>, Trouble>>()?;
    let lines: Vec<String> = outputs.iter().flat_map(|one| one.lines.clone()).collect();
    let counted = count::count(&lines);
    let held = outputs.iter().all(|one| one.end == End::Well);
    Ok(if held {
        Outcome::Held(counted)
    } else {
        let bad = outputs.iter().filter(|one| one.end == End::Badly);
        Outcome::Fell(counted, bad.flat_map(|one| fallen(&one.lines)).collect())
    })
}

#[derive(Default)]
struct Table {
    rows: Vec<Row>,
}

impl Table {
    fn step(&mut self, name: &'static str, work: impl FnOnce() -> Result<Outcome, Trouble>) {
        println!("\n==> {name}");
        let start = Instant::now();
        let outcome = work().unwrap_or_else(|trouble| {
            println!("    {trouble}");
            Outcome::Fell(None, vec![trouble.to_string()])
        });
        self.rows.push(Row {
            name,
            outcome,
            took: start.elapsed(),
        });
    }

    fn print(&self) -> Result<(), Trouble> {
        println!("\n==> all of it\n");
        for row in &self.rows {
            let (word, counted) = match &row.outcome {
                Outcome::Held(counted) => ("held", counts(*counted)),
                Outcome::Fell(counted, _) => ("FAILED", counts(*counted)),
                Outcome::NotHere(why) => ("not here", why.clone()),
            };
            println!(
                "{:<24} {word:<9} {:>5} s  {counted}",
                row.name,
                row.took.as_secs()
            );
        }
        let took: Duration = self.rows.iter().map(|row| row.took).sum();
        let passed: u32 = self.rows.iter().map(|row| row.outcome.passed()).sum();
        println!(
            "{:<24} {:<9} {:>5} s  {passed} tests passed",
            "together",
            "",
            took.as_secs()
        );
        let mut failed = 0;
        for row in &self.rows {
            if let Outcome::Fell(_, lines) = &row.outcome {
                failed += 1;
                println!("\n==> {}, what failed\n", row.name);
                lines.iter().for_each(|line| println!("      {line}"));
            }
        }
        if failed == 0 {
            Ok(())
        } else {
            Err(Trouble::Steps { failed })
        }
    }
}

impl Outcome {
    fn passed(&self) -> u32 {
        match self {
            Outcome::Held(Some(count)) | Outcome::Fell(Some(count), _) => count.passed,
            Outcome::Held(None) | Outcome::Fell(None, _) | Outcome::NotHere(_) => 0,
        }
    }
}

fn counts(counted: Option<Count>) -> String {
    match counted {
        Some(Count { passed, failed: 0 }) => format!("{passed} passed"),
        Some(Count { passed, failed }) => format!("{passed} passed, {failed} failed"),
        None => String::new(),
    }
}
