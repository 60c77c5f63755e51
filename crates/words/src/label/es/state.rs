use crate::label::state::StateLabel;

pub(in crate::label) const fn text(label: StateLabel) -> &'static str {
    match label {
        StateLabel::NotLooked => "sin ver",
        StateLabel::Hearsay => "de oídas",
        StateLabel::WorkedOut => "calculado",
        StateLabel::ReadOnce => "medido una vez",
        StateLabel::OffPhoto => "de una foto",
        StateLabel::SettledAtDesk => "resuelto en la oficina",
        StateLabel::Agreed => "coincide",
        StateLabel::Proved => "comprobado",
        StateLabel::CannotGet => "no se alcanza",
        StateLabel::Suspect => "medido una vez, dudoso",
        StateLabel::Struck => "tachado",
    }
}
