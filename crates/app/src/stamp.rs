//! Who, when and where of an entry. The one place that asks the clock and randomness.

use chrono::{DateTime, Local, SecondsFormat};
use eavebook_core::book::clock::Hlc;
use eavebook_core::book::entry::{Entry, Stamp};
use eavebook_core::book::kinds::Kind;
use eavebook_store::{Device, Store, StoreError};
use uuid::Uuid;

/// A new entry of a job, not yet booked. `supersedes`: what it takes out of use.
///
/// # Errors
/// `NoDevice`.
pub fn entry(
    book: &mut Store,
    job: Uuid,
    kind: &Kind,
    supersedes: Vec<Uuid>,
) -> Result<Entry, StoreError> {
    let now = Local::now();
    let turn = book.next_turn(milliseconds(now))?;
    let dir = book.dir().display().to_string();
    let device = book.device().ok_or(StoreError::NoDevice { dir })?;
    let stamp = Stamp {
        id: Uuid::now_v7(),
        book: job,
        device: device.id,
        incarnation: device.incarnation,
        dseq: turn.dseq,
        author: device.author.clone(),
        hlc: turn.hlc,
        local_time: now.to_rfc3339_opts(SecondsFormat::Secs, false),
    };
    Ok(Entry::new(stamp, kind, supersedes))
}

/// Now, as local time with offset.
#[must_use]
pub fn moment() -> String {
    Local::now().to_rfc3339_opts(SecondsFormat::Secs, false)
}

/// What a copy of the whole book is called: by the second, so that none is called as another.
#[must_use]
pub fn name_of_copy() -> String {
    format!("field-book-{}.book", Local::now().format("%Y-%m-%d-%H%M%S"))
}

/// A fresh name for a job.
#[must_use]
pub fn job() -> Uuid {
    Uuid::now_v7()
}

/// This device, the first time that it opens a book.
#[must_use]
pub fn device() -> Device {
    Device {
        id: Uuid::now_v7(),
        incarnation: Uuid::now_v7(),
        name: "this phone".to_owned(),
        author: "me".to_owned(),
        settings: "{}".to_owned(),
        dseq: 0,
        hlc: Hlc::default(),
    }
}

/// The day on this device.
#[must_use]
pub fn today() -> chrono::NaiveDate {
    Local::now().date_naive()
}

/// A day ago: what arrived only in part before then is not coming any more.
#[must_use]
pub fn a_day_ago() -> std::time::SystemTime {
    let now = std::time::SystemTime::now();
    now.checked_sub(std::time::Duration::from_hours(24))
        .unwrap_or(now)
}

/// Milliseconds since 1970.
#[must_use]
pub fn now_ms() -> u64 {
    milliseconds(Local::now())
}

/// A number that is another on each device and at each start.
#[must_use]
pub fn chance() -> u64 {
    Uuid::new_v4().as_u64_pair().1
}

fn milliseconds(time: DateTime<Local>) -> u64 {
    u64::try_from(time.timestamp_millis()).unwrap_or(0)
}
