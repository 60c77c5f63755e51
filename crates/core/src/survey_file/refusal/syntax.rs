//! Text that is not JSON.

/// Why a file is no JSON (RFC 8259).
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SyntaxFault {
    /// Nothing, or nothing but blanks.
    #[error(
        "the file is empty: write a survey, beginning with {{\"format\": \"eavebook-survey/1\""
    )]
    Empty,
    /// Bytes that are no text.
    #[error("these bytes are no UTF-8 text: save the file as UTF-8")]
    NotUtf8,
    /// The end comes too early.
    #[error(
        "the file ends in the middle: the rest of it is missing, or a bracket or quote is open"
    )]
    Ends,
    /// Something else should stand here.
    #[error("{found} stands where {wanted} should: mend the JSON there")]
    Unexpected {
        /// The sign found, quoted.
        found: String,
        /// What should stand there.
        wanted: &'static str,
    },
    /// A bare word.
    #[error(
        "{word} is no JSON value: write a number, a text in double quotes, true, false or null"
    )]
    BareWord {
        /// The word.
        word: String,
    },
    /// A number written another way.
    #[error("{number} is no JSON number: write it like 12, -3.5 or 0.25")]
    NoNumber {
        /// As written.
        number: String,
    },
    /// A comment.
    #[error("a comment begins here: JSON has none, take it out")]
    Comment,
    /// A comma before a closing bracket.
    #[error("a comma stands before a closing bracket: take the comma out")]
    TrailingComma,
    /// A control character in a text.
    #[error("a control character stands in a text: write it as \\n, \\t or \\u and four digits")]
    BareControl,
    /// A backslash with something else behind it.
    #[error("the backslash begins no escape: write \\\\ for a backslash, \\\" for a quote")]
    BadEscape,
    /// More after the end.
    #[error("something follows the end of the survey: one file holds one survey")]
    Follows,
}
