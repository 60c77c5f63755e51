use crate::label::send::SendLabel;

pub(in crate::label) const fn text(label: SendLabel) -> &'static str {
    match label {
        SendLabel::Send => "Send",
        SendLabel::SentAndWaiting => "Sent and waiting",
        SendLabel::To => "To",
        SendLabel::Shared => "The file was given to the sharing of this device.",
        SendLabel::Saved => "The file is saved and waits. Hand it on, then tap Handed on.",
        SendLabel::Kept => "Nothing was sent. The packet waits here.",
        SendLabel::Gone => "The file is not on this device. Make the packet again, then send it.",
        SendLabel::PassOn => "Pass on",
        SendLabel::HandedOn => "Handed on",
        SendLabel::DoNotSend => "Do not send",
        SendLabel::Proof => {
            "Whoever gets the packet can check that nothing was changed: unpack it and run sha256sum -c manifest-sha256.txt in its folder."
        }
    }
}
