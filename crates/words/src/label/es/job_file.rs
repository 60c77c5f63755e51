use crate::label::job_file::JobFileLabel;

pub(in crate::label) const fn text(label: JobFileLabel) -> &'static str {
    match label {
        JobFileLabel::WhoFor => "¿Para quién es?",
        JobFileLabel::MakePacket => "Hacer carpeta",
        JobFileLabel::Making => "Se están haciendo los papeles. Puede seguir anotando.",
        JobFileLabel::Packets => "Carpetas",
        JobFileLabel::NoPackets => {
            "No hay carpeta todavía. Haga una: se guarda aquí y no se manda a nadie."
        }
        JobFileLabel::StillOpen => "Falta todavía",
        JobFileLabel::NothingOpen => "No falta nada.",
        JobFileLabel::InItAsNotKnown => {
            "Lo que nadie midió va en la carpeta como no sabido. El registro de medidas marca cada medida que ninguna otra comprueba."
        }
        JobFileLabel::NotKnownInIt => "No sabido en ella",
        JobFileLabel::MissingFromIt => "Falta en ella",
        JobFileLabel::FileGone => {
            "El archivo de esta carpeta no está en este aparato. Haga la carpeta otra vez: si no se anotó nada desde entonces, es la misma."
        }
        JobFileLabel::Save => "Guardar",
        JobFileLabel::File => "Archivo",
        JobFileLabel::Contents => "Contenido",
        JobFileLabel::Choose => "Escoja una carpeta para ver sus papeles.",
    }
}
