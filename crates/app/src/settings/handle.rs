//! Changes settings of this device.

use crate::answer::Answer;
use crate::refusal::Refusal;
use crate::reply::Reply;
use crate::settings::request::{Setting, SettingsRequest};
use crate::{draft, open_job};
use eavebook_store::Store;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: SettingsRequest) -> Result<Answer, Refusal> {
    match request {
        SettingsRequest::Set { setting } => set(store, setting),
    }
}

/// Changes a setting. A keypad on which nothing is typed yet takes a new tape at once.
///
/// # Errors
/// When the book cannot be written.
pub fn set(book: &mut Store, setting: Setting) -> Result<Answer, Refusal> {
    let settings = open_job::settings(book).with(setting);
    book.keep_settings(&settings.text())?;
    for id in book.books()? {
        let mut draft = draft::read(book, id)?;
        if draft.take_tape(settings.tape(), settings.fractions()) {
            draft::keep(book, id, &draft)?;
        }
    }
    Ok(Reply::Settings(settings.view()).into())
}
