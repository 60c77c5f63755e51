//! Files carried by hand, for where there is no network: a copy of another book or the firm's packet
//! of a job comes in, a copy of this book goes out. The command line and both doors of the page come
//! here.

use crate::refusal::{Refusal, RequestRefusal};
use crate::reply::{BookCopyView, CarriedView, Reply, Sentence};
use crate::{App, held, said, stamp, unbroken, view};
use eavebook_packet::{VerifyError, carried, file_in};
use eavebook_store::{BackupError, FileProgress, ImportReport, ImportSource, StoreError, backup};
use serde::Deserialize;
use std::fs::File;
use std::io::Read;
use std::path::Path;
use uuid::Uuid;

/// The longest piece in which a file comes in: 8 MiB.
pub const LARGEST_PIECE: usize = 8 * 1024 * 1024;

/// A photo in a packet that is larger is not unpacked, bytes.
const LONGEST_PHOTO: u64 = 64 << 20;

/// So many jobs are called by their address.
const NAMED_JOBS: usize = 3;

/// What goes with a piece of a file that is carried in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub struct AboutPiece {
    /// Which file: a fresh id.
    pub file: Uuid,
    /// Bytes of the file before this piece.
    pub at: u64,
    /// Bytes of the whole file.
    pub whole: u64,
}

/// Files on their way by hand, as far as they are remembered.
#[derive(Debug, Default)]
pub(crate) struct OnTheirWay {
    /// What was brought last, so that its last piece said twice is answered the same.
    brought: Option<(Uuid, Sentence)>,
    /// A copy that was made and not fetched yet.
    copy: Option<Uuid>,
}

/// Why a file carried by hand was not taken in.
#[derive(Debug, thiserror::Error)]
pub enum ImportError {
    /// A backup.
    #[error(transparent)]
    Backup(#[from] BackupError),
    /// A packet.
    #[error("nothing was brought: {0}")]
    Packet(#[from] VerifyError),
    /// The book.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl ImportError {
    /// The same of a file that came without a name.
    fn of_this_file(self) -> ImportError {
        match self {
            ImportError::Backup(BackupError::Damaged { what, .. }) => {
                let file = "this file".to_owned();
                ImportError::Backup(BackupError::Damaged { file, what })
            }
            other @ (ImportError::Backup(_) | ImportError::Packet(_) | ImportError::Store(_)) => {
                other
            }
        }
    }
}

impl App {
    /// Takes in a file carried by hand: a backup of another book, or the firm's packet of a job. Which
    /// it is, its first bytes say. It is proved whole first; the book is held for one photo or one job
    /// at a time. Tells what came.
    ///
    /// # Errors
    /// Damaged or of another sort: nothing was changed. The disk: what came is kept, and the rest comes
    /// with the next try.
    pub fn bring(&self, file: &Path) -> Result<Sentence, ImportError> {
        let mut brought = ImportReport::default();
        // Photos first: what an entry names is on the disk before it.
        if is_packet(file) {
            let carried = carried(file)?;
            for path in &carried.photos {
                let bytes = file_in(file, path, LONGEST_PHOTO)?;
                held(&self.book).import_photo(&mut bytes.as_slice(), &mut brought)?;
            }
            self.import_entries(&carried.entries, &mut brought)?;
        } else {
            let carried = ImportSource::prove(file, &self.carried.place(Uuid::new_v4())?)?;
            for mut photo in carried.photos()? {
                held(&self.book).import_photo(&mut photo, &mut brought)?;
            }
            for entries in carried.jobs()? {
                self.import_entries(&entries?, &mut brought)?;
            }
        }
        // None of it is at a hub because it was carried.
        held(&self.wake).booked();
        Ok(view::copies::brought(&brought, &self.addresses(&brought)?))
    }

    fn import_entries(
        &self,
        entries: &[eavebook_core::book::entry::Entry],
        brought: &mut ImportReport,
    ) -> Result<(), StoreError> {
        held(&self.book).import_entries(entries, brought, stamp::now_ms(), Uuid::new_v4())
    }

    fn addresses(&self, brought: &ImportReport) -> Result<Vec<String>, StoreError> {
        let named = brought.jobs.iter().take(NAMED_JOBS);
        named
            .map(|job| Ok(held(&self.book).folded(*job)?.book.address.clone()))
            .collect()
    }

    /// Takes a piece of a file that is carried in; with the last one the file is brought. Pieces come in
    /// their order, and one may come twice.
    #[must_use]
    pub fn carry_in(&self, piece: &[u8], about: AboutPiece) -> Reply {
        said(unbroken(|| self.carried_in(piece, about)))
    }

    fn carried_in(&self, piece: &[u8], about: AboutPiece) -> Result<Reply, Refusal> {
        let mut on_their_way = held(&self.on_their_way);
        let before = on_their_way.brought.as_ref();
        if let Some((_, said)) = before.filter(|(file, _)| *file == about.file) {
            return Ok(came(Some(said.clone())));
        }
        match (self.carried).write_piece(about.file, piece, about.at, about.whole)? {
            FileProgress::Gap => Err(RequestRefusal::FileCutOff.into()),
            FileProgress::InPart => Ok(came(None)),
            FileProgress::All => {
                let brought = self.bring(&self.carried.place(about.file)?);
                self.carried.forget(about.file);
                let said = brought.map_err(ImportError::of_this_file)?;
                on_their_way.brought = Some((about.file, said.clone()));
                Ok(came(Some(said)))
            }
        }
    }

    /// Makes a copy of this book as a file, to be fetched once by [`App::take_copy`]. Keys are booked
    /// meanwhile.
    #[must_use]
    pub fn make_copy(&self) -> Reply {
        let make = || {
            let mut on_their_way = held(&self.on_their_way);
            if let Some(before) = on_their_way.copy.take() {
                self.carried.forget(before);
            }
            let file = Uuid::new_v4();
            let name = stamp::name_of_copy();
            let holds = backup(&self.dir(), &self.carried.place(file)?)?;
            on_their_way.copy = Some(file);
            let said = view::copies::copied(&name, holds);
            Ok(Reply::BookCopy(BookCopyView { file, name, said }))
        };
        said(unbroken(make))
    }

    /// The file of a copy that was made, which goes away once it is read.
    #[must_use]
    pub fn take_copy(&self, file: Uuid) -> Option<File> {
        let mut on_their_way = held(&self.on_their_way);
        on_their_way.copy.take_if(|copy| *copy == file)?;
        let taken = File::open(self.carried.place(file).ok()?).ok();
        self.carried.forget(file);
        taken
    }

    /// Saves a copy of this book in a folder of the machine, and says where or why not.
    #[must_use]
    pub fn save_copy(&self, folder: &Path) -> Sentence {
        let save = || {
            // Where it cannot be made, the copy says so.
            let _ = std::fs::create_dir_all(folder);
            let file = folder.join(stamp::name_of_copy());
            let holds = backup(&self.dir(), &file)?;
            Ok(view::copies::copied(&file.display(), holds))
        };
        unbroken(save).unwrap_or_else(|refusal| refusal.said())
    }

    fn dir(&self) -> std::path::PathBuf {
        held(&self.book).dir().to_path_buf()
    }
}

fn came(said: Option<Sentence>) -> Reply {
    Reply::Carried(CarriedView { said })
}

/// Whether a file begins as a zip does. One that cannot be read is none: who opens it says why.
fn is_packet(file: &Path) -> bool {
    let mut first = [0; 4];
    let read = File::open(file).and_then(|mut file| file.read_exact(&mut first));
    read.is_ok() && first == *b"PK\x03\x04"
}
