//! A device takes what comes in the feed, beside a bare SQLite commit of as many rows.

use crate::pushing::{bare, insert};
use crate::yard::entry;
use crate::{Done, rate, row, timed};
use eavebook_store::Store;
use std::time::Duration;
use uuid::Uuid;

const ROUNDS: usize = 12;
const PAGE: usize = 1000;

pub fn run() -> Done {
    let folder = tempfile::tempdir()?;
    let mut book = Store::open(&folder.path().join("book"))?;
    let mut peer = bare(folder.path())?;
    let (job, device, life) = (Uuid::now_v7(), Uuid::now_v7(), Uuid::new_v4());
    let [mut ours, mut theirs] = [Duration::ZERO; 2];
    for round in 0..ROUNDS {
        let page: Vec<_> = (0..PAGE)
            .map(|n| entry(job, device, life, (round * PAGE + n) as u64 + 1))
            .collect();
        let texts: Vec<String> = page.iter().map(|one| one.to_json()).collect();
        ours += timed(|| Ok(book.receive(&texts, None, 1_750_000_000_000)?))?;
        theirs += timed(|| insert(&mut peer, &page))?;
    }
    let rates = [ours, theirs].map(|took| rate(ROUNDS * PAGE, took));
    row("taking a feed, 1000 entries a commit", rates, "per s", 0.4);
    Ok(())
}
