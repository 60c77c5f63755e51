//! `cargo xtask demo`: sets up, builds, prints what the pretend house comes to, and opens it.

use crate::ground::{Ground, answers};
use crate::run;
use crate::setup;
use crate::trouble::Trouble;
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

/// Serves the pretend house until Ctrl-C.
///
/// # Errors
/// What stopped the set-up, the build or the program, in a sentence.
pub fn run(ground: &Ground) -> Result<(), Trouble> {
    println!("==> set-up");
    if !answers(Command::new("cc").arg("--version")) {
        setup::packages(&setup::COMPILER_PACKAGES)?;
    }
    setup::node_modules(ground, "ui")?;
    println!("==> the page");
    run::must(&mut ground.command("npm", "ui", &["run", "build"]))?;
    println!("==> the program");
    run::must(&mut ground.command("cargo", ".", &["build", "--bin", "eavebook"]))?;

    println!("==> the pretend house");
    let book = ground.target.join("demo-book");
    println!(
        "    its book lies in {}; delete that folder to begin anew",
        book.display()
    );
    let program = ground.built("eavebook");
    run::must(Command::new(&program).arg("demo").arg("--book").arg(&book))?;
    println!("==> open it");
    let mut command = Command::new(&program);
    command
        .args(["open", "--port", "0", "--book"])
        .arg(book)
        .stdout(Stdio::piped());
    let no_start = |cause| Trouble::NoStart {
        program: "eavebook".to_owned(),
        cause,
    };
    let mut serving = command.spawn().map_err(no_start)?;
    if let Some(out) = serving.stdout.take() {
        for line in BufReader::new(out).lines().map_while(Result::ok) {
            println!("    {line}");
            if let Some(address) = line.strip_prefix("listening on ") {
                println!("    Open this address in a browser. Ctrl-C ends it.");
                show(address);
            }
        }
    }
    let ended = serving.wait().map_err(no_start)?;
    if ended.success() {
        Ok(())
    } else {
        Err(Trouble::Failed {
            command: "eavebook open".to_owned(),
        })
    }
}

/// Opens a browser where the desktop knows one; where not, the address stands in the terminal.
fn show(address: &str) {
    let mut open = Command::new("xdg-open");
    open.arg(address)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    // A machine without a desktop has no such program, and needs none.
    let _started = open.spawn();
}
