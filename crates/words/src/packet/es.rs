use super::PacketMessage;
use crate::{Es, Format};

pub(super) fn text(message: &PacketMessage, f: &Es) -> String {
    match message {
        PacketMessage::Photo { photo } => format!("Foto {photo}"),
        PacketMessage::OriginalPhoto { photo } => format!("Foto {photo} como se tomó"),
        PacketMessage::PhotoNotHere => "Su original no está en este aparato.".to_owned(),
        PacketMessage::FetchPhoto => "Tráigala del aparato que la tomó.".to_owned(),
        PacketMessage::PhotoCutShort => "Falta el final de su archivo; se muestra lo demás.".to_owned(),
        PacketMessage::SendWhole => "Mande otra vez el archivo completo.".to_owned(),
        PacketMessage::PhotoEmpty => "Su archivo está vacío.".to_owned(),
        PacketMessage::TakeAgain => "Tómela otra vez.".to_owned(),
        PacketMessage::PhotoTooLarge => "Está guardada, pero tiene más pixeles de los que se pueden mostrar.".to_owned(),
        PacketMessage::SendSmaller => "Mande también una copia más chica.".to_owned(),
        PacketMessage::PhotoHeic => "Está guardada. Esta versión no puede mostrar HEIC.".to_owned(),
        PacketMessage::PhotoOtherKind => "Está guardada, pero no es JPEG, PNG ni WebP.".to_owned(),
        PacketMessage::PhotoDamaged => "Está guardada, pero no se puede mostrar.".to_owned(),
        PacketMessage::SendJpeg => "Mándela otra vez como JPEG.".to_owned(),
        PacketMessage::FontMissing { paper } => format!("{}: no se imprimió, falta su tipo de letra.", paper.text(f.language())),
        PacketMessage::InstallAgain => "Instale otra vez el programa.".to_owned(),
        PacketMessage::PaperRefused { paper, reason } => format!("{}: no se imprimió, el tipógrafo no la aceptó ({}).", paper.text(f.language()), f.quoted(reason)),
        PacketMessage::MakeAgain => "Haga otra vez la carpeta. Si no sirve, mande la carpeta de la compañía a quien da servicio al programa.".to_owned(),
        PacketMessage::LettersMissing { paper, letters } => format!("{}: tiene [?] en lugar de letras que ningún tipo tiene: {}.", paper.text(f.language()), f.quoted(letters)),
        PacketMessage::WriteLatin => "Las tablas tienen el texto como se escribió. Escríbalo en letras latinas para verlo en el papel.".to_owned(),
        PacketMessage::NoRoom { megabytes, folder } => format!("No hay lugar para la carpeta: hacen falta {} MB en {}. No se mandó ni se cambió nada. Libere espacio y hágala otra vez.", f.number(*megabytes as f64, 0), f.quoted(folder)),
        PacketMessage::NotWritten { folder, cause } => format!("No se puede escribir la carpeta en {} ({}). No se mandó ni se cambió nada. Escoja otro lugar.", f.quoted(folder), f.quoted(cause)),
        PacketMessage::Made { version, at } => format!("Versión {version}{}.", at.map_or_else(String::new, |at| format!(", hecha el {}", f.day_and_time(&at)))),
        PacketMessage::FirmOnly => "La carpeta de la propia compañía: trae los costos, la libreta y las fotos como se tomaron. No la pase a nadie.".to_owned(),
        PacketMessage::HowToCheck { program } => format!("Para revisarla: sha256sum -c manifest-sha256.txt en la carpeta de arriba, o eavebook packet --check. Hecha con {}.", program.0),
    }
}
