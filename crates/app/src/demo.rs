//! The pretend house: an invented walk, booked act by act through the one boundary.

use crate::job::reply::JobView;
use crate::places::field_book::request::FieldBookRequest;
use crate::places::today::request::TodayRequest;
use crate::places::walk_round::photos::AboutPhoto;
use crate::reply::Reply;
use crate::request::{self, Request};
use crate::sentence::{Sentence, sentence};
use crate::{App, names};
use eavebook_core::book::keypad::Key;
use eavebook_core::book::kinds::{Followed, HowRead, PhotoFrom, TapeMarks, Thing};
use serde::Deserialize;
use serde_json::Value;
use std::collections::BTreeMap;
use uuid::Uuid;

/// The walk, in the order of its acts.
const ACTS: &str = include_str!("../../../assets/demo/acts.json");

/// Photos of the walk by their names in it.
const PHOTOS: [(&str, &[u8]); 2] = [
    (
        "pipe-3in.jpg",
        include_bytes!("../../../assets/demo/pipe-3in.jpg"),
    ),
    (
        "tape-leg-2.jpg",
        include_bytes!("../../../assets/demo/tape-leg-2.jpg"),
    ),
];

/// Why the pretend house could not be booked.
#[derive(Debug, thiserror::Error)]
pub enum DemoError {
    /// The walk in this program does not read.
    #[error("the pretend house in this program does not read ({0}): build it again")]
    Walk(#[from] serde_json::Error),
    /// An act was refused.
    #[error("the pretend house stopped at act {act}: {}", said.en)]
    Refused {
        /// Which, from 1.
        act: usize,
        /// Why.
        said: Sentence,
    },
}

#[derive(Deserialize)]
struct Walk {
    address: String,
    acts: Vec<Act>,
}

/// One act. What is not a reading, a photo or an act about an earlier reading is a request
/// without its job.
#[derive(Deserialize)]
#[serde(untagged)]
enum Act {
    Reading(Taped),
    Photo(Pictured),
    Request(serde_json::Map<String, Value>),
}

#[derive(Deserialize)]
struct Taped {
    #[serde(rename = "as")]
    name: String,
    thing: Thing,
    text: String,
    tape: TapeMarks,
    how: HowRead,
    followed: Followed,
    #[serde(default)]
    blind: bool,
}

#[derive(Deserialize)]
struct Pictured {
    file: String,
    of: Thing,
}

/// Books the pretend house, unless it stands in the book whole, and gives it as it stands.
///
/// # Errors
/// `Refused` with the first act that was refused, `Walk`.
pub fn book(app: &App) -> Result<Box<JobView>, DemoError> {
    let walk: Walk = serde_json::from_str(ACTS)?;
    if let Some(there) = whole(app, &walk) {
        return Ok(there);
    }
    let mut job = job_of(app.start_pretend(&walk.address), 0)?;
    let mut read: BTreeMap<String, Uuid> = BTreeMap::new();
    for (place, act) in walk.acts.into_iter().enumerate() {
        job = match act {
            Act::Reading(taped) => {
                let booked = type_in(app, job.job, &taped, place + 1)?;
                let entry = booked.pad.read_back.as_ref().map(|back| back.reading);
                read.extend(entry.map(|entry| (taped.name, entry)));
                booked
            }
            Act::Photo(photo) => keep(app, job.job, &photo, place + 1)?,
            Act::Request(fields) => {
                let request = with_job(fields, job.job, &read)?;
                job_of(app.handle(request), place + 1)?
            }
        };
    }
    Ok(job)
}

/// The pretend house that stands in the book already, if its last act is there.
fn whole(app: &App, walk: &Walk) -> Option<Box<JobView>> {
    let Reply::Today(today) = app.handle(TodayRequest::Today) else {
        return None;
    };
    let photos = walk
        .acts
        .iter()
        .filter(|act| matches!(act, Act::Photo(_)))
        .count();
    let pretend = today
        .stops
        .iter()
        .filter(|stop| stop.pretend && stop.address == walk.address);
    pretend
        .filter_map(|stop| job_of(app.handle(TodayRequest::Job { job: stop.job }), 0).ok())
        .find(|job| job.photos.len() >= photos)
}

fn job_of(reply: Reply, act: usize) -> Result<Box<JobView>, DemoError> {
    reply.into_job().map_err(|reply| {
        let said = if let Reply::Refused(said) = *reply {
            said
        } else {
            sentence("no_job_reply", "No job came back. Build the program again.")
        };
        DemoError::Refused { act, said }
    })
}

/// Types a reading on the keypad, key by key, as a person would.
fn type_in(app: &App, job: Uuid, taped: &Taped, act: usize) -> Result<Box<JobView>, DemoError> {
    let mut done = app.handle(FieldBookRequest::OpenPad {
        job,
        thing: Some(taped.thing.clone()),
        blind: taped.blind,
    });
    let first = if let Reply::Job(job) = &done {
        job.pad.open.as_ref().map_or(0, |open| open.press)
    } else {
        0
    };
    if (taped.how, taped.followed) != (HowRead::Taped, Followed::EaveEdge) {
        let (how, followed) = (taped.how, taped.followed);
        done = app.handle(FieldBookRequest::Chip { job, how, followed });
    }
    job_or_pad(done, act)?;
    let mut keys = keys(&taped.text, taped.tape);
    keys.push(Key::BookIt);
    let mut last = None;
    for (press, key) in (first..).zip(keys) {
        last = Some(app.handle(FieldBookRequest::Press {
            job,
            press,
            key,
            since_ms: None,
        }));
        if let Some(Reply::Refused(said)) = last {
            return Err(DemoError::Refused { act, said });
        }
    }
    job_of(last.unwrap_or_else(crate::broken_off), act)
}

fn job_or_pad(reply: Reply, act: usize) -> Result<(), DemoError> {
    if let Reply::Refused(said) = reply {
        return Err(DemoError::Refused { act, said });
    }
    Ok(())
}

/// The keys that type a text like `22' 3 1/2"`.
#[must_use]
pub fn keys(text: &str, tape: TapeMarks) -> Vec<Key> {
    let mut keys = Vec::new();
    let mut words = text.split([' ', '"']).filter(|word| !word.is_empty());
    let digits = |keys: &mut Vec<Key>, word: &str| {
        let digits = word.chars().filter_map(|sign| sign.to_digit(10));
        keys.extend(
            digits
                .filter_map(|d| u8::try_from(d).ok())
                .map(|digit| Key::Digit { digit }),
        );
    };
    if let Some(whole) = words.next() {
        let (whole, decimals) = whole.split_once('.').unwrap_or((whole, ""));
        digits(&mut keys, whole);
        keys.push(Key::Whole);
        if tape != TapeMarks::FeetInches {
            digits(&mut keys, decimals);
        }
    }
    for word in words {
        match word.split_once('/') {
            Some((over, under)) => {
                let part = |text: &str| text.parse::<u8>().unwrap_or(0);
                let eighths = (part(over) * 8).checked_div(part(under)).unwrap_or(0);
                keys.push(Key::Eighths { eighths });
            }
            None => digits(&mut keys, word),
        }
    }
    keys
}

fn keep(app: &App, job: Uuid, photo: &Pictured, act: usize) -> Result<Box<JobView>, DemoError> {
    let named = PHOTOS.iter().find(|(name, _)| *name == photo.file);
    let bytes = named.map(|(_, bytes)| *bytes).unwrap_or_default();
    let of = Some(names::name(&photo.of));
    job_of(
        app.keep_photo(
            bytes,
            &AboutPhoto {
                job,
                of,
                from: PhotoFrom::File,
                heading: None,
                tilt: None,
                place: None,
                distance: None,
                said_aloud: false,
            },
        ),
        act,
    )
}

/// A request of the walk with its job, and with entries in the place of the names of readings.
fn with_job(
    mut fields: serde_json::Map<String, Value>,
    job: Uuid,
    read: &BTreeMap<String, Uuid>,
) -> Result<Request, DemoError> {
    fields.insert("job".to_owned(), Value::String(job.to_string()));
    for name in ["reading", "entry"] {
        if let Some(Value::String(said)) = fields.get_mut(name)
            && let Some(entry) = read.get(said)
        {
            *said = entry.to_string();
        }
    }
    Ok(serde_json::from_value::<request::Request>(Value::Object(
        fields,
    ))?)
}
