use crate::label::pitch::PitchLabel;

pub(in crate::label) const fn text(label: PitchLabel) -> &'static str {
    match label {
        PitchLabel::Title => "Pitch",
        PitchLabel::Waiting => "Not read since this was opened.",
        PitchLabel::LayPhone => "Lay the phone on the roof, its top up the slope.",
        PitchLabel::TurnPhone => "Turn the phone end for end on the same spot.",
        PitchLabel::Capture => "Capture",
        PitchLabel::FlipAndRepeat => "Flip and repeat",
        PitchLabel::EnterIt => "Enter it",
        PitchLabel::FirstOneWay => "Capture it one way first, then flip.",
        PitchLabel::WaitsForFlip => "Turn the phone end for end: that reading is next.",
        PitchLabel::Denied => "This page may not read the tilt. Read the pitch by level and tape.",
        PitchLabel::NoTilt => {
            "This device does not report its tilt. Read the pitch by level and tape."
        }
        PitchLabel::PlumbPhoto => "Plumb photo",
        PitchLabel::PlumbHow => {
            "From the ground, facing the gable: hold the phone upright, with both eave corners, the top and the ground under them in sight. Then mark them."
        }
        PitchLabel::MarkPhoto => "Mark the photo",
        PitchLabel::MarkHow => {
            "Choose a point, then tap it on the photo, or move its mark by the arrows. Left and right are as you look at it."
        }
        PitchLabel::SpotLeftEave => "Left eave corner",
        PitchLabel::SpotTop => "Top of the gable",
        PitchLabel::SpotRightEave => "Right eave corner",
        PitchLabel::SpotLeftGround => "Ground under left",
        PitchLabel::SpotRightGround => "Ground under right",
        PitchLabel::Marked => "marked",
        PitchLabel::NotMarked => "not marked",
        PitchLabel::Nearer => "Nearer",
        PitchLabel::MoveLeft => "Mark to the left",
        PitchLabel::MoveUp => "Mark up",
        PitchLabel::MoveDown => "Mark down",
        PitchLabel::MoveRight => "Mark to the right",
        PitchLabel::NotGot => "Not got",
        PitchLabel::RecordedNotGot => "Recorded as not got. The packet names it as not known.",
        PitchLabel::RiseByNumber => "Rise in 12, by number",
        PitchLabel::ByNumber => "By number",
        PitchLabel::AndAHalf => "and a half",
        PitchLabel::LevelAndTape => "Level and tape",
        PitchLabel::LevelInches => "Level, inches",
        PitchLabel::RiseInches => "Rise at its end, inches",
        PitchLabel::OneInchLess => "One inch less",
        PitchLabel::OneInchMore => "One inch more",
        PitchLabel::SameIsNoReading => "A pitch taken as the same is not a reading.",
        PitchLabel::StayDown => {
            "From a ladder only where it stands firm. A gable can be read from the ground."
        }
        PitchLabel::TapARise => "There is nothing to record yet. Tap a rise first.",
    }
}
