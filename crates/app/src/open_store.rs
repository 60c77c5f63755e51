//! The store of this device, open, with what works next to it.

use crate::refusal::{Refusal, RequestRefusal};
use crate::sentence::Sentence;
use crate::stamp;
use eavebook_store::{Packets, Photos, Store, StoreError, TransferFiles};
use eavebook_sync::Wake;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use uuid::Uuid;

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

/// The store, open, behind its lock.
#[derive(Debug)]
pub struct OpenStore {
    store: Arc<Mutex<Store>>,
    /// Ends the back-off of the sync loop, if one runs.
    wake: Mutex<Arc<Wake>>,
    /// The hub on this machine, if it is one.
    hub: Mutex<Option<Box<dyn HubHost>>>,
    /// Photos, read and written without the lock of the store.
    pub photos: Photos,
    /// Packets, read and written without the lock of the store.
    pub packets: Packets,
    /// Files on their way by hand.
    pub transfer_files: TransferFiles,
    transfers: Mutex<Transfers>,
    /// Held while a packet is made: of two callers the second finds what the first made.
    making: Mutex<()>,
}

/// Files on their way by hand, as far as they are remembered.
#[derive(Debug, Default)]
pub struct Transfers {
    /// The file imported last, so that its last piece sent twice is answered the same.
    pub imported: Option<(Uuid, Sentence)>,
    /// A copy that was made and not fetched yet.
    pub copy: Option<Uuid>,
}

impl OpenStore {
    /// Opens the store in a folder, or creates one there.
    ///
    /// # Errors
    /// In use, newer, damaged, full, denied: nothing was changed.
    pub fn open(dir: &Path) -> Result<OpenStore, StoreError> {
        let mut store = Store::open(dir)?;
        if store.device().is_none() {
            store.set_device(stamp::device())?;
        }
        store.sweep(stamp::a_day_ago())?;
        store.transfer_files().empty()?;
        Ok(OpenStore {
            photos: store.photos(),
            packets: store.packets(),
            transfer_files: store.transfer_files(),
            store: Arc::new(Mutex::new(store)),
            wake: Mutex::default(),
            hub: Mutex::default(),
            transfers: Mutex::default(),
            making: Mutex::new(()),
        })
    }

    /// Works on the store, alone.
    ///
    /// # Errors
    /// Those of the work; `BrokeOff` if the program failed at it.
    pub fn ask<T>(
        &self,
        work: impl FnOnce(&mut Store) -> Result<T, Refusal>,
    ) -> Result<T, Refusal> {
        let mut store = self.lock();
        // A panic cannot leave the store half changed: SQLite rolls back what was begun.
        let before = store.device().map(|device| device.dseq);
        let result = unbroken(|| work(&mut store));
        if store.device().map(|device| device.dseq) != before {
            lock(&self.wake).booked();
        }
        result
    }

    /// The store itself, locked.
    pub fn lock(&self) -> MutexGuard<'_, Store> {
        lock(&self.store)
    }

    /// The store, to be shared with a thread.
    #[must_use]
    pub fn shared(&self) -> Arc<Mutex<Store>> {
        self.store.clone()
    }

    /// Wakes the sync loop: there is something to send.
    pub fn wake(&self) {
        lock(&self.wake).booked();
    }

    /// Ends the sync loop that runs, and hands out the wake of the next.
    pub fn next_wake(&self) -> Arc<Wake> {
        let wake = Arc::<Wake>::default();
        std::mem::replace(&mut *lock(&self.wake), wake.clone()).end();
        wake
    }

    /// The hub on this machine, locked.
    pub fn hub(&self) -> MutexGuard<'_, Option<Box<dyn HubHost>>> {
        lock(&self.hub)
    }

    /// Files on their way by hand, locked.
    pub fn transfers(&self) -> MutexGuard<'_, Transfers> {
        lock(&self.transfers)
    }

    /// The right to make a packet.
    pub fn making(&self) -> MutexGuard<'_, ()> {
        lock(&self.making)
    }

    /// The folder of the store.
    #[must_use]
    pub fn dir(&self) -> PathBuf {
        self.lock().dir().to_path_buf()
    }
}

/// A lock, even if a holder before panicked.
pub fn lock<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Does a piece of work; a panic in it is a refusal too.
///
/// # Errors
/// Those of the work; `BrokeOff`.
pub fn unbroken<T>(work: impl FnOnce() -> Result<T, Refusal>) -> Result<T, Refusal> {
    catch_unwind(AssertUnwindSafe(work)).unwrap_or_else(|_| Err(RequestRefusal::BrokeOff.into()))
}
