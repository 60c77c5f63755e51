//! One line of a story: something noted, when, by whom, and what happened to it.

use crate::names;
use crate::parts::reply::StoryView;
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use eavebook_core::book::fold::{Noted, SupersededBy};
use eavebook_core::check::State;
use uuid::Uuid;

/// When and by whom something was noted, and what became of it.
pub struct On<'a> {
    entry: Uuid,
    local_time: &'a str,
    author: &'a str,
    device: Uuid,
    struck: Option<&'a SupersededBy>,
}

impl<'a> On<'a> {
    /// Of something noted.
    #[must_use]
    pub fn new<T>(noted: &'a Noted<T>) -> On<'a> {
        On {
            entry: noted.entry,
            local_time: &noted.local_time,
            author: &noted.author,
            device: noted.device,
            struck: noted.struck.as_ref(),
        }
    }
}

/// One line of a story: what was noted, where, when, by whom, and what became of it.
#[must_use]
pub fn told(seen: &SolvedJob, on: &On, value: String, place: String) -> StoryView {
    let state = match on.struck {
        Some(_) => State::Struck,
        None => State::ReadOnce,
    };
    let mut about = vec![
        place,
        names::time_of_day(on.local_time),
        things::whose(seen, on.device, on.author),
    ];
    about.extend(on.struck.map(things::struck));
    StoryView {
        entry: on.entry,
        value,
        state,
        state_word: state.word().to_owned(),
        about: about.join(", "),
        may_strike: on.struck.is_none(),
    }
}
