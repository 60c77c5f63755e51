use super::PacketCheckMessage;
use crate::{Es, Format};

pub(super) fn text(message: &PacketCheckMessage, f: &Es) -> String {
    match message {
        PacketCheckMessage::Unreadable { cause } => format!(
            "La carpeta no se puede leer ({}). Cópiela otra vez.",
            f.quoted(cause)
        ),
        PacketCheckMessage::NotPacket { cause } => format!(
            "Esto no es una carpeta, o está cortada ({}). Consiga otra vez el archivo completo.",
            f.quoted(cause)
        ),
        PacketCheckMessage::PathOutside { path } => format!(
            "La carpeta tiene la ruta {}, que sale de su lugar. No la abra.",
            f.quoted(path)
        ),
        PacketCheckMessage::Link { path } => format!(
            "La carpeta tiene un enlace, {}. No la abra.",
            f.quoted(path)
        ),
        PacketCheckMessage::TooLarge => {
            "La carpeta pasa de 2 GB desempacada. No la abra.".to_owned()
        }
        PacketCheckMessage::TooManyFiles { most } => format!(
            "La carpeta tiene más de {} archivos. No la abra.",
            f.number(*most as f64, 0)
        ),
        PacketCheckMessage::Twice { path } => format!(
            "La carpeta tiene {} dos veces. Pídala otra vez a quien la hizo.",
            f.quoted(path)
        ),
        PacketCheckMessage::PartMissing { part } => format!(
            "A la carpeta le falta {}. Consiga otra vez el archivo completo.",
            f.quoted(part)
        ),
        PacketCheckMessage::Altered { path } => format!(
            "{} no está como se empacó. Consiga otra vez la carpeta.",
            f.quoted(path)
        ),
        PacketCheckMessage::NotListed { path } => format!(
            "{} está en la carpeta y no en su lista: alguien lo agregó. Consiga otra vez la carpeta.",
            f.quoted(path)
        ),
        PacketCheckMessage::BadList { file, cause } => format!(
            "{} no se puede leer ({}). Consiga otra vez la carpeta.",
            f.quoted(file),
            f.quoted(cause)
        ),
        PacketCheckMessage::NewerFormat { format } => format!(
            "La carpeta tiene el formato {}. Ábrala con un eavebook más nuevo.",
            f.quoted(format)
        ),
        PacketCheckMessage::NoEntries { reader } => format!(
            "La carpeta es para {} y no trae anotaciones. Agregue la carpeta de la compañía de ese trabajo.",
            f.quoted(reader)
        ),
    }
}
