//! Photos on their way here: those that entries name and the hub has, in pieces of 1 MiB. Cut off
//! anywhere, it goes on behind the last piece that is on the disk.

use crate::client::Step;
use crate::sync_store::{SyncStore, SyncStoreError};
use crate::wire::{MissingPhotos, Request, Response};
use eavebook_store::PhotoProgress;
use serde_json::json;

/// Bytes asked for in one call.
const PIECE: u64 = 1 << 20;
/// The largest photo that a hub keeps.
const LARGEST: u64 = 64 << 20;
/// Names asked for in one call.
const NAMES: usize = 1000;

#[derive(Debug)]
pub(crate) struct Fetch {
    /// Not asked about yet.
    later: Vec<String>,
    /// The hub may have them; the next last.
    left: Vec<String>,
    step: FetchStep,
}

#[derive(Debug)]
enum FetchStep {
    Missing,
    Photo(String),
}

impl Fetch {
    /// `None` where no photo is wanted.
    pub fn begin(store: &mut dyn SyncStore) -> Result<Option<(Request, Fetch)>, SyncStoreError> {
        let fetching = Fetch {
            later: store.photos_wanted()?,
            left: Vec::new(),
            step: FetchStep::Missing,
        };
        Ok(match fetching.next(store)? {
            Step::Ask(request, fetching) => Some((request, fetching)),
            Step::Done | Step::Odd(_) => None,
        })
    }

    pub fn answered(
        mut self,
        store: &mut dyn SyncStore,
        answer: Response,
    ) -> Result<Step<Fetch>, SyncStoreError> {
        match std::mem::replace(&mut self.step, FetchStep::Missing) {
            FetchStep::Missing => {
                let Some(missing) = answer
                    .read::<MissingPhotos>()
                    .filter(|_| answer.status == 200)
                else {
                    return Ok(Step::Odd("photos".to_owned()));
                };
                self.left.retain(|name| !missing.missing.contains(name));
            }
            FetchStep::Photo(name) => {
                let (bytes, whole) = match answer.status {
                    206 => (&answer.body[..], answer.whole),
                    // Behind the last byte: all is here, or the photo has none.
                    416 => (&[][..], answer.whole),
                    _ => (&[][..], None),
                };
                match whole {
                    Some(whole) if whole <= LARGEST => {
                        match store.add_photo_piece(&name, bytes, whole)? {
                            PhotoProgress::InPart if !bytes.is_empty() => self.left.push(name),
                            // Other bytes: it stays wanted, and holds up no other.
                            PhotoProgress::Kept | PhotoProgress::OtherBytes => {}
                            PhotoProgress::InPart => return Ok(Step::Odd("a photo".to_owned())),
                        }
                    }
                    None if answer.status == 404 => {}
                    Some(_) | None => return Ok(Step::Odd("a photo".to_owned())),
                }
            }
        }
        self.next(store)
    }

    fn next(mut self, store: &mut dyn SyncStore) -> Result<Step<Fetch>, SyncStoreError> {
        if let Some(name) = self.left.pop() {
            let came = store.photo_bytes_here(&name)?;
            let path = format!("/v1/blobs/{name}");
            self.step = FetchStep::Photo(name);
            let request = Request::span(path, came, came + PIECE - 1);
            return Ok(Step::Ask(request, self));
        }
        if self.later.is_empty() {
            return Ok(Step::Done);
        }
        let some = self.later.len().min(NAMES);
        self.left = self.later.drain(..some).collect();
        let body = json!({ "sha256": self.left }).to_string();
        self.step = FetchStep::Missing;
        let request = Request::post("/v1/blobs/missing", body);
        Ok(Step::Ask(request, self))
    }
}
