//! Joining a hub, and keeping in step with it in a thread of its own.

use crate::copies::reply::InviteView;
use crate::open_store::{HubHost, OpenStore, lock};
use crate::refusal::Refusal;
use crate::stamp;
use eavebook_store::{Pairing, StoreError};
use eavebook_sync::{
    Client, Invitation, Link, LinkError, PairError, SharedStore, SyncLoop, SyncStatus, ask_to_join,
};
use qrcode::{Color, EcLevel, QrCode};
use std::fmt::Write;
use std::thread;

/// Units left empty around a QR code (ISO/IEC 18004).
const QUIET: usize = 4;

/// Joins a hub by the link of its keeper, and keeps the pairing. The store is not locked while the hub
/// is asked.
///
/// # Errors
/// What to do about it; nothing was changed.
pub fn pair(open: &OpenStore, invitation: &Invitation) -> Result<Pairing, PairError> {
    let device = open.lock().device().cloned();
    let Some(device) = device else {
        let dir = open.dir().display().to_string();
        return Err(StoreError::NoDevice { dir }.into());
    };
    ask_to_join(invitation, device.id, &device.name)?.keep(&mut open.lock())
}

/// Serves as the hub of other devices from this machine.
///
/// # Errors
/// When the pairing cannot be kept.
pub fn share(open: &OpenStore, pairing: &Pairing, hub: Box<dyn HubHost>) -> Result<(), StoreError> {
    let mut store = open.lock();
    store.keep_pairing(pairing)?;
    store.hub_is_here();
    drop(store);
    *open.hub() = Some(hub);
    Ok(())
}

/// Joins a hub by what a person typed, and begins to keep in step with it. Sent twice, it joins once:
/// the code is spent by then.
///
/// # Errors
/// A text that is no link; what the hub answered.
pub fn join(open: &OpenStore, text: &str) -> Result<(), Refusal> {
    let invitation = Invitation::read(text)?;
    let is_joined = {
        let store = open.lock();
        let pairing = store.pairing()?;
        store.hub_message().is_none() && pairing.is_some_and(|pairing| invitation.is_to(&pairing))
    };
    if !is_joined {
        pair(open, &invitation)?;
        open.lock().set_hub_message(None);
        keep_in_step(open)?;
    }
    Ok(())
}

/// Lets one more device join the hub of this machine.
///
/// # Errors
/// `NotInvited`.
pub fn invite(open: &OpenStore) -> Result<InviteView, Refusal> {
    let no_hub = || Err("this field book is shared by nobody here: open it with --hub".to_owned());
    let invites = open
        .hub()
        .as_ref()
        .map_or_else(no_hub, |hub| hub.invite())
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
    Ok(InviteView {
        link: invites.link,
        typed: invites.typed,
        fields,
        side: u32::try_from(side + 2 * QUIET).unwrap_or(u32::MAX),
    })
}

/// Keeps in step with the hub of a paired store, in a thread of its own, until the program ends. It
/// takes the store for one question at a time and may be killed at any instant: what the hub has not
/// acknowledged waits on. A store that was not paired calls nobody.
///
/// # Errors
/// When the pairing cannot be read, or the machine gives no thread.
pub fn keep_in_step(open: &OpenStore) -> Result<(), PairError> {
    let Some(pairing) = open.lock().pairing()? else {
        return Ok(());
    };
    let link = Link::new(&pairing.url, pairing.pin.as_deref(), Some(&pairing.token))?;
    let mut sync_loop = SyncLoop {
        client: Client::new(stamp::chance()),
        store: SharedStore(open.shared()),
        link,
    };
    let store = open.shared();
    let wake = open.next_wake();
    let work = move || {
        sync_loop.run(&wake, &stamp::now_ms, &mut |status, duplicate| {
            lock(&store).set_hub_message(match (status, duplicate) {
                (SyncStatus::Stopped { why }, _) => Some(why.clone()),
                (SyncStatus::Begun | SyncStatus::InStep | SyncStatus::Waiting { .. }, true) => {
                    Some(TWO_ALIKE.to_owned())
                }
                (SyncStatus::Begun | SyncStatus::InStep | SyncStatus::Waiting { .. }, false) => {
                    None
                }
            });
        });
    };
    thread::Builder::new()
        .name("sync".to_owned())
        .spawn(work)
        .map_err(|why| LinkError::System(why.to_string()))?;
    Ok(())
}

/// What only a person can mend. A hub out of reach is a matter of time and shown by what waits.
const TWO_ALIKE: &str = "two devices book under one identity: pair this one again with a new link \
                         from the hub's keeper";
