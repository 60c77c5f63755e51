//! The bytes of photos, and of the parts of those that are still coming.
//!
//! [`Blobs`] is all that the rest of the hub asks for. Bytes are safe before the row that says so;
//! the row is the truth, so that a store need not be able to write only where nothing is. Photos are
//! named by their content: written twice, they are what they were.

pub(crate) mod bucket;
pub(crate) mod folder;

use crate::rows::Photo;
use std::collections::BTreeSet;
use std::fmt::Debug;
use std::io::{self, Read};
use std::time::{Duration, SystemTime};

/// Parts of a photo that nobody completes are swept after so long.
const STAGED_FOR: Duration = Duration::from_secs(7 * 24 * 3600);

/// What became of parts put together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum JoinResult {
    /// The photo is whole and safe.
    Whole,
    /// These have not come.
    Missing(Vec<u64>),
    /// They are all there and are not the photo of that name and size.
    OtherBytes,
}

/// The store of the bytes of photos. Every call waits: none is made on a thread that listens.
pub(crate) trait Blobs: Debug + Send + Sync {
    /// Whether the bytes of a photo, which a row says are here, are to be counted on.
    fn is_kept(&self, photo: &Photo) -> bool;

    /// Puts a photo there whose bytes were proved. When this returns they are safe.
    fn put(&self, company: i64, sha256: &str, bytes: &[u8]) -> io::Result<()>;

    /// Puts a part there. `true` where it is the first of its number.
    fn put_part(&self, company: i64, sha256: &str, part: u64, bytes: &[u8]) -> io::Result<bool>;

    /// The numbers of the parts that are there.
    fn parts(&self, company: i64, sha256: &str) -> io::Result<BTreeSet<u64>>;

    /// Puts the parts of a photo together and proves them. Parts stay until [`Blobs::clear`], so a
    /// wrong one may be sent again.
    fn join(&self, photo: &Photo) -> io::Result<JoinResult>;

    /// Throws the parts of a photo away, which is whole.
    fn clear(&self, company: i64, sha256: &str);

    /// The bytes of a photo that is whole, from one byte to before another. `NotFound` where it is
    /// gone.
    fn read(&self, photo: &Photo, from: u64, to: u64) -> io::Result<Box<dyn Read + Send>>;

    /// Throws away what arrived in part and was left for a week.
    fn sweep(&self, now: SystemTime) -> io::Result<()>;
}

/// Which parts of a photo of `size` bytes are not among those there.
fn missing(size: u64, kept: &BTreeSet<u64>) -> Vec<u64> {
    let parts = size.div_ceil(crate::limits::PART_BYTES as u64);
    (0..parts).filter(|part| !kept.contains(part)).collect()
}

fn older(than: SystemTime, now: SystemTime) -> bool {
    now.duration_since(than).is_ok_and(|age| age > STAGED_FOR)
}
