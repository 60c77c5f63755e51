//! What the Leave-site check is asked.

use crate::answer::Answer;
use crate::draft;
use crate::open_job::OpenJob;
use crate::places::check::request::CheckRequest;
use crate::refusal::Refusal;
use eavebook_store::Store;
use uuid::Uuid;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: CheckRequest) -> Result<Answer, Refusal> {
    match request {
        CheckRequest::HoldPlace { job, at } => hold_place(store, job, at),
    }
}

/// Keeps from which card of the check somebody went, so that one comes back to it; none: one came
/// back.
///
/// # Errors
/// `NoJob`.
pub fn hold_place(book: &mut Store, job: Uuid, at: Option<String>) -> Result<Answer, Refusal> {
    let mut opened = OpenJob::read(book, job)?;
    if opened.draft.check_at != at {
        opened.draft.check_at = at;
        draft::keep(book, job, &opened.draft)?;
    }
    Ok(Answer::Job(job))
}
