//! Photos as objects of an S3-compatible store: `HUB/blobs/COMPANY/SHA256` once they are whole,
//! `HUB/staging/COMPANY/SHA256/N` while their parts come.
//!
//! Nothing rests on a conditional write: not every such store keeps to it. An object is written whole
//! after its bytes were proved, and only then does its row say that it is here.

use super::{Blobs, JoinResult, missing, older};
use crate::config::Bucket as Named;
use crate::limits::{BLOB_BYTES, STALL};
use crate::rows::Photo;
use crate::{hex, token};
use rusty_s3::actions::ListObjectsV2;
use rusty_s3::{Bucket as Place, Credentials, S3Action, UrlStyle};
use std::collections::{BTreeMap, BTreeSet};
use std::io::{self, ErrorKind, Read};
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::{Duration, SystemTime};
use ureq::http::Response;
use ureq::tls::{Certificate, PemItem, RootCerts, TlsConfig, parse_pem};
use ureq::{Agent, Body};

/// How long a signed request may be on its way.
const SIGNED_FOR: Duration = Duration::from_secs(300);
/// How often a request that failed on the way is made.
const TRIES: u32 = 4;
/// The first pause between two tries; each further one is twice as long.
const PAUSE: Duration = Duration::from_millis(100);
/// Bytes of photos that are put together at once: two of the largest.
const JOINING: u64 = 2 * BLOB_BYTES;
/// Longest answer that is no photo.
const LIST_BYTES: u64 = 4 << 20;

/// A bucket, and what opens it.
#[derive(Debug)]
pub(crate) struct Bucket {
    place: Place,
    keys: Credentials,
    agent: Agent,
    /// The hub's id: several may share a bucket.
    hub: String,
    budget: MemoryBudget,
}

impl Bucket {
    /// The bucket of a configuration, for the hub of an id.
    ///
    /// # Errors
    /// A sentence about what does not hold: the address, the certificates, the bucket's answer.
    pub(crate) fn open(named: &Named, hub: &str) -> Result<Bucket, String> {
        let endpoint = named
            .endpoint
            .parse()
            .map_err(|why| format!("the endpoint {} is no URL ({why})", named.endpoint))?;
        let region = named.region.clone();
        let place = Place::new(endpoint, UrlStyle::Path, named.bucket.clone(), region)
            .map_err(|why| format!("the endpoint {} names no host ({why})", named.endpoint))?;
        let mut agent = Agent::config_builder()
            .http_status_as_error(false)
            .max_redirects(0)
            .timeout_connect(Some(Duration::from_secs(10)))
            .timeout_per_read(Some(STALL))
            .timeout_per_write(Some(STALL));
        if named.endpoint.starts_with("https:") {
            let roots = roots(&named.ca)?;
            let provider = Arc::new(rustls::crypto::ring::default_provider());
            let tls = TlsConfig::builder()
                .root_certs(roots)
                .unversioned_rustls_crypto_provider(provider);
            agent = agent.tls_config(tls.build());
        }
        let bucket = Bucket {
            place,
            keys: Credentials::new(named.access_key.clone(), named.secret_key.clone()),
            agent: agent.build().into(),
            hub: hub.to_owned(),
            budget: MemoryBudget::new(JOINING),
        };
        // Asked at once, so that a wrong key is not found out by the first photo.
        bucket
            .list("staging/none/", 1)
            .map_err(|why| format!("the bucket {} cannot be listed ({why})", named.bucket))?;
        Ok(bucket)
    }

    fn whole(&self, company: i64, sha256: &str) -> String {
        format!("{}/blobs/{company}/{sha256}", self.hub)
    }

    fn staged(company: i64, sha256: &str) -> String {
        format!("staging/{company}/{sha256}/")
    }

    fn part(&self, company: i64, sha256: &str, part: u64) -> String {
        format!("{}/{}{part}", self.hub, Bucket::staged(company, sha256))
    }

    /// One request, made again where it failed on the way or the store was not well. All of them
    /// may be repeated.
    fn ask(
        &self,
        request: impl Fn() -> Result<Response<Body>, ureq::Error>,
    ) -> io::Result<Response<Body>> {
        let mut pause = PAUSE;
        for last in (1..=TRIES).rev() {
            let result = request();
            let why = match result {
                Ok(response) if response.status().is_success() => return Ok(response),
                Ok(response) if response.status().as_u16() == 404 => {
                    return Err(io::Error::new(ErrorKind::NotFound, "no such object"));
                }
                Ok(response) if response.status().as_u16() == 507 => {
                    return Err(io::Error::new(ErrorKind::StorageFull, "the store is full"));
                }
                Ok(response) => {
                    let status = response.status();
                    let why = io::Error::other(format!("the object store answers {status}"));
                    if !status.is_server_error() && status.as_u16() != 429 {
                        return Err(why);
                    }
                    why
                }
                Err(why) => io::Error::other(format!("the object store is out of reach: {why}")),
            };
            if last == 1 {
                return Err(why);
            }
            std::thread::sleep(pause);
            pause *= 2;
        }
        Err(io::Error::other("the object store was not asked"))
    }

