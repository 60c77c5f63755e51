//! One program at a time: a lock of the operating system, which goes when its holder does, also
//! by kill -9.

use crate::error::{StoreError, StoreFolder};
use std::fs::{File, OpenOptions, TryLockError};
use std::io::{Read, Seek, Write};

const NAME: &str = "book.lock";

/// Takes the lock of the folder; it is held until the file is dropped.
pub(crate) fn take(root: &StoreFolder) -> Result<File, StoreError> {
    let path = root.0.join(NAME);
    let mut file = OpenOptions::new()
        .read(true)
        .write(true)
        .create(true)
        .truncate(false)
        .open(&path)
        .map_err(|why| root.io(&path, why))?;
    match file.try_lock() {
        Ok(()) => {}
        Err(TryLockError::WouldBlock) => {
            return Err(StoreError::InUse {
                dir: root.dir(),
                holder: holder(&mut file),
            });
        }
        Err(TryLockError::Error(why)) => return Err(root.io(&path, why)),
    }
    // Only so that the next one can be told whom to close: on a full disk it is not told.
    let _ = file
        .set_len(0)
        .and_then(|()| file.rewind())
        .and_then(|()| write!(file, "{}", std::process::id()));
    Ok(file)
}

fn holder(file: &mut File) -> String {
    let mut text = String::new();
    let process = file
        .read_to_string(&mut text)
        .ok()
        .and_then(|_| text.trim().parse::<u32>().ok());
    process
        .map(|id| format!(" (process {id})"))
        .unwrap_or_default()
}
