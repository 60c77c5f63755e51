//! Photos on their way here: those that entries name and the hub has, in pieces of 1 MiB. Cut off
//! anywhere, it goes on behind the last piece that is on the disk.

use crate::client::Step;
use crate::shelf::{Shelf, ShelfError};
use crate::wire::{Missing, Request, Response};
use eavebook_store::Comes;
use serde_json::json;

/// Bytes asked for in one call.
const PIECE: u64 = 1 << 20;
/// The largest photo that a hub keeps.
const LARGEST: u64 = 64 << 20;
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
        Ok(match fetching.next(shelf)? {
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
            Doing::Photo(name) => {
                let (bytes, whole) = match answer.status {
                    206 => (&answer.body[..], answer.whole),
                    // Behind the last byte: all is here, or the photo has none.
                    416 => (&[][..], answer.whole),
                    _ => (&[][..], None),
                };
                match whole {
                    Some(whole) if whole <= LARGEST => {
                        match shelf.photo_comes(&name, bytes, whole)? {
                            Comes::InPart if !bytes.is_empty() => self.left.push(name),
                            // Other bytes: it stays wanted, and holds up no other.
                            Comes::Kept | Comes::OtherBytes => {}
                            Comes::InPart => return Ok(Step::Odd("a photo".to_owned())),
                        }
                    }
                    None if answer.status == 404 => {}
                    Some(_) | None => return Ok(Step::Odd("a photo".to_owned())),
                }
            }
        }
        self.next(shelf)
    }

    fn next(mut self, shelf: &mut dyn Shelf) -> Result<Step<Fetching>, ShelfError> {
        if let Some(name) = self.left.pop() {
            let came = shelf.photo_came(&name)?;
            let path = format!("/v1/blobs/{name}");
            self.doing = Doing::Photo(name);
            let request = Request::span(path, came, came + PIECE - 1);
            return Ok(Step::Ask(request, self));
        }
        if self.later.is_empty() {
            return Ok(Step::Done);
        }
        let some = self.later.len().min(NAMES);
        self.left = self.later.drain(..some).collect();
        let body = json!({ "sha256": self.left }).to_string();
        self.doing = Doing::Missing;
        let request = Request::post("/v1/blobs/missing", body);
        Ok(Step::Ask(request, self))
    }
}
