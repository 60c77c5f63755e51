//! `eavebook backup`, `verify`, `restore`, `bring`: a whole field book in one file.

use crate::refusal::Refusal;
use clap::Args;
use eavebook_app::copies::view::holds;
use eavebook_app::{App, backup, restore, verify};
use std::fmt::Display;
use std::path::PathBuf;

/// Copy a whole field book into one new file: entries, photos, packets. It may be open meanwhile.
#[derive(Args)]
pub struct Backup {
    /// The file to make.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// The folder that holds the field book.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
}

/// Prove that a backup is whole, every byte and every entry of it.
#[derive(Args)]
pub struct Verify {
    /// The backup.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// Taken and not needed: a backup is proved by itself.
    #[arg(long, value_name = "DIR")]
    book: Option<PathBuf>,
}

/// Bring a field book back from a backup into a new folder. It is paired with no hub then.
#[derive(Args)]
pub struct Restore {
    /// The backup.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// The folder to make.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
}

/// Take in a file carried by hand: its entries and photos join those here.
///
/// It is a backup of another field book, or the firm's packet of a job, which holds its entries and its
/// photos too. The way between two machines that share no network: make the file on one, carry it,
/// bring it in on the other. Brought twice, it changes nothing more.
#[derive(Args)]
#[command(after_help = "Example:
  eavebook backup monday.book --book my-roofs      on the phone
  eavebook bring monday.book --book office         on the laptop
  eavebook bring 12-invented-lane-v1-firm-0123456789ab.zip --book office
                                                   one job, by its packet")]
pub struct Bring {
    /// The backup or packet.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// The folder that holds the field book; it is made where it is not there.
    #[arg(long, value_name = "DIR")]
    book: PathBuf,
}

fn refuse(why: impl Display) -> Refusal {
    Refusal::new(&why.to_string())
}

impl Backup {
    /// Makes the file.
    pub fn run(self) -> Result<(), Refusal> {
        let held = backup(&self.book, &self.file).map_err(refuse)?;
        println!("{} holds {}", self.file.display(), holds(held));
        Ok(())
    }
}

impl Verify {
    /// Proves the file.
    pub fn run(self) -> Result<(), Refusal> {
        let held = verify(&self.file).map_err(refuse)?;
        println!("{} is whole: {}", self.file.display(), holds(held));
        Ok(())
    }
}

impl Restore {
    /// Makes the folder.
    pub fn run(self) -> Result<(), Refusal> {
        let held = restore(&self.file, &self.book).map_err(refuse)?;
        println!("{} is back and holds {}", self.book.display(), holds(held));
        Ok(())
    }
}

impl Bring {
    /// Takes it in.
    pub fn run(self) -> Result<(), Refusal> {
        let app = App::open(&self.book).map_err(refuse)?;
        println!("{}", app.bring(&self.file).map_err(refuse)?.en);
        Ok(())
    }
}
