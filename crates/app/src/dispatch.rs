//! Hands each request to its place, and turns the answer into a reply.

use crate::answer::Answer;
use crate::open_store::OpenStore;
use crate::places::{arrive, check, field_book, job_file, plan, takeoff, today, walk_round};
use crate::refusal::Refusal;
use crate::reply::Reply;
use crate::request::Request;
use crate::{copies, job, settings};

/// Carries out one request.
///
/// # Errors
/// Why nothing was changed.
pub fn reply(open: &OpenStore, request: Request) -> Result<Reply, Refusal> {
    let answer = match request {
        Request::Today(request) => open.ask(|store| today::handle::answer(store, request)),
        Request::Arrive(request) => open.ask(|store| arrive::handle::answer(store, request)),
        Request::WalkRound(request) => open.ask(|store| walk_round::handle::answer(store, request)),
        Request::FieldBook(request) => open.ask(|store| field_book::handle::answer(store, request)),
        Request::Plan(request) => open.ask(|store| plan::handle::answer(store, request)),
        Request::Check(request) => open.ask(|store| check::handle::answer(store, request)),
        Request::Takeoff(request) => open.ask(|store| takeoff::handle::answer(store, request)),
        Request::Settings(request) => open.ask(|store| settings::handle::answer(store, request)),
        // These two wait for the disk or a network, so they take the store when they need it.
        Request::JobFile(request) => job_file::handle::answer(open, request),
        Request::Copies(request) => copies::handle::answer(open, request),
    };
    finish(open, answer?)
}

/// The reply to an answer.
///
/// # Errors
/// `NoJob`.
pub fn finish(open: &OpenStore, answer: Answer) -> Result<Reply, Refusal> {
    match answer {
        Answer::Job(job) => {
            let view = open.ask(|store| job::view::whole(store, job))?;
            Ok(Reply::Job(Box::new(view)))
        }
        Answer::Reply(reply) => Ok(reply),
    }
}
