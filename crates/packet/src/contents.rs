//! What lies in a packet, file by file, and `packet.json`, which lists it.

use crate::edition::{Edition, Lang};
use crate::job::Freeze;
use crate::lack::Lack;
use eavebook_core::book::entry::sha256_hex;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uuid::Uuid;

/// The name of the format, as `packet.json` says it.
pub const FORMAT: &str = "eavebook-packet/1";

/// What a file of a packet is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(
    missing_docs,
    reason = "each is the paper, table or drawing of its name"
)]
pub enum Role {
    Start,
    List,
    Proposal,
    Crew,
    Order,
    Permit,
    Photos,
    Story,
    Changes,
    PlanSvg,
    PlanDxf,
    RoofGlb,
    Faces,
    Edges,
    Readings,
    Items,
    OrderLines,
    PriceLines,
    PhotoList,
    Differences,
    Photo,
    Book,
    Survey,
    Original,
}

impl Role {
    /// Its name: `plan-svg`.
    #[must_use]
    pub fn name(self) -> String {
        serde_json::to_value(self)
            .ok()
            .and_then(|value| value.as_str().map(str::to_owned))
            .unwrap_or_default()
    }
}

/// One file as `packet.json` lists it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FileRow {
    /// From the folder of the bag: `data/papers/crew.es.pdf`.
    pub path: String,
    /// What it is for.
    pub role: Role,
    /// Its language, where it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lang: Option<String>,
    /// Its media type.
    pub media_type: String,
    /// What a person calls it.
    pub title: String,
    /// Whether money stands in it.
    pub money: bool,
}

/// The bytes of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Bytes {
    /// Made here.
    Made(Vec<u8>),
    /// A photo as it was kept, read again when the packet is written.
    Original {
        /// Its SHA-256, which is its name in the book.
        sha256: String,
        /// How many.
        size: u64,
    },
}

impl Bytes {
    /// How many.
    pub fn len(&self) -> u64 {
        match self {
            Bytes::Made(bytes) => bytes.len() as u64,
            Bytes::Original { size, .. } => *size,
        }
    }

    /// SHA-256, 64 hex digits.
    pub fn sha256(&self) -> String {
        match self {
            Bytes::Made(bytes) => sha256_hex(bytes),
            Bytes::Original { sha256, .. } => sha256.clone(),
        }
    }
}

/// One file of a packet.
#[derive(Clone, Debug)]
pub struct PacketFile {
    /// Its row in the list.
    pub row: FileRow,
    /// What is in it.
    pub bytes: Bytes,
}

impl PacketFile {
    /// A file made here; `path` from `data/`.
    pub fn made(path: &str, role: Role, title: &str, bytes: Vec<u8>) -> PacketFile {
        PacketFile {
            row: FileRow {
                path: format!("data/{path}"),
                role,
                lang: None,
                media_type: media_type(path).to_owned(),
                title: title.to_owned(),
                money: false,
            },
            bytes: Bytes::Made(bytes),
        }
    }

    /// The same in a language.
    pub fn in_lang(mut self, lang: Lang) -> PacketFile {
        self.row.lang = Some(lang.code().to_owned());
        self
    }

    /// The same, with money in it.
    pub fn with_money(mut self) -> PacketFile {
        self.row.money = true;
        self
    }
}

/// Media type by the end of a name.
pub fn media_type(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, end)| end) {
        Some("pdf") => "application/pdf",
        Some("svg") => "image/svg+xml",
        Some("dxf") => "image/vnd.dxf",
        Some("glb") => "model/gltf-binary",
        Some("csv") => "text/csv",
        Some("json") => "application/json",
        Some("jsonl") => "application/jsonl",
        Some("html") => "text/html",
        Some("jpg") => "image/jpeg",
        Some("png") => "image/png",
        Some("webp") => "image/webp",
        Some("heic") => "image/heic",
        Some(_) | None => "application/octet-stream",
    }
}

/// Figures that a reader of the list wants without opening another file.
pub type Totals = BTreeMap<&'static str, f64>;

/// `packet.json`.
#[derive(Clone, Debug, Serialize)]
pub struct PacketList<'a> {
    pub format: &'static str,
    pub job: Uuid,
    pub version: u32,
    pub edition: Edition,
    pub frozen_at: &'a str,
    pub before: Option<&'a str>,
    pub entries: EntryCount,
    pub made_with: &'a str,
    pub files: Vec<&'a FileRow>,
    pub lacks: &'a [Lack],
    pub not_known: &'a [String],
    pub private_left_out: u32,
    pub totals: &'a Totals,
}

/// The entries from which a packet was made.
#[derive(Clone, Debug, Serialize)]
pub struct EntryCount {
    pub count: u64,
    pub digest: String,
}

impl<'a> PacketList<'a> {
    /// The list of a packet without its files.
    pub fn new(
        job: Uuid,
        edition: Edition,
        freeze: &'a Freeze,
        entries: EntryCount,
    ) -> PacketList<'a> {
        const NONE: &Totals = &Totals::new();
        PacketList {
            format: FORMAT,
            job,
            version: freeze.version,
            edition,
            frozen_at: &freeze.moment,
            before: freeze.before.as_deref(),
            entries,
            made_with: &freeze.made_with,
            files: Vec::new(),
            lacks: &[],
            not_known: &[],
            private_left_out: 0,
            totals: NONE,
        }
    }
}
