//! Two hubs over one database and one object store.

use crate::size::size;
use crate::stores;
use crate::talk::{Device, Yard, pair};
use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::{HubError, RunningHub, Settings};
use serde_json::json;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

/// The folder of a further hub: what the first one has of keys and where it keeps things.
pub fn beside(yard: &Yard, name: &str) -> PathBuf {
    let dir = yard.beside(name);
    std::fs::create_dir(&dir).unwrap();
    for file in ["hub.toml", "tls.key", "admin.token"] {
        std::fs::copy(yard.folder().join(file), dir.join(file)).unwrap();
    }
    dir
}

/// A further hub that serves.
pub fn second(yard: &Yard, dir: &Path) -> RunningHub {
    RunningHub::begin(&Settings {
        dir: dir.to_path_buf(),
        ..yard.settings.clone()
    })
    .unwrap()
}

#[test]
fn what_is_sent_to_one_is_heard_at_the_other_whose_wait_it_ends() {
    let yard = Yard::new();
    let other = second(&yard, &beside(&yard, "other"));
    let (writer, mut reader) = (yard.device("Ridge"), yard.device("Ridge"));
    reader.at = other.address;
    assert_eq!(reader.hello()["epoch"], writer.hello()["epoch"]);
    let waits = thread::spawn(move || {
        let began = Instant::now();
        (reader.get("/v1/feed?wait=25").json(), began.elapsed())
    });
    thread::sleep(Duration::from_millis(500));
    assert!(!waits.is_finished());
    writer.statuses(&[writer.text(JOB, 1, "{}")]);
    let (answer, took) = waits.join().unwrap();
    assert_eq!(answer["entries"][0]["seq"], 1);
    // Woken, not timed out.
    assert!(took < Duration::from_secs(20), "{took:?}");
}

#[test]
fn a_photo_sent_in_parts_to_both_is_completed_at_either() {
    let yard = Yard::new();
    let other = second(&yard, &beside(&yard, "other"));
    let device = yard.device("Ridge");
    let mut there = device.clone();
    there.at = other.address;
    let photo: Vec<u8> = (0..2_500_000_u32).map(|n| (n % 251) as u8).collect();
    let path = format!("/v1/blobs/{}", sha256_hex(&photo));
    for (n, part) in photo.chunks(1 << 20).enumerate() {
        let at = if n % 2 == 0 { &device } else { &there };
        let answer = at.ask("PUT", &format!("{path}/parts/{n}"), part);
        assert_eq!(answer.status, 201, "{}", answer.text());
    }
    let asks = json!({ "size": photo.len() });
    // Both at once: one or both make it whole, and it is one photo.
    let answer = thread::scope(|all| {
        [&device, &there]
            .map(|at| all.spawn(|| at.post(&format!("{path}/complete"), &asks).status))
            .map(|one| one.join().unwrap())
    });
    assert!(
        answer.iter().any(|status| [200, 201].contains(status)),
        "{answer:?}"
    );
    assert!(device.get(&path).body == photo);
    assert!(there.get(&path).body == photo);
}

#[test]
fn a_code_is_spent_once_and_a_device_turned_out_is_out_at_both() {
    let yard = Yard::new();
    let other = second(&yard, &beside(&yard, "other"));
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let answer = thread::scope(|all| {
        [yard.address(), other.address]
            .map(|at| {
                let typed = &codes.typed;
                all.spawn(move || pair(at, typed, Uuid::new_v4()).status)
            })
            .map(|one| one.join().unwrap())
    });
    assert_eq!(BTreeSet::from(answer), BTreeSet::from([201, 401]));
    let mut device = yard.device("Ridge");
    eavebook_hub::revoke(yard.folder(), &device.id.to_string()).unwrap();
    for at in [yard.address(), other.address] {
        device.at = at;
        assert_eq!(device.get("/v1/feed").status, 401);
    }
}

#[test]
fn a_hub_with_another_key_is_not_let_in_and_told_which_to_copy() {
    let yard = Yard::new();
    let dir = beside(&yard, "other");
    std::fs::remove_file(dir.join("tls.key")).unwrap();
    let refusal = RunningHub::begin(&Settings {
        dir,
        ..yard.settings.clone()
    })
    .unwrap_err();
    assert!(matches!(refusal, HubError::OtherKey), "{refusal}");
    assert!(refusal.to_string().contains("copy tls.key"), "{refusal}");
}

/// The hub as a process of its own, which can be killed.
struct Process {
    child: std::process::Child,
    address: std::net::SocketAddr,
}

impl Process {
    fn begin(dir: &Path) -> Process {
        // The test program itself serves, in the test below.
        let mut child = std::process::Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "two::serves_when_asked_to", "--nocapture"])
            .env("EAVEBOOK_TEST_SERVE", dir)
            .stdout(std::process::Stdio::piped())
            .spawn()
            .unwrap();
        let mut lines =
            std::io::BufRead::lines(std::io::BufReader::new(child.stdout.take().unwrap()));
        let address = lines
            .find_map(|line| Some(line.unwrap().split_once("serves ")?.1.parse().unwrap()))
            .unwrap();
        Process { child, address }
    }

    fn kill(&mut self) {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
    }
}

