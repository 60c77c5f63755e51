//! A device in memory: a book in maps, its client, and what it waits for.

use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, sha256_hex};
use eavebook_store::{EntryDigest, KnownHub, Photo, PhotoProgress};
use eavebook_sync::{Act, Client, Event, Life, Request, SyncStore, SyncStoreError};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

const TEN_YEARS_MS: u64 = 315_576_000_000;

/// How what comes is merged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Merge {
    /// By id: the right one.
    Union,
    /// By device and count, as if a count were given once: wrong, to see that it is caught.
    ByCount,
}

#[derive(Clone, Debug)]
pub struct Books {
    pub merge: Merge,
    pub device: Uuid,
    pub life: Life,
    pub entries: BTreeMap<Uuid, Entry>,
    /// Contents of an id that is taken.
    pub conflicts: BTreeSet<Entry>,
    pub photos: BTreeMap<String, Vec<u8>>,
    /// Photos of which the first pieces came.
    pub arriving: BTreeMap<String, Vec<u8>>,
    known_hub: Option<KnownHub>,
    acknowledged: BTreeSet<String>,
    pub turned_back: BTreeMap<String, String>,
}

impl Books {
    pub fn new(number: u128, merge: Merge) -> Books {
        Books {
            merge,
            device: Uuid::from_u128(number),
            life: Life {
                incarnation: Uuid::from_u128(number << 32),
                dseq: 0,
            },
            entries: BTreeMap::new(),
            conflicts: BTreeSet::new(),
            photos: BTreeMap::new(),
            arriving: BTreeMap::new(),
            known_hub: None,
            acknowledged: BTreeSet::new(),
            turned_back: BTreeMap::new(),
        }
    }

    /// Books a note in one of two jobs, with a photo where one is given.
    pub fn book(&mut self, id: Uuid, photo: Option<Vec<u8>>) {
        self.life.dseq += 1;
        let refs = photo.map(|bytes| {
            let name = sha256_hex(&bytes);
            self.photos.insert(name.clone(), bytes);
            name
        });
        let body = format!("{{\"text\":\"{id}\"}}");
        let entry = Entry {
            id,
            book: Uuid::from_u128(u128::from(id.as_bytes()[14]) % 2 + 1),
            device: self.device,
            incarnation: self.life.incarnation,
            dseq: self.life.dseq,
            author: "Ada".to_owned(),
            // Clocks of phones: right, ten years ahead, ten years behind.
            hlc: Hlc::new(
                1_800_000_000_000 + u64::from(id.as_bytes()[13] % 3) * TEN_YEARS_MS - TEN_YEARS_MS,
                0,
            ),
            kind: "of_tomorrow".to_owned(),
            kind_version: 9,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            supersedes: Vec::new(),
            refs: refs.into_iter().collect(),
            sha256: sha256_hex(body.as_bytes()),
            body,
            other: BTreeMap::from([("weather".to_owned(), "\"rain\"".to_owned())]),
        };
        self.entries.insert(id, entry);
    }

    fn waits(&self, what: &str) -> bool {
        !self.acknowledged.contains(what) && !self.turned_back.contains_key(what)
    }

    fn take(&mut self, entry: Entry) -> bool {
        let same_count = |other: &Entry| {
            (other.device, other.dseq) == (entry.device, entry.dseq) && other.id != entry.id
        };
        if self.merge == Merge::ByCount && self.entries.values().any(same_count) {
            return false;
        }
        match self.entries.get(&entry.id) {
            Some(kept) if *kept != entry => {
                self.conflicts.insert(entry);
                false
            }
            Some(_) => {
                self.acknowledged.insert(entry.id.to_string());
                false
            }
            None => {
                self.acknowledged.insert(entry.id.to_string());
                self.entries.insert(entry.id, entry);
                true
            }
        }
    }
}

impl SyncStore for Books {
    fn known_hub(&mut self) -> Result<Option<KnownHub>, SyncStoreError> {
        Ok(self.known_hub.clone())
    }

    fn meet(&mut self, hub: &str, epoch: &str) -> Result<(), SyncStoreError> {
        self.known_hub = Some(KnownHub {
            id: hub.to_owned(),
            epoch: epoch.to_owned(),
            cursor: String::new(),
        });
        self.acknowledged.clear();
        self.turned_back.clear();
        Ok(())
    }

    fn life(&mut self) -> Result<Option<Life>, SyncStoreError> {
        Ok(Some(self.life))
    }

    fn begin_life(&mut self) -> Result<(), SyncStoreError> {
        self.life = Life {
            incarnation: Uuid::from_u128(self.life.incarnation.as_u128() + 1),
            dseq: 0,
        };
        Ok(())
    }

