//! The `eavebook` program: a file per command.

mod backup;
mod demo;
mod hub;
mod lines;
mod open;
mod packet;
mod pair;
mod photo;
mod progress;
mod refusal;
mod share;
mod solve;
mod words;

use clap::{Parser, Subcommand};
use refusal::{Refusal, one_line};
use std::panic::{self, AssertUnwindSafe};
use std::process::ExitCode;

/// A field book for roofs measured from the ground.
///
/// Tape, phone and ladder go in; a roof comes out with every face, edge and area, each with how
/// well it is known.
#[derive(Parser)]
#[command(name = "eavebook", version, after_help = EXAMPLES)]
struct Line {
    #[command(subcommand)]
    command: Command,
}

const EXAMPLES: &str = "Examples:
  eavebook demo --book my-roofs      books an invented house and prints its figures
  eavebook open --book my-roofs      shows the book in the browser of this machine
  eavebook packet --book my-roofs --out .
                                     all papers of the newest job in one file
  eavebook solve house.json          what a survey file says, as JSON
  eavebook solve --help              what a survey file holds
  eavebook hub --help                a server through which devices exchange entries";

#[derive(Subcommand)]
enum Command {
    Backup(backup::Backup),
    Bring(backup::Bring),
    Demo(demo::Demo),
    Hub(hub::Hub),
    Open(open::Open),
    Packet(packet::Packet),
    Pair(pair::Pair),
    Restore(backup::Restore),
    Photo(photo::Photo),
    Solve(solve::Solve),
    Verify(backup::Verify),
    Words(words::Words),
}

fn main() -> ExitCode {
    // Nobody at a roof can use the text of a panic.
    panic::set_hook(Box::new(|_| {}));
    let end = panic::catch_unwind(AssertUnwindSafe(run)).unwrap_or_else(|_| {
        Err(Refusal::new(
            "eavebook met a fault of its own and stopped; nothing was changed. Keep what you gave it and tell its makers.",
        ))
    });
    match end {
        Ok(()) => ExitCode::SUCCESS,
        Err(refusal) => {
            eprintln!("{refusal}");
            ExitCode::from(2)
        }
    }
}

fn run() -> Result<(), Refusal> {
    let line = match Line::try_parse() {
        Ok(line) => line,
        Err(said) if !said.use_stderr() => {
            print!("{}", said.render());
            return Ok(());
        }
        Err(said) => return Err(wrong_argument(&said)),
    };
    match line.command {
        Command::Backup(backup) => backup.run(),
        Command::Bring(bring) => bring.run(),
        Command::Demo(demo) => demo.run(),
        Command::Hub(hub) => hub.run(),
        Command::Open(open) => open.run(),
        Command::Packet(packet) => packet.run(),
        Command::Pair(pair) => pair.run(),
        Command::Photo(photo) => photo.run(),
        Command::Restore(restore) => restore.run(),
        Command::Verify(verify) => verify.run(),
        Command::Solve(solve) => solve.run(),
        Command::Words(words) => words.run(),
    }
}

/// What clap says in a page, in one line.
fn wrong_argument(said: &clap::Error) -> Refusal {
    use clap::error::ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand;
    if said.kind() == DisplayHelpOnMissingArgumentOrSubcommand {
        return Refusal::new("say what to do: `eavebook --help` lists the commands");
    }
    let page = said.render().to_string();
    let sentences: Vec<&str> = page
        .lines()
        .take_while(|line| !line.starts_with("Usage:") && !line.starts_with("For more"))
        .map(|line| line.trim().trim_start_matches("error: "))
        .filter(|line| !line.is_empty())
        .collect();
    Refusal::new(&format!(
        "{}; `eavebook --help` shows how to ask",
        one_line(&sentences.join(" "))
    ))
}
