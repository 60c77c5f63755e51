//! The usual pair of stores: a file and a folder. `../large/stores.rs` is the other pair, under the
//! same suite.

#![allow(dead_code, reason = "each pair is asked for its own part")]

use std::path::Path;

/// What is set up in the folder of a hub before it begins.
pub fn prepare(_: &Path) {}

/// Makes all open codes older.
pub fn age_codes(dir: &Path, seconds: i64) {
    rusqlite::Connection::open(dir.join("hub.sqlite"))
        .and_then(|conn| conn.execute("UPDATE codes SET ends = ends - ?1", [seconds]))
        .unwrap();
}

/// All bytes that are kept of rows, each with where they lie.
pub fn kept(dir: &Path) -> Vec<(String, Vec<u8>)> {
    ["hub.sqlite", "hub.sqlite-wal"]
        .map(|file| {
            let bytes = std::fs::read(dir.join(file)).unwrap_or_default();
            (file.to_owned(), bytes)
        })
        .into()
}

fn photo(dir: &Path, sha256: &str) -> std::path::PathBuf {
    dir.join("blobs/1").join(&sha256[..2]).join(sha256)
}

/// Puts other bytes in the place of a photo of the first company.
pub fn rot(dir: &Path, sha256: &str, bytes: &[u8]) {
    std::fs::write(photo(dir, sha256), bytes).unwrap();
}

/// Takes the bytes of a photo of the first company away.
pub fn lose(dir: &Path, sha256: &str) {
    std::fs::remove_file(photo(dir, sha256)).unwrap();
}

/// That nothing waits to be folded in after a stop.
pub fn is_folded(dir: &Path) -> bool {
    let log = dir.join("hub.sqlite-wal");
    !log.exists() || std::fs::metadata(log).unwrap().len() == 0
}
