//! The list of jobs, search, a new job, settings.

use crate::answer::Answer;
use crate::open_job::{OpenJob, settings};
use crate::places::today::reply::TodayView;
use crate::places::today::request::TodayRequest;
use crate::places::today::view;
use crate::refusal::{Refusal, RequestRefusal};
use crate::reply::Reply;
use crate::stamp;
use eavebook_core::book::kinds::{JobStarted, Kind};
use eavebook_store::{DraftAfter, Store};
use uuid::Uuid;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: TodayRequest) -> Result<Answer, Refusal> {
    match request {
        TodayRequest::Today => today(store),
        TodayRequest::Search { words } => search(store, &words),
        TodayRequest::StartJob { address } => start(store, &address),
        TodayRequest::Job { job } => Ok(Answer::Job(job)),
    }
}

/// Today.
///
/// # Errors
/// When the book cannot be read.
pub fn today(book: &mut Store) -> Result<Answer, Refusal> {
    list(book, "")
}

/// Jobs and things that hold all of these words.
///
/// # Errors
/// When the book cannot be read.
pub fn search(book: &mut Store, words: &str) -> Result<Answer, Refusal> {
    list(book, words)
}

fn list(book: &Store, words: &str) -> Result<Answer, Refusal> {
    let jobs = newest_first(book)?;
    Ok(Reply::Today(TodayView {
        stops: jobs.iter().map(view::stop).collect(),
        found: view::found(&jobs, words),
        settings: settings(book).view(),
    })
    .into())
}

/// All jobs, the pretend house first, then the newest.
fn newest_first(book: &Store) -> Result<Vec<OpenJob>, Refusal> {
    let ids = book.books()?;
    let read = ids.into_iter().rev().map(|id| OpenJob::read(book, id));
    let mut jobs = read.collect::<Result<Vec<OpenJob>, Refusal>>()?;
    jobs.sort_by_key(|job| !job.book.pretend);
    Ok(jobs)
}

/// The longest address that is taken.
const LONGEST_ADDRESS: usize = 200;

/// Begins a job and opens it; the same address once more, with nothing booked since, is the same
/// job.
///
/// # Errors
/// `NoAddress`, `LongAddress`.
pub fn start(book: &mut Store, address: &str) -> Result<Answer, Refusal> {
    let job = begin(book, address, Pretend::No)?;
    Ok(Answer::Job(job))
}

/// Whether a job is the pretend house.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pretend {
    /// A house that stands somewhere.
    No,
    /// An invented one, to be thrown away.
    Yes,
}

/// Begins a job.
///
/// # Errors
/// `NoAddress`, `LongAddress`.
pub fn begin(book: &mut Store, address: &str, pretend: Pretend) -> Result<Uuid, Refusal> {
    let address = address.split_whitespace().collect::<Vec<_>>().join(" ");
    if address.is_empty() {
        return Err(RequestRefusal::NoAddress.into());
    }
    if address.chars().count() > LONGEST_ADDRESS {
        return Err(RequestRefusal::LongAddress.into());
    }
    if let Some(newest) = book.books()?.last().copied() {
        let opened = OpenJob::read(book, newest)?;
        let same = opened.book.address == address
            && opened.book.pretend == (pretend == Pretend::Yes)
            && opened.book.acts.len() == 1;
        if same {
            return Ok(newest);
        }
    }
    let job = stamp::job();
    let started = JobStarted {
        address,
        pretend: pretend == Pretend::Yes,
    };
    let entry = stamp::entry(book, job, &Kind::JobStarted(started), Vec::new())?;
    book.append(&[entry], DraftAfter::AsItIs)?;
    Ok(job)
}
