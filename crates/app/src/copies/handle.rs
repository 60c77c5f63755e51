//! What is asked about copies on other machines.

use crate::answer::Answer;
use crate::copies::reply::CopiesReply;
use crate::copies::request::CopiesRequest;
use crate::copies::{pairing, view};
use crate::open_store::OpenStore;
use crate::refusal::Refusal;

/// Answers a request about copies.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(open: &OpenStore, request: CopiesRequest) -> Result<Answer, Refusal> {
    let job = match request {
        CopiesRequest::Copies { job } => job,
        CopiesRequest::Join { link } => {
            pairing::join(open, &link)?;
            None
        }
        CopiesRequest::Invite => return Ok(CopiesReply::Invite(pairing::invite(open)?).into()),
    };
    let shares = open.hub().is_some();
    let mut view = open.ask(|store| view::view(store, job))?;
    view.shares = shares;
    Ok(CopiesReply::Copies(view).into())
}
