use crate::label::photo::PhotoLabel;

pub(in crate::label) const fn text(label: PhotoLabel) -> &'static str {
    match label {
        PhotoLabel::Tag => "Tag",
        PhotoLabel::Yes => "Yes",
        PhotoLabel::Other => "Other",
        PhotoLabel::PlaceFront => "Front",
        PhotoLabel::PlaceRight => "Right",
        PhotoLabel::PlaceBack => "Back",
        PhotoLabel::PlaceLeft => "Left",
        PhotoLabel::PlaceRoof => "Roof",
        PhotoLabel::PlaceUnder => "Under",
        PhotoLabel::PlaceGround => "Ground",
        PhotoLabel::FromHowFar => "From how far",
        PhotoLabel::DistanceWhole => "whole",
        PhotoLabel::DistanceMiddle => "middle",
        PhotoLabel::DistanceClose => "close with tape",
        PhotoLabel::StateConfirmed => "confirmed",
        PhotoLabel::StateGuess => "guess",
        PhotoLabel::StateNotLooked => "not looked",
        PhotoLabel::Private => "Private",
        PhotoLabel::SetAside => "Set aside",
        PhotoLabel::BringBack => "Bring back",
        PhotoLabel::NotHere => "This photo is not on this device.",
    }
}
