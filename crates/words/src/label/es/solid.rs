use crate::label::solid::SolidLabel;

pub(in crate::label) const fn text(label: SolidLabel) -> &'static str {
    match label {
        SolidLabel::Title => "Vista 3D",
        SolidLabel::FromFront => "Frente",
        SolidLabel::FromRight => "Derecha",
        SolidLabel::FromBack => "Atrás",
        SolidLabel::FromLeft => "Izquierda",
        SolidLabel::FromStreetCorner => "Esquina de la calle, desde arriba",
        SolidLabel::NotMeasured => "No mida en este dibujo: las medidas están en las listas.",
        SolidLabel::WallsAssumed => {
            "Las paredes se dibujan de 9 pies de alto porque nadie midió el alto del alero."
        }
        SolidLabel::NoRoof => "Todavía no hay techo.",
    }
}
