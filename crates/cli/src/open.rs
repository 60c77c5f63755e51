//! `eavebook open`: the field book as a page on this machine.

use crate::refusal::Refusal;
use crate::share;
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
#[command(after_help = "Examples:
  eavebook open --book my-roofs --port 0
  eavebook open --book my-roofs --hub    phones beside it send their copies here")]
pub struct Open {
    /// The folder that holds the field book with all its jobs; it is made where it is not there.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
    /// The port on 127.0.0.1; 0 takes any that is free.
    #[arg(long, value_name = "PORT", default_value_t = 0)]
    port: u16,
    /// Let phones on the same network, or on a network that this machine makes, join: no internet is
    /// needed. Their entries and photos come here, and those of this book go there. The link with a
    /// QR code is printed, and shown in Settings.
    #[arg(long)]
    hub: bool,
    /// With --hub: address and port at which phones reach this machine; port 0 takes any.
    #[arg(
        long,
        value_name = "ADDRESS:PORT",
        default_value = "0.0.0.0:7443",
        requires = "hub"
    )]
    hub_listen: String,
}

impl Open {
    /// Serves until the program is stopped.
    pub fn run(self) -> Result<(), Refusal> {
        let app = App::open(&self.book).map_err(|why| Refusal::new(&why.to_string()))?;
        let more = if self.hub {
            share::share(&app, &self.book, &self.hub_listen)?
        } else {
            String::new()
        };
        app.keep_in_step()
            .map_err(|why| Refusal::new(&why.to_string()))?;
        localhost::serve(app, self.port, &more).map_err(|why| Refusal::new(&why.to_string()))
    }
}
