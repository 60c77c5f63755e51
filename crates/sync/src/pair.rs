//! Joining a hub: a link from its keeper becomes a pairing, once.

use crate::link::{Link, LinkError};
use crate::wire::{Hello, Request};
use eavebook_store::{Book, Pairing, StoreError};
use serde::Deserialize;
use serde_json::json;

/// What a link invites to.
#[derive(Clone, PartialEq, Eq)]
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
        "this is no link of a hub: take it whole as `eavebook hub code` printed it, \
         URL#pin=...&code=..., between quotes"
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
    /// Reads `URL#pin=HEX&code=SIGNS`.
    ///
    /// # Errors
    /// `NoLink`.
    pub fn read(link: &str) -> Result<Invitation, PairError> {
        let (url, rest) = link.trim().split_once('#').ok_or(PairError::NoLink)?;
        let (mut pin, mut code) = (None, None);
        for part in rest.split('&') {
            match part.split_once('=') {
                Some(("pin", value)) => pin = Some(value.to_owned()),
                Some(("code", value)) => code = Some(value.to_owned()),
                // A newer hub may say more.
                Some(_) | None => {}
            }
        }
        // The link is checked whole before anything is begun.
        let pin = pin.filter(|_| url.starts_with("https:"));
        Link::new(url, pin.as_deref(), None)?;
        Ok(Invitation {
            url: url.trim_end_matches('/').to_owned(),
            pin,
            code: code
                .filter(|code| !code.is_empty())
                .ok_or(PairError::NoLink)?,
        })
    }
}

#[derive(Deserialize)]
struct Paired {
    token: String,
    company: String,
    author: String,
}

/// Joins a hub and keeps the pairing in the book; `device_name` is what the hub's keeper sees. The
/// hub's key is proved before the code is sent: a wrong pin does not spend it.
///
/// # Errors
/// Each says in a sentence what to do; the book is as it was.
pub fn pair(
    book: &mut Book,
    invitation: &Invitation,
    device_name: &str,
) -> Result<Pairing, PairError> {
    let device = book.device().cloned().ok_or_else(|| StoreError::NoDevice {
        dir: book.dir().display().to_string(),
    })?;
    let mut link = Link::new(&invitation.url, invitation.pin.as_deref(), None)?;
    let no_hub = || PairError::NoHub(invitation.url.clone());
    let hello: Hello = link
        .ask(&Request::get("/v1/hello"))?
        .read()
        .ok_or_else(no_hub)?;
    let asks = json!({
        "code": invitation.code, "device_name": device_name, "device_id": device.id,
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
    let paired: Paired = answer.read().ok_or_else(no_hub)?;
    let pairing = Pairing {
        url: invitation.url.clone(),
        pin: invitation.pin.clone(),
        token: paired.token,
        company: paired.company,
    };
    book.keep_pairing(&pairing)?;
    let known = book
        .met()?
        .is_some_and(|met| met.id == hello.hub_id && met.epoch == hello.epoch);
    if !known {
        book.meet(&hello.hub_id, &hello.epoch)?;
    }
    // Who books on it, as the hub's keeper said; a name chosen before stays.
    if device.author == "me" {
        book.set_device(eavebook_store::Device {
            author: paired.author,
            ..device
        })?;
    }
    Ok(pairing)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_that_is_none_is_refused_in_a_sentence() {
        let said = |link: &str| match Invitation::read(link) {
            Ok(_) => "read".to_owned(),
            Err(why) => why.to_string(),
        };
        let pin = "ab".repeat(32);
        assert_eq!(said(&format!("https://hub:7443#pin={pin}&code=X")), "read");
        assert_eq!(said(&format!("http://hub:7443#pin={pin}&code=X")), "read");
        for none in ["", "https://hub:7443", "https://hub:7443#code="] {
            assert_ne!(said(none), "read", "{none}");
        }
        assert!(said("hub").starts_with("this is no link of a hub"));
        assert_eq!(
            said("https://hub:7443#pin=abc&code=X"),
            "the pin of https://hub:7443 is not 64 hex digits: take the link as the hub's keeper \
             gave it"
        );
        assert!(said("ftp://hub#code=X").contains("is no address of a hub"));
    }
}
