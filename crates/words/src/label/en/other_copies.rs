use crate::label::other_copies::OtherCopiesLabel;

pub(in crate::label) const fn text(label: OtherCopiesLabel) -> &'static str {
    match label {
        OtherCopiesLabel::Title => "Copies on other devices",
        OtherCopiesLabel::Alone => "What is recorded is on this device only.",
        OtherCopiesLabel::HubLink => "Link of a hub, or its address, code and key",
        OtherCopiesLabel::Join => "Join",
        OtherCopiesLabel::Joining => "Joining…",
        OtherCopiesLabel::PhotoOfCode => "Take a photo of the code",
        OtherCopiesLabel::ReadingCode => "Reading the code…",
        OtherCopiesLabel::CodeRead => "The link is in the field. Check it, then tap Join.",
        OtherCopiesLabel::Shares => {
            "Phones on the network of this machine can send their copies here, without internet."
        }
        OtherCopiesLabel::LetJoin => "Let one more device join",
        OtherCopiesLabel::HowToJoin => {
            "Once, within 10 minutes: on the other device, in Settings, give this link or type the line below it."
        }
        OtherCopiesLabel::QrCode => "The link as a QR code",
    }
}