#[test]
fn serves_when_asked_to() {
    let Some(dir) = std::env::var_os("EAVEBOOK_TEST_SERVE") else {
        return;
    };
    let running = RunningHub::begin(&Settings {
        transport: eavebook_hub::Transport::Plain,
        per_second: 1_000_000,
        uploads: 64,
        ..Settings::new(Path::new(&dir))
    })
    .unwrap();
    println!("serves {}", running.address);
    loop {
        thread::park();
    }
}

#[test]
fn one_of_two_hubs_is_killed_again_and_again_and_no_entry_or_photo_is_lost_or_skipped() {
    const WRITERS: usize = 6;
    let kills = size("kills", 8, 200);
    let yard = Yard::new();
    let dir = beside(&yard, "killed");
    let mut killed = Process::begin(&dir);
    let address = Mutex::new(killed.address);
    let (done, all_said) = (AtomicBool::new(false), AtomicBool::new(false));
    let writers: Vec<Device> = (0..WRITERS).map(|_| yard.device("Ridge")).collect();
    let reader = yard.device("Ridge");
    let (entries, photos, found) = thread::scope(|all| {
        let reads = all.spawn(|| {
            // From both hubs in turn: a number seen at one is never seen behind at the other.
            let (mut found, mut after, mut turn) = (Vec::new(), String::new(), 0);
            loop {
                let last = all_said.load(Ordering::SeqCst);
                let mut at = reader.clone();
                turn += 1;
                if turn % 2 == 0 {
                    at.at = *address.lock().unwrap();
                }
                let Some(page) = at.try_get(&format!("/v1/feed?after={after}&limit=50")) else {
                    continue;
                };
                let page = page.json();
                let more = page["entries"].as_array().unwrap();
                for one in more {
                    let id = one["entry"]["id"].as_str().unwrap().to_owned();
                    found.push((one["seq"].as_u64().unwrap(), id));
                }
                after = page["next"].as_str().unwrap().to_owned();
                if last && more.is_empty() {
                    return found;
                }
            }
        });
        let writes: Vec<_> = writers
            .iter()
            .enumerate()
            .map(|(n, writer)| {
                let (address, done) = (&address, &done);
                all.spawn(move || {
                    let (mut answer, mut photos, mut count) = (BTreeSet::new(), Vec::new(), 0);
                    while !done.load(Ordering::SeqCst) {
                        let mut at = writer.clone();
                        if n % 2 == 0 {
                            at.at = *address.lock().unwrap();
                        }
                        count += 1;
                        let entry = writer.entry(JOB, count, "{}");
                        let id = entry["id"].as_str().unwrap().to_owned();
                        if at.try_push(&[entry.to_string()]) {
                            answer.insert(id);
                        }
                        if count % 5 == 0 {
                            let photo = format!("photo {count} of {n}").into_bytes();
                            let path = format!("/v1/blobs/{}", sha256_hex(&photo));
                            let put = at.try_ask("PUT", &path, &photo);
                            if put.is_some_and(|answer| answer.status < 300) {
                                photos.push((path, photo));
                            }
                        }
                    }
                    (answer, photos)
                })
            })
            .collect();
        for _ in 0..kills {
            thread::sleep(Duration::from_millis(250));
            killed.kill();
            killed = Process::begin(&dir);
            *address.lock().unwrap() = killed.address;
        }
        done.store(true, Ordering::SeqCst);
        let (mut entries, mut photos) = (BTreeSet::new(), Vec::new());
        for write in writes {
            let (answer, more) = write.join().unwrap();
            entries.extend(answer);
            photos.extend(more);
        }
        all_said.store(true, Ordering::SeqCst);
        (entries, photos, reads.join().unwrap())
    });
    killed.kill();
    let numbers: Vec<u64> = found.iter().map(|(seq, _)| *seq).collect();
    assert_eq!(numbers, (1..=numbers.len() as u64).collect::<Vec<_>>());
    let ids: BTreeSet<String> = found.into_iter().map(|(_, id)| id).collect();
    assert_eq!(ids.len(), numbers.len());
    // A few may be there though their answer was lost; none is missing that was answered.
    let lost: Vec<&String> = entries.difference(&ids).collect();
    assert!(lost.is_empty(), "{lost:?}");
    assert!(entries.len() > 20 && photos.len() > 4);
    for (path, photo) in &photos {
        assert!(reader.get(path).body == *photo);
    }
    println!(
        "drill 1 replicas: {kills} kills of one of two hubs, {} entries and {} photos answered: 0 \
         lost, feed without gap",
        entries.len(),
        photos.len()
    );
    // The tables hold what the digest says.
    let whole = reader.hello()["digest"]["count"].as_u64().unwrap();
    let rows: i64 = stores::ask(&stores::connect(yard.folder()), async |client| {
        let row = client.query_one("SELECT count(*) FROM entries", &[]).await;
        row.unwrap().get(0)
    });
    assert_eq!(whole, rows as u64);
}
