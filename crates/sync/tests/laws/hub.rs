//! A hub in a few lines: what the protocol says, kept in maps. It answers with errors as the real
//! one does.

use eavebook_core::book::digest::SetDigest;
use eavebook_core::book::entry::{Entry, sha256_hex};
use eavebook_sync::{Method, Request, Response};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

#[derive(Clone, Debug)]
pub struct Hub {
    /// The first and the last protocol that it speaks.
    pub protocol: (u32, u32),
    /// Its answers have fields that this version does not know.
    pub says_more: bool,
    /// Which hub it is.
    pub number: u32,
    pub epoch: u32,
    pub feed: Vec<Entry>,
    pub conflicts: Vec<Entry>,
    pub photos: BTreeMap<String, Vec<u8>>,
    pub parts: BTreeMap<String, BTreeMap<u64, Vec<u8>>>,
    /// Entries of this kind are rejected.
    pub poison: BTreeSet<Uuid>,
    /// Refuses everything.
    pub revoked: bool,
    pub asked: usize,
}

impl Default for Hub {
    fn default() -> Hub {
        Hub {
            protocol: (1, 1),
            says_more: false,
            number: 0,
            epoch: 0,
            feed: Vec::new(),
            conflicts: Vec::new(),
            photos: BTreeMap::new(),
            parts: BTreeMap::new(),
            poison: BTreeSet::new(),
            revoked: false,
            asked: 0,
        }
    }
}

fn response(status: u16, body: &Value) -> Response {
    Response {
        status,
        retry_after: None,
        whole: None,
        body: body.to_string().into_bytes(),
    }
}

impl Hub {
    pub fn epoch_name(&self) -> String {
        format!("epoch-{}-{}", self.number, self.epoch)
    }

    pub fn ids(&self) -> BTreeSet<Uuid> {
        self.feed.iter().map(|entry| entry.id).collect()
    }

    pub fn answer(&mut self, asked: &Request) -> Response {
        let mut answer = self.answer_known(asked);
        if self.says_more && answer.body.starts_with(b"{\"") {
            answer.body.splice(1..1, *b"\"of_tomorrow\":{\"a\":[1]},");
        }
        answer
    }

    fn answer_known(&mut self, asked: &Request) -> Response {
        self.asked += 1;
        if self.revoked {
            return response(401, &json!({ "code": "token", "detail": "revoked" }));
        }
        let body: Value = serde_json::from_slice(&asked.body).unwrap_or(Value::Null);
        let (path, query) = asked.path.split_once('?').unwrap_or((&asked.path, ""));
        let steps: Vec<&str> = path.trim_start_matches("/v1/").split('/').collect();
        match (asked.method, steps.as_slice()) {
            (Method::Get, ["hello"]) => response(200, &self.hello()),
            (Method::Post, ["entries"]) => self.push(&asked.body),
            (Method::Get, ["feed"]) => self.page(query),
            (Method::Post, ["digest"]) => response(200, &self.compare(&body)),
            (Method::Get, ["conflicts"]) => {
                let all: Vec<Value> = self.conflicts.iter().map(value).collect();
                response(200, &json!({ "conflicts": all }))
            }
            (Method::Post, ["blobs", "missing"]) => {
                let names = body["sha256"].as_array().unwrap();
                let lacks = |name: &&Value| !self.photos.contains_key(name.as_str().unwrap());
                let missing: Vec<&Value> = names.iter().filter(lacks).collect();
                response(200, &json!({ "missing": missing }))
            }
            (Method::Put, ["blobs", name]) => {
                assert!(asked.body.len() <= 1 << 20);
                self.publish(name, asked.body.clone())
            }
            (Method::Get, ["blobs", name, "parts"]) => {
                let parts: Vec<u64> = self
                    .parts
                    .get(*name)
                    .map(|parts| parts.keys().copied().collect())
                    .unwrap_or_default();
                response(200, &json!({ "parts": parts }))
            }
            (Method::Put, ["blobs", name, "parts", number]) => {
                let parts = self.parts.entry((*name).to_owned()).or_default();
                parts.insert(number.parse().unwrap(), asked.body.clone());
                response(201, &json!({}))
            }
            (Method::Post, ["blobs", name, "complete"]) => {
                let parts = self.parts.get(*name).cloned().unwrap_or_default();
                let whole: Vec<u8> = parts.into_values().flatten().collect();
                if whole.len() as u64 != body["size"].as_u64().unwrap() {
                    return response(
                        409,
                        &json!({ "code": "parts_missing", "detail": "send them" }),
                    );
                }
                self.publish(name, whole)
            }
            (Method::Get, ["blobs", name]) => match (self.photos.get(*name), asked.span) {
                (Some(bytes), Some((first, last))) => {
                    assert!(last - first < 1 << 20);
                    let end = bytes.len().min(last as usize + 1);
                    let span = bytes
                        .get(first as usize..end)
                        .filter(|span| !span.is_empty());
                    Response {
                        status: if span.is_some() { 206 } else { 416 },
                        retry_after: None,
                        whole: Some(bytes.len() as u64),
                        body: span.unwrap_or_default().to_vec(),
                    }
                }
                (Some(_), None) => panic!("a photo is fetched in pieces"),
                (None, _) => response(404, &json!({ "code": "not_found", "detail": "not here" })),
            },
            other => panic!("no such call: {other:?}"),
        }
    }

