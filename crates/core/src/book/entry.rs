//! An entry: an immutable record with its author, time, superseded entries, and body as first written.
//!
//! Fields and kinds that this version does not know are kept and passed on byte for byte.

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
    /// The device that recorded it. With `incarnation` and `dseq` for diagnosis only, never a key: a
    /// restored phone can repeat a number.
    pub device: Uuid,
    /// The incarnation of that device's store.
    pub incarnation: Uuid,
    /// Its count in that incarnation, from 1.
    pub dseq: u64,
    /// The person who recorded it.
    pub author: String,
    /// Hybrid logical clock; it orders the display only.
    pub hlc: Hlc,
    /// Name of its kind.
    pub kind: String,
    /// Version of that kind's body.
    pub kind_version: u32,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// Entries that this one takes out of force while it is in force itself.
    pub supersedes: Vec<Uuid>,
    /// Entry ids and photo hashes that its body names.
    pub refs: Vec<String>,
    /// SHA-256 of the body's bytes, 64 hex digits.
    pub sha256: String,
    /// The body as first written: JSON text, kept byte for byte.
    pub body: String,
    /// Fields of the envelope that this version does not know: name to JSON text as received.
    pub other: BTreeMap<String, String>,
}

impl fmt::Debug for Entry {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Entry {}", self.to_json())
    }
}

/// The facts of a new entry that its kind does not contain: author, device, time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stamp {
    /// A fresh UUID version 7.
    pub id: Uuid,
    /// The job.
    pub book: Uuid,
    /// This device.
    pub device: Uuid,
    /// The incarnation of its store.
    pub incarnation: Uuid,
    /// The next count in that incarnation.
    pub dseq: u64,
    /// The person who records it.
    pub author: String,
    /// The next timestamp of the device's clock.
    pub hlc: Hlc,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
}

/// Why a text or a set of fields is not a valid entry.
#[derive(Debug, thiserror::Error)]
pub enum EntryError {
    /// Not JSON, or a field is missing or has the wrong type.
    #[error("this is no entry: {0}: send it as it was booked")]
    Shape(#[from] serde_json::Error),
    /// The id is not a UUID of version 7.
    #[error("entry {0} has an id that is no UUID of version 7: book it anew")]
    Id(Uuid),
    /// The body does not match its SHA-256.
    #[error("the body of entry {0} does not match its SHA-256: fetch it again from a whole copy")]
    Sha(Uuid),
    /// The local time is not RFC 3339 with an offset.
    #[error("entry {id} has the local time \"{text}\": write it as 2026-05-02T14:41:07-05:00")]
    LocalTime {
        /// The entry.
        id: Uuid,
        /// The time as written.
        text: String,
    },
}

/// An entry body as parsed by this version.
#[derive(Clone, Debug, PartialEq)]
pub enum ParsedBody {
    /// A known kind.
    Known(Kind),
    /// A known kind written by a newer version: its known fields.
    Newer(Kind),
    /// An unknown kind, or a body that does not fit its kind.
    Unknown,
}

impl Entry {
    /// Returns a new entry. `supersedes`: entries that it takes out of force.
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

    /// Returns the key that orders entries for display: clock, then id.
    pub fn display_order(&self) -> (Hlc, Uuid) {
        (self.hlc, self.id)
    }

    /// Parses its body.
    #[must_use]
    pub fn parsed_body(&self) -> ParsedBody {
        match Kind::parse(&self.kind, &self.body) {
            Some(kind) if self.kind_version > kind.version() => ParsedBody::Newer(kind),
            Some(kind) => ParsedBody::Known(kind),
            None => ParsedBody::Unknown,
        }
    }

    /// Validates id, digest and local time.
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

    /// Returns the entry as one JSON object with the body as a string.
    pub fn to_json(&self) -> String {
        let mut text = String::from("{");
        let mut field = |name: &str, json: &str| {
            if text.len() > 1 {
                text.push(',');
            }
            text.push_str(&to_json_text(name));
            text.push(':');
            text.push_str(json);
        };
        field("id", &to_json_text(&self.id));
        field("book", &to_json_text(&self.book));
        field("device", &to_json_text(&self.device));
        field("incarnation", &to_json_text(&self.incarnation));
        field("dseq", &to_json_text(&self.dseq));
        field("author", &to_json_text(&self.author));
        field("hlc", &to_json_text(&self.hlc));
        field("kind", &to_json_text(&self.kind));
        field("kind_version", &to_json_text(&self.kind_version));
        field("local_time", &to_json_text(&self.local_time));
        field("supersedes", &to_json_text(&self.supersedes));
        field("refs", &to_json_text(&self.refs));
        field("sha256", &to_json_text(&self.sha256));
        field("body", &to_json_text(&self.body));
        for (name, json) in &self.other {
            field(name, json);
        }
        text.push('}');
        text
    }

    /// Returns the unknown fields of the envelope as one JSON object, each value as received.
    pub fn other_json(&self) -> String {
        let fields: Vec<String> = self
            .other
            .iter()
            .map(|(name, json)| format!("{}:{json}", to_json_text(name)))
            .collect();
        format!("{{{}}}", fields.join(","))
    }

    /// Parses the output of [`Entry::other_json`].
    ///
    /// # Errors
    /// The text is not a JSON object.
    pub fn other_from_json(json: &str) -> Result<BTreeMap<String, String>, serde_json::Error> {
        let fields: BTreeMap<String, &RawValue> = serde_json::from_str(json)?;
        Ok(fields
            .into_iter()
            .map(|(name, json)| (name, json.get().to_owned()))
            .collect())
    }

    /// Parses and validates the output of [`Entry::to_json`], also of a newer version.
    ///
    /// # Errors
    /// `Shape` with the field, `Id`, `Sha`, `LocalTime`.
    pub fn from_json(text: &str) -> Result<Entry, EntryError> {
        Entry::from_fields(serde_json::from_str(text)?)
    }

    /// Like [`Entry::from_json`], from the fields of a parsed object: name to JSON text.
    ///
    /// # Errors
    /// `Shape` with the field, `Id`, `Sha`, `LocalTime`.
    pub fn from_fields(mut fields: BTreeMap<String, &RawValue>) -> Result<Entry, EntryError> {
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

/// Returns the SHA-256 of bytes as 64 hex digits.
pub fn sha256_hex(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

/// Returns bytes as hex digits, two each.
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

/// Returns the JSON of a string, a number or a list of them, which always serialize.
fn to_json_text<T: serde::Serialize + ?Sized>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_default()
}
