//! Keys and kinds of value.

/// Keys and kinds of value that the survey file does not have.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ShapeFault {
    /// A key that does not belong there.
    #[error("the key \"{key}\" is unknown here: take it out, known are {}", known.join(", "))]
    UnknownKey {
        /// The key.
        key: String,
        /// Those that do belong there.
        known: &'static [&'static str],
    },
    /// The same key again.
    #[error("the key \"{key}\" is given twice in one object: keep one of the two")]
    KeyTwice {
        /// The key.
        key: String,
    },
    /// A key that must be there.
    #[error("the key \"{key}\" is missing: add {example}")]
    KeyMissing {
        /// The key.
        key: &'static str,
        /// What to write.
        example: &'static str,
    },
    /// Another kind of value.
    #[error("write {wanted} here, not {found}")]
    Wrong {
        /// What stands there.
        found: String,
        /// What should.
        wanted: &'static str,
    },
    /// A longer list than is taken.
    #[error("the list has more than {most} places: leave some out, or make two surveys of it")]
    TooMany {
        /// Most places.
        most: usize,
    },
    /// A shorter or longer list than one thing has.
    #[error("the list has {found} places: write {wanted}")]
    Count {
        /// How many stand there.
        found: usize,
        /// How many should.
        wanted: usize,
    },
    /// A longer text than is taken.
    #[error("the text has more than {longest} signs: write it shorter")]
    TooLong {
        /// Most signs.
        longest: usize,
    },
    /// Deeper than anything that is read.
    #[error("the brackets are nested more than {deepest} deep: write it flatter")]
    TooDeep {
        /// Most levels.
        deepest: usize,
    },
    /// A number past what a computer counts with.
    #[error("{number} is too great a number: write one that was measured")]
    TooGreat {
        /// As written.
        number: String,
    },
}
