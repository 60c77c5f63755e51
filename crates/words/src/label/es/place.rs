use crate::label::place::PlaceLabel;

pub(in crate::label) const fn text(label: PlaceLabel) -> &'static str {
    match label {
        PlaceLabel::Today => "Hoy",
        PlaceLabel::Arrive => "Llegada",
        PlaceLabel::WalkRound => "La vuelta",
        PlaceLabel::FieldBook => "Libreta",
        PlaceLabel::Plan => "Plano",
        PlaceLabel::LeaveSiteCheck => "Antes de irse",
        PlaceLabel::Takeoff => "Material",
        PlaceLabel::JobFile => "Expediente",
    }
}
