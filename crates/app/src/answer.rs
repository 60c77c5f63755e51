//! What a place answers: a reply, or the job as it stands after the request.

use crate::reply::Reply;
use uuid::Uuid;

/// The answer of a place.
#[derive(Debug)]
pub enum Answer {
    /// The job as it stands now.
    Job(Uuid),
    /// Any other reply.
    Reply(Reply),
}

impl<R: Into<Reply>> From<R> for Answer {
    fn from(reply: R) -> Answer {
        Answer::Reply(reply.into())
    }
}
