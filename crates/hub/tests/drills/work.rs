//! A hub with a device that works on it, in a process of its own which is cut short; and what must
//! be found after.

use crate::talk::{Device, entry, pair};
use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::{RunningHub, Settings, Transport};
use rusqlite::Connection;
use std::collections::BTreeSet;
use std::io::Write;
use std::path::Path;
use std::process::Command;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

/// This test program, as the one that works in a folder.
pub fn worker(dir: &Path, rounds: usize) -> Command {
    let mut command = Command::new(std::env::current_exe().unwrap());
    command
        .args(["--exact", "work::works_when_asked_to", "--nocapture"])
        .env("EAVEBOOK_TEST_WORK", dir)
        .env("EAVEBOOK_TEST_ROUNDS", rounds.to_string());
    command
}

fn say(line: &str) {
    let mut out = std::io::stdout().lock();
    out.write_all(format!("{line}\n").as_bytes()).unwrap();
    out.flush().unwrap();
}

/// Begins the hub and works: an entry or three, now and then a photo, whole or in a part. Says a
/// line for each thing that the hub answered to have.
#[test]
fn works_when_asked_to() {
    let Some(dir) = std::env::var_os("EAVEBOOK_TEST_WORK") else {
        return;
    };
    let dir = Path::new(&dir);
    let rounds: u64 = std::env::var("EAVEBOOK_TEST_ROUNDS")
        .unwrap()
        .parse()
        .unwrap();
    let settings = Settings {
        transport: Transport::Plain,
        per_second: 1_000_000,
        ..Settings::new(&dir.join("hub"))
    };
    let running = match RunningHub::begin(&settings) {
        Ok(running) => running,
        Err(why) => {
            say(&format!("refused {why}"));
            return;
        }
    };
    let Some(device) = paired(dir, &running) else {
        say("refused to pair");
        return;
    };
    for round in 1..=rounds {
        let texts: Vec<String> = (0..1 + round % 3)
            .map(|n| entry(Uuid::now_v7(), JOB, device.id, round * 10 + n, "{}").to_string())
            .collect();
        let answer = device.push(&texts);
        if answer.status == 200 {
            for one in answer.json()["results"].as_array().unwrap() {
                say(&format!("entry {}", one["id"].as_str().unwrap()));
            }
        } else {
            say(&format!("refused {} {}", answer.status, answer.code()));
        }
        if round % 3 == 0 {
            let photo = format!("photo {round} {}", Uuid::now_v7())
                .repeat(40)
                .into_bytes();
            let name = sha256_hex(&photo);
            let path = format!("/v1/blobs/{name}");
            let answer = if round % 2 == 0 {
                device.ask("PUT", &path, &photo)
            } else {
                device.ask("PUT", &format!("{path}/parts/0"), &photo);
                let size = format!("{{\"size\":{}}}", photo.len());
                device.ask("POST", &format!("{path}/complete"), size.as_bytes())
            };
            if answer.status < 300 {
                say(&format!("photo {name}"));
            } else {
                say(&format!("refused {} {}", answer.status, answer.code()));
            }
        }
    }
    running.stop();
    say("ended");
}

/// The device of a folder: paired in the first run, the same in the next ones.
fn paired(dir: &Path, running: &RunningHub) -> Option<Device> {
    let file = dir.join("token");
    let id = Uuid::from_u128(0xd);
    let token = match std::fs::read_to_string(&file) {
        Ok(token) => token,
        Err(_) => {
            let code = eavebook_hub::code(&dir.join("hub"), "Ridge", None).ok()?;
            let answer = pair(running.address, &code.typed, id);
            if answer.status != 201 {
                return None;
            }
            let token = answer.json()["token"].as_str().unwrap().to_owned();
            std::fs::write(&file, &token).unwrap();
            token
        }
    };
    let mut device = Device {
        id,
        token,
        at: running.address,
        epoch: String::new(),
    };
    let hello = device.get("/v1/hello");
    if hello.status != 200 {
        return None;
    }
    device.epoch = hello.json()["epoch"].as_str().unwrap().to_owned();
    Some(device)
}

/// What was answered to be kept.
#[derive(Clone, Debug, Default)]
pub struct Acknowledged {
    pub entries: BTreeSet<String>,
    pub photos: BTreeSet<String>,
    pub refused: usize,
}

impl Acknowledged {
    pub fn hear(&mut self, line: &str) {
        match line.trim().split_once(' ') {
            Some(("entry", id)) => {
                self.entries.insert(id.to_owned());
            }
            Some(("photo", name)) => {
                self.photos.insert(name.to_owned());
            }
            Some(("refused", _)) => self.refused += 1,
            Some(_) | None => {}
        }
    }

    pub fn count(&self) -> usize {
        self.entries.len() + self.photos.len()
    }
}

/// Faults of the hub in a folder, against what was answered.
pub fn faults(hub: &Path, answered: &Acknowledged) -> Vec<String> {
    // It opens as a command opens it.
    if let Err(why) = eavebook_hub::devices(hub) {
        return if answered.count() == 0 {
            Vec::new()
        } else {
            vec![format!("does not open: {why}")]
        };
    }
    let conn = Connection::open(hub.join("hub.sqlite")).unwrap();
    let all = |sql: &str| -> Vec<String> {
        let mut query = conn.prepare(sql).unwrap();
        let rows = query.query_map([], |row| row.get(0)).unwrap();
        rows.map(Result::unwrap).collect()
    };
    let mut faults = Vec::new();
    let sound = all("PRAGMA integrity_check");
    if sound != ["ok"] {
        faults.push(format!("unsound: {sound:?}"));
    }
    let ids: BTreeSet<String> = all("SELECT id FROM entries").into_iter().collect();
    let lost = answered.entries.difference(&ids);
    faults.extend(lost.map(|id| format!("entry {id} is lost")));
    let gap = "SELECT name || ' has ' || seq FROM companies c WHERE seq <> (SELECT count(*) FROM
               entries WHERE company = c.id) OR seq <> count";
    faults.extend(all(gap));
    let photos: BTreeSet<String> = all("SELECT sha256 FROM blobs").into_iter().collect();
    let lost = answered.photos.difference(&photos);
    faults.extend(lost.map(|name| format!("photo {name} is lost")));
    for name in &photos {
        let file = hub.join("blobs/1").join(&name[..2]).join(name);
        let bytes = std::fs::read(file).unwrap_or_default();
        if sha256_hex(&bytes) != *name {
            faults.push(format!("photo {name} is not whole"));
        }
    }
    faults
}
