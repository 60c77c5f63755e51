use crate::label::walk_round::WalkRoundLabel;

pub(in crate::label) const fn text(label: WalkRoundLabel) -> &'static str {
    match label {
        WalkRoundLabel::ConfirmAll => "Confirmar todo",
        WalkRoundLabel::NothingToConfirm => "Aquí no hay nada que confirmar.",
        WalkRoundLabel::Photos => "Fotos",
        WalkRoundLabel::NoFront => {
            "El frente no está anotado. Párese de cara a él y toque Este es el frente en Llegada: desde entonces se proponen los lados."
        }
        WalkRoundLabel::WhichSide => "¿Qué lado?",
        WalkRoundLabel::LookFor => "Busque",
        WalkRoundLabel::FoundSeen => "visto",
        WalkRoundLabel::FoundNone => "no hay",
        WalkRoundLabel::FoundNotLooked => "sin ver",
        WalkRoundLabel::NotCounted => "sin contar",
        WalkRoundLabel::OneLess => "Uno menos",
        WalkRoundLabel::OneMore => "Uno más",
    }
}
