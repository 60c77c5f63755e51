use crate::label::place::PlaceLabel;

pub(in crate::label) const fn text(label: PlaceLabel) -> &'static str {
    match label {
        PlaceLabel::Today => "Today",
        PlaceLabel::Arrive => "Arrive",
        PlaceLabel::WalkRound => "Walk-round",
        PlaceLabel::FieldBook => "Field book",
        PlaceLabel::Plan => "Plan",
        PlaceLabel::LeaveSiteCheck => "Leave-site check",
        PlaceLabel::Takeoff => "Takeoff",
        PlaceLabel::JobFile => "Job file",
    }
}
