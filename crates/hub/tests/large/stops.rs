//! The database stops at once, as if its machine lost power to the process, under a hub at work.

use crate::cluster::Cluster;
use crate::size::size;
use crate::stores;
use crate::talk::{Device, Yard};
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Duration;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

/// The hub's folder names this database instead.
fn move_to(dir: &Path, cluster: &Cluster) {
    let toml = std::fs::read_to_string(dir.join("hub.toml")).unwrap();
    let other = stores::connect(dir);
    stores::write(dir, &toml.replace(&other, &cluster.by_socket()));
}

#[test]
fn a_database_that_stops_at_once_again_and_again_keeps_what_was_answered_and_the_hub_goes_on() {
    let stops = size("stops", 3, 200);
    let cluster = Cluster::begin();
    let mut yard = Yard::new();
    yard.hub.take().unwrap().stop();
    move_to(yard.folder(), &cluster);
    yard.hub = Some(eavebook_hub::RunningHub::begin(&yard.settings).unwrap());
    let writers: Vec<Device> = (0..4).map(|_| yard.device("Ridge")).collect();
    let done = AtomicBool::new(false);
    let (mut answered, mut refused) = (BTreeSet::new(), 0);
    thread::scope(|all| {
        let writes: Vec<_> = writers
            .iter()
            .map(|writer| {
                let done = &done;
                all.spawn(move || {
                    let (mut answered, mut refused, mut count) = (BTreeSet::new(), 0, 0);
                    while !done.load(Ordering::SeqCst) {
                        count += 1;
                        let entry = writer.entry(JOB, count, "{}");
                        let answer = writer.push(&[entry.to_string()]);
                        if answer.status == 200 {
                            answered.insert(entry["id"].as_str().unwrap().to_owned());
                        } else {
                            // Refused in words, to be said again.
                            assert_eq!(
                                (answer.status, answer.code()),
                                (503, "unavailable".to_owned())
                            );
                            refused += 1;
                            thread::sleep(Duration::from_millis(20));
                        }
                    }
                    (answered, refused)
                })
            })
            .collect();
        for _ in 0..stops {
            thread::sleep(Duration::from_millis(400));
            cluster.stop_at_once();
            thread::sleep(Duration::from_millis(100));
            cluster.start("");
        }
        thread::sleep(Duration::from_millis(500));
        done.store(true, Ordering::SeqCst);
        for write in writes {
            let (more, no) = write.join().unwrap();
            answered.extend(more);
            refused += no;
        }
    });
    let feed = writers[0].feed();
    let numbers: Vec<u64> = feed.iter().map(|(seq, _)| *seq).collect();
    assert_eq!(numbers, (1..=numbers.len() as u64).collect::<Vec<_>>());
    let there: BTreeSet<String> = feed
        .iter()
        .map(|(_, entry)| entry["id"].as_str().unwrap().to_owned())
        .collect();
    let lost: Vec<&String> = answered.difference(&there).collect();
    assert!(lost.is_empty(), "{lost:?}");
    assert!(answered.len() > 20 && refused > 0);
    yard.hub.take().unwrap().stop();
    println!(
        "drill 1 database: {stops} immediate stops, {} entries answered, {refused} refused in words: \
         0 lost, feed without gap",
        answered.len()
    );
}
