//! Copies on another machine: joining a hub, and keeping in step with it beside all other work.

use crate::{App, held, stamp};
use eavebook_store::Pairing;
use eavebook_sync::{Client, Invitation, Link, LinkError, OfBook, PairError, Runs, Standing, pair};
use std::thread;

impl App {
    /// Joins a hub by the link of its keeper, and keeps the pairing.
    ///
    /// # Errors
    /// Each says in a sentence what to do; the book is as it was.
    pub fn pair(&self, invitation: &Invitation) -> Result<Pairing, PairError> {
        let mut book = held(&self.book);
        let name = book.device().map(|device| device.name.clone());
        pair(&mut book, invitation, &name.unwrap_or_default())
    }

    /// Keeps in step with the hub of a paired book, in a thread of its own, until the program ends.
    /// It takes the book for one question at a time and may be killed at any instant: what the hub
    /// has not acknowledged waits on. A book that was not paired calls nobody.
    ///
    /// # Errors
    /// When the pairing cannot be read, or the machine gives no thread.
    pub fn keep_in_step(&self) -> Result<(), PairError> {
        let Some(pairing) = held(&self.book).pairing()? else {
            return Ok(());
        };
        let link = Link::new(&pairing.url, pairing.pin.as_deref(), Some(&pairing.token))?;
        let mut runs = Runs {
            client: Client::new(stamp::chance()),
            shelf: OfBook(self.book.clone()),
            link,
        };
        let (book, wake) = (self.book.clone(), self.wake.clone());
        let work = move || {
            runs.run(&wake, &stamp::now_ms, &mut |standing, duplicate| {
                held(&book).say_of_hub(match (standing, duplicate) {
                    (Standing::Stopped { why }, _) => Some(why.clone()),
                    (Standing::Begun | Standing::InStep | Standing::Waiting { .. }, true) => {
                        Some(TWO_ALIKE.to_owned())
                    }
                    (Standing::Begun | Standing::InStep | Standing::Waiting { .. }, false) => None,
                });
            });
        };
        thread::Builder::new()
            .name("sync".to_owned())
            .spawn(work)
            .map_err(|why| LinkError::System(why.to_string()))?;
        Ok(())
    }
}

/// What only a person can mend; a hub out of reach is a matter of time and shown by what waits.
const TWO_ALIKE: &str = "two devices book under one identity: pair this one again with a new link \
                         from the hub's keeper";
