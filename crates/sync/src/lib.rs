//! What a device and its company's hub say to each other, as the device sees it.
//!
//! [`Client`] is a machine without I/O: it is told what came and what time it is, and says what to
//! do. [`SyncStore`] is the field book that it works for, [`Link`] the way to a hub over TLS with a
//! pinned key, and [`SyncLoop`] lets the three run beside a program.
//!
//! Merging is the union of sets of entries: what came twice is kept once, and the order does not
//! matter. What the hub has acknowledged is on its disk; before that it waits, whatever happened.

mod backoff;
mod client;
mod fetch;
mod link;
mod packing;
mod pair;
mod pin;
mod repair;
mod shared_store;
mod sync_loop;
mod sync_store;
mod upload;
mod wire;

pub use client::{Act, Client, Event, SyncStatus};
pub use link::{Link, LinkError};
pub use pair::{HubMembership, Invitation, PairError, ask_to_join, pair};
pub use shared_store::SharedStore;
pub use sync_loop::{SyncLoop, Wake};
pub use sync_store::{Life, SyncStore, SyncStoreError};
pub use wire::{Method, Request, Response};
