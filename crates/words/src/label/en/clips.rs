use crate::label::clips::ClipsLabel;

pub(in crate::label) const fn text(label: ClipsLabel) -> &'static str {
    match label {
        ClipsLabel::Title => "Recorded, not typed yet",
        ClipsLabel::RecordIt => "Record it",
        ClipsLabel::Stop => "Stop",
        ClipsLabel::Listening => "Recording. Tap Stop to keep it.",
        ClipsLabel::Kept => "The recording is kept. Type it when you are on the ground.",
        ClipsLabel::NoMicrophone => {
            "This page may not use a microphone, or there is no microphone. Take a photo of the tape, or type it."
        }
        ClipsLabel::NotKept => "Nothing was kept. Record it once more.",
        ClipsLabel::TypeIt => "Type it",
        ClipsLabel::Typed => "Typed",
        ClipsLabel::Recording => "Recording",
    }
}
