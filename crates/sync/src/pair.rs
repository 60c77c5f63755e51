//! Joining a hub: a link from its keeper becomes a pairing, once.

use crate::link::{KEY_DIGITS, Link, LinkError};
use crate::wire::{Hello, Request};
use eavebook_store::{Pairing, Store, StoreError};
use serde::Deserialize;
use serde_json::json;
use uuid::Uuid;

/// What a link invites to.
#[derive(Clone, PartialEq, Eq)]
#[cfg_attr(test, derive(Debug))]
pub struct Invitation {
    url: String,
    pin: Option<String>,
    code: String,
}

/// Why this book did not join.
#[derive(Debug, thiserror::Error)]
pub enum PairError {
    /// The link is none.
    #[error(
        "this is no link of a hub: take it whole as the hub shows it, URL#pin=...&code=..., between \
         quotes; or type its address, code and key with gaps between them"
    )]
    NoLink,
    /// The hub did not answer, or not with its key.
    #[error(transparent)]
    Link(#[from] LinkError),
    /// It did not take the code.
    #[error("the hub did not take this device: {0}")]
    Refused(String),
    /// Who answered is no hub.
    #[error("who answers at {0} is no hub of eavebook: check the address in the link")]
    NoHub(String),
    /// The pairing could not be kept.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl Invitation {
    /// Reads `URL#pin=HEX&code=SIGNS`, or what is typed in place of it: `ADDRESS CODE KEY`, where the
    /// key is the first twelve digits of the pin.
    ///
    /// # Errors
    /// `NoLink`, `Link`.
    pub fn read(text: &str) -> Result<Invitation, PairError> {
        let invitation = if text.contains('#') {
            Invitation::linked(text.trim())
        } else {
            Invitation::typed(text)
        };
        let invitation = invitation.ok_or(PairError::NoLink)?;
        // Checked whole before anything is begun.
        Link::by_first_digits(&invitation.url, invitation.pin.as_deref())?;
        Ok(invitation)
    }

    fn linked(link: &str) -> Option<Invitation> {
        let (url, rest) = link.split_once('#')?;
        let (mut pin, mut code) = (None, None);
        for part in rest.split('&') {
            match part.split_once('=') {
                Some(("pin", value)) => pin = Some(value.to_owned()),
                Some(("code", value)) => code = Some(value.to_owned()),
                // A newer hub may say more.
                Some(_) | None => {}
            }
        }
        Some(Invitation {
            url: url.trim_end_matches('/').to_owned(),
            pin: pin.filter(|_| url.starts_with("https:")),
            code: code.filter(|code| !code.is_empty())?,
        })
    }

    fn typed(text: &str) -> Option<Invitation> {
        let mut words = text.split_whitespace();
        let address = words.next()?.trim_start_matches("https://");
        let rest: String = words
            .flat_map(str::chars)
            .filter(|sign| *sign != '-')
            .collect();
        let whole = rest.is_ascii() && rest.len() == TYPED_CODE + KEY_DIGITS;
        let (code, key) = whole.then(|| rest.split_at(TYPED_CODE))?;
        Some(Invitation {
            url: format!("https://{}", address.trim_end_matches('/')),
            pin: Some(key.to_ascii_lowercase()),
            code: code.to_owned(),
        })
    }

    /// Whether this is the hub of a pairing.
    #[must_use]
    pub fn is_to(&self, pairing: &Pairing) -> bool {
        let pin = pairing.pin.as_deref().unwrap_or_default();
        self.url == pairing.url && pin.starts_with(self.pin.as_deref().unwrap_or_default())
    }
}

/// Signs of a code that is typed.
const TYPED_CODE: usize = 10;

#[derive(Deserialize)]
struct PairReply {
    token: String,
    company: String,
    author: String,
}

/// A hub that took this device in; not kept yet.
#[derive(Debug)]
pub struct HubMembership {
    pairing: Pairing,
    hub_id: String,
    epoch: String,
    author: String,
}

/// Joins a hub and keeps the pairing in the book; `device_name` is what the hub's keeper sees.
///
/// # Errors
/// Those of [`ask_to_join`] and [`HubMembership::keep`].
pub fn pair(
    book: &mut Store,
    invitation: &Invitation,
    device_name: &str,
) -> Result<Pairing, PairError> {
    let device = book.device().ok_or_else(|| no_device(book))?.id;
    ask_to_join(invitation, device, device_name)?.keep(book)
}

