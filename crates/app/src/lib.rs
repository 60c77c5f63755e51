//! The one boundary: requests in, replies out; used by the shell and by localhost.

pub mod demo;
pub mod draft;
pub mod localhost;
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

pub use eavebook_store::StoreError;
pub use photo::LARGEST_PHOTO;
pub use places::photos::{AboutPhoto, KeptPhoto};

use eavebook_store::Book;
use places::today::{self, Pretend};
use refusal::{Refusal, Unfit};
use reply::Reply;
use request::Request;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::sync::{Mutex, PoisonError};

/// An open field book with its one door.
#[derive(Debug)]
pub struct App {
    book: Mutex<Book>,
}

impl App {
    /// Opens the field book in a folder, or begins one there.
    ///
    /// # Errors
    /// In use, newer, damaged, full, denied: one sentence, and nothing was changed.
    pub fn open(dir: &Path) -> Result<App, StoreError> {
        let mut book = Book::open(dir)?;
        if book.device().is_none() {
            book.set_device(stamp::device())?;
        }
        book.sweep(stamp::a_day_ago())?;
        Ok(App {
            book: Mutex::new(book),
        })
    }

    /// Carries out one request. Whatever goes wrong is a refusal in words, and changed nothing.
    #[must_use]
    pub fn handle(&self, request: Request) -> Reply {
        self.guarded(|book| places::answer(book, request))
    }

    /// Keeps a photo beside the book: on disk and hashed before anything refers to it.
    #[must_use]
    pub fn keep_photo(&self, bytes: &[u8], about: &AboutPhoto) -> Reply {
        self.guarded(|book| places::photos::keep(book, bytes, about))
    }

    /// A photo by its name in the photo folder.
    #[must_use]
    pub fn photo(&self, sha256: &str) -> Option<KeptPhoto> {
        let book = self.book.lock().unwrap_or_else(PoisonError::into_inner);
        places::photos::read(&book, sha256).ok()
    }

    /// Begins a job for the pretend house.
    #[must_use]
    pub fn start_pretend(&self, address: &str) -> Reply {
        self.guarded(|book| {
            let job = today::begin(book, address, Pretend::Yes)?;
            places::job::reply(book, job)
        })
    }

    fn guarded(&self, work: impl FnOnce(&mut Book) -> Result<Reply, Refusal>) -> Reply {
        // A panic cannot leave the book half changed: what it had begun in SQLite is rolled back.
        let mut book = self.book.lock().unwrap_or_else(PoisonError::into_inner);
        match catch_unwind(AssertUnwindSafe(|| work(&mut book))) {
            Ok(Ok(reply)) => reply,
            Ok(Err(refusal)) => Reply::Refused(refusal.said()),
            Err(_) => broken_off(),
        }
    }
}

/// What is said where the program failed at a request.
#[must_use]
pub fn broken_off() -> Reply {
    Reply::Refused(Unfit::BrokeOff.said())
}
