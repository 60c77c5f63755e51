//! The client beside a program: it works in a thread of its own and rests between rounds.

use crate::client::{Act, Client, Event, Standing};
use crate::link::Link;
use crate::shelf::Shelf;
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// Ends a rest: somebody booked, or the program ends.
#[derive(Debug, Default)]
pub struct Wake {
    state: Mutex<State>,
    changed: Condvar,
}

#[derive(Debug, Default)]
struct State {
    booked: bool,
    ends: bool,
}

impl Wake {
    /// Somebody booked.
    pub fn booked(&self) {
        self.state().booked = true;
        self.changed.notify_all();
    }

    /// The program ends; a request under way is still waited for.
    pub fn end(&self) {
        self.state().ends = true;
        self.changed.notify_all();
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Waits; whether to go on after it.
    fn rest(&self, ms: u64) -> bool {
        let quiet = |state: &mut State| !state.booked && !state.ends;
        let (mut state, _) = self
            .changed
            .wait_timeout_while(self.state(), Duration::from_millis(ms), quiet)
            .unwrap_or_else(PoisonError::into_inner);
        state.booked = false;
        !state.ends
    }
}

/// A client with its book and its hub.
#[derive(Debug)]
pub struct Runs<S> {
    /// The machine.
    pub client: Client,
    /// The book.
    pub shelf: S,
    /// The hub.
    pub link: Link,
}

impl<S: Shelf> Runs<S> {
    /// One round: until it rests or ends. `now_ms` tells milliseconds since 1970.
    pub fn round(&mut self, now_ms: &dyn Fn() -> u64) -> Act {
        let mut event = Event::Begin;
        loop {
            match self.client.next(&mut self.shelf, now_ms(), event) {
                Act::Ask(request) => {
                    event = match self.link.ask(&request) {
                        Ok(answer) => Event::Answer(answer),
                        Err(why) => Event::Failed(why.to_string()),
                    };
                }
                end @ (Act::Rest(_) | Act::Stop) => return end,
            }
        }
    }

    /// Goes on until it is told to end, or only a person can help; tells after each round how it
    /// stands. It may be killed at any instant.
    pub fn run(
        &mut self,
        wake: &Wake,
        now_ms: &dyn Fn() -> u64,
        tell: &mut dyn FnMut(&Standing, bool),
    ) {
        loop {
            let end = self.round(now_ms);
            tell(self.client.standing(), self.client.duplicate());
            match end {
                Act::Rest(ms) if wake.rest(ms) => {}
                Act::Rest(_) | Act::Stop | Act::Ask(_) => return,
            }
        }
    }
}
