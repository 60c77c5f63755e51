//! What the job file is asked.

use crate::answer::Answer;
use crate::open_store::OpenStore;
use crate::places::job_file::make::{self, Wanted};
use crate::places::job_file::request::JobFileRequest;
use crate::places::job_file::{found, send, view};
use crate::refusal::Refusal;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(open: &OpenStore, request: JobFileRequest) -> Result<Answer, Refusal> {
    match request {
        JobFileRequest::Packets { job } => open.ask(|store| view::packets(store, job, None)),
        JobFileRequest::MakePacket { job, edition } => {
            let made = make::make(open, job, edition, Wanted::Newest)?;
            open.ask(|store| view::packets(store, job, Some(made.id)))
        }
        JobFileRequest::Send {
            job,
            packet,
            to,
            after,
        } => open.ask(|store| send::begin(store, job, packet.as_deref(), &to, after)),
        JobFileRequest::SendCame { job, send, stage } => {
            open.ask(|store| send::came(store, job, send, stage))
        }
        JobFileRequest::AddChange {
            job,
            number,
            leg,
            sheets,
            consent,
        } => {
            let change = found::Found {
                number,
                leg,
                sheets,
                consent,
            };
            open.ask(|store| found::found(store, job, &change))
        }
    }
}
