//! A plain HTTP/1.1 client over std, and a hub for it to talk to: tests send what no good client
//! would send.

#![allow(dead_code, reason = "each test file uses its own part of it")]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

use eavebook_core::book::entry::sha256_hex;
use eavebook_hub::{RunningHub, Settings, Transport};
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::{Path, PathBuf};
use std::time::Duration;
use uuid::Uuid;

/// A hub in this process, without TLS and with rates that no test but one meets.
pub struct Yard {
    pub dir: tempfile::TempDir,
    pub hub: Option<RunningHub>,
    pub settings: Settings,
}

impl Yard {
    pub fn new() -> Yard {
        Yard::with(|_| {})
    }

    pub fn with(change: impl FnOnce(&mut Settings)) -> Yard {
        let dir = tempfile::tempdir().unwrap();
        let mut settings = Settings {
            transport: Transport::Plain,
            per_second: 1_000_000,
            uploads: 64,
            ..Settings::new(&dir.path().join("hub"))
        };
        change(&mut settings);
        crate::stores::prepare(&settings.dir);
        let hub = Some(RunningHub::begin(&settings).unwrap());
        Yard { dir, hub, settings }
    }

    pub fn folder(&self) -> &Path {
        &self.settings.dir
    }

    pub fn beside(&self, name: &str) -> PathBuf {
        self.dir.path().join(name)
    }

    pub fn address(&self) -> SocketAddr {
        self.hub.as_ref().unwrap().address
    }

    pub fn restart(&mut self) {
        self.hub.take().unwrap().stop();
        self.hub = Some(RunningHub::begin(&self.settings).unwrap());
    }

    /// Pairs a device of a company.
    pub fn device(&self, company: &str) -> Device {
        let id = Uuid::new_v4();
        let codes = eavebook_hub::code(self.folder(), company, None).unwrap();
        let answer = pair(self.address(), &codes.typed, id);
        assert_eq!(answer.status, 201, "{}", answer.text());
        let answer = answer.json();
        let mut device = Device {
            id,
            token: answer["token"].as_str().unwrap().to_owned(),
            at: self.address(),
            epoch: String::new(),
        };
        device.epoch = device.hello()["epoch"].as_str().unwrap().to_owned();
        device
    }
}

pub fn pair(at: SocketAddr, code: &str, device: Uuid) -> Answer {
    let asks = json!({ "code": code, "device_name": "a phone", "device_id": device });
    ask(at, "POST", "/v1/pair", &[], asks.to_string().as_bytes())
}

/// A paired device.
#[derive(Clone, Debug)]
pub struct Device {
    pub id: Uuid,
    pub token: String,
    pub at: SocketAddr,
    pub epoch: String,
}

impl Device {
    pub fn ask(&self, method: &str, path: &str, body: &[u8]) -> Answer {
        self.ask_with(method, path, &[], body)
    }

    pub fn ask_with(
        &self,
        method: &str,
        path: &str,
        headers: &[(&str, &str)],
        body: &[u8],
    ) -> Answer {
        let token = format!("Bearer {}", self.token);
        let mut all = vec![("authorization", token.as_str())];
        all.extend(headers);
        ask(self.at, method, path, &all, body)
    }

    /// Asks a hub that may be killed meanwhile: `None` where no whole answer came.
    pub fn try_ask(&self, method: &str, path: &str, body: &[u8]) -> Option<Answer> {
        let token = format!("Bearer {}", self.token);
        let mut stream = TcpStream::connect(self.at).ok()?;
        let limit = Some(Duration::from_secs(60));
        stream.set_read_timeout(limit).ok()?;
        try_send(
            &mut stream,
            method,
            path,
            &[("authorization", token.as_str())],
            body,
        )
        .ok()?;
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes).ok()?;
        whole(bytes)
    }

    /// A page or whatever else is answered with 200.
    pub fn try_get(&self, path: &str) -> Option<Answer> {
        self.try_ask("GET", path, b"")
            .filter(|answer| answer.status == 200)
    }

    /// Whether entries were answered to be kept.
    pub fn try_push(&self, entries: &[String]) -> bool {
        let body = self.pushes(entries);
        self.try_ask("POST", "/v1/entries", body.as_bytes())
            .is_some_and(|answer| answer.status == 200)
    }

    fn pushes(&self, entries: &[String]) -> String {
        let (epoch, entries) = (&self.epoch, entries.join(","));
        format!("{{\"epoch\":\"{epoch}\",\"entries\":[{entries}]}}")
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask("GET", path, b"")
    }

    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.ask("POST", path, body.to_string().as_bytes())
    }

    pub fn hello(&self) -> Value {
        let answer = self.get("/v1/hello");
        assert_eq!(answer.status, 200, "{}", answer.text());
        answer.json()
    }

    /// Pushes entries given as JSON texts.
    pub fn push(&self, entries: &[String]) -> Answer {
        self.ask("POST", "/v1/entries", self.pushes(entries).as_bytes())
    }

    /// Pushes and tells the status of each.
    pub fn statuses(&self, entries: &[String]) -> Vec<String> {
        let answer = self.push(entries);
        assert_eq!(answer.status, 200, "{}", answer.text());
        answer.json()["results"]
            .as_array()
            .unwrap()
            .iter()
            .map(|one| one["status"].as_str().unwrap().to_owned())
            .collect()
    }

    /// The whole feed from the beginning.
    pub fn feed(&self) -> Vec<(u64, Value)> {
        let (mut all, mut after) = (Vec::new(), String::new());
        loop {
            let answer = self.get(&format!("/v1/feed?after={after}"));
            assert_eq!(answer.status, 200, "{}", answer.text());
            let page = answer.json();
            for one in page["entries"].as_array().unwrap() {
                all.push((one["seq"].as_u64().unwrap(), one["entry"].clone()));
            }
            after = page["next"].as_str().unwrap().to_owned();
            if page["more"] == false {
                return all;
            }
        }
    }

    /// An entry of this device.
    pub fn entry(&self, book: Uuid, dseq: u64, body: &str) -> Value {
        entry(Uuid::now_v7(), book, self.id, dseq, body)
    }

    pub fn text(&self, book: Uuid, dseq: u64, body: &str) -> String {
        self.entry(book, dseq, body).to_string()
    }
}

