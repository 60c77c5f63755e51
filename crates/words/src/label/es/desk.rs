use crate::label::desk::DeskLabel;

pub(in crate::label) const fn text(label: DeskLabel) -> &'static str {
    match label {
        DeskLabel::NothingChosen => {
            "No hay nada escogido. La tecla n lleva a lo siguiente medido una vez."
        }
        DeskLabel::NoPhoto => "No hay foto.",
        DeskLabel::NothingToSettle => "Aquí no hay nada que resolver en la oficina.",
        DeskLabel::AllProved => "No queda nada medido una vez y sin comprobar.",
        DeskLabel::AllVisited => "Ya los vio todos una vez. La tecla n empieza de nuevo.",
    }
}
