//! `eavebook open`: the field book as a page on this machine.

use crate::refusal::Refusal;
use clap::Args;
use eavebook_app::{App, localhost};
use std::path::PathBuf;

/// Open a field book in the browser of this machine.
///
/// Prints one line, `listening on http://127.0.0.1:PORT`, and serves until it is stopped. Nothing
/// leaves this machine unless the book was paired with a hub (`eavebook pair`): then entries and
/// photos go there while it is open. No network is needed. It may be stopped in any way at any
/// moment: what was booked is on the disk, and half-typed readings come back as they were.
#[derive(Args)]
#[command(after_help = "Example:
  eavebook open --book my-roofs --port 0")]
pub struct Open {
    /// The folder that holds the field book with all its jobs; it is made where it is not there.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
    /// The port on 127.0.0.1; 0 takes any that is free.
    #[arg(long, value_name = "PORT", default_value_t = 0)]
    port: u16,
}

impl Open {
    /// Serves until the program is stopped.
    pub fn run(self) -> Result<(), Refusal> {
        let app = App::open(&self.book).map_err(|why| Refusal::new(&why.to_string()))?;
        app.keep_in_step()
            .map_err(|why| Refusal::new(&why.to_string()))?;
        localhost::serve(app, self.port).map_err(|why| Refusal::new(&why.to_string()))
    }
}
