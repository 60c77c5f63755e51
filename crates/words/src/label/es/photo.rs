use crate::label::photo::PhotoLabel;

pub(in crate::label) const fn text(label: PhotoLabel) -> &'static str {
    match label {
        PhotoLabel::Tag => "Qué muestra",
        PhotoLabel::Yes => "Sí",
        PhotoLabel::Other => "Otro",
        PhotoLabel::PlaceFront => "Frente",
        PhotoLabel::PlaceRight => "Derecha",
        PhotoLabel::PlaceBack => "Atrás",
        PhotoLabel::PlaceLeft => "Izquierda",
        PhotoLabel::PlaceRoof => "Techo",
        PhotoLabel::PlaceUnder => "Debajo",
        PhotoLabel::PlaceGround => "Suelo",
        PhotoLabel::FromHowFar => "Desde qué distancia",
        PhotoLabel::DistanceWhole => "completo",
        PhotoLabel::DistanceMiddle => "medio",
        PhotoLabel::DistanceClose => "cerca, con cinta",
        PhotoLabel::StateConfirmed => "confirmado",
        PhotoLabel::StateGuess => "sin confirmar",
        PhotoLabel::StateNotLooked => "sin ver",
        PhotoLabel::Private => "Privada",
        PhotoLabel::SetAside => "Apartar",
        PhotoLabel::BringBack => "Devolver",
        PhotoLabel::NotHere => "Esta foto no está en este aparato.",
    }
}
