use crate::label::frame::FrameLabel;

pub(in crate::label) const fn text(label: FrameLabel) -> &'static str {
    match label {
        FrameLabel::Places => "Places",
        FrameLabel::Settings => "Settings",
        FrameLabel::Photo => "Photo",
        FrameLabel::Read => "Read",
        FrameLabel::WhatsLeft => "What's left",
        FrameLabel::NothingLeft => "Nothing is open.",
        FrameLabel::Go => "Go",
        FrameLabel::Copies => "Copies",
        FrameLabel::YouWereHere => "You were here",
        FrameLabel::Undo => "Undo",
        FrameLabel::Redo => "Redo",
        FrameLabel::NothingToUndo => "There is nothing to undo.",
        FrameLabel::NothingToRedo => "There is nothing to redo.",
        FrameLabel::Close => "Close",
        FrameLabel::NoAnswer => {
            "The field book on this device does not answer. Everything on the screen is kept."
        }
        FrameLabel::TryAgain => "Try again",
        FrameLabel::NoJob => "No job is open. Start one from Today.",
        FrameLabel::WakeRefused => {
            "This device does not keep the screen on. Every key that you pressed is kept."
        }
    }
}
