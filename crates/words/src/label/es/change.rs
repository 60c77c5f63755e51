use crate::label::change::ChangeLabel;

pub(in crate::label) const fn text(label: ChangeLabel) -> &'static str {
    match label {
        ChangeLabel::Changes => "Cambios",
        ChangeLabel::NoChanges => {
            "No hay cambios todavía. Anote aquí lo que se halla al quitar el techo antes de arreglarlo."
        }
        ChangeLabel::AddChange => "Agregar cambio",
        ChangeLabel::Change => "Cambio",
        ChangeLabel::UnderWhichFace => "¿Bajo qué agua?",
        ChangeLabel::BadSheets => "Hojas malas de la base",
        ChangeLabel::OneMore => "una más",
        ChangeLabel::OneLess => "una menos",
        ChangeLabel::Consent => "Acuerdo",
        ChangeLabel::ConsentAbout => "Alguien que puede autorizar aceptó la cuenta y el precio.",
    }
}
