//! Booking one reading, durably, beside a bare SQLite commit of the same bytes.

use crate::{row, timed};
use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp};
use eavebook_core::book::kinds::{Followed, HowRead, Kind, Reading, TapeMarks, Thing};
use eavebook_store::{Device, DraftAfter, Store};
use rusqlite::Connection;
use std::error::Error;
use std::path::Path;
use std::time::Duration;
use uuid::Uuid;

/// Readings booked on each side. The log is folded into the file several times on the way.
const READINGS: u64 = 2000;

/// Both sides lie in one folder, so on one disk, and take turns.
pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let mut ours = Store::open(&folder.path().join("ours"))?;
    let (device, incarnation, job) = (Uuid::now_v7(), Uuid::now_v7(), Uuid::now_v7());
    let hlc = Hlc::new(1_750_000_000_000, 0);
    ours.set_device(Device {
        id: device,
        incarnation,
        name: "this phone".to_owned(),
        author: "a walker".to_owned(),
        settings: "{}".to_owned(),
        dseq: 0,
        hlc,
    })?;
    let peer = bare(folder.path())?;

    let [mut our_time, mut peer_time] = [Duration::ZERO; 2];
    for count in 1..=READINGS {
        let turn = ours.next_turn(hlc.ms() + count)?;
        let stamp = Stamp {
            id: Uuid::now_v7(),
            book: job,
            device,
            incarnation,
            dseq: turn.dseq,
            author: "a walker".to_owned(),
            hlc: turn.hlc,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
        };
        let entry = Entry::new(stamp, &reading(count), Vec::new());
        let (id, bytes) = (entry.id.to_string(), entry.to_json());
        let (booked, took) = timed(|| ours.append(&[entry], DraftAfter::AsItIs));
        booked?;
        our_time += took;
        let insert = "INSERT INTO said (id, entry) VALUES (?1, ?2)";
        let (written, took) = timed(|| peer.prepare_cached(insert)?.execute((&id, &bytes)));
        written?;
        peer_time += took;
    }
    let rates = [our_time, peer_time].map(|time| READINGS as f64 / time.as_secs_f64());
    row(
        "booking one reading, on disk",
        rates,
        "per s",
        ("at least", 0.7),
    );
    Ok(())
}

fn reading(count: u64) -> Kind {
    Kind::Reading(Reading {
        thing: Thing::Leg {
            leg: 1 + (count % 12) as u32,
        },
        text: format!("{} ft 7 1/2 in", 10 + count % 80),
        tape: TapeMarks::FeetInches,
        how: HowRead::Taped,
        followed: Followed::EaveEdge,
        blind: false,
    })
}

/// SQLite with one table, as durable as ours.
fn bare(folder: &Path) -> rusqlite::Result<Connection> {
    let peer = Connection::open(folder.join("peer.sqlite"))?;
    peer.pragma_update(None, "journal_mode", "wal")?;
    peer.pragma_update(None, "synchronous", "full")?;
    peer.execute_batch(
        "CREATE TABLE said (id TEXT NOT NULL PRIMARY KEY, entry TEXT NOT NULL) STRICT",
    )?;
    Ok(peer)
}
