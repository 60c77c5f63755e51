use super::ClosureMessage;
use crate::{En, Format};

pub(super) fn text(message: &ClosureMessage, f: &En) -> String {
    match message {
        ClosureMessage::NoLegs => "No leg is read yet. Start at any outside corner.".to_owned(),
        ClosureMessage::Closes { within } => format!("Closes within {}.", f.length(*within)),
        ClosureMessage::ReadAgain { things, or_another } => {
            let mut names: Vec<String> = things.iter().map(|thing| f.thing(thing)).collect();
            if *or_another {
                names.push("another".to_owned());
            }
            format!("Read {} again.", f.or(&names))
        }
    }
}