pub fn entry(id: Uuid, book: Uuid, device: Uuid, dseq: u64, body: &str) -> Value {
    json!({
        "id": id,
        "book": book,
        "device": device,
        "incarnation": Uuid::from_u128(7),
        "dseq": dseq,
        "author": "Ada",
        "hlc": format!("{}.0", 1_800_000_000_000_u64 + dseq),
        "kind": "note",
        "kind_version": 1,
        "local_time": "2026-05-02T14:41:07-05:00",
        "supersedes": [],
        "refs": [],
        "sha256": sha256_hex(body.as_bytes()),
        "body": body,
    })
}

/// An answer, whole.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: Vec<u8>,
}

impl Answer {
    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap()
    }

    /// The stable code of a refusal.
    pub fn code(&self) -> String {
        assert_eq!(
            self.header("content-type").as_deref(),
            Some("application/problem+json")
        );
        self.json()["code"].as_str().unwrap().to_owned()
    }

    pub fn header(&self, name: &str) -> Option<String> {
        self.head.lines().skip(1).find_map(|line| {
            let (found, value) = line.split_once(':')?;
            found
                .eq_ignore_ascii_case(name)
                .then(|| value.trim().to_owned())
        })
    }
}

pub fn ask(
    at: SocketAddr,
    method: &str,
    path: &str,
    headers: &[(&str, &str)],
    body: &[u8],
) -> Answer {
    let mut stream = TcpStream::connect(at).unwrap();
    stream
        .set_read_timeout(Some(Duration::from_secs(60)))
        .unwrap();
    send(&mut stream, method, path, headers, body);
    let answer = answer(&mut stream);
    crate::document::check(method, path, &answer);
    answer
}

pub fn send(to: &mut impl Write, method: &str, path: &str, headers: &[(&str, &str)], body: &[u8]) {
    try_send(to, method, path, headers, body).unwrap();
}

fn try_send(
    to: &mut impl Write,
    method: &str,
    path: &str,
    headers: &[(&str, &str)],
    body: &[u8],
) -> std::io::Result<()> {
    let mut head = format!("{method} {path} HTTP/1.1\r\nhost: hub\r\nconnection: close\r\n");
    for (name, value) in headers {
        head.push_str(&format!("{name}: {value}\r\n"));
    }
    head.push_str(&format!("content-length: {}\r\n\r\n", body.len()));
    to.write_all(head.as_bytes())?;
    to.write_all(body)
}

/// Reads an answer to the end of its connection.
pub fn answer(from: &mut impl Read) -> Answer {
    let mut bytes = Vec::new();
    // A TLS peer that closes without a goodbye has still said what its length says.
    let _ = from.read_to_end(&mut bytes);
    let shown = String::from_utf8_lossy(&bytes).into_owned();
    whole(bytes).unwrap_or_else(|| panic!("no whole answer: {shown:?}"))
}

/// An answer, if it is all there.
fn whole(bytes: Vec<u8>) -> Option<Answer> {
    let end = bytes.windows(4).position(|four| four == b"\r\n\r\n")?;
    let head = String::from_utf8(bytes[..end].to_vec()).ok()?;
    let status = head.split(' ').nth(1)?.parse().ok()?;
    let mut answer = Answer {
        status,
        head,
        body: bytes[end + 4..].to_vec(),
    };
    if let Some(length) = answer.header("content-length") {
        let length: usize = length.parse().ok()?;
        if answer.status != 304 && answer.body.len() != length {
            return None;
        }
    }
    if answer.header("transfer-encoding").as_deref() == Some("chunked") {
        answer.body = unchunked(&answer.body);
    }
    Some(answer)
}

fn unchunked(mut bytes: &[u8]) -> Vec<u8> {
    let mut whole = Vec::new();
    loop {
        let end = bytes.windows(2).position(|two| two == b"\r\n").unwrap();
        let length =
            usize::from_str_radix(std::str::from_utf8(&bytes[..end]).unwrap(), 16).unwrap();
        if length == 0 {
            return whole;
        }
        whole.extend(&bytes[end + 2..end + 2 + length]);
        bytes = &bytes[end + 4 + length..];
    }
}
