//! `eavebook open --hub`: the machine on which a book is open is the hub of the phones around it.

use crate::refusal::Refusal;
use eavebook_app::{App, HubHost, Invitation, Invites, Pairing};
use eavebook_hub::{HubError, LogTarget, RunningHub, Settings, code};
use qrcode::render::unicode::Dense1x2;
use qrcode::{EcLevel, QrCode};
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};

/// Beside the book.
const FOLDER: &str = "hub";
/// Whose the hub is: nobody had to name a company.
const COMPANY: &str = "this laptop";
/// Hex digits of the pin that are typed.
const KEY_DIGITS: usize = 12;

#[derive(Debug)]
struct Shared {
    dir: PathBuf,
    /// Serves as long as this lives.
    hub: RunningHub,
}

/// Begins the hub beside a book, joins the book to it, and says how others join.
pub fn share(app: &App, book: &Path, listen: &str) -> Result<String, Refusal> {
    let dir = book.join(FOLDER);
    let before = app.pairing().map_err(|why| refuse(&why))?;
    let own = own(before.as_ref(), &dir)?;
    let settings = Settings {
        listen: listen.to_owned(),
        log: LogTarget::Stderr,
        ..Settings::new(&dir)
    };
    let hub = RunningHub::begin(&settings).map_err(|why| {
        if let HubError::Listen { address, why } = &why {
            Refusal::new(&format!(
                "nothing can be shared at {address} ({why}): name another with --hub-listen, or port \
                 0 for any"
            ))
        } else {
            refuse(&why)
        }
    })?;
    let shared = Shared { dir, hub };
    let here = format!(
        "https://{}:{}",
        Ipv4Addr::LOCALHOST,
        shared.hub.address.port()
    );
    let pairing = match before.filter(|_| own) {
        Some(pairing) => Pairing {
            url: here,
            ..pairing
        },
        None => {
            let invites = shared.invites(&here).map_err(|why| Refusal::new(&why))?;
            let invitation = Invitation::read(&invites.link).map_err(|why| refuse(&why))?;
            app.pair(&invitation).map_err(|why| refuse(&why))?
        }
    };
    let said = shared.said()?;
    app.share(pairing, Box::new(shared))
        .map_err(|why| refuse(&why))?;
    Ok(said)
}

/// Whether a pairing is one with the hub in a folder; with another, nothing is begun.
fn own(pairing: Option<&Pairing>, dir: &Path) -> Result<bool, Refusal> {
    let Some(pairing) = pairing else {
        return Ok(false);
    };
    let pin = if dir.exists() {
        Some(eavebook_hub::pin(dir).map_err(|why| refuse(&why))?)
    } else {
        None
    };
    if pin.is_some() && pin == pairing.pin {
        return Ok(true);
    }
    Err(Refusal::new(&format!(
        "this field book keeps in step with the hub of {} at {}: let phones join that one, and open \
         the book without --hub",
        pairing.company, pairing.url
    )))
}

fn refuse(why: &dyn std::fmt::Display) -> Refusal {
    Refusal::new(&why.to_string())
}

impl Shared {
    /// The address at which others reach it now: the first of this machine's networks.
    fn address(&self) -> Result<SocketAddr, String> {
        let listens = self.hub.address;
        if !listens.ip().is_unspecified() {
            return Ok(listens);
        }
        let none = "this machine is in no network now: join one, or let it make one that phones can \
                    join, then ask again";
        let mut all: Vec<IpAddr> = if_addrs::get_if_addrs()
            .map_err(|why| format!("the networks of this machine cannot be read ({why})"))?
            .into_iter()
            .filter(|one| !one.is_loopback() && one.ip().is_ipv4())
            .map(|one| one.ip())
            .collect();
        // An address that a machine gave itself comes after one that a network gave.
        all.sort_by_key(|ip| matches!(ip, IpAddr::V4(ip) if ip.is_link_local()));
        let first = all.first().ok_or(none)?;
        Ok(SocketAddr::new(*first, listens.port()))
    }

    fn invites(&self, url: &str) -> Result<Invites, String> {
        let codes = code(&self.dir, COMPANY, None).map_err(|why| why.to_string())?;
        let (_, secret) = codes.link.split_once('#').unwrap_or_default();
        let key = self.hub.pin.get(..KEY_DIGITS).unwrap_or_default();
        let groups = |text: &str, size: usize| {
            let signs: Vec<char> = text.chars().collect();
            let groups: Vec<String> = signs.chunks(size).map(|one| one.iter().collect()).collect();
            groups.join("-")
        };
        let address = url.trim_start_matches("https://");
        Ok(Invites {
            link: format!("{url}#{secret}"),
            typed: format!("{address} {} {}", groups(&codes.typed, 5), groups(key, 4)),
        })
    }

    /// What is printed where the book is opened.
    fn said(&self) -> Result<String, Refusal> {
        let invites = match self.invite() {
            Ok(invites) => invites,
            Err(why) => return Ok(format!("\nnot shared yet: {why}")),
        };
        let address = self.address().map_err(|why| Refusal::new(&why))?;
        let picture = QrCode::with_error_correction_level(&invites.link, EcLevel::L)
            .map_err(|why| refuse(&why))?
            .render::<Dense1x2>()
            // Terminals are dark for the most part: what is drawn is what is light.
            .dark_color(Dense1x2::Light)
            .light_color(Dense1x2::Dark)
            .build();
        Ok(format!(
            "\nshared on https://{address} pin {}\none more device joins within ten minutes by this \
             link\n{}\nor by typing\n{}\n{picture}",
            self.hub.pin, invites.link, invites.typed
        ))
    }
}

impl HubHost for Shared {
    fn invite(&self) -> Result<Invites, String> {
        self.invites(&format!("https://{}", self.address()?))
    }
}
