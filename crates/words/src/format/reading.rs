use super::Quoted;
use eavebook_core::units::Tape;

/// The text of a reading, parsed where it is a length.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadingText {
    /// A length as the tape gave it.
    Tape(Tape),
    /// Any other text.
    Other(Quoted),
}

impl From<&str> for ReadingText {
    fn from(text: &str) -> ReadingText {
        Tape::read(text).map_or_else(|_| ReadingText::Other(text.into()), ReadingText::Tape)
    }
}
