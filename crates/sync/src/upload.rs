//! Photos on their way to the hub: what it has not, in parts of 1 MiB, then the word that it is
//! whole. Cut off anywhere, only the parts that did not arrive are sent again.

use crate::client::Step;
use crate::sync_store::{SyncStore, SyncStoreError};
use crate::wire::{MissingPhotos, Parts, Request, Response};
use eavebook_store::Photo;
use serde_json::json;

const PART: u64 = 1 << 20;

#[derive(Debug)]
pub(crate) struct Upload {
    /// Still to do, the next last.
    left: Vec<Photo>,
    step: UploadStep,
}

#[derive(Debug)]
enum UploadStep {
    Missing,
    /// A small one, whole.
    Whole(Photo),
    AskParts(Photo, Tries),
    /// Parts still to send after this one.
    Part(Photo, Tries, Vec<u64>),
    Complete(Photo, Tries),
}

/// How often the whole photo was sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Tries {
    First,
    /// What lay there did not make the photo: every part is sent anew.
    Last,
}

fn path(photo: &Photo, more: &str) -> String {
    format!("/v1/blobs/{}{more}", photo.sha256)
}

impl Upload {
    pub fn begin(photos: Vec<Photo>) -> (Request, Upload) {
        let names: Vec<&str> = photos.iter().map(|photo| photo.sha256.as_str()).collect();
        let request = Request::post("/v1/blobs/missing", json!({ "sha256": names }).to_string());
        let step = UploadStep::Missing;
        (request, Upload { left: photos, step })
    }

    pub fn answered(
        mut self,
        store: &mut dyn SyncStore,
        answer: &Response,
    ) -> Result<Step<Upload>, SyncStoreError> {
        let good = matches!(answer.status, 200 | 201);
        match std::mem::replace(&mut self.step, UploadStep::Missing) {
            UploadStep::Missing => {
                let Some(missing) = answer.read::<MissingPhotos>().filter(|_| good) else {
                    return Ok(Step::Odd("photos".to_owned()));
                };
                for photo in &self.left {
                    if !missing.missing.contains(&photo.sha256) {
                        store.acknowledge_photo(&photo.sha256)?;
                    }
                }
                self.left
                    .retain(|photo| missing.missing.contains(&photo.sha256));
                self.left.reverse();
                self.next(store)
            }
            UploadStep::Whole(photo) if good => self.arrived(store, &photo),
            UploadStep::Whole(photo) => self.refused(store, &photo, answer),
            UploadStep::AskParts(photo, tries) => {
                let Some(parts) = answer.read::<Parts>().filter(|_| good) else {
                    return Ok(Step::Odd("the parts of a photo".to_owned()));
                };
                let mut lacking: Vec<u64> = (0..photo.size.div_ceil(PART))
                    .filter(|part| !parts.parts.contains(part))
                    .collect();
                lacking.reverse();
                self.part(store, photo, tries, lacking)
            }
            UploadStep::Part(photo, tries, lacking) if good => {
                self.part(store, photo, tries, lacking)
            }
            UploadStep::Part(photo, ..) => self.refused(store, &photo, answer),
            UploadStep::Complete(photo, _) if good => self.arrived(store, &photo),
            UploadStep::Complete(photo, Tries::First) => match answer.status {
                409 => self.ask_parts(photo, Tries::Last),
                422 => {
                    let all = (0..photo.size.div_ceil(PART)).rev().collect();
                    self.part(store, photo, Tries::Last, all)
                }
                _ => self.refused(store, &photo, answer),
            },
            UploadStep::Complete(photo, Tries::Last) => self.refused(store, &photo, answer),
        }
    }

    fn arrived(
        self,
        store: &mut dyn SyncStore,
        photo: &Photo,
    ) -> Result<Step<Upload>, SyncStoreError> {
        store.acknowledge_photo(&photo.sha256)?;
        self.next(store)
    }

    /// A photo that the hub will not take must not hold up the others.
    fn refused(
        self,
        store: &mut dyn SyncStore,
        photo: &Photo,
        answer: &Response,
    ) -> Result<Step<Upload>, SyncStoreError> {
        if !matches!(answer.status, 400 | 409 | 413 | 422) {
            return Ok(Step::Odd("a photo".to_owned()));
        }
        store.turn_back(&photo.sha256, &answer.problem().detail)?;
        self.next(store)
    }

    fn next(mut self, store: &mut dyn SyncStore) -> Result<Step<Upload>, SyncStoreError> {
        let Some(photo) = self.left.pop() else {
            return Ok(Step::Done);
        };
        if photo.size > PART {
            return self.ask_parts(photo, Tries::First);
        }
        match store.photo_bytes(&photo.sha256, 0, PART) {
            Ok(bytes) => {
                let request = Request::put(path(&photo, ""), bytes);
                self.step = UploadStep::Whole(photo);
                Ok(Step::Ask(request, self))
            }
            Err(why) => self.unread(store, &photo, &why),
        }
    }

    /// A photo whose file does not read here is shown, and does not hold up the others.
    fn unread(
        self,
        store: &mut dyn SyncStore,
        photo: &Photo,
        why: &SyncStoreError,
    ) -> Result<Step<Upload>, SyncStoreError> {
        store.turn_back(&photo.sha256, &why.to_string())?;
        self.next(store)
    }

    fn ask_parts(mut self, photo: Photo, tries: Tries) -> Result<Step<Upload>, SyncStoreError> {
        let request = Request::get(path(&photo, "/parts"));
        self.step = UploadStep::AskParts(photo, tries);
        Ok(Step::Ask(request, self))
    }

    fn part(
        mut self,
        store: &mut dyn SyncStore,
        photo: Photo,
        tries: Tries,
        mut lacking: Vec<u64>,
    ) -> Result<Step<Upload>, SyncStoreError> {
        let Some(part) = lacking.pop() else {
            let body = json!({ "size": photo.size }).to_string();
            let request = Request::post(path(&photo, "/complete"), body);
            self.step = UploadStep::Complete(photo, tries);
            return Ok(Step::Ask(request, self));
        };
        match store.photo_bytes(&photo.sha256, part * PART, PART) {
            Ok(bytes) => {
                let request = Request::put(path(&photo, &format!("/parts/{part}")), bytes);
                self.step = UploadStep::Part(photo, tries, lacking);
                Ok(Step::Ask(request, self))
            }
            Err(why) => self.unread(store, &photo, &why),
        }
    }
}
