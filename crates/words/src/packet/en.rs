use super::PacketMessage;
use crate::{En, Format};

pub(super) fn text(message: &PacketMessage, f: &En) -> String {
    match message {
        PacketMessage::Photo { photo } => format!("Photo {photo}"),
        PacketMessage::OriginalPhoto { photo } => format!("Photo {photo} as it was taken"),
        PacketMessage::PhotoNotHere => "Its original is not on this device.".to_owned(),
        PacketMessage::FetchPhoto => "Bring it over from the device that took it.".to_owned(),
        PacketMessage::PhotoCutShort => "The end of its file is missing; the rest is shown.".to_owned(),
        PacketMessage::SendWhole => "Send the whole file again.".to_owned(),
        PacketMessage::PhotoEmpty => "Its file is empty.".to_owned(),
        PacketMessage::TakeAgain => "Take it again.".to_owned(),
        PacketMessage::PhotoTooLarge => "It is kept, but it has more pixels than can be shown.".to_owned(),
        PacketMessage::SendSmaller => "Send a smaller copy as well.".to_owned(),
        PacketMessage::PhotoHeic => "It is kept. This version cannot show HEIC.".to_owned(),
        PacketMessage::PhotoOtherKind => "It is kept, but it is not JPEG, PNG or WebP.".to_owned(),
        PacketMessage::PhotoDamaged => "It is kept but cannot be shown.".to_owned(),
        PacketMessage::SendJpeg => "Send it again as JPEG.".to_owned(),
        PacketMessage::FontMissing { paper } => format!("{}: not printed, its font is missing.", paper.text(f.language())),
        PacketMessage::InstallAgain => "Install the program again.".to_owned(),
        PacketMessage::PaperRefused { paper, reason } => format!("{}: not printed, the typesetter refused it ({}).", paper.text(f.language()), f.quoted(reason)),
        PacketMessage::MakeAgain => "Make the packet again. If that does not help, send the firm's packet to whoever supports the program.".to_owned(),
        PacketMessage::LettersMissing { paper, letters } => format!("{}: it shows [?] in place of letters that no font has: {}.", paper.text(f.language()), f.quoted(letters)),
        PacketMessage::WriteLatin => "The tables hold the text as it was typed. Write it in Latin letters to see it on the paper.".to_owned(),
        PacketMessage::NoRoom { megabytes, folder } => format!("No room for the packet: {} MB are needed in {}. Nothing was sent and nothing changed. Free some space, then make it again.", f.number(*megabytes as f64, 0), f.quoted(folder)),
        PacketMessage::NotWritten { folder, cause } => format!("The packet cannot be written in {} ({}). Nothing was sent and nothing changed. Choose another folder.", f.quoted(folder), f.quoted(cause)),
        PacketMessage::Made { version, at } => format!("Version {version}{}.", at.map_or_else(String::new, |at| format!(", made {}", f.day_and_time(&at)))),
        PacketMessage::FirmOnly => "The firm's own packet: it holds the costs, the field book and the photos as they were taken. Do not pass it on.".to_owned(),
        PacketMessage::HowToCheck { program } => format!("To check it: sha256sum -c manifest-sha256.txt in the folder above, or eavebook packet --check. Made with {}.", program.0),
    }
}
