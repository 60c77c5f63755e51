use super::ChangePaperMessage;
use crate::{En, Format};

pub(super) fn text(message: &ChangePaperMessage, f: &En) -> String {
    match message {
        ChangePaperMessage::Opening { changes } => format!("{} found once the old roof was off.", f.count(*changes)),
        ChangePaperMessage::SheetsUnderFace { sheets, face } => format!("{} under {}", f.count(*sheets), f.face(*face)),
        ChangePaperMessage::SheetsOverLeg { sheets, leg } => format!("{} over {}", f.count(*sheets), f.leg(*leg)),
        ChangePaperMessage::AgreedBy { name, at } => format!("By {}{}", f.quoted(name), at.map_or_else(String::new, |at| format!(", {}", f.day_and_time(&at)))),
        ChangePaperMessage::Agreed { at } => format!("Yes{}", at.map_or_else(String::new, |at| format!(", {}", f.day_and_time(&at)))),
        ChangePaperMessage::WaitingForYes => "Waiting for a yes: a change that nobody agreed to is not in the accepted price.".to_owned(),
        ChangePaperMessage::PriceOfThen => "The price of a sheet is the one in the rates when the change was recorded. Later rates do not change it.".to_owned(),
        ChangePaperMessage::SheetNotPriced => "A sheet without a price is not free: its rate was blank and its price is still open.".to_owned(),
    }
}
