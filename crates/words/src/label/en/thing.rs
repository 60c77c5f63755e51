use crate::label::thing::ThingLabel;

pub(in crate::label) const fn text(label: ThingLabel) -> &'static str {
    match label {
        ThingLabel::ReadAgain => "Read again",
        ThingLabel::CannotReach => "Can't reach",
        ThingLabel::Strike => "Strike",
        ThingLabel::Story => "Story",
        ThingLabel::NoStory => "Nothing is recorded yet.",
        ThingLabel::NothingToStrike => "There is nothing here to strike.",
        ThingLabel::WorkedOut => "This is worked out from other readings. Read those again.",
        ThingLabel::PhotoOf => "Photo of",
    }
}
