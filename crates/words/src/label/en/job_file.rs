use crate::label::job_file::JobFileLabel;

pub(in crate::label) const fn text(label: JobFileLabel) -> &'static str {
    match label {
        JobFileLabel::WhoFor => "Who is it for?",
        JobFileLabel::MakePacket => "Make packet",
        JobFileLabel::Making => "The papers are being made. You can keep recording.",
        JobFileLabel::Packets => "Packets",
        JobFileLabel::NoPackets => "No packet yet. Make one: it is kept here and sent to nobody.",
        JobFileLabel::StillOpen => "Still open",
        JobFileLabel::NothingOpen => "Nothing is open.",
        JobFileLabel::InItAsNotKnown => {
            "What nobody read goes into the packet as not known. The measurement record marks each reading that no other reading checks."
        }
        JobFileLabel::NotKnownInIt => "Not known in it",
        JobFileLabel::MissingFromIt => "Missing from it",
        JobFileLabel::FileGone => {
            "The file of this packet is not on this device. Make the packet again: if nothing was recorded since, it is the same one."
        }
        JobFileLabel::Save => "Save",
        JobFileLabel::File => "File",
        JobFileLabel::Contents => "Contents",
        JobFileLabel::Choose => "Choose a packet to see its papers.",
    }
}
