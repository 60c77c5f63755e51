use super::EntryMessage;
use crate::Quoted;
use eavebook_core::book::entry::EntryError;

impl From<&EntryError> for EntryMessage {
    fn from(error: &EntryError) -> EntryMessage {
        match error {
            EntryError::Shape(cause) => EntryMessage::NotAnEntry {
                cause: Quoted(cause.to_string()),
            },
            EntryError::Id(id) => EntryMessage::InvalidId {
                entry: Quoted(id.to_string()),
            },
            EntryError::Sha(id) => EntryMessage::ChangedBody {
                entry: Quoted(id.to_string()),
            },
            EntryError::LocalTime { id, text } => EntryMessage::InvalidLocalTime {
                entry: Quoted(id.to_string()),
                time: Quoted(text.clone()),
            },
        }
    }
}
