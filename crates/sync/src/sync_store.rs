//! What a client asks of the field book it works for. Every answer comes at once: the book is on
//! this device.

use eavebook_core::book::entry::Entry;
use eavebook_store::{EntryDigest, KnownHub, Photo, PhotoProgress};
use uuid::Uuid;

/// What the book said that kept it from doing as asked, in a sentence.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct SyncStoreError(pub String);

/// Which life of this device's store it is, and the last count given in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Life {
    /// Which.
    pub incarnation: Uuid,
    /// The last count.
    pub dseq: u64,
}

/// A field book as a client sees it. What it is told is on the disk when it returns.
pub trait SyncStore {
    /// The hub that was met.
    fn known_hub(&mut self) -> Result<Option<KnownHub>, SyncStoreError>;
    /// Begins anew with a hub at an epoch: nothing is proven there.
    fn meet(&mut self, hub: &str, epoch: &str) -> Result<(), SyncStoreError>;
    /// Which life this is.
    fn life(&mut self) -> Result<Option<Life>, SyncStoreError>;
    /// Begins another life of the store.
    fn begin_life(&mut self) -> Result<(), SyncStoreError>;
    /// Entries to offer, at most so many and so many bytes, at least one; one that names a photo of
    /// this disk only after that photo.
    fn waiting(&mut self, most: usize, bytes: usize) -> Result<Vec<Entry>, SyncStoreError>;
    /// Photos to send.
    fn photos_waiting(&mut self, most: usize) -> Result<Vec<Photo>, SyncStoreError>;
    /// The hub has these.
    fn acknowledge(&mut self, entries: &[Uuid]) -> Result<(), SyncStoreError>;
    /// The hub has this photo.
    fn acknowledge_photo(&mut self, sha256: &str) -> Result<(), SyncStoreError>;
    /// The hub would not take an entry (its id) or a photo (its SHA-256).
    fn turn_back(&mut self, what: &str, reason: &str) -> Result<(), SyncStoreError>;
    /// The hub lacks these after all.
    fn offer_again(&mut self, entries: &[Uuid]) -> Result<(), SyncStoreError>;
    /// Bytes of a photo from a place on, at most so many; fewer only at its end.
    fn photo_bytes(
        &mut self,
        sha256: &str,
        from: u64,
        most: u64,
    ) -> Result<Vec<u8>, SyncStoreError>;
    /// Takes entries as they came, and in one step moves the cursor; how many were not here before.
    fn receive(
        &mut self,
        texts: &[String],
        cursor: Option<&str>,
        now_ms: u64,
    ) -> Result<usize, SyncStoreError>;
    /// Photos that entries name and that are not here.
    fn photos_wanted(&mut self) -> Result<Vec<String>, SyncStoreError>;
    /// How many bytes of a photo that is not whole are here, from its first on.
    fn photo_bytes_here(&mut self, sha256: &str) -> Result<u64, SyncStoreError>;
    /// Lays more of a photo behind what came before; `whole`: its size. Once all has come it is
    /// proved: kept where its name is its hash, else thrown away, to be fetched anew.
    fn add_photo_piece(
        &mut self,
        sha256: &str,
        bytes: &[u8],
        whole: u64,
    ) -> Result<PhotoProgress, SyncStoreError>;
    /// Every entry here.
    fn held(&mut self) -> Result<Vec<EntryDigest>, SyncStoreError>;
}
