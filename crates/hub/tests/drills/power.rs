//! The power goes at every write of a hub at work.

use crate::disk::{Call, Disk, Found, Syncs, TRACE, calls};
use crate::size::size;
use crate::work::{Acknowledged, faults, worker};
use std::collections::BTreeMap;
use std::path::Path;
use std::process::{Command, Stdio};

/// Faults of a hub found so.
fn after_cut(files: &BTreeMap<String, Vec<u8>>, answered: &Acknowledged) -> Vec<String> {
    // In memory where there is such a folder: the cut is over, and nothing is left to sync.
    let memory = Path::new("/dev/shm");
    let dir = if memory.is_dir() {
        tempfile::tempdir_in(memory).unwrap()
    } else {
        tempfile::tempdir().unwrap()
    };
    for (name, bytes) in files {
        let file = dir.path().join(name);
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(file, bytes).unwrap();
    }
    faults(&dir.path().join("hub"), answered)
}

#[test]
fn the_power_goes_at_every_write_of_a_hub_and_nothing_it_answered_is_lost() {
    let (rounds, seeds) = (size("rounds", 6, 200), size("seeds", 1, 3));
    let dir = tempfile::tempdir().unwrap();
    let begun = worker(dir.path(), 3).stdout(Stdio::null()).status();
    assert!(begun.unwrap().success());
    let before = Disk::of(dir.path());
    let log = tempfile::NamedTempFile::new().unwrap();
    let work = worker(dir.path(), rounds);
    let mut traced = Command::new("strace");
    traced
        .args(TRACE)
        .arg("-o")
        .arg(log.path())
        .arg(work.get_program())
        .args(work.get_args())
        .stdout(Stdio::null());
    for (name, value) in work.get_envs() {
        traced.env(name, value.unwrap_or_default());
    }
    let ended = traced
        .status()
        .expect("strace is not here: apt-get install strace");
    assert!(ended.success());
    let calls = calls(&std::fs::read_to_string(log.path()).unwrap(), dir.path());

    let mut ways = vec![Found::Nothing, Found::Everything, Found::Torn];
    ways.extend((1..=seeds).map(|seed| Found::Some(seed * 1_000_003)));
    let (mut disk, mut blind) = (before.clone(), before);
    let (mut answered, mut cuts, mut lost_by_blind) = (Acknowledged::default(), 0, 0);
    for (place, call) in calls.iter().enumerate() {
        if let Call::Said(line) = call {
            line.lines().for_each(|line| answered.hear(line));
            if !after_cut(&blind.found(Found::Nothing), &answered).is_empty() {
                lost_by_blind += 1;
            }
            continue;
        }
        disk.call(call, Syncs::Honest);
        blind.call(call, Syncs::Ignored);
        for way in &ways {
            let found = after_cut(&disk.found(*way), &answered);
            assert_eq!(found, Vec::<String>::new(), "call {place}, {way:?}");
            cuts += 1;
        }
    }
    assert!(cuts > 100 && answered.entries.len() >= rounds && !answered.photos.is_empty());
    println!(
        "drill 2 hub: the power goes {cuts} times at a hub's work: 0 of {} entries and {} photos \
         answered lost, opens every time, {seeds} seeds",
        answered.entries.len(),
        answered.photos.len()
    );
    assert!(lost_by_blind > 0);
    println!(
        "drill 2 hub control: a disk that ignores syncs is seen to lose after {lost_by_blind} lines"
    );
}
