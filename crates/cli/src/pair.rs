//! `eavebook pair`: a field book joins a company's hub.

use crate::refusal::Refusal;
use clap::Args;
use eavebook_app::{App, Invitation};
use std::path::PathBuf;

/// Join a company's hub, so that what is booked lies on two machines.
///
/// The hub's key is proved against the pin in the link before anything is said to it: a wrong pin
/// does not spend the code. From then on `eavebook open` exchanges entries and photos with the hub
/// while it is open.
#[derive(Args)]
#[command(after_help = "Example:
  eavebook pair 'https://192.168.1.20:7443#pin=...&code=...' --book my-roofs")]
pub struct Pair {
    /// The link that the hub showed, between quotes; or its address, code and key, as it shows them.
    #[arg(value_name = "LINK")]
    link: String,
    /// The folder that holds the field book; it is made where it is not there.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
}

impl Pair {
    /// Joins, and says whose hub it is.
    pub fn run(self) -> Result<(), Refusal> {
        let refuse = |why: &dyn std::fmt::Display| Refusal::new(&why.to_string());
        let invitation = Invitation::read(&self.link).map_err(|why| refuse(&why))?;
        let app = App::open(&self.book).map_err(|why| refuse(&why))?;
        let pairing = app.pair(&invitation).map_err(|why| refuse(&why))?;
        println!(
            "paired with the hub of {} at {}",
            pairing.company, pairing.url
        );
        if pairing.pin.is_none() {
            println!("this hub is without TLS: what goes there can be read on the way");
        }
        Ok(())
    }
}
