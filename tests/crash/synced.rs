//! The system calls of a writer, in order: nothing is said before the disk has been told to keep
//! it. Killing cannot show this, as the system's memory outlives a process.

use crate::writer;
use std::path::Path;
use std::process::{Command, Stdio};

/// One call that matters here.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Call {
    /// fsync or fdatasync of a file that ends so.
    Sync(String),
    /// A file got its name.
    Named(String),
    /// A line said on stdout.
    Said(String),
}

/// What a writer called, in order; none where there is no strace.
fn calls(manner: &str, count: &str) -> Option<Vec<Call>> {
    let strace = Command::new("strace")
        .arg("-V")
        .stdout(Stdio::null())
        .status();
    if strace.is_err() {
        println!("NOT RUN: there is no strace here; apt-get install strace");
        return None;
    }
    let dir = tempfile::tempdir().unwrap();
    let log = dir.path().join("calls");
    let book = dir.path().join("book");
    let writer = writer(&book, manner);
    let status = Command::new("strace")
        .args([
            "-f",
            "-y",
            "-s",
            "200",
            "-e",
            "trace=fsync,fdatasync,rename,renameat,renameat2,write",
        ])
        .arg("-o")
        .arg(&log)
        .arg(writer.get_program())
        .args(writer.get_args())
        .arg(count)
        .stdout(Stdio::null())
        .status()
        .unwrap();
    assert!(status.success(), "{status}");
    Some(read(&std::fs::read_to_string(&log).unwrap(), &book))
}

fn read(log: &str, book: &Path) -> Vec<Call> {
    let book = format!("{}/", std::fs::canonicalize(book).unwrap().display());
    log.lines()
        .filter_map(|line| {
            let (_, call) = line.trim_start().split_once(' ')?;
            let call = call.trim_start();
            if call.starts_with("fsync(") || call.starts_with("fdatasync(") {
                let path = call.split_once('<')?.1.split_once('>')?.0;
                assert!(call.ends_with("= 0"), "{call}");
                Some(Call::Sync(path.strip_prefix(&book)?.to_owned()))
            } else if call.starts_with("rename") {
                Some(Call::Named(
                    call.rsplit('"').nth(1)?.strip_prefix(&book)?.to_owned(),
                ))
            } else if call.starts_with("write(1<") {
                Some(Call::Said(
                    call.split('"').nth(1)?.trim_end_matches("\\n").to_owned(),
                ))
            } else {
                None
            }
        })
        .collect()
}

/// The calls that led to each line said.
fn before_each_line(calls: &[Call]) -> Vec<(&str, &[Call])> {
    let mut led = Vec::new();
    let mut from = 0;
    for (at, call) in calls.iter().enumerate() {
        if let Call::Said(line) = call {
            led.push((line.as_str(), &calls[from..at]));
            from = at + 1;
        }
    }
    led
}

fn is_log(call: &Call) -> bool {
    *call == Call::Sync("book.sqlite-wal".into())
}

/// Lines that were said with no sync of the log since the line before.
fn unsynced(calls: &[Call]) -> usize {
    before_each_line(calls)
        .iter()
        .filter(|(_, led)| !led.iter().any(is_log))
        .count()
}

#[test]
fn every_booking_is_synced_before_it_is_said() {
    let Some(calls) = calls("bookings", "100") else {
        return;
    };
    let syncs = calls
        .iter()
        .filter(|call| matches!(call, Call::Sync(_)))
        .count();
    println!("100 bookings, {syncs} syncs");
    assert_eq!(before_each_line(&calls).len(), 100);
    assert_eq!(unsynced(&calls), 0);
}

/// Also the proof that the count above can fail: it sees at once a connection that does not sync.
#[test]
fn a_key_press_waits_for_no_disk() {
    let Some(calls) = calls("keys", "100") else {
        return;
    };
    assert_eq!(before_each_line(&calls).len(), 100);
    assert!(unsynced(&calls) > 95, "{} of 100", unsynced(&calls));
}

#[test]
fn a_photo_has_bytes_then_name_then_folder_on_the_disk_before_an_entry_speaks_of_it() {
    let Some(calls) = calls("photos", "20") else {
        return;
    };
    let led = before_each_line(&calls);
    assert_eq!(led.len(), 20);
    for (line, led) in led {
        let sha256 = line.split(' ').nth(1).unwrap();
        let order = [
            Call::Sync("photos/arriving-0".into()),
            Call::Named(format!("photos/{sha256}")),
            Call::Sync("photos".into()),
            Call::Sync("book.sqlite-wal".into()),
        ];
        let mut rest = led.iter();
        let missing = order.iter().find(|call| !rest.any(|did| did == *call));
        assert_eq!(missing, None, "in {led:?}");
    }
}
