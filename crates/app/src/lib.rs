//! The one boundary: requests in, replies out; used by the shell and by localhost.

pub mod carried;
pub mod copies;
pub mod demo;
pub mod draft;
pub mod localhost;
pub mod packet_files;
pub mod page;
pub mod photo;
pub mod places;
pub mod refusal;
pub mod reply;
pub mod request;
pub mod settings;
pub mod stamp;
pub mod typescript;
pub mod view;

pub use carried::{AboutPiece, ImportError, LARGEST_PIECE};
pub use copies::{HubHost, Invites};
pub use eavebook_store::{BackupCounts, BackupError, Pairing, StoreError, backup, restore, verify};
pub use eavebook_sync::{Invitation, PairError};
pub use photo::LARGEST_PHOTO;
pub use places::photos::{AboutPhoto, KeptPhoto};

use carried::OnTheirWay;
use eavebook_core::book::edition::Edition;
use eavebook_store::{Packets, Photos, Store, TransferFiles};
use eavebook_sync::Wake;
use packet_files::PacketFile;
use places::Answer;
use places::job_file::{self, Made, ToMake, Wanted};
use places::today::{self, Pretend};
use refusal::{Refusal, RequestRefusal};
use reply::{Reply, Sentence};
use request::Request;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use uuid::Uuid;

/// An open field book with its one door.
#[derive(Debug)]
pub struct App {
    book: Arc<Mutex<Store>>,
    /// Ends a rest of the exchange with the hub, where there is one.
    wake: Mutex<Arc<Wake>>,
    /// The hub on this machine, where it is one.
    shares: Mutex<Option<Box<dyn HubHost>>>,
    /// They lie beside the book and are asked without its lock.
    photos: Photos,
    packets: Packets,
    carried: TransferFiles,
    on_their_way: Mutex<OnTheirWay>,
    /// Held while a packet is made: of two askers the second finds what the first made.
    making: Mutex<()>,
}

impl App {
    /// Opens the field book in a folder, or begins one there.
    ///
    /// # Errors
    /// In use, newer, damaged, full, denied: one sentence, and nothing was changed.
    pub fn open(dir: &Path) -> Result<App, StoreError> {
        let mut book = Store::open(dir)?;
        if book.device().is_none() {
            book.set_device(stamp::device())?;
        }
        book.sweep(stamp::a_day_ago())?;
        job_file::sweep(&book)?;
        book.transfer_files().empty()?;
        Ok(App {
            photos: book.photos(),
            packets: book.packets(),
            carried: book.transfer_files(),
            on_their_way: Mutex::default(),
            book: Arc::new(Mutex::new(book)),
            wake: Mutex::default(),
            shares: Mutex::default(),
            making: Mutex::new(()),
        })
    }

    /// Carries out one request. Whatever goes wrong is a refusal in words, and changed nothing.
    #[must_use]
    pub fn handle(&self, request: Request) -> Reply {
        let making = matches!(request, Request::MakePacket { .. }).then(|| held(&self.making));
        let told = self.asked(|book| places::answer(book, request));
        let told = told.and_then(|answer| match answer {
            Answer::Now(reply) => Ok(reply),
            Answer::Make(to_make) => {
                let made = self.make(*to_make)?;
                self.asked(|book| job_file::reply(book, made.job, Some(made.id)))
            }
            Answer::Join(link) => self.join(&link),
            Answer::Invite => self.invite(),
        });
        drop(making);
        let mut reply = said(told);
        if let Reply::Copies(view) = &mut reply {
            view.shares = held(&self.shares).is_some();
        }
        reply
    }

    /// Makes a packet, or finds it where it was made before.
    ///
    /// # Errors
    /// Says why none was made; the book is as it was.
    pub fn packet(&self, job: Uuid, edition: Edition, wanted: Wanted) -> Result<Made, Refusal> {
        let _making = held(&self.making);
        self.make(self.asked(|book| job_file::to_make(book, job, edition, wanted))?)
    }

    /// The job begun last.
    ///
    /// # Errors
    /// `NoJobs`.
    pub fn newest_job(&self) -> Result<Uuid, Refusal> {
        self.asked(|book| {
            book.books()?
                .last()
                .copied()
                .ok_or(RequestRefusal::NoJobs.into())
        })
    }

    /// Puts a copy of a packet into a folder, whole or not at all.
    ///
    /// # Errors
    /// Full, denied, of that folder.
    pub fn copy_packet(&self, packet: &Path, to: &Path) -> Result<PathBuf, StoreError> {
        self.packets.copy_out(packet, to)
    }

    /// Saves a packet, or one file in it, in a folder of the machine, and says where or why not.
    #[must_use]
    pub fn save_packet_file(&self, id: &str, path: Option<&str>, folder: &Path) -> Sentence {
        packet_files::save(&self.packets, id, path, folder)
    }

    /// A packet whole, or one file in it, by its id.
    #[must_use]
    pub fn packet_file(&self, id: &str, path: Option<&str>) -> Option<PacketFile> {
        packet_files::read(&self.packets, id, path)
    }

    /// Three steps: the middle one takes seconds and needs no book.
    fn make(&self, to_make: ToMake) -> Result<Made, Refusal> {
        let made = unbroken(|| to_make.make(&self.photos, &self.packets))?;
        self.asked(|book| made.book(book))?;
        Ok(made)
    }

    /// Keeps a photo beside the book: on disk and hashed before anything refers to it.
    #[must_use]
    pub fn keep_photo(&self, bytes: &[u8], about: &AboutPhoto) -> Reply {
        self.guarded(|book| places::photos::keep(book, bytes, about))
    }

    /// A photo by its name in the photo folder.
    #[must_use]
    pub fn photo(&self, sha256: &str) -> Option<KeptPhoto> {
        places::photos::read(&held(&self.book), sha256).ok()
    }

    /// Begins a job for the pretend house.
    #[must_use]
    pub fn start_pretend(&self, address: &str) -> Reply {
        self.guarded(|book| {
            let job = today::begin(book, address, Pretend::Yes)?;
            places::job::reply(book, job)
        })
    }

    fn guarded(&self, work: impl FnOnce(&mut Store) -> Result<Reply, Refusal>) -> Reply {
        said(self.asked(work))
    }

    /// Works on the book, alone.
    fn asked<T>(&self, work: impl FnOnce(&mut Store) -> Result<T, Refusal>) -> Result<T, Refusal> {
        let mut book = held(&self.book);
        // A panic cannot leave the book half changed: what it had begun in SQLite is rolled back.
        let before = book.device().map(|device| device.dseq);
        let told = unbroken(|| work(&mut book));
        if book.device().map(|device| device.dseq) != before {
            held(&self.wake).booked();
        }
        told
    }
}

/// A lock, whatever became of who held it before.
fn held<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Does a piece of work; where the program fails at it, that is a refusal too.
fn unbroken<T>(work: impl FnOnce() -> Result<T, Refusal>) -> Result<T, Refusal> {
    catch_unwind(AssertUnwindSafe(work)).unwrap_or_else(|_| Err(RequestRefusal::BrokeOff.into()))
}

fn said(told: Result<Reply, Refusal>) -> Reply {
    told.unwrap_or_else(|refusal| Reply::Refused(refusal.said()))
}

/// What is said where the program failed at a request.
#[must_use]
pub fn broken_off() -> Reply {
    Reply::Refused(RequestRefusal::BrokeOff.said())
}
