//! The one boundary: requests in, replies out. Used by the shell and by localhost.

pub mod answer;
pub mod copies;
pub mod demo;
pub mod dispatch;
pub mod draft;
pub mod figures;
pub mod job;
pub mod localhost;
pub mod media;
pub mod names;
pub mod open_job;
pub mod open_store;
pub mod page;
pub mod parts;
pub mod places;
pub mod refusal;
pub mod reply;
pub mod request;
pub mod sentence;
pub mod settings;
pub mod stamp;
pub mod to_message;
pub mod typescript;

pub use copies::import::{AboutPiece, LARGEST_PIECE};
pub use eavebook_store::{BackupCounts, BackupError, Pairing, StoreError, backup, restore, verify};
pub use eavebook_sync::{Invitation, PairError};
pub use media::LARGEST_PHOTO;
pub use open_store::{HubHost, Invites};
pub use places::walk_round::photos::{AboutPhoto, KeptPhoto};
pub use refusal::ImportError;

use answer::Answer;
use eavebook_core::book::edition::Edition;
use open_store::{OpenStore, unbroken};
use places::job_file::make::{Made, Wanted};
use places::job_file::packet_files::{self, PacketFile};
use places::today::handle::Pretend;
use places::{job_file, today, walk_round};
use refusal::{Refusal, RequestRefusal};
use reply::{Reply, Sentence};
use request::Request;
use std::fs::File;
use std::path::{Path, PathBuf};
use to_message::reply_or_refusal;
use uuid::Uuid;

/// The store of this device with its one door.
#[derive(Debug)]
pub struct App {
    open: OpenStore,
}

impl App {
    /// Opens the store in a folder, or creates one there.
    ///
    /// # Errors
    /// In use, newer, damaged, full, denied: nothing was changed.
    pub fn open(dir: &Path) -> Result<App, StoreError> {
        let open = OpenStore::open(dir)?;
        job_file::make::sweep(&open.lock())?;
        Ok(App { open })
    }

    /// Carries out one request. Whatever goes wrong is a refusal, and changed nothing.
    #[must_use]
    pub fn handle(&self, request: impl Into<Request>) -> Reply {
        reply_or_refusal(dispatch::reply(&self.open, request.into()))
    }

    /// Makes a packet, or finds it if it was made before.
    ///
    /// # Errors
    /// Why none was made; nothing was recorded.
    pub fn packet(&self, job: Uuid, edition: Edition, wanted: Wanted) -> Result<Made, Refusal> {
        job_file::make::make(&self.open, job, edition, wanted)
    }

    /// The job begun last.
    ///
    /// # Errors
    /// `NoJobs`.
    pub fn newest_job(&self) -> Result<Uuid, Refusal> {
        let newest = self.open.ask(|store| Ok(store.books()?.last().copied()))?;
        newest.ok_or(RequestRefusal::NoJobs.into())
    }

    /// Puts a copy of a packet into a folder, whole or not at all.
    ///
    /// # Errors
    /// Full, denied, of that folder.
    pub fn copy_packet(&self, packet: &Path, to: &Path) -> Result<PathBuf, StoreError> {
        self.open.packets.copy_out(packet, to)
    }

    /// Saves a packet, or one file in it, in a folder of the machine: where it is, or why it was not
    /// saved.
    #[must_use]
    pub fn save_packet_file(&self, id: &str, path: Option<&str>, folder: &Path) -> Sentence {
        packet_files::save(&self.open.packets, id, path, folder)
    }

    /// A packet whole, or one file in it, by its id.
    #[must_use]
    pub fn packet_file(&self, id: &str, path: Option<&str>) -> Option<PacketFile> {
        packet_files::read(&self.open.packets, id, path)
    }

    /// Keeps a photo: on disk and hashed before anything refers to it.
    #[must_use]
    pub fn keep_photo(&self, bytes: &[u8], about: &AboutPhoto) -> Reply {
        let kept = self
            .open
            .ask(|store| walk_round::photos::keep(store, bytes, about));
        self.finish(kept)
    }

