//! The pretend house as entries, for the tests of this crate: the same acts that the program books.

use crate::job::{Freeze, Job, Photos};
use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp, sha256_hex};
use eavebook_core::book::fold::{FieldBook, fold};
use eavebook_core::book::kinds::{
    About, Corner, JobStarted, Kind, LegEnd, PenetrationAdded, PhotoFrom, PhotoTaken, PitchBooked,
    Reading, SaddleObserved, Side, Strike,
};
use eavebook_core::book::lay_out::{LaidOut, lay_out};
use eavebook_core::price::Price;
use eavebook_core::settings::{Code, Origin, Terms};
use eavebook_core::solve::{Solved, solve, take_off_and_price};
use eavebook_core::takeoff::Takeoff;
use serde_json::Value;
use std::collections::BTreeMap;
use std::io;
use uuid::Uuid;

const ACTS: &str = include_str!("../../../assets/demo/acts.json");

/// A job that owns what it is made of.
pub struct Owned {
    pub entries: Vec<Entry>,
    pub book: FieldBook,
    pub laid: LaidOut,
    pub solved: Option<Solved>,
    pub takeoff: Option<Takeoff>,
    pub price: Option<Price>,
    pub code: Option<Code>,
    pub photos: Kept,
}

/// Photos by their hash.
#[derive(Clone, Default)]
pub struct Kept(pub BTreeMap<String, Vec<u8>>);

impl Photos for Kept {
    fn bytes(&self, sha256: &str) -> io::Result<Vec<u8>> {
        self.0
            .get(sha256)
            .cloned()
            .ok_or_else(|| io::ErrorKind::NotFound.into())
    }
}

impl Kept {
    pub fn keep(&mut self, bytes: &[u8]) -> String {
        let sha256 = sha256_hex(bytes);
        self.0.insert(sha256.clone(), bytes.to_vec());
        sha256
    }
}

/// The nth entry of one device, one second after the one before.
pub fn entry(n: u32, kind: &Kind, supersedes: Vec<Uuid>) -> Entry {
    let stamp = Stamp {
        id: Uuid::from_u128((u128::from(n) << 80) | (7 << 76) | (2 << 62) | u128::from(n)),
        book: Uuid::from_u128(0xb00c),
        device: Uuid::from_u128(0xde1),
        incarnation: Uuid::from_u128(0x11fe),
        dseq: u64::from(n),
        author: "me".to_owned(),
        hlc: Hlc::new(1_777_000_000_000 + u64::from(n) * 1000, 0),
        local_time: format!("2026-05-02T14:{:02}:{:02}-05:00", n / 60, n % 60),
    };
    Entry::new(stamp, kind, supersedes)
}

impl Owned {
    /// Folds and solves entries.
    pub fn new(entries: Vec<Entry>, photos: Kept) -> Owned {
        let book = fold(&entries);
        let laid = lay_out(&book, Side::Right);
        let solved = laid.survey.as_ref().and_then(|survey| solve(survey).ok());
        let terms = Terms::demo();
        let priced = laid
            .survey
            .as_ref()
            .zip(solved.as_ref())
            .and_then(|(survey, solved)| take_off_and_price(survey, solved, &terms).ok());
        let (takeoff, price) = priced.map(|both| (both.takeoff, both.price)).unzip();
        Owned {
            entries,
            book,
            laid,
            solved,
            takeoff,
            price,
            code: Some(Code::demo()),
            photos,
        }
    }

    pub fn job(&self) -> Job<'_> {
        Job {
            id: Uuid::from_u128(0xb00c),
            entries: &self.entries,
            book: &self.book,
            laid: &self.laid,
            solved: self.solved.as_ref(),
            takeoff: self.takeoff.as_ref(),
            price: self.price.as_ref(),
            code: self.code.as_ref(),
            rates_from: Origin::Demo,
            before: None,
        }
    }
}

pub fn freeze() -> Freeze {
    Freeze {
        version: 1,
        moment: "2026-05-02T16:20:00-05:00".to_owned(),
        before: None,
        made_with: "eavebook 0.1.0".to_owned(),
    }
}

