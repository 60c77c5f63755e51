//! kill -9 of a hub at work.

use crate::noise::Noise;
use crate::size::size;
use crate::work::{Acknowledged, faults, worker};
use std::io::{BufRead, BufReader};
use std::process::Stdio;
use std::time::Duration;

#[test]
fn a_hub_killed_at_work_again_and_again_has_all_it_answered_to_have() {
    const SEED: u64 = 20_261_126;
    let kills = size("kills", 12, 1000);
    let dir = tempfile::tempdir().unwrap();
    let (mut answered, mut noise) = (Acknowledged::default(), Noise(SEED));
    for kill in 0..kills {
        let mut child = worker(dir.path(), 100_000)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let hears = std::thread::spawn(move || lines.map_while(Result::ok).collect::<Vec<_>>());
        // From within its opening to some hundred lines on.
        std::thread::sleep(Duration::from_millis(20 + noise.below(400)));
        child.kill().unwrap();
        child.wait().unwrap();
        for line in hears.join().unwrap() {
            answered.hear(&line);
        }
        let found = faults(&dir.path().join("hub"), &answered);
        assert_eq!(found, Vec::<String>::new(), "kill {kill}");
    }
    assert!(answered.count() > kills && answered.refused == 0);
    println!(
        "drill 1 hub: {kills} kills, {} entries and {} photos answered, 0 lost, sound each time, \
         seed {SEED}",
        answered.entries.len(),
        answered.photos.len()
    );
}
