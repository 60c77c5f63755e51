use super::EntryMessage;
use crate::{En, Format};

pub(super) fn text(message: &EntryMessage, f: &En) -> String {
    match message {
        EntryMessage::NotAnEntry { cause } => format!(
            "This record is not an entry ({}). Send it again from the device that recorded it.",
            f.quoted(cause)
        ),
        EntryMessage::InvalidId { entry } => format!(
            "The id of entry {} is not valid. Record it again.",
            f.quoted(entry)
        ),
        EntryMessage::ChangedBody { entry } => format!(
            "Entry {} was changed after it was recorded. Get it again from a whole copy.",
            f.quoted(entry)
        ),
        EntryMessage::InvalidLocalTime { entry, time } => format!(
            "Entry {} has the time {}. Write it with its offset, such as 2026-05-02T14:41:07-05:00.",
            f.quoted(entry),
            f.quoted(time)
        ),
    }
}