    /// A photo by its name in the photo folder.
    #[must_use]
    pub fn photo(&self, sha256: &str) -> Option<KeptPhoto> {
        walk_round::photos::read(&self.open.lock(), sha256).ok()
    }

    /// Begins a job for the pretend house.
    #[must_use]
    pub fn start_pretend(&self, address: &str) -> Reply {
        let begun = self
            .open
            .ask(|store| today::handle::begin(store, address, Pretend::Yes));
        self.finish(begun.map(Answer::Job))
    }

    /// Joins a hub by the link of its keeper, and keeps the pairing. The store is not locked while the
    /// hub is asked.
    ///
    /// # Errors
    /// What to do about it; nothing was changed.
    pub fn pair(&self, invitation: &Invitation) -> Result<Pairing, PairError> {
        copies::pairing::pair(&self.open, invitation)
    }

    /// The pairing, if there is one.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn pairing(&self) -> Result<Option<Pairing>, StoreError> {
        self.open.lock().pairing()
    }

    /// Serves as the hub of other devices from this machine: the store keeps in step with that hub at
    /// its address now, by the pairing with it, and does not count it as another copy.
    ///
    /// # Errors
    /// When the pairing cannot be kept.
    pub fn share(&self, pairing: Pairing, hub: Box<dyn HubHost>) -> Result<(), StoreError> {
        copies::pairing::share(&self.open, &pairing, hub)
    }

    /// Keeps in step with the hub of a paired store, in a thread of its own, until the program ends.
    /// It takes the store for one question at a time and may be killed at any instant: what the hub
    /// has not acknowledged waits on. A store that was not paired calls nobody.
    ///
    /// # Errors
    /// When the pairing cannot be read, or the machine gives no thread.
    pub fn keep_in_step(&self) -> Result<(), PairError> {
        copies::pairing::keep_in_step(&self.open)
    }

    /// Reads the link of a hub off a photo of its QR code. Nothing is joined by it.
    #[must_use]
    pub fn read_square(&self, photo: &[u8]) -> Reply {
        self.finish(unbroken(|| copies::square::read(photo)))
    }

    /// Imports a file carried by hand: a backup of another store, or the firm's packet of a job. Its
    /// first bytes show which. The file is proved whole first; the store is locked for one photo or
    /// one job at a time. Returns what was imported.
    ///
    /// # Errors
    /// Damaged or of another kind: nothing was changed. The disk: what was imported is kept, and the
    /// rest is imported by the next try.
    pub fn bring(&self, file: &Path) -> Result<Sentence, ImportError> {
        copies::import::import(&self.open, file)
    }

    /// Takes a piece of a file that is carried in; the last one imports the file. Pieces come in
    /// their order, and one may come twice.
    #[must_use]
    pub fn carry_in(&self, piece: &[u8], about: AboutPiece) -> Reply {
        self.finish(unbroken(|| {
            copies::import::carry_in(&self.open, piece, about)
        }))
    }

    /// Makes a copy of this store as a file, to be fetched once by [`App::take_copy`]. Keys are booked
    /// meanwhile.
    #[must_use]
    pub fn make_copy(&self) -> Reply {
        self.finish(unbroken(|| copies::backup::make(&self.open)))
    }

    /// The file of a copy that was made, which is deleted once it is read.
    #[must_use]
    pub fn take_copy(&self, file: Uuid) -> Option<File> {
        copies::backup::take(&self.open, file)
    }

    /// Saves a copy of this store in a folder of the machine: where it is, or why it was not saved.
    #[must_use]
    pub fn save_copy(&self, folder: &Path) -> Sentence {
        unbroken(|| copies::backup::save(&self.open, folder))
            .unwrap_or_else(|refusal| refusal.said())
    }

    fn finish<A: Into<Answer>>(&self, answer: Result<A, Refusal>) -> Reply {
        let reply = answer.and_then(|answer| dispatch::finish(&self.open, answer.into()));
        reply_or_refusal(reply)
    }
}

/// The reply if the program failed at a request.
#[must_use]
pub fn broken_off() -> Reply {
    Reply::Refused(RequestRefusal::BrokeOff.said())
}
