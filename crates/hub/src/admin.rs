//! What the keeper does at the hub: codes for new devices, devices turned out.

use crate::code::Code;
use crate::error::HubError;
use crate::pairing::{LIVES, is_name};
use crate::place::HubHandle;
use crate::rows::KeptCode;
use crate::tls;
use std::path::Path;

/// A fresh code in its two forms; one use spends both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Codes {
    /// Ten signs to type.
    pub typed: String,
    /// `URL#pin=HEX&code=...`, for a picture that a camera reads.
    pub link: String,
}

impl Codes {
    /// Whether the link names a machine: every address of one, which a hub may listen at, is none that
    /// a device could ask.
    #[must_use]
    pub fn names_a_machine(&self) -> bool {
        let host = self.link.split_once("://").map_or("", |(_, host)| host);
        !["0.0.0.0:", "[::]:"]
            .iter()
            .any(|every| host.starts_with(every))
    }
}

/// Draws a code for a device of a company, which is made where its name is new. `author`: who will
/// book on the device, its own name where none is given. The hub may run meanwhile.
///
/// # Errors
/// `NoHub`, `NoAddress`, `Name`, `Key`, `Database`, `Rows`, `Refused`.
pub fn code(dir: &Path, name: &str, author: Option<&str>) -> Result<Codes, HubError> {
    for text in [Some(name), author].into_iter().flatten() {
        if !is_name(text.trim()) {
            return Err(HubError::Name(text.to_owned()));
        }
    }
    let handle = HubHandle::open(dir)?;
    let url = handle.run(|rows| rows.identity())?.url;
    let url = url.ok_or_else(|| HubError::NoAddress {
        dir: dir.display().to_string(),
    })?;
    let pin = tls::pin(dir)?;
    loop {
        let (typed, link) = Code::draw()?;
        let kept = KeptCode {
            name: typed.name().to_owned(),
            company: name.trim().to_owned(),
            author: author.map(|author| author.trim().to_owned()),
            typed_sha256: typed.sha256(),
            link_sha256: link.sha256(),
            ends: chrono::Utc::now().timestamp() + LIVES,
        };
        // A name that is taken is drawn again.
        if handle.run(|rows| rows.keep_code(&kept))? {
            return Ok(Codes {
                typed: typed.text().to_owned(),
                link: format!("{url}#pin={pin}&code={}", link.text()),
            });
        }
    }
}

/// Turns a device out: its next call is refused, what it sent stays. Tells in how many companies.
///
/// # Errors
/// `NoHub`, `NoDevice`, `Database`, `Rows`, `Refused`.
pub fn revoke(dir: &Path, device: &str) -> Result<usize, HubError> {
    let changed = HubHandle::open(dir)?.run(|rows| rows.revoke(device))?;
    if changed == 0 {
        Err(HubError::NoDevice(device.to_owned()))
    } else {
        Ok(changed)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_to_every_address_names_no_machine() {
        let names = |url: &str| {
            let codes = Codes {
                typed: String::new(),
                link: format!("{url}#pin=00&code=0"),
            };
            codes.names_a_machine()
        };
        assert!(!names("https://0.0.0.0:7443") && !names("http://[::]:7443"));
        assert!(names("https://192.0.2.7:7443") && names("https://hub.example"));
    }
}
