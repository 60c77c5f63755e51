use super::ChangePaperMessage;
use crate::{Es, Format};

pub(super) fn text(message: &ChangePaperMessage, f: &Es) -> String {
    match message {
        ChangePaperMessage::Opening { changes } => format!("{} al quitar el techo viejo.", f.count(*changes)),
        ChangePaperMessage::SheetsUnderFace { sheets, face } => format!("{} debajo de {}", f.count(*sheets), f.face(*face)),
        ChangePaperMessage::SheetsOverLeg { sheets, leg } => format!("{} sobre el {}", f.count(*sheets), f.leg(*leg)),
        ChangePaperMessage::AgreedBy { name, at } => format!("Por {}{}", f.quoted(name), at.map_or_else(String::new, |at| format!(", {}", f.day_and_time(&at)))),
        ChangePaperMessage::Agreed { at } => format!("Sí{}", at.map_or_else(String::new, |at| format!(", {}", f.day_and_time(&at)))),
        ChangePaperMessage::WaitingForYes => "Falta el sí: un cambio que nadie aceptó no está en el precio aceptado.".to_owned(),
        ChangePaperMessage::PriceOfThen => "El precio de una hoja es el de las tarifas cuando se anotó el cambio. Las tarifas de después no lo cambian.".to_owned(),
        ChangePaperMessage::SheetNotPriced => "Una hoja sin precio no es gratis: su tarifa estaba en blanco y falta acordar el precio.".to_owned(),
    }
}
