//! What the walk-round is asked.

use crate::answer::Answer;
use crate::places::walk_round::photos;
use crate::places::walk_round::request::WalkRoundRequest;
use crate::refusal::Refusal;
use eavebook_store::Store;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: WalkRoundRequest) -> Result<Answer, Refusal> {
    match request {
        WalkRoundRequest::PhotoFacts { job, photos, word } => {
            photos::note(store, job, &photos, word)
        }
    }
}
