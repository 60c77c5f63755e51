//! The field book on disk as a client sees it. Its lock is held for one question at a time, so that
//! nobody waits who books.

use crate::shelf::{Life, Shelf, ShelfError};
use eavebook_core::book::entry::Entry;
use eavebook_store::{Appended, Book, Comes, MetHub, Photo, Shared, StoreError};
use std::io::{Read, Seek, SeekFrom};
use std::sync::{Arc, Mutex, PoisonError};
use uuid::Uuid;

/// A field book that others work on at the same time.
#[derive(Clone, Debug)]
pub struct OfBook(pub Arc<Mutex<Book>>);

impl OfBook {
    fn ask<T>(&self, work: impl FnOnce(&mut Book) -> Result<T, StoreError>) -> Told<T> {
        let mut book = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        work(&mut book).map_err(|why| ShelfError(why.to_string()))
    }
}

type Told<T> = Result<T, ShelfError>;

impl Shelf for OfBook {
    fn met(&mut self) -> Told<Option<MetHub>> {
        self.ask(|book| book.met())
    }

    fn meet(&mut self, hub: &str, epoch: &str) -> Told<()> {
        self.ask(|book| book.meet(hub, epoch))
    }

    fn life(&mut self) -> Told<Option<Life>> {
        self.ask(|book| {
            Ok(book.device().map(|device| Life {
                incarnation: device.incarnation,
                dseq: device.dseq,
            }))
        })
    }

    fn begin_life(&mut self) -> Told<()> {
        self.ask(|book| book.begin_life(Uuid::new_v4()))
    }

    fn waiting(&mut self, most: usize, bytes: usize) -> Told<Vec<Entry>> {
        self.ask(|book| book.waiting(most, bytes))
    }

    fn photos_waiting(&mut self, most: usize) -> Told<Vec<Photo>> {
        self.ask(|book| book.photos_waiting(most))
    }

    fn acknowledge(&mut self, entries: &[Uuid]) -> Told<()> {
        self.ask(|book| book.acknowledge(entries))
    }

    fn acknowledge_photo(&mut self, sha256: &str) -> Told<()> {
        self.ask(|book| book.acknowledge_photo(sha256))
    }

    fn turn_back(&mut self, what: &str, reason: &str) -> Told<()> {
        self.ask(|book| book.turn_back(what, reason))
    }

    fn offer_again(&mut self, entries: &[Uuid]) -> Told<()> {
        self.ask(|book| book.offer_again(entries))
    }

    fn photo_bytes(&mut self, sha256: &str, from: u64, most: u64) -> Told<Vec<u8>> {
        // Read without the book: a photo once kept never changes.
        let photos = self.ask(|book| Ok(book.photos()))?;
        let mut file = photos
            .open(sha256)
            .map_err(|why| ShelfError(why.to_string()))?;
        let mut bytes = Vec::new();
        file.seek(SeekFrom::Start(from))
            .and_then(|_| file.take(most).read_to_end(&mut bytes))
            .map_err(|why| ShelfError(format!("photo {sha256} cannot be read ({why})")))?;
        Ok(bytes)
    }

    fn receive(&mut self, texts: &[String], cursor: Option<&str>, now_ms: u64) -> Told<usize> {
        let became = self.ask(|book| book.receive(texts, cursor, now_ms))?;
        Ok(became.iter().filter(|one| **one == Appended::New).count())
    }

    fn photos_wanted(&mut self) -> Told<Vec<String>> {
        self.ask(|book| book.photos_wanted())
    }

    fn photo_came(&mut self, sha256: &str) -> Told<u64> {
        self.ask(|book| Ok(book.photo_came(sha256)))
    }

    fn photo_comes(&mut self, sha256: &str, bytes: &[u8], whole: u64) -> Told<Comes> {
        self.ask(|book| {
            let comes = book.photo_comes(sha256, bytes, whole)?;
            if comes == Comes::Kept {
                book.acknowledge_photo(sha256)?;
            }
            Ok(comes)
        })
    }

    fn held(&mut self) -> Told<Vec<Shared>> {
        self.ask(|book| book.held())
    }
}
