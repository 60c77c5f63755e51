//! Drills of the exchange over sockets: small in every run of the tests, large with
//! `EAVEBOOK_DRILL=full`.

use crate::breaks::cut_after;
use crate::size::size;
use crate::{IN_STEP, Yard};
use eavebook_hub::Transport;
use eavebook_sync::{Client, SyncStatus};
use std::sync::atomic::Ordering;
use uuid::Uuid;

#[test]
fn a_photo_cut_three_times_is_sent_again_by_at_most_a_part_for_each_cut() {
    const PART: usize = 1 << 20;
    const SEED: u64 = 20_261_127;
    let uploads: usize = size("uploads", 12, 1000);
    let yard = Yard::new(Transport::Plain);
    let mut mine = yard.paired("phone");
    let job = Uuid::now_v7();
    let mut chance = SEED;
    let mut most = 0;
    for upload in 0..uploads {
        let mut draw = |end: usize| {
            chance ^= chance << 13;
            chance ^= chance >> 7;
            chance ^= chance << 17;
            usize::try_from(chance).unwrap() % end
        };
        let length = PART + draw(3 * PART);
        let mut photo = vec![u8::try_from(upload % 251).unwrap(); length];
        photo[..8].copy_from_slice(&upload.to_be_bytes());
        let cuts = (0..3).map(|_| 2000 + draw(length) as u64).collect();
        let (way, carried) = cut_after(yard.address(), cuts);
        mine.books(job, Some(&photo));
        for _ in 0..8 {
            mine.round_by(Some(way));
            if *mine.status() == SyncStatus::InStep {
                break;
            }
        }
        assert_eq!(mine.status(), &SyncStatus::InStep, "upload {upload}");
        // Heads, questions and the entry itself: a few kilobytes a round.
        let again = carried
            .load(Ordering::SeqCst)
            .saturating_sub(length + 60_000);
        most = most.max(again);
        assert!(again <= 3 * PART, "upload {upload}: {again} bytes again");
    }
    let mut other = yard.paired("laptop");
    other.round_by(None);
    assert_eq!(other.copies(job), IN_STEP);
    let hub = yard.hub.as_ref().map(|hub| hub.url.clone());
    assert!(hub.is_some());
    println!(
        "drill 7: {uploads} photos each cut 3 times: all arrive whole, at most {most} bytes sent \
         again for 3 cuts, seed {SEED}"
    );
}

/// The most memory that this process held, in KiB.
fn most_memory() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    line.split_whitespace().nth(1)?.parse().ok()
}

#[test]
fn a_long_backlog_arrives_in_little_memory() {
    let (entries, photos): (usize, usize) =
        (size("entries", 4_000, 100_000), size("photos", 40, 5_000));
    let yard = Yard::new(Transport::Tls);
    let mut mine = yard.paired("phone");
    let job = Uuid::now_v7();
    for number in 0..entries {
        let photo = (number < photos).then(|| {
            let mut photo = vec![7; 60_000];
            photo[..8].copy_from_slice(&number.to_be_bytes());
            photo
        });
        mine.books(job, photo.as_deref());
    }
    mine.round_by(None);
    assert_eq!(mine.status(), &SyncStatus::InStep);
    let mut other = yard.paired("laptop");
    other.client = Client::new(2);
    other.round_by(None);
    assert_eq!(other.copies(job), IN_STEP);
    assert_eq!(other.ids().len(), entries);
    // Two phones and the hub in one process: below what the three may have together.
    let held = most_memory().map_or(0, |kib| kib / 1024);
    assert!(held < 150 + 150 + 300, "{held} MiB");
    println!(
        "drill 9: {entries} entries and {photos} photos over TLS to a hub and on to a second book, \
         at most {held} MiB for the three together"
    );
}
