//! The two sums in words, and what to look at again.

use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::sentence::{Sentence, sentence};
use eavebook_core::outline::ClosureState;

/// The sentence: "Closes within 2 in.", "To close: 18 ft along, 0 across."
#[must_use]
pub fn words(seen: &SolvedJob) -> Sentence {
    if seen.laid.lengths.iter().all(Option::is_none) {
        return sentence(
            "no_legs",
            "No leg is read yet. Start at any outside corner.",
        );
    }
    if let Some(lost) = seen.laid.directions.iter().position(Option::is_none) {
        let words = format!("Nobody said how the line turns after leg {lost}. Tap that corner.");
        return sentence("corner_wanted", words);
    }
    let closure = &seen.laid.walk.closure;
    if let (ClosureState::Open, Some(thing)) = (closure.state, seen.hidden) {
        // What is left to the start would tell what was read.
        let words = format!("{} is being read again.", things::plain_title(thing));
        return sentence("read_again", words);
    }
    let code = match closure.state {
        ClosureState::Open => "closure_open",
        ClosureState::Closes => "closure_closes",
        ClosureState::Gap => "closure_gap",
        ClosureState::NotChecked => "closure_not_checked",
    };
    sentence(code, closure.words.to_string())
}
