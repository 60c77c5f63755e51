//! `cargo xtask drill`: what must not be lost, under kills, cuts and full disks; a line each.
//!
//! Drills are tests, which run small with all the others. Each prints a line when it held:
//!
//! ```text
//! drill <number>: <figure, seed>
//! drill <number> control: <what was broken on purpose, and seen>
//! ```
//!
//! This file runs them together and says which lines did not come.

use crate::ground::Ground;
use crate::run;
use crate::stores::{self, Objects, Stores};
use crate::test::ALL;
use crate::trouble::Trouble;

/// The lines that must come.
const LINES: [&str; 22] = [
    "drill 1:",
    "drill 1 control:",
    "drill 1 hub:",
    "drill 1 database:",
    "drill 1 replicas:",
    "drill 2:",
    "drill 2 control:",
    "drill 2 hub:",
    "drill 2 hub control:",
    "drill 3:",
    "drill 3 hub:",
    "drill 4:",
    "drill 4 many:",
    "drill 4 control:",
    "drill 6:",
    "drill 6 control:",
    "drill 6 replicas:",
    "drill 6 replicas control:",
    "drill 7:",
    "drill 8:",
    "drill 8 versions:",
    "drill 9:",
];

/// The tests that print them.
const WHICH: [&str; 17] = [
    "the_power_goes_at_every_write",
    "a_hundred_kills_lose_nothing",
    "a_writer_that_says_so_before",
    "a_hub_killed_at_work",
    "a_database_that_stops_at_once",
    "one_of_two_hubs_is_killed",
    "where_files_may_not_grow",
    "a_disk_that_fails_at_any_one_call",
    "stories_of_five_devices",
    "many_devices_in_companies",
    "a_merge_that_goes_by_device_and_count",
    "readers_",
    "a_feed_",
    "a_photo_cut_three_times",
    "devices_and_hubs_of_neighbouring_versions",
    "a_long_backlog",
    "a_book_of_version_1_keeps_its_half_typed",
];

/// Small as in the tests, or at full size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// About a minute.
    Small,
    /// As long as it takes.
    Full,
}

/// Runs all drills and prints a line each; fails where one did not hold.
///
/// # Errors
/// `Short` where a line did not come.
pub fn run(ground: &Ground, size: Size) -> Result<(), Trouble> {
    let which: Vec<String> = WHICH.iter().map(|test| format!("test({test})")).collect();
    let which = which.join(" | ");
    let tests = [
        "nextest",
        "run",
        "--no-fail-fast",
        "--success-output",
        "immediate",
        "-E",
        &which,
    ];
    let words = [&tests[..], &ALL].concat();
    stores::install(ground)?;
    // The store that lets two writers win: the harder of the two.
    let servers = Stores::begin(ground, Objects::Files)?;
    let mut tests = ground.command("cargo", ".", &words);
    servers.tell(&mut tests);
    if size == Size::Full {
        tests.env("EAVEBOOK_DRILL", "full");
    }
    let said = run::show(&mut tests)?;
    println!("\n==> all of it\n");
    let mut hold = 0;
    for name in LINES {
        let mut lines = said.lines.iter().map(|line| line.trim());
        if let Some(line) = lines.find(|line| line.starts_with(name)) {
            hold += 1;
            println!("{line}");
        } else {
            println!("{name} FAILS");
        }
    }
    println!("fuzzing (5) runs with the tests");
    println!("{hold} of {} hold", LINES.len());
    if hold == LINES.len() {
        Ok(())
    } else {
        Err(Trouble::Drills)
    }
}
