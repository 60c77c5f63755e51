use crate::label::frame::FrameLabel;

pub(in crate::label) const fn text(label: FrameLabel) -> &'static str {
    match label {
        FrameLabel::Places => "Lugares",
        FrameLabel::Settings => "Ajustes",
        FrameLabel::Photo => "Foto",
        FrameLabel::Read => "Medir",
        FrameLabel::WhatsLeft => "Lo que falta",
        FrameLabel::NothingLeft => "No falta nada.",
        FrameLabel::Go => "Ir",
        FrameLabel::Copies => "Copias",
        FrameLabel::YouWereHere => "Aquí se quedó",
        FrameLabel::Undo => "Deshacer",
        FrameLabel::Redo => "Rehacer",
        FrameLabel::NothingToUndo => "No hay nada que deshacer.",
        FrameLabel::NothingToRedo => "No hay nada que rehacer.",
        FrameLabel::Close => "Cerrar",
        FrameLabel::NoAnswer => {
            "La libreta de este aparato no contesta. Todo lo que se ve está guardado."
        }
        FrameLabel::TryAgain => "Probar otra vez",
        FrameLabel::NoJob => "No hay trabajo abierto. Empiece uno en Hoy.",
        FrameLabel::WakeRefused => {
            "Este aparato no deja la pantalla prendida. Todas las teclas quedan guardadas."
        }
    }
}
