//! `eavebook hub`: the small server of a company, and what its keeper does.

use crate::refusal::Refusal;
use clap::{Args, Subcommand};
use eavebook_hub::{HubError, LogTarget, Settings, Transport};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Serve as a company's hub, through which its devices exchange entries and photos.
///
/// Prints one line, `listening on https://127.0.0.1:PORT pin HEX`, and serves until it is stopped;
/// what happens is told on stderr, a line of JSON each. It makes its own key for TLS. Devices know
/// the hub by the pin of that key, so no certificate has to be bought, and its address may change.
///
/// All is kept in the folder. A file `hub.toml` in it may name a PostgreSQL and an S3-compatible
/// object store instead, which several hubs share at once; `hub restore` moves a hub there and back.
#[derive(Args)]
#[command(
    args_conflicts_with_subcommands = false,
    subcommand_negates_reqs = true,
    after_help = "Examples:
  eavebook hub --listen 0.0.0.0:7443 --dir my-hub --url https://hub.example:7443
  eavebook hub code --company \"Ridge and Sons\" --dir my-hub
  eavebook hub backup monday.hub --dir my-hub
  eavebook hub restore monday.hub --dir new-hub"
)]
pub struct Hub {
    #[command(subcommand)]
    act: Option<Act>,
    /// The folder of the hub; serving makes it where it is not there.
    #[arg(long, value_name = "DIR", global = true)]
    dir: Option<PathBuf>,
    /// Address and port to listen at; port 0 takes any that is free.
    #[arg(long, value_name = "ADDRESS:PORT", required = true)]
    listen: Option<String>,
    /// By which address devices reach it, where that is another than the one it listens at.
    #[arg(long, value_name = "URL")]
    url: Option<String>,
    /// Without TLS: behind a proxy that does it, or for a look. Tokens and photos then cross the
    /// network readable by others.
    #[arg(long)]
    plain: bool,
    /// Requests a second that one device may make.
    #[arg(long, value_name = "N", default_value_t = 20)]
    per_second: u32,
    /// Uploads at once of one device.
    #[arg(long, value_name = "N", default_value_t = 4)]
    uploads: u32,
}

#[derive(Subcommand)]
enum Act {
    /// Draw a pairing code for one more device: ten signs to type, then a link. It works once, for
    /// ten minutes. A new company name makes the company.
    Code {
        /// Whose device it will be.
        #[arg(long, value_name = "NAME")]
        company: String,
        /// Who will book on it; its own name where none is given.
        #[arg(long, value_name = "NAME")]
        author: Option<String>,
    },
    /// List the devices that were paired.
    Devices,
    /// Turn a device out: its next call is refused, what it sent stays.
    Revoke {
        /// Its id.
        #[arg(value_name = "DEVICE")]
        device: String,
    },
    /// Copy the whole hub into one new file. It holds the hub's key: keep it as one keeps a key.
    Backup {
        /// The file to make.
        #[arg(value_name = "FILE")]
        file: PathBuf,
    },
    /// Bring a hub back from a backup into a new folder. Devices stay paired and offer again what
    /// the backup lacks; a device turned out since that backup must be turned out anew.
    Restore {
        /// The backup.
        #[arg(value_name = "FILE")]
        file: PathBuf,
    },
}

impl Hub {
    /// Serves, or does one thing and ends.
    pub fn run(self) -> Result<(), Refusal> {
        let dir = self.dir.ok_or_else(|| {
            Refusal::new("say which hub: add --dir with its folder, as --dir my-hub")
        })?;
        match self.act {
            Some(act) => act.run(&dir).map_err(|why| Refusal::new(&why.to_string())),
            None => eavebook_hub::serve(&Settings {
                listen: self.listen.unwrap_or_default(),
                transport: if self.plain {
                    Transport::Plain
                } else {
                    Transport::Tls
                },
                url: self.url,
                per_second: self.per_second,
                uploads: self.uploads,
                log: LogTarget::Stderr,
                ..Settings::new(&dir)
            })
            .map_err(|why| Refusal::new(&why.to_string())),
        }
    }
}

impl Act {
    fn run(self, dir: &Path) -> Result<(), HubError> {
        match self {
            Act::Code { company, author } => {
                let codes = eavebook_hub::code(dir, &company, author.as_deref())?;
                print(&format!("{}\n{}", codes.typed, codes.link))?;
                if !codes.names_a_machine() {
                    eprintln!(
                        "no device reaches this link: the hub listens at every address of its \
                         machine. Type the code beside one of them, or begin the hub with --url \
                         https://NAME:PORT and draw another"
                    );
                }
                Ok(())
            }
            Act::Devices => {
                let lines: Vec<String> = eavebook_hub::devices(dir)?
                    .iter()
                    .map(|one| {
                        let state = match &one.revoked {
                            Some(when) => format!("turned out {when}"),
                            None if one.duplicate => "two phones: pair one anew".to_owned(),
                            None => "paired".to_owned(),
                        };
                        let (id, company, name) = (&one.device_id, &one.company, &one.name);
                        format!("{id}  {company}  {name}  {state}")
                    })
                    .collect();
                print(&lines.join("\n"))
            }
            Act::Revoke { device } => {
                eavebook_hub::revoke(dir, &device)?;
                print(&format!("{device} is turned out; what it sent stays"))
            }
            Act::Backup { file } => {
                let held = eavebook_hub::backup(dir, &file)?;
                print(&format!(
                    "{} holds {} entries and {} photos, and the hub's key",
                    file.display(),
                    held.entries,
                    held.photos
                ))
            }
            Act::Restore { file } => {
                let back = eavebook_hub::restore(&file, dir)?;
                print(&format!(
                    "{} entries and {} photos are back, epoch {}; a device turned out since this \
                     backup is paired again until it is turned out anew",
                    back.held.entries, back.held.photos, back.epoch
                ))
            }
        }
    }
}

fn print(text: &str) -> Result<(), HubError> {
    let mut out = io::stdout().lock();
    writeln!(out, "{text}")
        .and_then(|()| out.flush())
        .map_err(|why| HubError::System(format!("the answer cannot be printed: {why}")))
}
