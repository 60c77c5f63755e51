use crate::label::check::CheckLabel;

pub(in crate::label) const fn text(label: CheckLabel) -> &'static str {
    match label {
        CheckLabel::OpenItems => "Open items",
        CheckLabel::NothingOpen => "Nothing is open. Look around the house once more.",
        CheckLabel::YouWereOnThis => "You were on this one.",
        CheckLabel::NextPage => "Next page",
        CheckLabel::WhyOpen => "Why it stays open, if you like",
        CheckLabel::Dark => "Dark",
        CheckLabel::Weather => "Weather",
        CheckLabel::NoAccess => "No access",
        CheckLabel::ComingBack => "Coming back",
        CheckLabel::Leave => "Leave",
        CheckLabel::BackToCheck => "Back to check",
    }
}
