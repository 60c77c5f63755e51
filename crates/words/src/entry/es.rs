use super::EntryMessage;
use crate::{Es, Format};

pub(super) fn text(message: &EntryMessage, f: &Es) -> String {
    match message {
        EntryMessage::NotAnEntry { cause } => format!(
            "Este registro no es una anotación ({}). Mándelo otra vez del aparato que lo anotó.",
            f.quoted(cause)
        ),
        EntryMessage::InvalidId { entry } => format!(
            "El número de la anotación {} no es válido. Anótela otra vez.",
            f.quoted(entry)
        ),
        EntryMessage::ChangedBody { entry } => format!(
            "La anotación {} cambió después de anotarse. Tráigala otra vez de una copia completa.",
            f.quoted(entry)
        ),
        EntryMessage::InvalidLocalTime { entry, time } => format!(
            "La anotación {} tiene la hora {}. Escríbala con su zona, como 2026-05-02T14:41:07-05:00.",
            f.quoted(entry),
            f.quoted(time)
        ),
    }
}
