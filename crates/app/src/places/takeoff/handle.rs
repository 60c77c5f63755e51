//! The takeoff of a job, and the firm's rates as they hold for it.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::parts::job_rates::JobRates;
use crate::places::takeoff::request::TakeoffRequest;
use crate::places::takeoff::view;
use crate::refusal::Refusal;
use crate::reply::Reply;
use eavebook_core::book::kinds::{Kind, RateSet};
use eavebook_core::book::subject::Subject;
use eavebook_store::Store;
use uuid::Uuid;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: TakeoffRequest) -> Result<Answer, Refusal> {
    match request {
        TakeoffRequest::Takeoff { job } => takeoff(store, job),
        TakeoffRequest::SetRate { job, key, value } => set_rate(store, job, &key, &value),
    }
}

/// The takeoff and the price.
///
/// # Errors
/// `NoJob`.
pub fn takeoff(book: &Store, job: Uuid) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    Ok(Reply::Takeoff(Box::new(view::view(&opened))).into())
}

/// Changes one rate for this job; empty: its price is blank.
///
/// # Errors
/// `NoJob`; a key or a value that the rates refuse, in their sentence.
pub fn set_rate(book: &mut Store, job: Uuid, key: &str, value: &str) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let now = JobRates::new(&opened.book);
    let value = value.trim();
    let changed = now.rates.get().with(key, value).map_err(Refusal::Rate)?;
    if changed != *now.rates.get() {
        let set = RateSet {
            key: key.to_owned(),
            value: value.to_owned(),
        };
        let replaced = opened.book.replaced_by_new(&Subject::Rate(key.to_owned()));
        opened.book(book, &Kind::Rate(set), replaced)?;
    }
    Ok(Answer::Job(job))
}
