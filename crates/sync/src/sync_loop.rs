//! The client beside a program: it works in a thread of its own, listens while all is in step and
//! rests after failures.

use crate::client::{Act, Client, Event, SyncStatus};
use crate::link::Link;
use crate::sync_store::SyncStore;
use std::sync::atomic::{AtomicBool, Ordering};
use tokio::sync::Notify;

/// Ends a rest, or a listening: somebody booked, or the program ends.
#[derive(Debug, Default)]
pub struct Wake {
    /// Keeps one word for who does not wait yet.
    pub(crate) word: Notify,
    ends: AtomicBool,
}

impl Wake {
    /// Somebody booked.
    pub fn booked(&self) {
        self.word.notify_one();
    }

    /// The program ends; a request that brings or sends something is still waited for.
    pub fn end(&self) {
        self.ends.store(true, Ordering::Release);
        self.word.notify_one();
    }

    fn ends(&self) -> bool {
        self.ends.load(Ordering::Acquire)
    }
}

/// A client with its book and its hub.
#[derive(Debug)]
pub struct SyncLoop<S> {
    /// The machine.
    pub client: Client,
    /// The book.
    pub store: S,
    /// The hub.
    pub link: Link,
}

impl<S: SyncStore> SyncLoop<S> {
    /// One round: until it listens, rests or ends. `now_ms` tells milliseconds since 1970.
    pub fn round(&mut self, now_ms: &dyn Fn() -> u64) -> Act {
        self.until_quiet(now_ms, Event::Begin)
    }

    fn until_quiet(&mut self, now_ms: &dyn Fn() -> u64, begins: Event) -> Act {
        let mut event = begins;
        loop {
            match self.client.next(&mut self.store, now_ms(), event) {
                Act::Ask(request) => {
                    event = match self.link.ask(&request) {
                        Ok(answer) => Event::Answer(answer),
                        Err(why) => Event::Failed(why.to_string()),
                    };
                }
                quiet @ (Act::Listen(_) | Act::Rest(_) | Act::Stop) => return quiet,
            }
        }
    }

    /// Goes on until it is told to end, or only a person can help; tells whenever it is quiet how it
    /// stands. It may be killed at any instant.
    pub fn run(
        &mut self,
        wake: &Wake,
        now_ms: &dyn Fn() -> u64,
        tell: &mut dyn FnMut(&SyncStatus, bool),
    ) {
        let mut event = Event::Begin;
        loop {
            let quiet = self.until_quiet(now_ms, event);
            tell(self.client.status(), self.client.duplicate());
            event = match quiet {
                Act::Listen(request) => match self.link.listen(&request, wake) {
                    None => Event::Begin,
                    Some(Ok(answer)) => Event::Answer(answer),
                    Some(Err(why)) => Event::Failed(why.to_string()),
                },
                Act::Rest(ms) => {
                    self.link.rest(ms, wake);
                    Event::Begin
                }
                Act::Stop | Act::Ask(_) => return,
            };
            if wake.ends() {
                return;
            }
        }
    }
}
