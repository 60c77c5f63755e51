//! Copies of this store as files.

use crate::copies::reply::{BookCopyView, CopiesReply};
use crate::copies::view;
use crate::open_store::OpenStore;
use crate::refusal::Refusal;
use crate::sentence::Sentence;
use crate::stamp;
use eavebook_store::backup;
use std::fs::File;
use std::path::Path;
use uuid::Uuid;

/// Makes a copy as a file, to be fetched once by [`take`]. Keys are booked meanwhile.
///
/// # Errors
/// Full, denied; a store that cannot be read.
pub fn make(open: &OpenStore) -> Result<CopiesReply, Refusal> {
    let mut transfers = open.transfers();
    if let Some(before) = transfers.copy.take() {
        open.transfer_files.forget(before);
    }
    let file = Uuid::new_v4();
    let name = stamp::name_of_copy();
    let counts = backup(&open.dir(), &open.transfer_files.place(file)?)?;
    transfers.copy = Some(file);
    let said = view::copied(&name, counts);
    Ok(CopiesReply::BookCopy(BookCopyView { file, name, said }))
}

/// The file of a copy that was made, which is deleted once it is read.
#[must_use]
pub fn take(open: &OpenStore, file: Uuid) -> Option<File> {
    let mut transfers = open.transfers();
    transfers.copy.take_if(|copy| *copy == file)?;
    let taken = File::open(open.transfer_files.place(file).ok()?).ok();
    open.transfer_files.forget(file);
    taken
}

/// Saves a copy in a folder of the machine.
///
/// # Errors
/// Full, denied; a store that cannot be read.
pub fn save(open: &OpenStore, folder: &Path) -> Result<Sentence, Refusal> {
    // If the folder cannot be made, the backup fails with the reason.
    let _ = std::fs::create_dir_all(folder);
    let file = folder.join(stamp::name_of_copy());
    let counts = backup(&open.dir(), &file)?;
    Ok(view::copied(&file.display(), counts))
}
