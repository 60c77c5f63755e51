use crate::label::arrive::ArriveLabel;

pub(in crate::label) const fn text(label: ArriveLabel) -> &'static str {
    match label {
        ArriveLabel::ThisIsTheFront => "Este es el frente",
        ArriveLabel::StandBefore => {
            "Párese de cara al frente de la casa. La derecha queda a su derecha."
        }
        ArriveLabel::NoCompass => {
            "El frente está anotado. Este aparato no tiene brújula: ponga los lados a mano."
        }
        ArriveLabel::WhoIMet => "Con quién hablé",
        ArriveLabel::NobodyRecorded => "Todavía no hay nadie anotado.",
        ArriveLabel::NameOrRole => "Nombre o quién es",
        ArriveLabel::CanApprove => "Puede autorizar",
        ArriveLabel::Record => "Anotar",
        ArriveLabel::GroundOnly => {
            "Solo desde el suelo. Subir, levantar orillas, base y capas no se piden; van en la carpeta como no sabidas."
        }
        ArriveLabel::Permissions => "Permisos",
        ArriveLabel::Hazards => "Peligros",
        ArriveLabel::CheckIn => "Aviso",
        ArriveLabel::KnowsWhere => "Quién sabe dónde está usted",
        ArriveLabel::Until => "Hasta cuándo",
        ArriveLabel::RecordCheckIn => "Anotar aviso",
        ArriveLabel::BeforeWork => "Antes de cualquier trabajo",
        ArriveLabel::Promised => "Prometido",
        ArriveLabel::WhatWasPromised => "Qué se prometió",
        ArriveLabel::WritePromise => "¿Qué se prometió? Escríbalo, o toque Nada prometido.",
        ArriveLabel::RecordPromise => "Anotar promesa",
        ArriveLabel::NothingPromised => "Nada prometido",
    }
}
