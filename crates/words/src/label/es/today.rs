use crate::label::today::TodayLabel;

pub(in crate::label) const fn text(label: TodayLabel) -> &'static str {
    match label {
        TodayLabel::Stops => "Paradas",
        TodayLabel::NoStops => "No hay paradas. Empiece un trabajo.",
        TodayLabel::Search => "Buscar",
        TodayLabel::Found => "Encontrado",
        TodayLabel::NothingFound => "No se encontró nada. Pruebe con una calle o una cosa.",
        TodayLabel::StartAJob => "Empezar un trabajo",
        TodayLabel::Address => "Dirección",
        TodayLabel::Start => "Empezar",
        TodayLabel::NoAddress => "¿Qué dirección? Escriba la calle.",
    }
}
