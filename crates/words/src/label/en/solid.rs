use crate::label::solid::SolidLabel;

pub(in crate::label) const fn text(label: SolidLabel) -> &'static str {
    match label {
        SolidLabel::Title => "3D view",
        SolidLabel::FromFront => "Front",
        SolidLabel::FromRight => "Right",
        SolidLabel::FromBack => "Back",
        SolidLabel::FromLeft => "Left",
        SolidLabel::FromStreetCorner => "Street corner, from above",
        SolidLabel::NotMeasured => "Do not measure on this drawing: the figures are in the lists.",
        SolidLabel::WallsAssumed => {
            "Walls are drawn 9 ft high because nobody read the eave height."
        }
        SolidLabel::NoRoof => "No roof yet.",
    }
}