    fn put_object(&self, name: &str, bytes: &[u8]) -> io::Result<()> {
        self.ask(|| {
            let url = self
                .place
                .put_object(Some(&self.keys), name)
                .sign(SIGNED_FOR);
            self.agent.put(url.as_str()).send(bytes)
        })
        .map(drop)
    }

    fn get_object(&self, name: &str, range: Option<(u64, u64)>) -> io::Result<Response<Body>> {
        self.ask(|| {
            let url = self
                .place
                .get_object(Some(&self.keys), name)
                .sign(SIGNED_FOR);
            let mut get = self.agent.get(url.as_str());
            if let Some((from, to)) = range {
                get = get.header("range", format!("bytes={from}-{}", to - 1));
            }
            get.call()
        })
    }

    fn has_object(&self, name: &str) -> io::Result<bool> {
        let result = self.ask(|| {
            let url = self
                .place
                .head_object(Some(&self.keys), name)
                .sign(SIGNED_FOR);
            self.agent.head(url.as_str()).call()
        });
        match result {
            Ok(_) => Ok(true),
            Err(why) if why.kind() == ErrorKind::NotFound => Ok(false),
            Err(why) => Err(why),
        }
    }

    fn delete_object(&self, name: &str) -> io::Result<()> {
        self.ask(|| {
            let url = self
                .place
                .delete_object(Some(&self.keys), name)
                .sign(SIGNED_FOR);
            self.agent.delete(url.as_str()).call()
        })
        .map(drop)
    }

    /// Name after the hub's id, and when it was written, of at most `pages` thousand objects.
    fn list(&self, under: &str, pages: usize) -> io::Result<Vec<(String, Option<SystemTime>)>> {
        let lead = format!("{}/", self.hub);
        let (mut found, mut from) = (Vec::new(), None);
        for _ in 0..pages {
            let mut response = self.ask(|| {
                let mut list = self.place.list_objects_v2(Some(&self.keys));
                list.with_prefix(format!("{lead}{under}"));
                if let Some(from) = &from {
                    list.with_continuation_token(String::clone(from));
                }
                self.agent.get(list.sign(SIGNED_FOR).as_str()).call()
            })?;
            let body = response.body_mut().with_config().limit(LIST_BYTES);
            let text = body.read_to_string().map_err(io::Error::other)?;
            let page = ListObjectsV2::parse_response(&text).map_err(io::Error::other)?;
            for one in page.contents {
                if let Some(name) = one.key.strip_prefix(&lead) {
                    let when = one.last_modified.as_deref().and_then(written);
                    found.push((name.to_owned(), when));
                }
            }
            from = page.next_continuation_token;
            if from.is_none() {
                break;
            }
        }
        Ok(found)
    }
}

/// When an object was written, as a list tells it.
fn written(text: &str) -> Option<SystemTime> {
    chrono::DateTime::parse_from_rfc3339(text)
        .ok()
        .map(SystemTime::from)
}

/// The authorities of a file of certificates.
fn roots(file: &std::path::Path) -> Result<RootCerts, String> {
    let shown = file.display();
    let pem = std::fs::read(file)
        .map_err(|why| format!("the file of authorities {shown} cannot be read ({why})"))?;
    let roots: Vec<Certificate<'static>> = parse_pem(&pem)
        .filter_map(|item| match item {
            Ok(PemItem::Certificate(one)) => Some(one),
            Ok(_) | Err(_) => None,
        })
        .collect();
    if roots.is_empty() {
        return Err(format!("the file of authorities {shown} holds none"));
    }
    Ok(RootCerts::new_with_certs(&roots))
}

impl Blobs for Bucket {
    /// The row is the truth: an object that is found gone is taken out of the rows then.
    fn is_kept(&self, _: &Photo) -> bool {
        true
    }

    fn put(&self, company: i64, sha256: &str, bytes: &[u8]) -> io::Result<()> {
        self.put_object(&self.whole(company, sha256), bytes)
    }

    fn put_part(&self, company: i64, sha256: &str, part: u64, bytes: &[u8]) -> io::Result<bool> {
        let name = self.part(company, sha256, part);
        let first = !self.has_object(&name)?;
        self.put_object(&name, bytes)?;
        Ok(first)
    }

