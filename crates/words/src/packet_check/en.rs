use super::PacketCheckMessage;
use crate::{En, Format};

pub(super) fn text(message: &PacketCheckMessage, f: &En) -> String {
    match message {
        PacketCheckMessage::Unreadable { cause } => format!(
            "The packet cannot be read ({}). Copy it again.",
            f.quoted(cause)
        ),
        PacketCheckMessage::NotPacket { cause } => format!(
            "This is not a packet, or it is cut short ({}). Get the whole file again.",
            f.quoted(cause)
        ),
        PacketCheckMessage::PathOutside { path } => format!(
            "The packet holds the path {}, which leads out of its folder. Do not open it.",
            f.quoted(path)
        ),
        PacketCheckMessage::Link { path } => format!(
            "The packet holds a link, {}. Do not open it.",
            f.quoted(path)
        ),
        PacketCheckMessage::TooLarge => {
            "The packet is over 2 GB unpacked. Do not open it.".to_owned()
        }
        PacketCheckMessage::TooManyFiles { most } => format!(
            "The packet holds more than {} files. Do not open it.",
            f.number(*most as f64, 0)
        ),
        PacketCheckMessage::Twice { path } => format!(
            "The packet holds {} twice. Get it again from whoever made it.",
            f.quoted(path)
        ),
        PacketCheckMessage::PartMissing { part } => format!(
            "The packet lacks {}. Get the whole file again.",
            f.quoted(part)
        ),
        PacketCheckMessage::Altered { path } => format!(
            "{} is not as it was packed. Get the packet again.",
            f.quoted(path)
        ),
        PacketCheckMessage::NotListed { path } => format!(
            "{} is in the packet and not in its list: somebody added it. Get the packet again.",
            f.quoted(path)
        ),
        PacketCheckMessage::BadList { file, cause } => format!(
            "{} cannot be read ({}). Get the packet again.",
            f.quoted(file),
            f.quoted(cause)
        ),
        PacketCheckMessage::NewerFormat { format } => format!(
            "The packet has the format {}. Open it with a newer eavebook.",
            f.quoted(format)
        ),
        PacketCheckMessage::NoEntries { reader } => format!(
            "The packet is for {} and holds no entries. Add the firm's packet of that job.",
            f.quoted(reader)
        ),
    }
}
