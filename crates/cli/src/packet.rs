//! `eavebook packet`: all papers of a job in one file, or the proof of one.

use crate::progress::Progress;
use crate::refusal::Refusal;
use clap::Args;
use eavebook_app::App;
use eavebook_app::places::job_file::make::Wanted;
use eavebook_app::request::Edition;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// Make the packet of a job, for one reader: all papers in one file. Or prove one.
///
/// Prints where the packet lies. With nothing booked since the last one for that reader it is the
/// same version with the same bytes; else the next, which names the one before. Nothing is sent
/// anywhere: pass the file on yourself. Any program that opens zips opens it, and its papers can be
/// proved without eavebook: `sha256sum -c manifest-sha256.txt` in its folder.
#[derive(Args)]
#[command(after_help = "Examples:
  eavebook packet --book my-roofs --out . --edition owner
  eavebook packet --check 12-invented-lane-v1-owner-0123456789ab.zip

Editions: owner, crew, firm, supplier, permit. The firm's holds cost, margin and the book.")]
pub struct Packet {
    /// The folder that holds the field book.
    #[arg(long, value_name = "DIR", required_unless_present = "check")]
    book: Option<PathBuf>,
    /// Which job, by its id; without it the one begun last.
    #[arg(long, value_name = "ID")]
    job: Option<Uuid>,
    /// For whom: owner, crew, firm, supplier or permit.
    #[arg(long, value_name = "EDITION", default_value_t = Edition::Firm)]
    edition: Edition,
    /// An old version once more, instead of the newest.
    #[arg(long, value_name = "N")]
    version: Option<u32>,
    /// The folder into which the packet is put; it is made where it is not there.
    #[arg(long, value_name = "DIR", required_unless_present = "check")]
    out: Option<PathBuf>,
    /// Prove that a packet is whole and as it was made, instead of making one.
    #[arg(long, value_name = "FILE", conflicts_with_all = ["book", "job", "version", "out"])]
    check: Option<PathBuf>,
}

impl Packet {
    /// Makes one and prints its path, or proves one and prints what it is.
    pub fn run(self) -> Result<(), Refusal> {
        let line = match (&self.check, &self.book, &self.out) {
            (Some(file), ..) => check(file)?,
            (None, Some(book), Some(out)) => self.make(book, out)?.display().to_string(),
            (None, ..) => {
                return Err(Refusal::new(
                    "say which book and where to: `eavebook packet --book DIR --out DIR`",
                ));
            }
        };
        writeln!(io::stdout(), "{line}").map_err(|why| {
            Refusal::new(&format!(
                "the path cannot be printed ({why}): print to another place"
            ))
        })
    }

    fn make(&self, book: &Path, out: &Path) -> Result<PathBuf, Refusal> {
        let refuse = |why: &dyn std::fmt::Display| Refusal::new(&why.to_string());
        let progress = Progress::of("setting the papers");
        let app = App::open(book).map_err(|why| refuse(&why))?;
        let job = match self.job {
            Some(job) => job,
            None => app.newest_job().map_err(|why| refuse(&why))?,
        };
        let wanted = self.version.map_or(Wanted::Newest, Wanted::Version);
        let made = app
            .packet(job, self.edition, wanted)
            .map_err(|why| refuse(&why))?;
        let copy = app
            .copy_packet(&made.path, out)
            .map_err(|why| refuse(&why))?;
        drop(progress);
        Ok(copy)
    }
}

/// "whole: the owner's packet, version 2, 34 files".
fn check(file: &Path) -> Result<String, Refusal> {
    let proved = eavebook_packet::check(file)
        .map_err(|why| Refusal::new(&format!("\"{}\": {why}", file.display())))?;
    Ok(format!(
        "whole and as it was made: packet {} of job {}, edition {}, version {}, {} files",
        proved.id,
        proved.job,
        proved.edition,
        proved.version,
        proved.files.len()
    ))
}
