//! A disk that is really full, and one on which files may not grow: a sentence, nothing changed,
//! and on again when there is space.

use crate::small_disk::SmallDisk;
use crate::writer;
use eavebook_app::reply::Reply;
use eavebook_app::request::{Edition, JobFileRequest};
use eavebook_app::{App, demo};
use eavebook_store::{DraftAfter, Store, StoreError};
use std::path::Path;
use std::process::{Command, Stdio};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(7);

fn put(book: &mut Store, text: &str) -> Result<(), StoreError> {
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
    let Some(disk) = SmallDisk::mount("2m") else {
        println!("NOT RUN: this user may not mount a small disk; the limit on files below was run");
        return;
    };
    let dir = disk.path().join("book");
    let mut book = Store::open(&dir).unwrap();
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
    let opened = Store::open(&dir).map(|_| ()).unwrap_err();
    assert_eq!(opened.to_string(), sentence);
    disk.free();
    assert_eq!(
        Store::open(&dir).unwrap().draft(JOB, "pad").unwrap(),
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
    let book = Store::open(dir.path()).unwrap();
    assert_eq!(book.entries(JOB).unwrap().whole.len(), said);
    drop(book);
    let status = writer(dir.path(), "bookings")
        .arg("10")
        .stdout(Stdio::null())
        .status()
        .unwrap();
    assert!(status.success());
    let book = Store::open(dir.path()).unwrap();
    assert_eq!(book.entries(JOB).unwrap().whole.len(), said + 10);
    println!(
        "drill 3: {said} booked until files could not grow, all there, 10 more without the limit"
    );
}

#[test]
fn a_packet_that_finds_no_room_is_refused_in_a_sentence_and_no_half_of_it_stays() {
    let Some(disk) = SmallDisk::mount("6m") else {
        println!("NOT RUN: this user may not mount a small disk");
        return;
    };
    let dir = disk.path().join("book");
    let app = App::open(&dir).unwrap();
    let job = demo::book(&app).unwrap().job;
    let edition = Edition::Owner;
    let make = || app.handle(JobFileRequest::MakePacket { job, edition });
    let Reply::Packets(before) = app.handle(JobFileRequest::Packets { job }) else {
        unreachable!()
    };
    let mut refused = 0;
    // Room for nothing, and for the most part of a packet.
    for room in [0, 100_000, 300_000] {
        disk.fill_but(room);
        let said = make();
        let Reply::Refused(why) = said else {
            unreachable!("{room} bytes are room for a packet: {said:?}")
        };
        assert_eq!(
            why.en,
            format!(
                "No room for the packet: 1 MB needed in {}. Nothing was sent; the book is as it \
                 was. Free some space, then make it again.",
                dir.join("packets").display()
            )
        );
        let there = std::fs::read_dir(dir.join("packets")).into_iter().flatten();
        assert_eq!(there.count(), 0, "something of a packet stays");
        assert_eq!(
            app.handle(JobFileRequest::Packets { job }),
            Reply::Packets(before.clone())
        );
        disk.free();
        refused += 1;
    }
    let Reply::Packets(view) = make() else {
        unreachable!()
    };
    let name = view.packets[0].file.as_ref().unwrap();
    eavebook_packet::check(&dir.join("packets").join(name)).unwrap();
    println!("{refused} times no room, each refused; then made and proved");
}
