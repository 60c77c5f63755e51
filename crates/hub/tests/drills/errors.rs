//! A disk that fails, or is full, at one call of a hub at work: at the first of each thread, at the
//! second, and so on to the last.

use crate::size::full;
use crate::work::{Acknowledged, faults, worker};
use std::process::{Command, Stdio};

/// The calls that reach the disk and no socket.
const CALLS: &str = "pwrite64,fsync,fdatasync,ftruncate,rename";

#[test]
fn a_disk_that_fails_at_any_one_call_loses_nothing_and_the_hub_goes_on() {
    let (step, most) = if full() { (1, u32::MAX) } else { (5, 20) };
    let (mut runs, mut refusals, mut answers) = (0, 0, 0);
    for error in ["EIO", "ENOSPC"] {
        let mut at = 1;
        loop {
            let dir = tempfile::tempdir().unwrap();
            let begun = worker(dir.path(), 1).stdout(Stdio::null()).status();
            assert!(begun.unwrap().success());
            let work = worker(dir.path(), 6);
            let mut failing = Command::new("strace");
            failing
                .args(["-f", "-qq", "-e"])
                .arg(format!("trace={CALLS}"))
                .arg("-e")
                .arg(format!("inject={CALLS}:error={error}:when={at}"))
                .arg("-o")
                .arg(dir.path().join("log"))
                .arg(work.get_program())
                .args(work.get_args());
            for (name, value) in work.get_envs() {
                failing.env(name, value.unwrap_or_default());
            }
            let refusal = failing
                .output()
                .expect("strace is not here: apt-get install strace");
            let lines = String::from_utf8_lossy(&refusal.stdout).into_owned();
            let mut answered = Acknowledged::default();
            lines.lines().for_each(|line| answered.hear(line));
            let log = std::fs::read_to_string(dir.path().join("log")).unwrap_or_default();
            let hub = dir.path().join("hub");
            let found = faults(&hub, &answered);
            assert_eq!(
                found,
                Vec::<String>::new(),
                "{error} at call {at}: {lines} {log}"
            );
            assert!(refusal.status.success(), "{error} at call {at}: {lines}");
            // It refuses to begin, with the remedy, or works on to its end; the next one begins.
            let ended = lines.lines().any(|line| line == "ended");
            let refused = lines.contains("refused the ") && lines.contains("do it again");
            assert!(ended || refused, "{error} at call {at}: {lines}");
            let after = worker(dir.path(), 1).output().unwrap();
            let after = String::from_utf8_lossy(&after.stdout).into_owned();
            assert!(
                after.contains("entry ") && !after.contains("refused"),
                "{after}"
            );
            runs += 1;
            refusals += answered.refused;
            answers += answered.count();
            // strace writes down the call that it made fail; where there is none, all had their turn.
            if !log.contains("INJECTED") || at > most {
                break;
            }
            at += step;
        }
    }
    assert!(refusals > 0);
    println!(
        "drill 3 hub: {runs} runs with the n-th call of each thread failing (EIO, ENOSPC), {refusals} refused in words, \
         0 of {answers} answered lost, taken again after"
    );
}
