//! What a hub knows of entries, devices and photos: everything but the bytes of photos.
//!
//! [`Rows`] is all that the rest of the hub asks for. Two stores answer: [`sqlite`], one file, for
//! one process; [`postgres`], for several at once. One suite of tests runs over both.

pub(crate) mod postgres;
pub(crate) mod sqlite;
mod wakes;

use crate::devices::PairedDevice;
use crate::entries::{Status, ValidEntry};
use crate::problem::Problem;
use crate::token::{Caller, NewToken};
use eavebook_core::book::digest::SetDigest;
use std::collections::BTreeSet;
use std::fmt::Debug;
use std::path::Path;
use tokio::sync::watch;
use uuid::Uuid;

/// Which hub this is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Identity {
    pub(crate) hub_id: String,
    /// Drawn anew by each restore.
    pub(crate) epoch: String,
    /// Where it is reached, for the links of pairing codes.
    pub(crate) url: Option<String>,
}

/// Where a company stands, and in it one device.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct CompanyState {
    /// The number of its last entry.
    pub(crate) head: u64,
    /// Of all its entries.
    pub(crate) digest: SetDigest,
    /// The last count of each life of the device's store.
    pub(crate) own: Vec<(String, u64)>,
}

/// One page of a company's entries, in the order of their commits.
#[derive(Debug, Default)]
pub(crate) struct Page {
    /// The company's last number, read before the entries.
    pub(crate) head: u64,
    /// Number and text.
    pub(crate) entries: Vec<(u64, Vec<u8>)>,
    /// The last number looked at, also of what a filter hides.
    pub(crate) next: u64,
}

/// Which page.
#[derive(Clone, Debug)]
pub(crate) struct PageQuery {
    pub(crate) company: i64,
    pub(crate) after: u64,
    /// Most entries.
    pub(crate) limit: u64,
    /// Only of these jobs.
    pub(crate) books: Option<BTreeSet<Uuid>>,
}

/// A photo that is whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Photo {
    pub(crate) company: i64,
    pub(crate) sha256: String,
    /// Bytes.
    pub(crate) size: u64,
}

/// A pairing code as it is kept.
#[derive(Clone, Debug)]
pub(crate) struct KeptCode {
    /// The part that says which one it is.
    pub(crate) name: String,
    /// The company's name.
    pub(crate) company: String,
    pub(crate) author: Option<String>,
    pub(crate) typed_sha256: [u8; 32],
    pub(crate) link_sha256: [u8; 32],
    /// Seconds since 1970.
    pub(crate) ends: i64,
}

/// What a device shows to be paired.
pub(crate) struct Pairing {
    pub(crate) code: crate::code::Code,
    pub(crate) way: crate::code::Way,
    pub(crate) device: Uuid,
    /// Its name, and its author's where the code names none.
    pub(crate) name: String,
    pub(crate) drawn: NewToken,
}

/// Whether a thing came now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Arrival {
    /// It was not there.
    New,
    /// It was.
    Known,
}

/// The store of all that is not the bytes of a photo. Every call that writes answers once it is on
/// the disk, and waits for it: none is made on a thread that listens.
pub(crate) trait Rows: Debug + Send + Sync {
    /// Which hub this is, now: another process may have restored it.
    fn identity(&self) -> Result<Identity, Problem>;

    /// Keeps where it is reached.
    fn reached_at(&self, url: &str) -> Result<(), Problem>;

    /// That writing works now.
    fn ready(&self) -> Result<(), Problem>;

    /// Copies all rows of one moment into a new file as [`sqlite`] keeps them.
    fn copy_to(&self, file: &Path) -> Result<(), Problem>;

    /// Changes when a company has entries more.
    fn committed(&self, company: i64) -> watch::Receiver<u64>;

    /// Ends all writing.
    fn close(&self);

    /// The device of a token that was not turned out, and the hash kept of the token's secret.
    fn device(&self, token_id: &str) -> Result<Option<(Vec<u8>, Caller)>, Problem>;

    /// Keeps entries, numbers those that are new without a gap, and tells what became of each, in
    /// their order, and the company's last number.
    fn push(&self, company: i64, entries: Vec<ValidEntry>) -> Result<(u64, Vec<Status>), Problem>;

    /// The entries whose id was taken by another content, each once, as they came.
    fn conflicts(&self, company: i64) -> Result<Vec<Vec<u8>>, Problem>;

    /// Where a company stands, and the caller in it.
    fn company_state(&self, caller: &Caller) -> Result<CompanyState, Problem>;

    /// A page of a company's entries.
    fn page(&self, asked: &PageQuery) -> Result<Page, Problem>;

    /// Shows id, job and SHA-256 of every entry of a company, or of one job of it: one snapshot.
    fn walk(
        &self,
        company: i64,
        book: Option<Uuid>,
        see: &mut dyn FnMut(Uuid, Uuid, &str),
    ) -> Result<(), Problem>;

    /// The sizes of those of some photos that are whole here, in bytes, by their hashes.
    fn photos(&self, company: i64, sha256: &[String]) -> Result<Vec<(String, u64)>, Problem>;

    /// Makes a photo, whose bytes are safe, one that is here.
    fn publish(&self, photo: &Photo) -> Result<Arrival, Problem>;

    /// Takes a photo, whose bytes are gone, out of those that are here, so that it is asked for
    /// again.
    fn forget(&self, company: i64, sha256: &str) -> Result<(), Problem>;

    /// All devices, also those turned out.
    fn devices(&self) -> Result<Vec<PairedDevice>, Problem>;

    /// Turns a device out; tells in how many companies.
    fn revoke(&self, device: &str) -> Result<usize, Problem>;

    /// Keeps a code and makes its company; `false` where another code has its name.
    fn keep_code(&self, code: &KeptCode) -> Result<bool, Problem>;

    /// Spends a code where it is the right one and keeps the device it was for: the names of
    /// company and author. Counts a wrong try against the code's name.
    fn pair(&self, pairing: &Pairing) -> Result<Option<(String, String)>, Problem>;
}

/// That a company was taken away under a device.
pub(crate) fn gone() -> Problem {
    Problem::new(crate::problem::Code::NotFound, "this company is gone")
}

/// Reads a digest as it is kept.
pub(crate) fn kept_digest(count: u64, sum: &str) -> Result<SetDigest, Problem> {
    SetDigest::from_hex(count, sum).ok_or_else(|| {
        let why = "the digest kept of this company is no digest: restore the hub from a backup";
        Problem::new(crate::problem::Code::Unavailable, why)
    })
}
