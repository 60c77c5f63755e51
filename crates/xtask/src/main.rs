//! `cargo xtask`: set-up, the demo, every test, the benchmarks. Plain std, so that it compiles in a
//! second on a machine that has nothing else yet.

mod bench;
mod count;
mod demo;
mod drill;
mod fallen;
mod ground;
mod run;
mod setup;
mod stores;
mod test;
mod trouble;
mod types;

use std::process::ExitCode;

const HELP: &str = "\
cargo xtask COMMAND

  demo    builds, prints what a pretend house comes to, and opens it on localhost
  bench   measures ours beside a peer, all in one run; the last line says how many hold
  growth  measures what a company, a job and a photo cost a hub, and works out what many cost
  drill   kills, cuts and restores: what must not be lost; a line each (--full: at full size;
          --only 4: that drill; --kills 300 and other numbers, which `drill --help` lists)
  stores  runs a command beside a PostgreSQL and an object store of this machine alone
          (`stores COMMAND...`; `stores --files COMMAND...` for the other object store)
  types   writes ui/src/generated.ts and ui/src/labels.generated.ts, which the page takes from Rust
  test    sets up this machine and runs every test; the last lines are a table of counts

Each says what it does as it goes. Only Rust and Node are needed beforehand.";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let end = match words.as_slice() {
        ["test"] => ground::Ground::find().and_then(|ground| test::run(&ground)),
        ["types"] => ground::Ground::find().and_then(|ground| types::run(&ground)),
        ["demo"] => ground::Ground::find().and_then(|ground| demo::run(&ground)),
        ["bench"] => ground::Ground::find().and_then(|ground| bench::run(&ground)),
        ["growth"] => ground::Ground::find().and_then(|ground| bench::growth(&ground)),
        ["drill", size @ ..] => drill::Size::of(size)
            .and_then(|size| ground::Ground::find().and_then(|ground| drill::run(&ground, &size))),
        ["stores", "--files", command @ ..] => ground::Ground::find()
            .and_then(|ground| stores::run(&ground, stores::Objects::Files, command)),
        ["stores", command @ ..] => ground::Ground::find()
            .and_then(|ground| stores::run(&ground, stores::Objects::Moto, command)),
        [] | ["help" | "--help" | "-h"] => {
            println!("{HELP}");
            Ok(())
        }
        other => {
            eprintln!("xtask has no command `{}`.\n\n{HELP}", other.join(" "));
            return ExitCode::from(2);
        }
    };
    match end {
        Ok(()) => ExitCode::SUCCESS,
        Err(trouble) => {
            eprintln!("\nxtask: {trouble}");
            ExitCode::FAILURE
        }
    }
}
