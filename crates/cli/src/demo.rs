//! `eavebook demo`: the pretend house, booked into a field book.

use crate::refusal::Refusal;
use clap::Args;
use eavebook_app::reply::{Figure, JobView};
use eavebook_app::{App, demo};
use std::io::{self, Write};
use std::path::PathBuf;

/// Add the pretend house to a field book and print what it comes to.
///
/// The house is invented: no such place. Its walk is typed key by key as a person would, with one
/// slip that was found and struck. Said twice, the house stands there once.
#[derive(Args)]
#[command(after_help = "Example:
  eavebook demo --book my-roofs && eavebook open --book my-roofs")]
pub struct Demo {
    /// The folder that holds the field book; it is made where it is not there.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
}

impl Demo {
    /// Books the house and prints its figures.
    pub fn run(self) -> Result<(), Refusal> {
        let refuse = |why: &dyn std::fmt::Display| Refusal::new(&why.to_string());
        let app = App::open(&self.book).map_err(|why| refuse(&why))?;
        let job = demo::book(&app).map_err(|why| refuse(&why))?;
        print(&job).map_err(|why| {
            refuse(&format!(
                "the figures cannot be printed ({why}): print to another place"
            ))
        })
    }
}

fn print(job: &JobView) -> io::Result<()> {
    let mut out = io::stdout().lock();
    writeln!(out, "{} (invented)", job.address)?;
    writeln!(out, "{}", job.closure.words.en)?;
    writeln!(out)?;
    for face in &job.faces {
        let area = face
            .face
            .value
            .as_ref()
            .map_or_else(|| "-".to_owned(), in_words);
        let pitch = face.pitch.as_ref().map_or_else(|| "-".to_owned(), in_words);
        let (name, state) = (&face.face.title, &face.face.state_word);
        writeln!(out, "{name:<14} {area:>12}   {pitch:<24} {state}")?;
    }
    writeln!(out)?;
    for total in &job.totals {
        writeln!(out, "{:<14} {}", total.name, in_words(&total.value))?;
    }
    for caution in &job.cautions {
        writeln!(out, "{}", caution.en)?;
    }
    writeln!(out)?;
    writeln!(
        out,
        "{} things are open; the first: {}",
        job.whats_left.len(),
        first_open(job)
    )
}

fn first_open(job: &JobView) -> &str {
    job.whats_left.first().map_or("none", |open| &open.words.en)
}

fn in_words(figure: &Figure) -> String {
    match &figure.give_or_take {
        Some(give_or_take) => format!("{} {give_or_take}", figure.words),
        None => figure.words.clone(),
    }
}