fn no_device(book: &Store) -> PairError {
    let dir = book.dir().display().to_string();
    StoreError::NoDevice { dir }.into()
}

/// Asks a hub to take a device in, which spends the code. The hub's key is proved before the code is
/// sent: a wrong pin does not spend it.
///
/// # Errors
/// `Link`, `NoHub`, `Refused`, each with what to do.
pub fn ask_to_join(
    invitation: &Invitation,
    device: Uuid,
    device_name: &str,
) -> Result<HubMembership, PairError> {
    let mut link = Link::by_first_digits(&invitation.url, invitation.pin.as_deref())?;
    let no_hub = || PairError::NoHub(invitation.url.clone());
    let hello: Hello = link
        .ask(&Request::get("/v1/hello"))?
        .read()
        .ok_or_else(no_hub)?;
    let asks = json!({
        "code": invitation.code, "device_name": device_name, "device_id": device,
    });
    let answer = link.ask(&Request::post("/v1/pair", asks.to_string()))?;
    if answer.status != 201 {
        let detail = answer.problem().detail;
        return Err(if detail.is_empty() {
            no_hub()
        } else {
            PairError::Refused(detail)
        });
    }
    let paired: PairReply = answer.read().ok_or_else(no_hub)?;
    Ok(HubMembership {
        pairing: Pairing {
            url: invitation.url.clone(),
            pin: link.pin(),
            token: paired.token,
            company: paired.company,
        },
        hub_id: hello.hub_id,
        epoch: hello.epoch,
        author: paired.author,
    })
}

impl HubMembership {
    /// Keeps the pairing in the book.
    ///
    /// # Errors
    /// `Store`: the pairing before still stands.
    pub fn keep(self, book: &mut Store) -> Result<Pairing, PairError> {
        let device = book.device().cloned().ok_or_else(|| no_device(book))?;
        book.keep_pairing(&self.pairing)?;
        let known = book
            .known_hub()?
            .is_some_and(|hub| hub.id == self.hub_id && hub.epoch == self.epoch);
        if !known {
            book.meet(&self.hub_id, &self.epoch)?;
        }
        // Who books on it, as the hub's keeper said; a name chosen before stays.
        if device.author == "me" {
            book.set_device(eavebook_store::Device {
                author: self.author,
                ..device
            })?;
        }
        Ok(self.pairing)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_that_is_none_is_refused_in_a_sentence() {
        let outcome = |link: &str| match Invitation::read(link) {
            Ok(_) => "read".to_owned(),
            Err(why) => why.to_string(),
        };
        let pin = "ab".repeat(32);
        assert_eq!(
            outcome(&format!("https://hub:7443#pin={pin}&code=X")),
            "read"
        );
        assert_eq!(
            outcome(&format!("http://hub:7443#pin={pin}&code=X")),
            "read"
        );
        for none in ["", "https://hub:7443", "https://hub:7443#code="] {
            assert_ne!(outcome(none), "read", "{none}");
        }
        assert!(outcome("hub").starts_with("this is no link of a hub"));
        assert_eq!(
            outcome("https://hub:7443#pin=abc&code=X"),
            "the pin of https://hub:7443 is not 64 hex digits: take the link as the hub's keeper \
             gave it"
        );
        let typed = "192.168.1.20:7443 1FYD-V1BY-4H ABCD-EF01-2345";
        assert_eq!(outcome(typed), "read");
        assert_eq!(
            Invitation::typed(typed),
            Some(Invitation {
                url: "https://192.168.1.20:7443".to_owned(),
                pin: Some("abcdef012345".to_owned()),
                code: "1FYDV1BY4H".to_owned(),
            })
        );
        for none in [
            "192.168.1.20:7443",
            "192.168.1.20:7443 1FYDV1BY4H",
            "192.168.1.20:7443 1FYDV1BY4H abcdef01234",
            "192.168.1.20:7443 1FYDV1BY4H xbcdef012345",
        ] {
            assert_ne!(outcome(none), "read", "{none}");
        }
        assert!(outcome("ftp://hub#code=X").contains("is no address of a hub"));
    }
}
