//! How large a drill runs: small in every run of the tests, at full size with `EAVEBOOK_DRILL=full`;
//! and by a number where one is given, `EAVEBOOK_DRILL_KILLS=300`, as `cargo xtask drill` does from
//! its flags.

#![allow(dead_code, reason = "each test file uses its own part of it")]

use std::fmt::Debug;
use std::str::FromStr;

/// Whether the drill is to be as large as a release needs.
pub fn full() -> bool {
    std::env::var_os("EAVEBOOK_DRILL").is_some_and(|size| size == "full")
}

/// So many, by the flag of that name, else by the size of the run.
#[allow(
    clippy::panic,
    reason = "a number that is none must not run as another"
)]
pub fn size<T: FromStr + Debug>(flag: &str, small: T, at_full: T) -> T {
    let name = format!("EAVEBOOK_DRILL_{}", flag.to_uppercase());
    match std::env::var(&name) {
        Ok(number) => match number.parse() {
            Ok(number) => number,
            Err(_) => panic!("{name} is \"{number}\": write a number"),
        },
        Err(_) if full() => at_full,
        Err(_) => small,
    }
}
