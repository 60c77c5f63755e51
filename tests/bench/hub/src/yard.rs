//! A hub in this process, devices that are paired with it, entries as they book them.

use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp};
use eavebook_core::book::kinds::{Followed, HowRead, Kind, Reading, TapeMarks, Thing};
use eavebook_hub::{RunningHub, Settings, Transport};
use eavebook_sync::{Link, Method, Request, Response};
use std::error::Error;
use std::path::{Path, PathBuf};
use uuid::Uuid;

type Told<T> = Result<T, Box<dyn Error + Send + Sync>>;

/// A hub that serves, in a folder that goes with it.
pub struct Yard {
    folder: tempfile::TempDir,
    pub hub: RunningHub,
}

impl Yard {
    /// Over a file and a folder, or what `toml` names.
    pub fn new(transport: Transport, toml: Option<&str>) -> Result<Yard, Box<dyn Error>> {
        let folder = tempfile::tempdir()?;
        let dir = folder.path().join("hub");
        std::fs::create_dir(&dir)?;
        if let Some(toml) = toml {
            let file = dir.join("hub.toml");
            std::fs::write(&file, toml)?;
            #[cfg(unix)]
            {
                use std::os::unix::fs::PermissionsExt;
                std::fs::set_permissions(&file, std::fs::Permissions::from_mode(0o600))?;
            }
        }
        let hub = RunningHub::begin(&Settings {
            transport,
            per_second: 10_000_000,
            uploads: 1000,
            ..Settings::new(&dir)
        })?;
        Ok(Yard { folder, hub })
    }

    pub fn dir(&self) -> PathBuf {
        self.folder.path().join("hub")
    }

    /// The folder around it, for a peer on the same disk.
    pub fn beside(&self) -> &Path {
        self.folder.path()
    }

    /// Pairs a device of a company.
    pub fn device(&self, company: &str) -> Result<Device, Box<dyn Error>> {
        let code = eavebook_hub::code(&self.dir(), company, None)?.typed;
        let id = Uuid::now_v7();
        let mut stranger = Link::new(&self.hub.url, Some(&self.hub.pin), None)?;
        let asks = serde_json::json!({ "code": code, "device_name": "a phone", "device_id": id });
        let told = stranger.ask(&request(
            Method::Post,
            "/v1/pair",
            asks.to_string().into_bytes(),
        ))?;
        let told: serde_json::Value = serde_json::from_slice(&told.body)?;
        let token = told["token"].as_str().ok_or("no token")?;
        let mut device = Device {
            id,
            incarnation: Uuid::new_v4(),
            link: Link::new(&self.hub.url, Some(&self.hub.pin), Some(token))?,
            epoch: String::new(),
            booked: 0,
        };
        let hello = device.ask(Method::Get, "/v1/hello", Vec::new());
        let hello: serde_json::Value =
            serde_json::from_slice(&hello.map_err(|why| why.to_string())?.body)?;
        hello["epoch"]
            .as_str()
            .unwrap_or_default()
            .clone_into(&mut device.epoch);
        Ok(device)
    }
}

fn request(method: Method, path: &str, body: Vec<u8>) -> Request {
    Request {
        method,
        path: path.to_owned(),
        body,
        span: None,
    }
}

/// A paired device with its connection.
pub struct Device {
    id: Uuid,
    incarnation: Uuid,
    link: Link,
    epoch: String,
    booked: u64,
}

impl Device {
    /// Asks; anything but a good answer is an error.
    pub fn ask(&mut self, method: Method, path: &str, body: Vec<u8>) -> Told<Response> {
        let told = self.link.ask(&request(method, path, body))?;
        if told.status < 300 {
            Ok(told)
        } else {
            Err(format!(
                "{path}: {} {}",
                told.status,
                String::from_utf8_lossy(&told.body)
            )
            .into())
        }
    }

    /// So many fresh entries of a job.
    pub fn book(&mut self, job: Uuid, count: usize) -> Vec<Entry> {
        (0..count)
            .map(|_| {
                self.booked += 1;
                entry(job, self.id, self.incarnation, self.booked)
            })
            .collect()
    }

    /// Pushes entries in one call.
    pub fn push(&mut self, entries: &[Entry]) -> Told<()> {
        let texts: Vec<String> = entries.iter().map(Entry::to_json).collect();
        let body = format!(
            "{{\"epoch\":\"{}\",\"entries\":[{}]}}",
            self.epoch,
            texts.join(",")
        );
        self.ask(Method::Post, "/v1/entries", body.into_bytes())
            .map(drop)
    }
}

/// A reading as a person books it.
pub fn entry(job: Uuid, device: Uuid, incarnation: Uuid, count: u64) -> Entry {
    let stamp = Stamp {
        id: Uuid::now_v7(),
        book: job,
        device,
        incarnation,
        dseq: count,
        author: "a walker".to_owned(),
        hlc: Hlc::new(1_750_000_000_000 + count, 0),
        local_time: "2026-05-02T14:41:07-05:00".to_owned(),
    };
    let reading = Kind::Reading(Reading {
        thing: Thing::Leg {
            leg: 1 + (count % 12) as u32,
        },
        text: format!("{} ft 7 1/2 in", 10 + count % 80),
        tape: TapeMarks::FeetInches,
        how: HowRead::Taped,
        followed: Followed::EaveEdge,
        blind: false,
    });
    Entry::new(stamp, &reading, Vec::new())
}

/// Every one of some works in a thread of its own; the first failure is the whole's.
pub fn together<T: Send>(
    all: &mut [T],
    work: impl Fn(usize, &mut T) -> Told<()> + Sync,
) -> Result<(), Box<dyn Error>> {
    std::thread::scope(|threads| {
        let work = &work;
        let running: Vec<_> = all
            .iter_mut()
            .enumerate()
            .map(|(n, one)| threads.spawn(move || work(n, one)))
            .collect();
        running.into_iter().try_for_each(|one| {
            one.join()
                .map_err(|_| "a thread of the benchmark fell".to_owned())?
                .map_err(|why| why.to_string())
        })
    })?;
    Ok(())
}
