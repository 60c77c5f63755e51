//! One thing booked: who, when, what it takes out of use, and its body as the bytes first written.
//!
//! An entry is never changed. Fields and kinds that this version does not know are kept as they
//! came and passed on as they came.

use super::clock::Hlc;
use super::kinds::Kind;
use serde_json::value::RawValue;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt;
use uuid::Uuid;

/// One entry.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Entry {
    /// UUID version 7: the only identity.
    pub id: Uuid,
    /// The job.
    pub book: Uuid,
    /// The device on which it was booked. With `incarnation` and `dseq` a fact for diagnosis,
    /// never a key: a restored phone may say the same number twice.
    pub device: Uuid,
    /// Which life of that device's store.
    pub incarnation: Uuid,
    /// Count of entries in that life, from 1.
    pub dseq: u64,
    /// Who booked it.
    pub author: String,
    /// For the order of display only.
    pub hlc: Hlc,
    /// Name of its kind.
    pub kind: String,
    /// Version of the shape of that kind's body.
    pub kind_version: u32,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// Entries that this one takes out of use while it is in force itself.
    pub supersedes: Vec<Uuid>,
    /// Entry ids and photo hashes that its body speaks of.
    pub refs: Vec<String>,
    /// SHA-256 of the body's bytes, 64 hex digits.
    pub sha256: String,
    /// The body as first written: JSON text, kept byte for byte.
    pub body: String,
    /// Fields of the envelope that this version does not know: name to JSON text as it came.
    pub other: BTreeMap<String, String>,
}

impl fmt::Debug for Entry {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Entry {}", self.to_json())
    }
}

/// What a new entry cannot know by itself: who, where, when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stamp {
    /// A fresh UUID version 7.
    pub id: Uuid,
    /// The job.
    pub book: Uuid,
    /// This device.
    pub device: Uuid,
    /// This life of its store.
    pub incarnation: Uuid,
    /// The next count in it.
    pub dseq: u64,
    /// Who books.
    pub author: String,
    /// The next stamp of the device's clock.
    pub hlc: Hlc,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
}

/// Why a text or a set of fields is no entry.
#[derive(Debug, thiserror::Error)]
pub enum EntryError {
    /// Not JSON, or a field missing or of the wrong shape.
    #[error("this is no entry: {0}: send it as it was booked")]
    Shape(#[from] serde_json::Error),
    /// The id is not a UUID of version 7.
    #[error("entry {0} has an id that is no UUID of version 7: book it anew")]
    Id(Uuid),
    /// The body is not the one that was booked.
    #[error("the body of entry {0} does not match its SHA-256: fetch it again from a whole copy")]
    Sha(Uuid),
    /// The local time is not RFC 3339 with an offset.
    #[error("entry {id} has the local time \"{text}\": write it as 2026-05-02T14:41:07-05:00")]
    LocalTime {
        /// Which entry.
        id: Uuid,
        /// What stood there.
        text: String,
    },
}

/// What a body says to this version.
#[derive(Clone, Debug, PartialEq)]
pub enum ParsedBody {
    /// A known kind.
    Known(Kind),
    /// A known kind written by a newer version: what is understood of it.
    Newer(Kind),
    /// A kind that is not known, or a body that does not read as its kind.
    Unknown,
}

impl Entry {
    /// Books one thing. `supersedes`: entries that it takes out of use.
    pub fn new(stamp: Stamp, kind: &Kind, supersedes: Vec<Uuid>) -> Entry {
        let body = kind.body();
        Entry {
            id: stamp.id,
            book: stamp.book,
            device: stamp.device,
            incarnation: stamp.incarnation,
            dseq: stamp.dseq,
            author: stamp.author,
            hlc: stamp.hlc,
            kind: kind.name().to_owned(),
            kind_version: kind.version(),
            local_time: stamp.local_time,
            supersedes,
            refs: kind.refs(),
            sha256: sha256_hex(body.as_bytes()),
            body,
            other: BTreeMap::new(),
        }
    }

    /// Where it stands on a screen: by stamp, then by id.
    pub fn display_order(&self) -> (Hlc, Uuid) {
        (self.hlc, self.id)
    }

    /// What its body says to this version.
    pub fn said(&self) -> ParsedBody {
        match Kind::parse(&self.kind, &self.body) {
            Some(kind) if self.kind_version > kind.version() => ParsedBody::Newer(kind),
            Some(kind) => ParsedBody::Known(kind),
            None => ParsedBody::Unknown,
        }
    }

