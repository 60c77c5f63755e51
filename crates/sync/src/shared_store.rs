//! The field book on disk as a client sees it. Its lock is held for one question at a time, so that
//! nobody waits who books.

use crate::sync_store::{Life, SyncStore, SyncStoreError};
use eavebook_core::book::entry::Entry;
use eavebook_store::{
    AppendStatus, EntryDigest, KnownHub, Photo, PhotoProgress, Store, StoreError,
};
use std::io::{Read, Seek, SeekFrom};
use std::sync::{Arc, Mutex, PoisonError};
use uuid::Uuid;

/// A field book that others work on at the same time.
#[derive(Clone, Debug)]
pub struct SharedStore(pub Arc<Mutex<Store>>);

impl SharedStore {
    fn ask<T>(
        &self,
        work: impl FnOnce(&mut Store) -> Result<T, StoreError>,
    ) -> Result<T, SyncStoreError> {
        let mut book = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        work(&mut book).map_err(|why| SyncStoreError(why.to_string()))
    }
}

impl SyncStore for SharedStore {
    fn known_hub(&mut self) -> Result<Option<KnownHub>, SyncStoreError> {
        self.ask(|book| book.known_hub())
    }

    fn meet(&mut self, hub: &str, epoch: &str) -> Result<(), SyncStoreError> {
        self.ask(|book| book.meet(hub, epoch))
    }

    fn life(&mut self) -> Result<Option<Life>, SyncStoreError> {
        self.ask(|book| {
            Ok(book.device().map(|device| Life {
                incarnation: device.incarnation,
                dseq: device.dseq,
            }))
        })
    }

    fn begin_life(&mut self) -> Result<(), SyncStoreError> {
        self.ask(|book| book.begin_life(Uuid::new_v4()))
    }

    fn waiting(&mut self, most: usize, bytes: usize) -> Result<Vec<Entry>, SyncStoreError> {
        self.ask(|book| book.waiting(most, bytes))
    }

    fn photos_waiting(&mut self, most: usize) -> Result<Vec<Photo>, SyncStoreError> {
        self.ask(|book| book.photos_waiting(most))
    }

    fn acknowledge(&mut self, entries: &[Uuid]) -> Result<(), SyncStoreError> {
        self.ask(|book| book.acknowledge(entries))
    }

    fn acknowledge_photo(&mut self, sha256: &str) -> Result<(), SyncStoreError> {
        self.ask(|book| book.acknowledge_photo(sha256))
    }

    fn turn_back(&mut self, what: &str, reason: &str) -> Result<(), SyncStoreError> {
        self.ask(|book| book.turn_back(what, reason))
    }

    fn offer_again(&mut self, entries: &[Uuid]) -> Result<(), SyncStoreError> {
        self.ask(|book| book.offer_again(entries))
    }

    fn photo_bytes(
        &mut self,
        sha256: &str,
        from: u64,
        most: u64,
    ) -> Result<Vec<u8>, SyncStoreError> {
        // Read without the book: a photo once kept never changes.
        let photos = self.ask(|book| Ok(book.photos()))?;
        let mut file = photos
            .open(sha256)
            .map_err(|why| SyncStoreError(why.to_string()))?;
        let mut bytes = Vec::new();
        file.seek(SeekFrom::Start(from))
            .and_then(|_| file.take(most).read_to_end(&mut bytes))
            .map_err(|why| SyncStoreError(format!("photo {sha256} cannot be read ({why})")))?;
        Ok(bytes)
    }

    fn receive(
        &mut self,
        texts: &[String],
        cursor: Option<&str>,
        now_ms: u64,
    ) -> Result<usize, SyncStoreError> {
        let statuses = self.ask(|book| book.receive(texts, cursor, now_ms))?;
        Ok(statuses
            .iter()
            .filter(|status| **status == AppendStatus::New)
            .count())
    }

    fn photos_wanted(&mut self) -> Result<Vec<String>, SyncStoreError> {
        self.ask(|book| book.photos_wanted())
    }

    fn photo_bytes_here(&mut self, sha256: &str) -> Result<u64, SyncStoreError> {
        self.ask(|book| Ok(book.photo_bytes_here(sha256)))
    }

    fn add_photo_piece(
        &mut self,
        sha256: &str,
        bytes: &[u8],
        whole: u64,
    ) -> Result<PhotoProgress, SyncStoreError> {
        self.ask(|book| {
            let progress = book.add_photo_piece(sha256, bytes, whole)?;
            if progress == PhotoProgress::Kept {
                book.acknowledge_photo(sha256)?;
            }
            Ok(progress)
        })
    }

    fn held(&mut self) -> Result<Vec<EntryDigest>, SyncStoreError> {
        self.ask(|book| book.held())
    }
}
