//! `cargo xtask types`: writes what the page takes from Rust, the types of the boundary and the labels.

use crate::ground::Ground;
use crate::run::{self, End};
use crate::test::ALL;
use crate::trouble::Trouble;

/// The crate and the test that rewrites its file if it is stale.
const WRITERS: [(&str, &str); 2] = [
    ("eavebook-app", "the_ui_has_the_types_of_the_boundary"),
    ("eavebook-words", "the_page_has_every_label"),
];

/// Writes `ui/src/generated.ts` and `ui/src/labels.generated.ts`.
///
/// # Errors
/// `Failed` if a file is still stale after it was written, or its crate does not compile.
pub fn run(ground: &Ground) -> Result<(), Trouble> {
    for (name, writer) in WRITERS {
        let command = || {
            let package = format!("package({name}) & test({writer})");
            let words = ["nextest", "run", "-E", package.as_str()];
            ground.command("cargo", ".", &[&words[..], &ALL].concat())
        };
        // A stale file fails the test that rewrites it; the second run finds it current.
        if run::show(&mut command())?.end == End::Badly {
            run::must(&mut command())?;
        }
    }
    Ok(())
}
