use crate::label::check::CheckLabel;

pub(in crate::label) const fn text(label: CheckLabel) -> &'static str {
    match label {
        CheckLabel::OpenItems => "Pendientes",
        CheckLabel::NothingOpen => "No queda nada pendiente. Dé otra mirada a la casa.",
        CheckLabel::YouWereOnThis => "Usted estaba en este.",
        CheckLabel::NextPage => "Otra página",
        CheckLabel::WhyOpen => "Por qué queda pendiente, si quiere",
        CheckLabel::Dark => "Oscuro",
        CheckLabel::Weather => "Mal tiempo",
        CheckLabel::NoAccess => "Sin acceso",
        CheckLabel::ComingBack => "Voy a volver",
        CheckLabel::Leave => "Irse",
        CheckLabel::BackToCheck => "De vuelta a la lista",
    }
}
