use crate::label::desk::DeskLabel;

pub(in crate::label) const fn text(label: DeskLabel) -> &'static str {
    match label {
        DeskLabel::NothingChosen => {
            "Nothing is chosen. Press n for the next thing that is read once."
        }
        DeskLabel::NoPhoto => "There is no photo of it.",
        DeskLabel::NothingToSettle => "There is nothing here to settle at the desk.",
        DeskLabel::AllProved => "Nothing is left that is read once and not checked.",
        DeskLabel::AllVisited => "You have looked at each of them once. Press n to begin again.",
    }
}
