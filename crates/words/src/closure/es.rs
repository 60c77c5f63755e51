use super::ClosureMessage;
use crate::{Es, Format};

pub(super) fn text(message: &ClosureMessage, f: &Es) -> String {
    match message {
        ClosureMessage::NoLegs => {
            "Todavía no se ha medido ningún lado. Empiece en una esquina de afuera.".to_owned()
        }
        ClosureMessage::Closes { within } => format!("Cierra a {}.", f.length(*within)),
        ClosureMessage::ReadAgain { things, or_another } => {
            let mut names: Vec<String> = things.iter().map(|thing| f.thing(thing)).collect();
            if *or_another {
                names.push("algún otro".to_owned());
            }
            format!("Mida otra vez {}.", f.or(&names))
        }
    }
}
