//! Files carried by hand into this store, where there is no network: a backup of another store, or the
//! firm's packet of a job.

use crate::copies::reply::{CarriedView, CopiesReply};
use crate::copies::view;
use crate::open_store::OpenStore;
use crate::refusal::{ImportError, Refusal, RequestRefusal};
use crate::sentence::Sentence;
use crate::stamp;
use eavebook_core::book::entry::Entry;
use eavebook_packet::{carried, file_in};
use eavebook_store::{FileProgress, ImportReport, ImportSource, StoreError};
use serde::Deserialize;
use std::fs::File;
use std::io::Read;
use std::path::Path;
use uuid::Uuid;

/// The longest piece in which a file is sent: 8 MiB.
pub const LARGEST_PIECE: usize = 8 * 1024 * 1024;

/// The largest photo that is unpacked from a packet, bytes.
const LARGEST_PHOTO: u64 = 64 << 20;

/// How many imported jobs are named by their address.
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

/// Imports a file. Its first bytes show whether it is a packet or a backup. The file is proved whole
/// first; the store is locked for one photo or one job at a time.
///
/// # Errors
/// Damaged or of another kind: nothing was changed. The disk: what was imported is kept, and the rest
/// is imported by the next try.
pub fn import(open: &OpenStore, file: &Path) -> Result<Sentence, ImportError> {
    let mut report = ImportReport::default();
    // Photos first: what an entry names is on the disk before it.
    if is_packet(file) {
        let carried = carried(file)?;
        for path in &carried.photos {
            let bytes = file_in(file, path, LARGEST_PHOTO)?;
            let mut bytes = bytes.as_slice();
            open.lock().import_photo(&mut bytes, &mut report)?;
        }
        import_entries(open, &carried.entries, &mut report)?;
    } else {
        let source = ImportSource::prove(file, &open.transfer_files.place(Uuid::new_v4())?)?;
        for mut photo in source.photos()? {
            open.lock().import_photo(&mut photo, &mut report)?;
        }
        for entries in source.jobs()? {
            import_entries(open, &entries?, &mut report)?;
        }
    }
    // A file carried by hand puts nothing at a hub.
    open.wake();
    Ok(view::imported(&report, &addresses(open, &report)?))
}

fn import_entries(
    open: &OpenStore,
    entries: &[Entry],
    report: &mut ImportReport,
) -> Result<(), StoreError> {
    let mut store = open.lock();
    store.import_entries(entries, report, stamp::now_ms(), Uuid::new_v4())
}

fn addresses(open: &OpenStore, report: &ImportReport) -> Result<Vec<String>, StoreError> {
    let named = report.jobs.iter().take(NAMED_JOBS);
    named
        .map(|job| Ok(open.lock().folded(*job)?.book.address.clone()))
        .collect()
}

/// Takes a piece of a file that is carried in; the last one imports the file. Pieces come in their
/// order, and one may come twice.
///
/// # Errors
/// `FileCutOff`; those of [`import`].
pub fn carry_in(open: &OpenStore, piece: &[u8], about: AboutPiece) -> Result<CopiesReply, Refusal> {
    let mut transfers = open.transfers();
    let before = transfers.imported.as_ref();
    if let Some((_, imported)) = before.filter(|(file, _)| *file == about.file) {
        return Ok(carried_so_far(Some(imported.clone())));
    }
    let files = &open.transfer_files;
    match files.write_piece(about.file, piece, about.at, about.whole)? {
        FileProgress::Gap => Err(RequestRefusal::FileCutOff.into()),
        FileProgress::InPart => Ok(carried_so_far(None)),
        FileProgress::All => {
            let imported = import(open, &files.place(about.file)?);
            files.forget(about.file);
            let imported = imported.map_err(ImportError::of_this_file)?;
            transfers.imported = Some((about.file, imported.clone()));
            Ok(carried_so_far(Some(imported)))
        }
    }
}

fn carried_so_far(said: Option<Sentence>) -> CopiesReply {
    CopiesReply::Carried(CarriedView { said })
}

/// Whether a file begins as a zip does. `false` for one that cannot be read: opening it gives the
/// reason.
fn is_packet(file: &Path) -> bool {
    let mut first = [0; 4];
    let read = File::open(file).and_then(|mut file| file.read_exact(&mut first));
    read.is_ok() && first == *b"PK\x03\x04"
}
