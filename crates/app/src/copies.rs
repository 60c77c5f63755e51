//! Copies on another machine: joining a hub, and keeping in step with it beside all other work.

use crate::photo::LARGEST_PHOTO;
use crate::places::photos::too_large;
use crate::refusal::{Refusal, RequestRefusal};
use crate::reply::{InviteView, Reply, SquareView};
use crate::{App, held, said, stamp, unbroken, view};
use eavebook_packet::picture::squares;
use eavebook_store::{Pairing, StoreError};
use eavebook_sync::{
    Client, Invitation, Link, LinkError, PairError, SharedStore, SyncLoop, SyncStatus, Wake,
    ask_to_join,
};
use qrcode::{Color, EcLevel, QrCode};
use std::fmt::Write;
use std::sync::Arc;
use std::thread;

/// Units left empty around a QR code (ISO/IEC 18004).
const QUIET: usize = 4;

/// A hub on this machine, which other devices can join.
pub trait HubHost: std::fmt::Debug + Send + Sync {
    /// Lets one more device in, once, within ten minutes.
    ///
    /// # Errors
    /// Why not, in a sentence.
    fn invite(&self) -> Result<Invites, String>;
}

/// What lets one more device in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Invites {
    /// The link.
    pub link: String,
    /// Address, code and key, to be typed.
    pub typed: String,
}

impl App {
    /// Joins a hub by the link of its keeper, and keeps the pairing. The book is not held while the
    /// hub is asked.
    ///
    /// # Errors
    /// Each says in a sentence what to do; the book is as it was.
    pub fn pair(&self, invitation: &Invitation) -> Result<Pairing, PairError> {
        let device = held(&self.book).device().cloned();
        let Some(device) = device else {
            let dir = held(&self.book).dir().display().to_string();
            return Err(StoreError::NoDevice { dir }.into());
        };
        ask_to_join(invitation, device.id, &device.name)?.keep(&mut held(&self.book))
    }

    /// The pairing, where there is one.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn pairing(&self) -> Result<Option<Pairing>, StoreError> {
        held(&self.book).pairing()
    }

    /// Serves as the hub of other devices from this machine: the book keeps in step with that hub at
    /// its address now, by the pairing with it, and does not count it as another copy.
    ///
    /// # Errors
    /// When the pairing cannot be kept.
    pub fn share(&self, pairing: Pairing, shares: Box<dyn HubHost>) -> Result<(), StoreError> {
        let mut book = held(&self.book);
        book.keep_pairing(&pairing)?;
        book.hub_is_here();
        drop(book);
        *held(&self.shares) = Some(shares);
        Ok(())
    }

    /// Joins a hub by what a person typed, and begins to keep in step with it.
    pub(crate) fn join(&self, text: &str) -> Result<Reply, Refusal> {
        let invitation = Invitation::read(text)?;
        let there = {
            let book = held(&self.book);
            let pairing = book.pairing()?;
            // Said twice, the code is spent; what it was for is done.
            book.hub_message().is_none()
                && pairing.is_some_and(|pairing| invitation.is_to(&pairing))
        };
        if !there {
            self.pair(&invitation)?;
            held(&self.book).set_hub_message(None);
            self.keep_in_step()?;
        }
        self.asked(|book| view::copies::reply(book, None))
    }

    /// Reads the link of a hub off a photo of its square. Nothing is joined by it.
    #[must_use]
    pub fn read_square(&self, photo: &[u8]) -> Reply {
        said(unbroken(|| square(photo)))
    }

    /// Lets one more device join the hub of this machine.
    pub(crate) fn invite(&self) -> Result<Reply, Refusal> {
        let none =
            || Err("this field book is shared by nobody here: open it with --hub".to_owned());
        let invites = held(&self.shares)
            .as_ref()
            .map_or_else(none, |shares| shares.invite())
            .map_err(Refusal::NotInvited)?;
        let code = QrCode::with_error_correction_level(&invites.link, EcLevel::M)
            .map_err(|why| Refusal::NotInvited(format!("the link makes no QR code ({why})")))?;
        let side = code.width();
        let mut fields = String::new();
        for (at, color) in code.to_colors().into_iter().enumerate() {
            if color == Color::Dark {
                let (x, y) = (at % side + QUIET, at / side + QUIET);
                let _ = write!(fields, "M{x} {y}h1v1h-1z");
            }
        }
        Ok(Reply::Invite(InviteView {
            link: invites.link,
            typed: invites.typed,
            fields,
            side: u32::try_from(side + 2 * QUIET).unwrap_or(u32::MAX),
        }))
    }

    /// Keeps in step with the hub of a paired book, in a thread of its own, until the program ends.
    /// It takes the book for one question at a time and may be killed at any instant: what the hub
    /// has not acknowledged waits on. A book that was not paired calls nobody.
    ///
    /// # Errors
    /// When the pairing cannot be read, or the machine gives no thread.
    pub fn keep_in_step(&self) -> Result<(), PairError> {
        let Some(pairing) = held(&self.book).pairing()? else {
            return Ok(());
        };
        let link = Link::new(&pairing.url, pairing.pin.as_deref(), Some(&pairing.token))?;
        let mut runs = SyncLoop {
            client: Client::new(stamp::chance()),
            store: SharedStore(self.book.clone()),
            link,
        };
        let (book, wake) = (self.book.clone(), Arc::<Wake>::default());
        // Who kept in step with the hub before ends.
        std::mem::replace(&mut *held(&self.wake), wake.clone()).end();
        let work = move || {
            runs.run(&wake, &stamp::now_ms, &mut |standing, duplicate| {
                held(&book).set_hub_message(match (standing, duplicate) {
                    (SyncStatus::Stopped { why }, _) => Some(why.clone()),
                    (SyncStatus::Begun | SyncStatus::InStep | SyncStatus::Waiting { .. }, true) => {
                        Some(TWO_ALIKE.to_owned())
                    }
                    (
                        SyncStatus::Begun | SyncStatus::InStep | SyncStatus::Waiting { .. },
                        false,
                    ) => None,
                });
            });
        };
        thread::Builder::new()
            .name("sync".to_owned())
            .spawn(work)
            .map_err(|why| LinkError::System(why.to_string()))?;
        Ok(())
    }
}

/// A link is looked at before it is used: a longer one, or one with signs that nobody can tell apart by
/// looking, is none of ours.
const LONGEST_LINK: usize = 400;

fn square(photo: &[u8]) -> Result<Reply, Refusal> {
    if photo.len() > LARGEST_PHOTO {
        return Err(too_large(photo.len()).into());
    }
    let told = squares(photo).map_err(|_| RequestRefusal::SquareNotSeen)?;
    if told.is_empty() {
        return Err(RequestRefusal::NoSquare.into());
    }
    let ours = |text: &String| {
        let plain = text.len() <= LONGEST_LINK && text.bytes().all(|sign| sign.is_ascii_graphic());
        plain && text.contains('#') && Invitation::read(text).is_ok()
    };
    let link = told
        .into_iter()
        .find(ours)
        .ok_or(RequestRefusal::OtherSquare)?;
    Ok(Reply::Square(SquareView { link }))
}

/// What only a person can mend; a hub out of reach is a matter of time and shown by what waits.
const TWO_ALIKE: &str = "two devices book under one identity: pair this one again with a new link \
                         from the hub's keeper";