    /// That it is what it says it is.
    ///
    /// # Errors
    /// `Id`, `Sha`, `LocalTime`.
    pub fn check(&self) -> Result<(), EntryError> {
        if self.id.get_version_num() != 7 {
            return Err(EntryError::Id(self.id));
        }
        if self.sha256 != sha256_hex(self.body.as_bytes()) {
            return Err(EntryError::Sha(self.id));
        }
        if chrono::DateTime::parse_from_rfc3339(&self.local_time).is_err() {
            return Err(EntryError::LocalTime {
                id: self.id,
                text: self.local_time.clone(),
            });
        }
        Ok(())
    }

    /// The entry as one JSON object; the body is a string in it.
    pub fn to_json(&self) -> String {
        let mut text = String::from("{");
        let mut field = |name: &str, json: &str| {
            if text.len() > 1 {
                text.push(',');
            }
            text.push_str(&json_of(name));
            text.push(':');
            text.push_str(json);
        };
        field("id", &json_of(&self.id));
        field("book", &json_of(&self.book));
        field("device", &json_of(&self.device));
        field("incarnation", &json_of(&self.incarnation));
        field("dseq", &json_of(&self.dseq));
        field("author", &json_of(&self.author));
        field("hlc", &json_of(&self.hlc));
        field("kind", &json_of(&self.kind));
        field("kind_version", &json_of(&self.kind_version));
        field("local_time", &json_of(&self.local_time));
        field("supersedes", &json_of(&self.supersedes));
        field("refs", &json_of(&self.refs));
        field("sha256", &json_of(&self.sha256));
        field("body", &json_of(&self.body));
        for (name, json) in &self.other {
            field(name, json);
        }
        text.push('}');
        text
    }

    /// The unknown fields of the envelope as one JSON object, each as it came.
    pub fn other_json(&self) -> String {
        let fields: Vec<String> = self
            .other
            .iter()
            .map(|(name, json)| format!("{}:{json}", json_of(name)))
            .collect();
        format!("{{{}}}", fields.join(","))
    }

    /// Reads what [`Entry::other_json`] wrote.
    ///
    /// # Errors
    /// Not a JSON object.
    pub fn other_of(json: &str) -> Result<BTreeMap<String, String>, serde_json::Error> {
        let fields: BTreeMap<String, &RawValue> = serde_json::from_str(json)?;
        Ok(fields
            .into_iter()
            .map(|(name, json)| (name, json.get().to_owned()))
            .collect())
    }

    /// Reads what [`Entry::to_json`] wrote, or what a newer version wrote, and checks it.
    ///
    /// # Errors
    /// `Shape` with the field, `Id`, `Sha`, `LocalTime`.
    pub fn from_json(text: &str) -> Result<Entry, EntryError> {
        Entry::of_fields(serde_json::from_str(text)?)
    }

    /// [`Entry::from_json`] of what was read as an object already: name to JSON text as it came.
    ///
    /// # Errors
    /// `Shape` with the field, `Id`, `Sha`, `LocalTime`.
    pub fn of_fields(mut fields: BTreeMap<String, &RawValue>) -> Result<Entry, EntryError> {
        let entry = Entry {
            id: take(&mut fields, "id")?,
            book: take(&mut fields, "book")?,
            device: take(&mut fields, "device")?,
            incarnation: take(&mut fields, "incarnation")?,
            dseq: take(&mut fields, "dseq")?,
            author: take(&mut fields, "author")?,
            hlc: take(&mut fields, "hlc")?,
            kind: take(&mut fields, "kind")?,
            kind_version: take(&mut fields, "kind_version")?,
            local_time: take(&mut fields, "local_time")?,
            supersedes: take(&mut fields, "supersedes")?,
            refs: take(&mut fields, "refs")?,
            sha256: take(&mut fields, "sha256")?,
            body: take(&mut fields, "body")?,
            other: fields
                .into_iter()
                .map(|(name, json)| (name, json.get().to_owned()))
                .collect(),
        };
        entry.check()?;
        Ok(entry)
    }
}

/// SHA-256 of some bytes as 64 hex digits.
pub fn sha256_hex(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

/// Bytes as hex digits, two each.
pub(super) fn hex(bytes: &[u8]) -> String {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let mut hex = String::with_capacity(2 * bytes.len());
    for byte in bytes {
        for digit in [byte >> 4, byte & 15] {
            hex.push(char::from(DIGITS[usize::from(digit)]));
        }
    }
    hex
}

fn take<T: serde::de::DeserializeOwned>(
    fields: &mut BTreeMap<String, &RawValue>,
    name: &str,
) -> Result<T, serde_json::Error> {
    use serde::de::Error;
    let json = fields
        .remove(name)
        .ok_or_else(|| serde_json::Error::custom(format!("the field {name} is missing")))?;
    serde_json::from_str(json.get())
        .map_err(|why| serde_json::Error::custom(format!("the field {name}: {why}")))
}

/// JSON of a string, a number or a list of them: shapes that cannot fail to be written.
fn json_of<T: serde::Serialize + ?Sized>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_default()
}