    fn parts(&self, company: i64, sha256: &str) -> io::Result<BTreeSet<u64>> {
        let under = Bucket::staged(company, sha256);
        let names = self.list(&under, 1)?;
        Ok(names
            .iter()
            .filter_map(|(name, _)| name.strip_prefix(&under)?.parse().ok())
            .collect())
    }

    /// In memory, because an object is to be proved before its first byte is sent; so many bytes at
    /// once as there is room for.
    fn join(&self, photo: &Photo) -> io::Result<JoinResult> {
        let missing = missing(photo.size, &self.parts(photo.company, &photo.sha256)?);
        if !missing.is_empty() {
            return Ok(JoinResult::Missing(missing));
        }
        let _room = self.budget.take(photo.size);
        let mut bytes = Vec::with_capacity(usize::try_from(photo.size).unwrap_or_default());
        for part in 0..photo.size.div_ceil(crate::limits::PART_BYTES as u64) {
            let name = self.part(photo.company, &photo.sha256, part);
            let object = match self.get_object(&name, None) {
                // Completed by another call, which has cleared the parts: say it again.
                Err(why) if why.kind() == ErrorKind::NotFound => {
                    return Ok(JoinResult::Missing(vec![part]));
                }
                object => object?,
            };
            let most = crate::limits::PART_BYTES as u64;
            let mut from = object.into_body().into_reader().take(most);
            from.read_to_end(&mut bytes)?;
        }
        if bytes.len() as u64 != photo.size || hex(&token::sha256(&bytes)) != photo.sha256 {
            return Ok(JoinResult::OtherBytes);
        }
        self.put(photo.company, &photo.sha256, &bytes)?;
        Ok(JoinResult::Whole)
    }

    fn clear(&self, company: i64, sha256: &str) {
        // What stays is swept later.
        for part in self.parts(company, sha256).unwrap_or_default() {
            let _ = self.delete_object(&self.part(company, sha256, part));
        }
    }

    fn read(&self, photo: &Photo, from: u64, to: u64) -> io::Result<Box<dyn Read + Send>> {
        if from >= to {
            return Ok(Box::new(io::empty()));
        }
        let name = self.whole(photo.company, &photo.sha256);
        let object = self.get_object(&name, Some((from, to)))?;
        // A store that does not know ranges sends the whole.
        let over = if object.status().as_u16() == 206 {
            0
        } else {
            from
        };
        let mut body = object.into_body().into_reader();
        io::copy(&mut (&mut body).take(over), &mut io::sink())?;
        Ok(Box::new(body.take(to - from)))
    }

    fn sweep(&self, now: SystemTime) -> io::Result<()> {
        let mut photos: BTreeMap<String, (SystemTime, Vec<String>)> = BTreeMap::new();
        for (name, when) in self.list("staging/", usize::MAX)? {
            let photo = name.rsplit_once('/').map_or("", |(photo, _)| photo);
            // What tells no time came now.
            let when = when.unwrap_or(now);
            let (newest, parts) = photos.entry(photo.to_owned()).or_insert((when, Vec::new()));
            *newest = when.max(*newest);
            parts.push(name);
        }
        for (newest, parts) in photos.into_values() {
            if older(newest, now) {
                for part in parts {
                    self.delete_object(&format!("{}/{part}", self.hub))?;
                }
            }
        }
        Ok(())
    }
}

/// Room for bytes in memory: who wants more than is left waits.
#[derive(Debug)]
struct MemoryBudget {
    left: Mutex<u64>,
    freed: Condvar,
}

/// Bytes taken of the room; dropped, they are free again.
struct MemoryPermit<'a> {
    budget: &'a MemoryBudget,
    bytes: u64,
}

impl MemoryBudget {
    fn new(bytes: u64) -> MemoryBudget {
        MemoryBudget {
            left: Mutex::new(bytes),
            freed: Condvar::new(),
        }
    }

    fn take(&self, bytes: u64) -> MemoryPermit<'_> {
        let left = self.left.lock().unwrap_or_else(PoisonError::into_inner);
        let mut left = self
            .freed
            .wait_while(left, |left| *left < bytes)
            .unwrap_or_else(PoisonError::into_inner);
        *left -= bytes;
        MemoryPermit {
            budget: self,
            bytes,
        }
    }
}

impl Drop for MemoryPermit<'_> {
    fn drop(&mut self) {
        let mut left = self
            .budget
            .left
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        *left += self.bytes;
        self.budget.freed.notify_all();
    }
}
