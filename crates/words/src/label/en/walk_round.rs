use crate::label::walk_round::WalkRoundLabel;

pub(in crate::label) const fn text(label: WalkRoundLabel) -> &'static str {
    match label {
        WalkRoundLabel::ConfirmAll => "Confirm all",
        WalkRoundLabel::NothingToConfirm => "There is no guess here to confirm.",
        WalkRoundLabel::Photos => "Photos",
        WalkRoundLabel::NoFront => {
            "The front is not recorded. Face it and tap This is the front at Arrive: from then on the sides are guessed."
        }
        WalkRoundLabel::WhichSide => "Which side?",
        WalkRoundLabel::LookFor => "Look for",
        WalkRoundLabel::FoundSeen => "seen",
        WalkRoundLabel::FoundNone => "none",
        WalkRoundLabel::FoundNotLooked => "not looked",
        WalkRoundLabel::NotCounted => "not counted",
        WalkRoundLabel::OneLess => "One less",
        WalkRoundLabel::OneMore => "One more",
    }
}