    fn waiting(&mut self, most: usize, bytes: usize) -> Result<Vec<Entry>, SyncStoreError> {
        let mut size = 0;
        Ok(self
            .entries
            .values()
            .filter(|entry| self.waits(&entry.id.to_string()))
            .filter(|entry| {
                let held_up = |photo: &String| self.photos.contains_key(photo) && self.waits(photo);
                !entry.refs.iter().any(held_up)
            })
            .take(most)
            .take_while(|entry| {
                let first = size == 0;
                size += entry.to_json().len() + 1;
                first || size <= bytes
            })
            .cloned()
            .collect())
    }

    fn photos_waiting(&mut self, most: usize) -> Result<Vec<Photo>, SyncStoreError> {
        let waiting = self.photos.iter().filter(|(name, _)| self.waits(name));
        Ok(waiting
            .take(most)
            .map(|(name, bytes)| Photo {
                sha256: name.clone(),
                size: bytes.len() as u64,
            })
            .collect())
    }

    fn acknowledge(&mut self, entries: &[Uuid]) -> Result<(), SyncStoreError> {
        self.acknowledged
            .extend(entries.iter().map(Uuid::to_string));
        Ok(())
    }

    fn acknowledge_photo(&mut self, sha256: &str) -> Result<(), SyncStoreError> {
        self.acknowledged.insert(sha256.to_owned());
        Ok(())
    }

    fn turn_back(&mut self, what: &str, reason: &str) -> Result<(), SyncStoreError> {
        self.turned_back.insert(what.to_owned(), reason.to_owned());
        Ok(())
    }

    fn offer_again(&mut self, entries: &[Uuid]) -> Result<(), SyncStoreError> {
        for id in entries {
            self.acknowledged.remove(&id.to_string());
        }
        Ok(())
    }

    fn photo_bytes(
        &mut self,
        sha256: &str,
        from: u64,
        most: u64,
    ) -> Result<Vec<u8>, SyncStoreError> {
        let bytes = &self.photos[sha256];
        let end = ((from + most) as usize).min(bytes.len());
        Ok(bytes[from as usize..end].to_vec())
    }

    fn receive(
        &mut self,
        texts: &[String],
        cursor: Option<&str>,
        _: u64,
    ) -> Result<usize, SyncStoreError> {
        let came = texts.iter().map(|text| Entry::from_json(text).unwrap());
        let new = came.filter(|entry| self.take(entry.clone())).count();
        if let (Some(cursor), Some(known_hub)) = (cursor, &mut self.known_hub) {
            known_hub.cursor = cursor.to_owned();
        }
        Ok(new)
    }

    fn photos_wanted(&mut self) -> Result<Vec<String>, SyncStoreError> {
        let named: BTreeSet<&String> = self.entries.values().flat_map(|one| &one.refs).collect();
        Ok(named
            .into_iter()
            .filter(|name| !self.photos.contains_key(*name))
            .cloned()
            .collect())
    }

    fn photo_bytes_here(&mut self, sha256: &str) -> Result<u64, SyncStoreError> {
        Ok(self.arriving.get(sha256).map_or(0, Vec::len) as u64)
    }

    fn add_photo_piece(
        &mut self,
        sha256: &str,
        bytes: &[u8],
        whole: u64,
    ) -> Result<PhotoProgress, SyncStoreError> {
        let came = self.arriving.entry(sha256.to_owned()).or_default();
        came.extend(bytes);
        if (came.len() as u64) < whole {
            return Ok(PhotoProgress::InPart);
        }
        let came = self.arriving.remove(sha256).unwrap_or_default();
        if came.len() as u64 != whole || sha256_hex(&came) != sha256 {
            return Ok(PhotoProgress::OtherBytes);
        }
        self.photos.insert(sha256.to_owned(), came);
        self.acknowledge_photo(sha256)?;
        Ok(PhotoProgress::Kept)
    }

    fn held(&mut self) -> Result<Vec<EntryDigest>, SyncStoreError> {
        Ok(self
            .entries
            .values()
            .map(|entry| EntryDigest {
                book: entry.book,
                id: entry.id,
                sha256: entry.sha256.clone(),
            })
            .collect())
    }
}

/// A device: what is on its disk, what is in its memory.
#[derive(Debug)]
pub struct Device {
    pub books: Books,
    pub client: Client,
    /// Asked, and not answered yet.
    pub asks: Option<Request>,
    /// Asked last, answered or not.
    pub asked: Option<Request>,
}

impl Device {
    pub fn new(books: Books) -> Device {
        Device {
            client: Client::new(books.device.as_u128() as u64),
            books,
            asks: None,
            asked: None,
        }
    }

    /// The program is killed: what is in memory is gone.
    pub fn killed(&mut self) {
        *self = Device::new(self.books.clone());
    }

    pub fn handle(&mut self, now_ms: u64, event: Event) -> Act {
        let act = self.client.next(&mut self.books, now_ms, event);
        self.asks = match &act {
            Act::Ask(request) | Act::Listen(request) => Some(request.clone()),
            Act::Rest(_) | Act::Stop => None,
        };
        if self.asks.is_some() {
            self.asked.clone_from(&self.asks);
        }
        act
    }
}
