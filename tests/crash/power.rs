//! The power goes at every write: what the disk had been told to keep is there, of the rest nothing,
//! all, a torn piece or any part in any order.
//!
//! The system calls of a writer are recorded with their bytes, and the disk is built anew as it may
//! be found after a cut at each of them. A disk whose syncs do nothing must be seen to lose what was
//! acknowledged, or this would test nothing.

use crate::disk::{self, Call, Disk, Found, Syncs, TRACE};
use crate::killed::{Acknowledged, faults};
use crate::size::size;
use crate::writer;
use std::collections::BTreeMap;
use std::path::Path;
use std::process::{Command, Stdio};

/// What a writer called over a book, in order.
fn calls(book: &Path, count: &str) -> Vec<Call> {
    let log = book.with_extension("calls");
    let writer = writer(book, "honest");
    let status = Command::new("strace")
        .args(TRACE)
        .arg("-o")
        .arg(&log)
        .arg(writer.get_program())
        .args(writer.get_args())
        .arg(count)
        .stdout(Stdio::null())
        .status()
        .unwrap();
    assert!(status.success(), "{status}");
    disk::calls(&std::fs::read_to_string(&log).unwrap(), book)
}

/// Faults of a book found so, against what was acknowledged. Half-typed keys are promised to outlive
/// a kill, not a cut.
fn after_cut(files: &BTreeMap<String, Vec<u8>>, told: &Acknowledged) -> Vec<String> {
    let dir = tempfile::tempdir().unwrap();
    std::fs::create_dir(dir.path().join("photos")).unwrap();
    std::fs::create_dir(dir.path().join("packets")).unwrap();
    for (name, bytes) in files {
        let file = dir.path().join(name);
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(file, bytes).unwrap();
    }
    let mut seen = faults(dir.path(), told);
    seen.retain(|fault| !fault.starts_with("keys "));
    seen
}

#[test]
fn the_power_goes_at_every_write_and_nothing_acknowledged_is_lost() {
    if Command::new("strace")
        .arg("-V")
        .stdout(Stdio::null())
        .status()
        .is_err()
    {
        println!("NOT RUN: there is no strace here; apt-get install strace");
        return;
    }
    let (count, seeds) = (
        size::<u32>("rounds", 15, 200).to_string(),
        size("seeds", 1, 3),
    );
    let count = count.as_str();
    let dir = tempfile::tempdir().unwrap();
    let book = dir.path().join("book");
    let begun = writer(&book, "honest")
        .arg("5")
        .stdout(Stdio::null())
        .status();
    assert!(begun.unwrap().success());
    let before = Disk::of(&book);
    let calls = calls(&book, count);
    let said = calls
        .iter()
        .filter(|call| matches!(call, Call::Said(_)))
        .count();
    assert_eq!(said, count.parse::<usize>().unwrap());

    let mut ways = vec![Found::Nothing, Found::Everything, Found::Torn];
    ways.extend((1..=seeds).map(|seed| Found::Some(seed * 1_000_003)));
    let (mut disk, mut told, mut cuts) = (before.clone(), Acknowledged::default(), 0);
    let (mut blind, mut lost_by_blind) = (before, 0);
    for (place, call) in calls.iter().enumerate() {
        if let Call::Said(line) = call {
            told.hear(std::slice::from_ref(line));
            if !after_cut(&blind.found(Found::Nothing), &told).is_empty() {
                lost_by_blind += 1;
            }
            continue;
        }
        disk.call(call, Syncs::Honest);
        blind.call(call, Syncs::Ignored);
        for way in &ways {
            let seen = after_cut(&disk.found(*way), &told);
            assert_eq!(seen, Vec::<String>::new(), "call {place}, {way:?}");
            cuts += 1;
        }
    }
    assert!(cuts > 100 && told.lines == said, "{cuts} cuts");
    println!(
        "drill 2: the power goes {cuts} times, at each of {} calls: 0 of {said} acknowledged lost, \
         opens every time, {seeds} seeds",
        calls.len() - said
    );
    assert!(lost_by_blind > 0);
    println!(
        "drill 2 control: a disk that ignores syncs is seen to lose after {lost_by_blind} of {said} lines"
    );
}
