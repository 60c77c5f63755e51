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
use crate::test::ALL;
use crate::trouble::Trouble;

/// Numbers of the lines that must come.
const LINES: [&str; 12] = [
    "drill 1:",
    "drill 1 control:",
    "drill 2:",
    "drill 2 control:",
    "drill 3:",
    "drill 4:",
    "drill 4 control:",
    "drill 6:",
    "drill 6 control:",
    "drill 7:",
    "drill 8:",
    "drill 9:",
];

/// The tests that print them.
const WHICH: &str = "test(the_power_goes_at_every_write) | test(a_hundred_kills_lose_nothing) | test(a_writer_that_says_so_before) \
     | test(where_files_may_not_grow) | test(stories_of_five_devices) \
     | test(a_merge_that_goes_by_device_and_count) | test(readers_see_every_entry_exactly_once) \
     | test(a_feed_that_numbers_before) | test(a_photo_cut_three_times) | test(a_long_backlog) \
     | test(a_book_of_version_1_keeps_its_half_typed)";

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
    let words = [
        &[
            "nextest",
            "run",
            "--no-fail-fast",
            "--success-output",
            "immediate",
            "-E",
            WHICH,
        ][..],
        &ALL,
    ]
    .concat();
    let mut tests = ground.command("cargo", ".", &words);
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
