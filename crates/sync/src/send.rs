//! Photos on their way to the hub: what it has not, in parts of 1 MiB, then the word that it is
//! whole. Cut off anywhere, only the parts that did not arrive are sent again.

use crate::client::Step;
use crate::shelf::{Shelf, ShelfError};
use crate::wire::{Missing, Parts, Request, Response};
use eavebook_store::Photo;
use serde_json::json;

const PART: u64 = 1 << 20;

#[derive(Debug)]
pub(crate) struct Sending {
    /// Still to do, the next last.
    left: Vec<Photo>,
    doing: Doing,
}

#[derive(Debug)]
enum Doing {
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

impl Sending {
    pub fn begin(photos: Vec<Photo>) -> (Request, Sending) {
        let names: Vec<&str> = photos.iter().map(|photo| photo.sha256.as_str()).collect();
        let request = Request::post("/v1/blobs/missing", json!({ "sha256": names }).to_string());
        let doing = Doing::Missing;
        (
            request,
            Sending {
                left: photos,
                doing,
            },
        )
    }

    pub fn answered(
        mut self,
        shelf: &mut dyn Shelf,
        answer: &Response,
    ) -> Result<Step<Sending>, ShelfError> {
        let good = matches!(answer.status, 200 | 201);
        match std::mem::replace(&mut self.doing, Doing::Missing) {
            Doing::Missing => {
                let Some(missing) = answer.read::<Missing>().filter(|_| good) else {
                    return Ok(Step::Odd("photos".to_owned()));
                };
                for photo in &self.left {
                    if !missing.missing.contains(&photo.sha256) {
                        shelf.acknowledge_photo(&photo.sha256)?;
                    }
                }
                self.left
                    .retain(|photo| missing.missing.contains(&photo.sha256));
                self.left.reverse();
                self.next(shelf)
            }
            Doing::Whole(photo) if good => self.arrived(shelf, &photo),
            Doing::Whole(photo) => self.refused(shelf, &photo, answer),
            Doing::AskParts(photo, tries) => {
                let Some(parts) = answer.read::<Parts>().filter(|_| good) else {
                    return Ok(Step::Odd("the parts of a photo".to_owned()));
                };
                let mut lacking: Vec<u64> = (0..photo.size.div_ceil(PART))
                    .filter(|part| !parts.parts.contains(part))
                    .collect();
                lacking.reverse();
                self.part(shelf, photo, tries, lacking)
            }
            Doing::Part(photo, tries, lacking) if good => self.part(shelf, photo, tries, lacking),
            Doing::Part(photo, ..) => self.refused(shelf, &photo, answer),
            Doing::Complete(photo, _) if good => self.arrived(shelf, &photo),
            Doing::Complete(photo, Tries::First) => match answer.status {
                409 => self.ask_parts(photo, Tries::Last),
                422 => {
                    let all = (0..photo.size.div_ceil(PART)).rev().collect();
                    self.part(shelf, photo, Tries::Last, all)
                }
                _ => self.refused(shelf, &photo, answer),
            },
            Doing::Complete(photo, Tries::Last) => self.refused(shelf, &photo, answer),
        }
    }

    fn arrived(self, shelf: &mut dyn Shelf, photo: &Photo) -> Result<Step<Sending>, ShelfError> {
        shelf.acknowledge_photo(&photo.sha256)?;
        self.next(shelf)
    }

    /// A photo that the hub will not take must not hold up the others.
    fn refused(
        self,
        shelf: &mut dyn Shelf,
        photo: &Photo,
        answer: &Response,
    ) -> Result<Step<Sending>, ShelfError> {
        if !matches!(answer.status, 400 | 409 | 413 | 422) {
            return Ok(Step::Odd("a photo".to_owned()));
        }
        shelf.turn_back(&photo.sha256, &answer.problem().detail)?;
        self.next(shelf)
    }

    fn next(mut self, shelf: &mut dyn Shelf) -> Result<Step<Sending>, ShelfError> {
        let Some(photo) = self.left.pop() else {
            return Ok(Step::Done);
        };
        if photo.size > PART {
            return self.ask_parts(photo, Tries::First);
        }
        match shelf.photo_bytes(&photo.sha256, 0, PART) {
            Ok(bytes) => {
                let request = Request::put(path(&photo, ""), bytes);
                self.doing = Doing::Whole(photo);
                Ok(Step::Ask(request, self))
            }
            Err(why) => self.unread(shelf, &photo, &why),
        }
    }

    /// A photo whose file does not read here is shown, and does not hold up the others.
    fn unread(
        self,
        shelf: &mut dyn Shelf,
        photo: &Photo,
        why: &ShelfError,
    ) -> Result<Step<Sending>, ShelfError> {
        shelf.turn_back(&photo.sha256, &why.to_string())?;
        self.next(shelf)
    }

    fn ask_parts(mut self, photo: Photo, tries: Tries) -> Result<Step<Sending>, ShelfError> {
        let request = Request::get(path(&photo, "/parts"));
        self.doing = Doing::AskParts(photo, tries);
        Ok(Step::Ask(request, self))
    }

    fn part(
        mut self,
        shelf: &mut dyn Shelf,
        photo: Photo,
        tries: Tries,
        mut lacking: Vec<u64>,
    ) -> Result<Step<Sending>, ShelfError> {
        let Some(part) = lacking.pop() else {
            let body = json!({ "size": photo.size }).to_string();
            let request = Request::post(path(&photo, "/complete"), body);
            self.doing = Doing::Complete(photo, tries);
            return Ok(Step::Ask(request, self));
        };
        match shelf.photo_bytes(&photo.sha256, part * PART, PART) {
            Ok(bytes) => {
                let request = Request::put(path(&photo, &format!("/parts/{part}")), bytes);
                self.doing = Doing::Part(photo, tries, lacking);
                Ok(Step::Ask(request, self))
            }
            Err(why) => self.unread(shelf, &photo, &why),
        }
    }
}
