//! `cargo xtask drill`: what must not be lost, under kills, cuts and full disks; a line each.
//!
//! Drills are tests, which run small with all the others. Each prints a line when it held:
//!
//! ```text
//! drill <number>: <figure, seed>
//! drill <number> control: <what was broken on purpose, and seen>
//! ```
//!
//! This file runs them together and says which lines did not come. A drill's numbers are flags, which
//! it reads from the environment (`tests/crash/size.rs`): `--kills 300` is `EAVEBOOK_DRILL_KILLS`.

use crate::ground::Ground;
use crate::run;
use crate::stores::{self, Objects, Stores};
use crate::test::ALL;
use crate::trouble::Trouble;

/// The tests, each with the lines that it must print.
const DRILLS: [(&str, &[&str]); 17] = [
    ("a_hundred_kills_lose_nothing", &["drill 1:"]),
    ("a_writer_that_says_so_before", &["drill 1 control:"]),
    ("a_hub_killed_at_work", &["drill 1 hub:"]),
    ("a_database_that_stops_at_once", &["drill 1 database:"]),
    ("one_of_two_hubs_is_killed", &["drill 1 replicas:"]),
    (
        "the_power_goes_at_every_write",
        &[
            "drill 2:",
            "drill 2 control:",
            "drill 2 hub:",
            "drill 2 hub control:",
        ],
    ),
    ("where_files_may_not_grow", &["drill 3:"]),
    ("a_disk_that_fails_at_any_one_call", &["drill 3 hub:"]),
    ("stories_of_five_devices", &["drill 4:"]),
    ("many_devices_in_companies", &["drill 4 many:"]),
    (
        "a_merge_that_goes_by_device_and_count",
        &["drill 4 control:"],
    ),
    ("readers_", &["drill 6:", "drill 6 replicas:"]),
    (
        "a_feed_",
        &["drill 6 control:", "drill 6 replicas control:"],
    ),
    ("a_photo_cut_three_times", &["drill 7:"]),
    ("a_book_of_version_1_keeps_its_half_typed", &["drill 8:"]),
    (
        "devices_and_hubs_of_neighboring_versions",
        &["drill 8 versions:"],
    ),
    ("a_long_backlog", &["drill 9:"]),
];

/// The numbers that can be said, and of what they are.
const NUMBERS: [(&str, &str); 12] = [
    ("kills", "1: of the phone's store, the hub, one of two hubs"),
    ("stops", "1: of the database, at once"),
    (
        "rounds",
        "2: what is booked while the power goes at every write",
    ),
    ("seeds", "2: tears and reorderings of what was not synced"),
    ("stories", "4: of five devices"),
    ("companies", "4: each of its own seed"),
    ("devices", "4: of a company"),
    ("acts", "4: of a device"),
    ("batches", "6: of each writer"),
    ("uploads", "7: photos, each cut three times"),
    ("entries", "9: of the backlog"),
    ("photos", "9: of the backlog"),
];

/// What to run, and how large.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Size {
    full: bool,
    /// One drill alone, by its number.
    only: Option<String>,
    /// Numbers by their flags.
    numbers: Vec<(String, u64)>,
}

impl Size {
    /// Reads `--full`, `--only 4` and numbers as `--devices 500`.
    ///
    /// # Errors
    /// `Missing`, naming the word and what may be said.
    pub fn of(words: &[&str]) -> Result<Size, Trouble> {
        let mut size = Size::default();
        let mut rest = words.iter();
        while let Some(word) = rest.next() {
            if *word == "--full" {
                size.full = true;
                continue;
            }
            let number = rest.next().and_then(|number| number.parse::<u64>().ok());
            match (word.strip_prefix("--"), number) {
                (Some("only"), Some(drill)) => size.only = Some(format!("drill {drill}")),
                (Some(name), Some(number)) if NUMBERS.iter().any(|(known, _)| *known == name) => {
                    size.numbers.push((name.to_owned(), number));
                }
                (_, _) => {
                    let known = NUMBERS.map(|(name, what)| format!("  --{name} N  drill {what}"));
                    return Err(Trouble::Missing {
                        remedy: format!(
                            "`{word}` does not say what to drill; it may be --full, --only N of a \
                             drill, and numbers:\n{}",
                            known.join("\n")
                        ),
                    });
                }
            }
        }
        Ok(size)
    }

    fn names(&self, line: &str) -> bool {
        let of = |only: &String| {
            line.starts_with(&format!("{only}:")) || line.starts_with(&format!("{only} "))
        };
        self.only.as_ref().is_none_or(of)
    }
}

/// Runs the drills and prints a line each; fails where one did not hold.
///
/// # Errors
/// `Short` where a line did not come.
pub fn run(ground: &Ground, size: &Size) -> Result<(), Trouble> {
    let which: Vec<String> = DRILLS
        .iter()
        .filter(|(_, lines)| lines.iter().any(|line| size.names(line)))
        .map(|(test, _)| format!("test({test})"))
        .collect();
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
    if size.full {
        tests.env("EAVEBOOK_DRILL", "full");
    }
    for (name, number) in &size.numbers {
        let name = format!("EAVEBOOK_DRILL_{}", name.to_uppercase());
        tests.env(name, number.to_string());
    }
    let output = run::show(&mut tests)?;
    println!("\n==> all of it\n");
    let mut hold = 0;
    let lines = DRILLS.iter().flat_map(|(_, lines)| lines.iter().copied());
    let wanted: Vec<&str> = lines.filter(|line| size.names(line)).collect();
    for name in &wanted {
        let mut lines = output.lines.iter().map(|line| line.trim());
        if let Some(line) = lines.find(|line| line.starts_with(*name)) {
            hold += 1;
            println!("{line}");
        } else {
            println!("{name} FAILS");
        }
    }
    if size.only.is_none() {
        println!("fuzzing (5) runs with the tests");
    }
    println!("{hold} of {} hold", wanted.len());
    if hold == wanted.len() {
        Ok(())
    } else {
        Err(Trouble::Drills)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_by_their_flags_and_one_drill_by_its_own() {
        let size = Size::of(&["--full", "--only", "4", "--devices", "500"]).unwrap();
        assert!(size.full);
        assert_eq!(size.numbers, [("devices".to_owned(), 500)]);
        assert!(size.names("drill 4 many:") && size.names("drill 4:"));
        assert!(!size.names("drill 1:"));
    }

    #[test]
    fn a_word_that_says_nothing_is_refused_with_what_may_be_said() {
        for words in [&["--devises", "5"][..], &["--kills"], &["--kills", "many"]] {
            let output = Size::of(words).unwrap_err().to_string();
            assert!(
                output.contains(words[0]) && output.contains("--uploads N"),
                "{output}"
            );
        }
    }
}
