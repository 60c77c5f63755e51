//! A disk that is really full, and one on which files may not grow: a sentence, nothing changed,
//! and on again when there is space.

use crate::writer;
use eavebook_store::{Book, DraftAfter, StoreError};
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(7);

/// A disk of its own in memory, while this lives.
struct SmallDisk(tempfile::TempDir);

impl SmallDisk {
    fn mount() -> Option<SmallDisk> {
        let dir = tempfile::tempdir().unwrap();
        let mount = Command::new("mount")
            .args(["-t", "tmpfs", "-o", "size=2m", "tmpfs"])
            .arg(dir.path())
            .stderr(Stdio::null())
            .status();
        mount
            .is_ok_and(|status| status.success())
            .then(|| SmallDisk(dir))
    }

    fn fill(&self) {
        let mut file = std::fs::File::create(self.0.path().join("other")).unwrap();
        let page = [1_u8; 4096];
        while file.write_all(&page).is_ok() {}
    }

    fn free(&self) {
        std::fs::remove_file(self.0.path().join("other")).unwrap();
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path()).status();
    }
}

fn put(book: &mut Book, text: &str) -> Result<(), StoreError> {
    book.append(
        &[],
        DraftAfter::Becomes {
            book: JOB,
            name: "pad",
            text,
        },
    )
    .map(|_| ())
}

#[test]
fn a_full_disk_refuses_in_a_sentence_keeps_what_was_and_goes_on_when_freed() {
    let Some(disk) = SmallDisk::mount() else {
        println!("NOT RUN: this user may not mount a small disk; the limit on files below was run");
        return;
    };
    let dir = disk.0.path().join("book");
    let mut book = Book::open(&dir).unwrap();
    put(&mut book, "42 ft").unwrap();
    disk.fill();
    let large = "7".repeat(300_000);
    let sentence = format!(
        "the disk that holds {} is full and nothing of this was kept: free some space, then do it \
         again",
        dir.display()
    );
    assert_eq!(put(&mut book, &large).unwrap_err().to_string(), sentence);
    assert_eq!(
        book.keep_draft(JOB, "pad", &large).unwrap_err().to_string(),
        sentence
    );
    let photo = book.put_photo(&mut large.as_bytes()).unwrap_err();
    assert_eq!(photo.to_string(), sentence);
    assert_eq!(std::fs::read_dir(dir.join("photos")).unwrap().count(), 0);
    assert_eq!(book.draft(JOB, "pad").unwrap().as_deref(), Some("42 ft"));
    disk.free();
    put(&mut book, &large).unwrap();
    book.put_photo(&mut large.as_bytes()).unwrap();
    drop(book);
    disk.fill();
    let opened = Book::open(&dir).map(|_| ()).unwrap_err();
    assert_eq!(opened.to_string(), sentence);
    disk.free();
    assert_eq!(
        Book::open(&dir).unwrap().draft(JOB, "pad").unwrap(),
        Some(large)
    );
}

/// Runs the writer where no file may grow past so many kibibytes; what it said, and its last words.
fn limited(dir: &Path, kib: u32) -> (usize, String) {
    let writer = writer(dir, "bookings");
    let limits = format!("trap '' XFSZ; ulimit -f {kib}; exec \"$0\" \"$@\"");
    let out = Command::new("bash")
        .args(["-c", &limits])
        .arg(writer.get_program())
        .args(writer.get_args())
        .arg("5000")
        .output()
        .unwrap();
    assert!(!out.status.success());
    let said = String::from_utf8_lossy(&out.stdout).lines().count();
    (said, String::from_utf8_lossy(&out.stderr).into_owned())
}

#[test]
fn where_files_may_not_grow_what_was_acknowledged_stays_and_work_goes_on_without_the_limit() {
    let dir = tempfile::tempdir().unwrap();
    let (said, words) = limited(dir.path(), 512);
    println!("{said} booked, then: {}", words.trim());
    assert!(said > 10, "{words}");
    assert!(words.starts_with(&format!(
        "the disk that holds {} failed",
        dir.path().display()
    )));
    assert!(
        words.contains("nothing of this was kept: do it again"),
        "{words}"
    );
    let book = Book::open(dir.path()).unwrap();
    assert_eq!(book.entries(JOB).unwrap().whole.len(), said);
    drop(book);
    let status = writer(dir.path(), "bookings")
        .arg("10")
        .stdout(Stdio::null())
        .status()
        .unwrap();
    assert!(status.success());
    let book = Book::open(dir.path()).unwrap();
    assert_eq!(book.entries(JOB).unwrap().whole.len(), said + 10);
}
