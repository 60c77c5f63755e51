//! Opening a job of ten thousand entries beside reading and parsing the same rows with SQLite alone.
//! Nothing that is folded is stored: the first opening reads, proves and folds all of them.

use crate::{median, row, timed};
use eavebook_app::reply::Reply;
use eavebook_app::request::{PlanRequest, Request, TodayRequest};
use eavebook_app::{App, demo, stamp};
use eavebook_core::book::entry::{Entry, ParsedBody, sha256_hex};
use eavebook_core::book::fold::fold;
use eavebook_core::book::kinds::{
    About, EndKind, Kind, PhotoFacts, PhotoFrom, PhotoPlace, PhotoTaken, PhotoWord, Strike, Thing,
};
use eavebook_store::{DraftAfter, Store};
use rusqlite::{Connection, OpenFlags};
use serde_json::Value;
use std::error::Error;
use std::path::Path;
use std::time::Duration;
use uuid::Uuid;

const ENTRIES: usize = 10_000;
/// Openings on each side, turn by turn.
const TURNS: usize = 15;
/// What a person who opens a job does not notice, milliseconds.
const GOAL_MS: f64 = 150.0;

/// The pretend house, read over and over by somebody with a camera: three in ten entries are photos,
/// three are words about them, the rest are its readings again, one in two struck or read back.
pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let app = App::open(folder.path())?;
    let job = demo::book(&app)?.job;
    drop(app);
    fill(folder.path(), job)?;

    let bare = bare(folder.path())?;
    let [mut first, mut again, mut peer] = [Vec::new(), Vec::new(), Vec::new()];
    for turn in 0..TURNS {
        // Another app each turn: an open book holds what it read.
        let app = App::open(folder.path())?;
        first.push(opened(&app, TodayRequest::Job { job })?);
        let end = [EndKind::Gable, EndKind::Sloped][turn % 2];
        again.push(opened(&app, PlanRequest::LegEnd { job, leg: 2, end })?);
        let (read, took) = timed(|| read_bare(&bare, job));
        if read? < ENTRIES {
            return Err("the rows are not those of the job".into());
        }
        peer.push(took);
    }
    steps(folder.path(), job)?;
    let [first, again, peer] = [first, again, peer].map(|times| ms(median(times)));
    println!(
        "a job of {ENTRIES} entries opens in {first:.1} ms, with one more in {again:.1} ms, rows \
         alone {peer:.1} ms"
    );
    row(
        "opening a job of 10,000 entries, whole reply",
        [first, GOAL_MS],
        "ms",
        ("at most", 1.0),
    );
    row(
        "the same, against its rows read and parsed alone",
        [first, peer],
        "ms",
        ("at most", 4.0),
    );
    row(
        "one entry more in it, on disk and the whole reply",
        [again, GOAL_MS],
        "ms",
        ("at most", 1.0),
    );
    Ok(())
}

/// How long a reply with the whole job took, as the bytes that go to the page.
fn opened(app: &App, request: impl Into<Request>) -> Result<Duration, Box<dyn Error>> {
    let ((told, bytes), took) = timed(|| {
        let told = app.handle(request);
        let bytes = serde_json::to_vec(&told);
        (told, bytes)
    });
    if matches!(told, Reply::Job(_)) && bytes?.len() > ENTRIES {
        Ok(took)
    } else {
        Err("the job does not open".into())
    }
}

/// What the time goes to.
fn steps(folder: &Path, job: Uuid) -> Result<(), Box<dyn Error>> {
    let book = Store::open(folder)?;
    let [mut read, mut folded] = [Vec::new(), Vec::new()];
    for _ in 0..TURNS {
        let (entries, took) = timed(|| book.entries(job));
        read.push(took);
        let entries = entries?;
        let (told, took) = timed(|| fold(&entries.whole));
        folded.push(took);
        if told.photos.is_empty() {
            return Err("the fold lost the photos".into());
        }
    }
    let [read, folded] = [read, folded].map(|times| ms(median(times)));
    println!("  of it: entries read and proved {read:.1} ms, folded {folded:.1} ms");
    Ok(())
}

fn ms(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

fn fill(folder: &Path, job: Uuid) -> Result<(), Box<dyn Error>> {
    let mut book = Store::open(folder)?;
    let there = book.entries(job)?.whole;
    let taped: Vec<Kind> = there.iter().filter_map(reading_of).collect();
    if taped.is_empty() {
        return Err("the pretend house has no reading".into());
    }
    let mut more: Vec<Entry> = Vec::new();
    let (mut photo, mut reading) = (Uuid::nil(), Uuid::nil());
    for count in 0..(ENTRIES - there.len()) as u64 {
        let (kind, supersedes) = match count % 10 {
            0 | 3 | 6 => (picture(count), Vec::new()),
            1 | 4 | 7 => (said_of(photo), Vec::new()),
            2 | 8 => (taped[count as usize % taped.len()].clone(), Vec::new()),
            5 => (Kind::ReadBackRight(About { entry: reading }), Vec::new()),
            _ => (Kind::Strike(Strike { reason: None }), vec![reading]),
        };
        let entry = stamp::entry(&mut book, job, &kind, supersedes)?;
        if matches!(kind, Kind::Photo(_)) {
            photo = entry.id;
        }
        if matches!(kind, Kind::Reading(_)) {
            reading = entry.id;
        }
        more.push(entry);
    }
    book.append(&more, DraftAfter::AsItIs)?;
    Ok(())
}

fn picture(count: u64) -> Kind {
    Kind::Photo(PhotoTaken {
        sha256: sha256_hex(&count.to_be_bytes()),
        size: 3_000_000,
        media: "image/jpeg".to_owned(),
        of: count.is_multiple_of(20).then_some(Thing::Leg { leg: 1 }),
        from: PhotoFrom::Camera,
        heading: Some((count % 360) as f64),
        tilt: None,
        place: None,
        distance: None,
    })
}

fn said_of(photo: Uuid) -> Kind {
    Kind::PhotoFacts(PhotoFacts {
        photos: vec![photo],
        word: PhotoWord::Shows {
            place: PhotoPlace::Front,
        },
    })
}

fn reading_of(entry: &Entry) -> Option<Kind> {
    match entry.parsed_body() {
        ParsedBody::Known(kind @ Kind::Reading(_)) => Some(kind),
        ParsedBody::Known(_) | ParsedBody::Newer(_) | ParsedBody::Unknown => None,
    }
}

fn bare(folder: &Path) -> rusqlite::Result<Connection> {
    Connection::open_with_flags(
        folder.join("book.sqlite"),
        OpenFlags::SQLITE_OPEN_READ_WRITE,
    )
}

/// Every column of every row as text, the body and both lists parsed as JSON: what no reader can do
/// without.
fn read_bare(conn: &Connection, job: Uuid) -> Result<usize, Box<dyn Error>> {
    let sql = "SELECT id, book, device, incarnation, author, hlc, kind, local_time, sha256, other,
                      supersedes, refs, body
               FROM entries WHERE book = ?1 ORDER BY id";
    let mut query = conn.prepare_cached(sql)?;
    let mut rows = query.query([job.to_string()])?;
    let mut kept = Vec::new();
    while let Some(row) = rows.next()? {
        let texts = (0..10)
            .map(|column| row.get::<_, String>(column))
            .collect::<rusqlite::Result<Vec<_>>>()?;
        let parsed = (10..13)
            .map(|column| Ok(serde_json::from_str(&row.get::<_, String>(column)?)?))
            .collect::<Result<Vec<Value>, Box<dyn Error>>>()?;
        kept.push((texts, parsed));
    }
    Ok(kept.len())
}
