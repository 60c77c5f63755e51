//! The hub: the small server through which a company's devices exchange entries and photos.
//!
//! It takes entries as they were booked, numbers them in the order of their commits, and hands each
//! on byte for byte. It neither reads bodies nor decides between entries: merging is the union of
//! sets. What it has acknowledged is on its disk. A hub that was restored from a backup says so by
//! another epoch, and devices offer again what they have.

mod admin;
mod backup;
mod blobs;
mod body;
mod code;
mod config;
mod devices;
mod digest;
mod entries;
mod error;
mod feed;
mod hello;
mod limits;
mod log;
mod metrics;
mod pairing;
mod photos;
mod place;
mod problem;
mod routes;
mod rows;
mod serve;
mod tls;
mod token;

pub use admin::{Codes, code, revoke};
pub use backup::{BackupCounts, RestoreReport, backup, restore};
pub use devices::{PairedDevice, devices};
pub use error::HubError;
pub use serve::{LogTarget, RunningHub, Settings, Transport, serve};
pub use tls::{pin, pin_of};

use blobs::Blobs;
use limits::Rates;
use log::Log;
use metrics::Metrics;
use problem::{Problem, stopping};
use rows::Rows;
use std::sync::Arc;
use tokio::sync::watch;

/// What all requests share.
#[derive(Debug)]
pub(crate) struct Hub {
    rows: Box<dyn Rows>,
    blobs: Box<dyn Blobs>,
    rates: Arc<Rates>,
    metrics: Metrics,
    log: Log,
    /// SHA-256 of the keeper's token.
    admin: [u8; 32],
    per_second: u32,
    uploads: u32,
    stopping: watch::Receiver<bool>,
    /// Held as long as the hub serves.
    _lock: std::fs::File,
}

impl Hub {
    /// Works off the threads that listen: a disk or a database may be slow.
    pub(crate) async fn work<T: Send + 'static>(
        self: &Arc<Hub>,
        work: impl FnOnce(&Hub) -> Result<T, Problem> + Send + 'static,
    ) -> Result<T, Problem> {
        let hub = Arc::clone(self);
        tokio::task::spawn_blocking(move || work(&hub))
            .await
            .unwrap_or_else(|_| Err(stopping()))
    }
}

/// Now, in UTC with milliseconds, RFC 3339.
pub(crate) fn now() -> String {
    chrono::Utc::now().to_rfc3339_opts(chrono::SecondsFormat::Millis, true)
}

/// Bytes as hex digits, two each.
pub(crate) fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Whether a text is a SHA-256 as it is written here: 64 small hex digits.
pub(crate) fn is_sha256(text: &str) -> bool {
    text.len() == 64
        && text
            .bytes()
            .all(|digit| matches!(digit, b'0'..=b'9' | b'a'..=b'f'))
}
