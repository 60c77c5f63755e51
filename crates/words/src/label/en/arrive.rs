use crate::label::arrive::ArriveLabel;

pub(in crate::label) const fn text(label: ArriveLabel) -> &'static str {
    match label {
        ArriveLabel::ThisIsTheFront => "This is the front",
        ArriveLabel::StandBefore => "Face the front of the house. Right is then on your right.",
        ArriveLabel::NoCompass => {
            "The front is recorded. This device has no compass: set sides by hand."
        }
        ArriveLabel::WhoIMet => "Who I met",
        ArriveLabel::NobodyRecorded => "Nobody is recorded yet.",
        ArriveLabel::NameOrRole => "Name or role",
        ArriveLabel::CanApprove => "Can approve",
        ArriveLabel::Record => "Record",
        ArriveLabel::GroundOnly => {
            "From the ground only. Climbing, lifted edges, deck and layers are not asked for; they go into the packet as not known."
        }
        ArriveLabel::Permissions => "Permissions",
        ArriveLabel::Hazards => "Hazards",
        ArriveLabel::CheckIn => "Check-in",
        ArriveLabel::KnowsWhere => "Who knows where you are",
        ArriveLabel::Until => "Until when",
        ArriveLabel::RecordCheckIn => "Record check-in",
        ArriveLabel::BeforeWork => "Before any work",
        ArriveLabel::Promised => "Promised",
        ArriveLabel::WhatWasPromised => "What was promised",
        ArriveLabel::WritePromise => "What was promised? Write it, or tap Nothing promised.",
        ArriveLabel::RecordPromise => "Record promise",
        ArriveLabel::NothingPromised => "Nothing promised",
    }
}
