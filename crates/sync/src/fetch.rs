//! Photos on their way here: those that entries name and the hub has.

use crate::client::Step;
use crate::shelf::{Shelf, ShelfError};
use crate::wire::{Missing, Request, Response};
use eavebook_core::book::entry::sha256_hex;
use serde_json::json;

/// Names asked for in one call.
const NAMES: usize = 1000;

#[derive(Debug)]
pub(crate) struct Fetching {
    /// Not asked about yet.
    later: Vec<String>,
    /// The hub may have them; the next last.
    left: Vec<String>,
    doing: Doing,
}

#[derive(Debug)]
enum Doing {
    Missing,
    Photo(String),
}

impl Fetching {
    /// `None` where no photo is wanted.
    pub fn begin(shelf: &mut dyn Shelf) -> Result<Option<(Request, Fetching)>, ShelfError> {
        let fetching = Fetching {
            later: shelf.photos_wanted()?,
            left: Vec::new(),
            doing: Doing::Missing,
        };
        Ok(match fetching.next() {
            Step::Ask(request, fetching) => Some((request, fetching)),
            Step::Done | Step::Odd(_) => None,
        })
    }

    pub fn answered(
        mut self,
        shelf: &mut dyn Shelf,
        answer: Response,
    ) -> Result<Step<Fetching>, ShelfError> {
        match std::mem::replace(&mut self.doing, Doing::Missing) {
            Doing::Missing => {
                let Some(missing) = answer.read::<Missing>().filter(|_| answer.status == 200)
                else {
                    return Ok(Step::Odd("photos".to_owned()));
                };
                self.left.retain(|name| !missing.missing.contains(name));
            }
            Doing::Photo(name) => match answer.status {
                404 => {}
                200 if sha256_hex(&answer.body) == name => shelf.keep_photo(&name, &answer.body)?,
                _ => return Ok(Step::Odd("a photo".to_owned())),
            },
        }
        Ok(self.next())
    }

    fn next(mut self) -> Step<Fetching> {
        if let Some(name) = self.left.pop() {
            let request = Request::get(format!("/v1/blobs/{name}"));
            self.doing = Doing::Photo(name);
            return Step::Ask(request, self);
        }
        if self.later.is_empty() {
            return Step::Done;
        }
        let some = self.later.len().min(NAMES);
        self.left = self.later.drain(..some).collect();
        let body = json!({ "sha256": self.left }).to_string();
        self.doing = Doing::Missing;
        Step::Ask(Request::post("/v1/blobs/missing", body), self)
    }
}
