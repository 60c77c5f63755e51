//! Devices push to a hub, beside a bare SQLite that commits as many rows from one hand.

use crate::yard::{Device, Yard, entry, together};
use crate::{Done, rate, row, timed};
use eavebook_core::book::entry::Entry;
use eavebook_hub::Transport;
use rusqlite::Connection;
use std::error::Error;
use std::path::Path;
use std::time::Duration;
use uuid::Uuid;

const DEVICES: usize = 32;
const ROUNDS: usize = 6;
const JOB: Uuid = Uuid::from_u128(0xb);

pub fn run() -> Done {
    for (transport, said) in [(Transport::Plain, "plain"), (Transport::Tls, "TLS")] {
        let yard = Yard::new(transport, None)?;
        let mut devices: Vec<Device> = (0..DEVICES)
            .map(|_| yard.device("Ridge"))
            .collect::<Result<_, _>>()?;
        let mut peer = bare(yard.beside())?;
        // Calls of a device in a turn, and entries of a call.
        for (name, calls, entries, goal) in
            [("one entry", 40, 1, 1.5), ("100 entries", 2, 100, 0.2)]
        {
            let [mut ours, mut theirs] = [Duration::ZERO; 2];
            for _ in 0..ROUNDS {
                let said: Vec<Vec<Vec<Entry>>> = devices
                    .iter_mut()
                    .map(|device| (0..calls).map(|_| device.book(JOB, entries)).collect())
                    .collect();
                ours += timed(|| {
                    together(&mut devices, |n, device| {
                        said[n].iter().try_for_each(|call| device.push(call))
                    })
                })?;
                // One hand, one commit a call.
                let turn = calls * DEVICES / 4;
                let same: Vec<Vec<Entry>> = (0..turn)
                    .map(|_| {
                        let one = |n| entry(JOB, JOB, JOB, n as u64);
                        (0..entries).map(one).collect()
                    })
                    .collect();
                theirs += timed(|| same.iter().try_for_each(|rows| insert(&mut peer, rows)))?;
            }
            let all = ROUNDS * calls * entries * DEVICES;
            let rates = [rate(all, ours), rate(all / 4, theirs)];
            let name = format!("hub, {name} a call, {DEVICES} devices, {said}");
            row(&name, rates, "per s", goal);
        }
        drop(devices);
        yard.hub.stop();
    }
    Ok(())
}

/// SQLite with one table, as durable as a hub.
pub fn bare(folder: &Path) -> rusqlite::Result<Connection> {
    let peer = Connection::open(folder.join("peer.sqlite"))?;
    peer.pragma_update(None, "journal_mode", "wal")?;
    peer.pragma_update(None, "synchronous", "full")?;
    peer.execute_batch(
        "CREATE TABLE said (seq INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, book TEXT NOT NULL,
                            entry BLOB NOT NULL) STRICT;
         CREATE INDEX of_a_book ON said (book)",
    )?;
    Ok(peer)
}

/// Rows in one commit.
pub fn insert(peer: &mut Connection, rows: &[Entry]) -> Result<(), Box<dyn Error>> {
    let change = peer.transaction()?;
    {
        let sql = "INSERT INTO said (id, book, entry) VALUES (?1, ?2, ?3)";
        let mut write = change.prepare_cached(sql)?;
        for one in rows {
            let text = one.to_json();
            write.execute((one.id.to_string(), one.book.to_string(), text.as_bytes()))?;
        }
    }
    change.commit()?;
    Ok(())
}