/// The pretend house, booked.
pub fn demo() -> Owned {
    let walk: Value = serde_json::from_str(ACTS).unwrap();
    let mut photos = Kept::default();
    let files: BTreeMap<&str, &[u8]> = BTreeMap::from([
        (
            "pipe-3in.jpg",
            &include_bytes!("../../../assets/demo/pipe-3in.jpg")[..],
        ),
        (
            "tape-leg-2.jpg",
            &include_bytes!("../../../assets/demo/tape-leg-2.jpg")[..],
        ),
    ]);
    let started = JobStarted {
        address: walk["address"].as_str().unwrap().to_owned(),
        pretend: true,
    };
    let mut entries = vec![entry(1, &Kind::JobStarted(started), Vec::new())];
    let mut named: BTreeMap<String, Uuid> = BTreeMap::new();
    for act in walk["acts"].as_array().unwrap() {
        let id = |key: &str| named[act[key].as_str().unwrap()];
        let body = || act.clone();
        let (kind, supersedes) = match act["ask"].as_str().unwrap_or("photo") {
            "reading" => (Kind::Reading(read::<Reading>(flat(body()))), Vec::new()),
            "right" => (
                Kind::ReadBackRight(About {
                    entry: id("reading"),
                }),
                Vec::new(),
            ),
            "corner" => {
                let corner = Corner {
                    after_leg: read(act["after_leg"].clone()),
                    turn: read(act["turn"].clone()),
                    building_on: Side::Right,
                };
                (Kind::Corner(corner), Vec::new())
            }
            "strike" => {
                let reason = act["reason"].as_str().map(str::to_owned);
                (Kind::Strike(Strike { reason }), vec![id("entry")])
            }
            "leg_end" => (Kind::LegEnd(read::<LegEnd>(body())), Vec::new()),
            "pitch" => (Kind::Pitch(read::<PitchBooked>(body())), Vec::new()),
            "add_item" => (Kind::Penetration(item(act, None)), Vec::new()),
            "saddle" => {
                let seen = read(act["seen"].clone());
                let last = entries
                    .iter()
                    .rev()
                    .find(|entry| entry.kind == "penetration")
                    .unwrap();
                let was = serde_json::from_str(&last.body).unwrap();
                (
                    Kind::Penetration(PenetrationAdded {
                        saddle: Some(seen),
                        ..was
                    }),
                    vec![last.id],
                )
            }
            "layers" => (Kind::Covering(read(body())), Vec::new()),
            "deck" => (Kind::Deck(read(body())), Vec::new()),
            "photo" => {
                let bytes = files[act["file"].as_str().unwrap()];
                (photo(&mut photos, bytes, act["of"].clone()), Vec::new())
            }
            _ => continue,
        };
        let n = u32::try_from(entries.len() + 1).unwrap();
        let entry = entry(n, &kind, supersedes);
        if let Some(name) = act["as"].as_str() {
            named.insert(name.to_owned(), entry.id);
        }
        entries.push(entry);
    }
    Owned::new(entries, photos)
}

/// A photo kept, as a body.
pub fn photo(kept: &mut Kept, bytes: &[u8], of: Value) -> Kind {
    Kind::Photo(PhotoTaken {
        sha256: kept.keep(bytes),
        size: bytes.len() as u64,
        media: "image/jpeg".to_owned(),
        of: serde_json::from_value(of).ok(),
        from: PhotoFrom::Camera,
        heading: None,
        tilt: None,
        place: None,
        distance: None,
    })
}

fn read<T: serde::de::DeserializeOwned>(value: Value) -> T {
    serde_json::from_value(value).unwrap()
}

/// The first of its kind on its face.
fn item(act: &Value, saddle: Option<SaddleObserved>) -> PenetrationAdded {
    PenetrationAdded {
        item: read(act["item"].clone()),
        number: 1,
        leg: read(act["leg"].clone()),
        saddle,
    }
}

/// A body names its thing among its own fields.
fn flat(mut act: Value) -> Value {
    let thing = act["thing"].clone();
    for (key, value) in thing.as_object().unwrap() {
        act[key] = value.clone();
    }
    act
}