    fn hello(&self) -> Value {
        let mut own: BTreeMap<Uuid, u64> = BTreeMap::new();
        for entry in &self.feed {
            let most = own.entry(entry.incarnation).or_default();
            *most = entry.dseq.max(*most);
        }
        let own: Vec<Value> = own
            .iter()
            .map(|(life, most)| json!({ "incarnation": life, "max_dseq": most }))
            .collect();
        json!({ "hub_id": format!("hub-{}", self.number), "epoch": self.epoch_name(), "protocol": { "min": self.protocol.0, "max": self.protocol.1 },
                "own": own })
    }

    fn push(&mut self, body: &[u8]) -> Response {
        #[derive(serde::Deserialize)]
        struct Push {
            epoch: String,
            entries: Vec<Box<serde_json::value::RawValue>>,
        }
        let push: Push = serde_json::from_slice(body).unwrap();
        assert!(push.entries.len() <= 500 && body.len() <= 1 << 20);
        if push.epoch != self.epoch_name() {
            return response(409, &json!({ "code": "epoch", "detail": "restored" }));
        }
        let mut results = Vec::new();
        for raw in &push.entries {
            let entry = Entry::from_json(raw.get()).unwrap();
            let id = entry.id;
            let found = self.feed.iter().find(|found| found.id == id);
            let status = match found {
                _ if self.poison.contains(&id) => "rejected",
                None => {
                    self.feed.push(entry);
                    "new"
                }
                Some(found) if *found == entry => "known",
                Some(_) => {
                    if !self.conflicts.contains(&entry) {
                        self.conflicts.push(entry);
                    }
                    "id_conflict"
                }
            };
            results.push(json!({ "id": id, "status": status, "reason": "because" }));
        }
        response(200, &json!({ "results": results, "head": self.feed.len() }))
    }

    fn page(&self, query: &str) -> Response {
        let value_of = |name: &str| {
            query
                .split('&')
                .find_map(|pair| pair.strip_prefix(name)?.strip_prefix('='))
                .unwrap_or("")
        };
        let after = value_of("after");
        let from: usize = match after.rsplit_once('.') {
            None => 0,
            Some((epoch, _)) if epoch != self.epoch_name() => {
                return response(409, &json!({ "code": "epoch", "detail": "restored" }));
            }
            Some((_, seq)) => seq.parse().unwrap(),
        };
        if from > self.feed.len() {
            return response(410, &json!({ "code": "cursor_ahead", "detail": "less" }));
        }
        let books = value_of("books");
        // Pages of seven, so that there are several.
        let to = (from + 7).min(self.feed.len());
        let entries: Vec<Value> = (from..to)
            .filter(|at| books.is_empty() || books.contains(&self.feed[*at].book.to_string()))
            .map(|at| json!({ "seq": at + 1, "entry": value(&self.feed[at]) }))
            .collect();
        let next = format!("{}.{to}", self.epoch_name());
        response(
            200,
            &json!({ "entries": entries, "next": next, "more": to < self.feed.len() }),
        )
    }

    fn compare(&self, asked: &Value) -> Value {
        let scope = asked["scope"].as_str().unwrap();
        let names = |entry: &Entry| {
            let byte = entry.id.as_bytes()[15];
            [
                "company".to_owned(),
                format!("book:{}", entry.book),
                format!("book:{}/{byte:02x}", entry.book),
            ]
        };
        let inside: Vec<&Entry> = self
            .feed
            .iter()
            .filter(|entry| names(entry).iter().any(|name| name == scope))
            .collect();
        let sum = |entries: &[&Entry]| {
            entries.iter().fold(SetDigest::default(), |sum, entry| {
                sum.with(entry.id, &entry.sha256)
            })
        };
        let whole = sum(&inside);
        if json!(whole.count) == asked["count"] && json!(whole.hex()) == asked["sum"] {
            return json!({ "same": true });
        }
        let level = match scope {
            "company" => 1,
            book if !book.contains('/') => 2,
            _ => {
                let ids: Vec<Uuid> = inside.iter().map(|entry| entry.id).collect();
                return json!({ "same": false, "ids": ids });
            }
        };
        let mut parts: BTreeMap<String, Vec<&Entry>> = BTreeMap::new();
        for entry in inside {
            parts
                .entry(names(entry)[level].clone())
                .or_default()
                .push(entry);
        }
        let scopes: Vec<Value> = parts
            .iter()
            .map(|(name, part)| {
                let sum = sum(part);
                json!({ "scope": name, "count": sum.count, "sum": sum.hex() })
            })
            .collect();
        json!({ "same": false, "scopes": scopes })
    }

    fn publish(&mut self, name: &str, bytes: Vec<u8>) -> Response {
        if sha256_hex(&bytes) != name {
            return response(422, &json!({ "code": "hash", "detail": "other bytes" }));
        }
        self.photos.insert(name.to_owned(), bytes);
        response(201, &json!({}))
    }
}

fn value(entry: &Entry) -> Value {
    serde_json::from_str(&entry.to_json()).unwrap()
}
