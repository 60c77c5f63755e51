use crate::label::takeoff::TakeoffLabel;

pub(in crate::label) const fn text(label: TakeoffLabel) -> &'static str {
    match label {
        TakeoffLabel::WorkingOut => "Working it out…",
        TakeoffLabel::NothingYet => "Nothing to take off yet",
        TakeoffLabel::NotKnown => "Not known",
        TakeoffLabel::NotPriced => "Not priced",
        TakeoffLabel::Changed => "Changed for this job",
        TakeoffLabel::HowWorkedOut => "How it was worked out",
        TakeoffLabel::Lines => "Lines",
        TakeoffLabel::MadeOf => "Worked out from",
        TakeoffLabel::CodeProfile => "From the code profile",
        TakeoffLabel::Rates => "Rates",
        TakeoffLabel::Blank => "blank",
        TakeoffLabel::OurRate => "our rate",
        TakeoffLabel::Change => "Change",
        TakeoffLabel::LeaveBlank => "Leave blank",
        TakeoffLabel::BackToOurRate => "Back to our rate",
    }
}
