use super::PictureMessage;
use crate::{Es, Format};

pub(super) fn text(message: &PictureMessage, f: &Es) -> String {
    match message {
        PictureMessage::Empty { file } => format!("El archivo {} está vacío. No se anotó nada.", f.quoted(file)),
        PictureMessage::Video { file } => format!("El archivo {} es un video, no una foto. No se anotó nada.", f.quoted(file)),
        PictureMessage::Sidecar { file } => format!("El archivo {} solo describe una imagen. No se anotó nada.", f.quoted(file)),
        PictureMessage::NotPicture { file } => format!("El archivo {} no es una imagen conocida. No se anotó nada.", f.quoted(file)),
        PictureMessage::EndMissing { file } => format!("Falta el final de {}. Se guarda y se muestra hasta donde llega.", f.quoted(file)),
        PictureMessage::Heic => "Esta foto está guardada. Esta versión no puede mostrar HEIC. Mándela otra vez como JPEG para verla.".to_owned(),
        PictureMessage::Tiff => "Esta foto está guardada. Esta versión no puede mostrar TIFF. Mándela otra vez como JPEG para verla.".to_owned(),
        PictureMessage::TooLarge => "Esta foto está guardada. Tiene más pixeles de los que se pueden mostrar. Mande una más chica para verla.".to_owned(),
        PictureMessage::Damaged => "Esta foto está guardada. Está dañada y no se puede mostrar. Tómela otra vez si puede.".to_owned(),
        PictureMessage::SameAs { file, first } => format!("El archivo {} tiene la misma imagen que {}. Se anota una vez.", f.quoted(file), f.quoted(first)),
        PictureMessage::FileTooLarge { file, mebibytes, most } => format!("El archivo {} tiene {mebibytes} MiB. Las fotos tienen {most} MiB cuando mucho. No se anotó nada.", f.quoted(file)),
        PictureMessage::Unreadable { file, cause } => format!("El archivo {} no se puede leer ({}). No se anotó nada.", f.quoted(file), f.quoted(cause)),
    }
}
