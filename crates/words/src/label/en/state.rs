use crate::label::state::StateLabel;

pub(in crate::label) const fn text(label: StateLabel) -> &'static str {
    match label {
        StateLabel::NotLooked => "not looked",
        StateLabel::Hearsay => "hearsay",
        StateLabel::WorkedOut => "worked out",
        StateLabel::ReadOnce => "read once",
        StateLabel::OffPhoto => "off photo",
        StateLabel::SettledAtDesk => "settled at desk",
        StateLabel::Agreed => "agreed",
        StateLabel::Proved => "proved",
        StateLabel::CannotGet => "can't get",
        StateLabel::Suspect => "read once, suspect",
        StateLabel::Struck => "struck",
    }
}
