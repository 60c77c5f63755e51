use super::bodies::BodyFault;
use super::edges::EdgeFault;
use super::extras::ExtraFault;
use super::known_outline::OutlineFault;
use super::measures::MeasureFault;
use super::readings::ReadingFault;
use super::seen::SeenFault;
use super::slopes::SlopeFault;
use super::terms::TermsFault;
use crate::path::Path;
use crate::units::quotable;
use std::fmt;

/// Why a file is no survey: one line of at most [`Refusal::LONGEST`] signs that says where, what
/// is wrong and what to write.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    // Boxed: every step of the reader hands one back.
    said: Box<RefusalDetails>,
}

#[derive(Clone, Debug, PartialEq)]
struct RefusalDetails {
    place: Place,
    /// The reading or body at fault, by its name in the file.
    about: Option<String>,
    fault: Fault,
}

#[derive(Clone, Debug, PartialEq)]
enum Place {
    /// A path in a file that is JSON.
    Path(Path),
    /// A spot in a file that is not.
    Spot {
        line: usize,
        column: usize,
        path: Path,
    },
}

impl Refusal {
    /// Most signs of a refusal in print.
    pub const LONGEST: usize = 500;

    pub(super) fn at(path: Path, fault: impl Into<Fault>) -> Refusal {
        Refusal::new(Place::Path(path), fault.into())
    }

    pub(super) fn not_json(line: usize, column: usize, path: Path, fault: SyntaxFault) -> Refusal {
        Refusal::new(Place::Spot { line, column, path }, Fault::Syntax(fault))
    }

    fn new(place: Place, fault: Fault) -> Refusal {
        let about = None;
        let said = RefusalDetails {
            place,
            about,
            fault,
        };
        Refusal {
            said: Box::new(said),
        }
    }

    /// The same refusal, naming the thing at fault; the first name stays.
    #[must_use]
    pub(super) fn about(mut self, kind: &str, name: &str) -> Refusal {
        self.said.about.get_or_insert_with(|| {
            let name = quotable(name);
            // What has no name of its own is called `body 2` already.
            if name.starts_with(kind) {
                name
            } else {
                format!("{kind} {name}")
            }
        });
        self
    }

    /// The same refusal of something in a body, naming the body beside it: a path alone counts
    /// bodies from 0, a person knows them by name.
    #[must_use]
    pub(super) fn in_body(mut self, id: &str) -> Refusal {
        let id = quotable(id);
        self.said.about = Some(match self.said.about {
            Some(leg) if leg.starts_with("leg ") => format!("{leg} of {id}"),
            Some(other) => other,
            None => format!("body {id}"),
        });
        self
    }

    /// What is wrong.
    #[must_use]
    pub fn fault(&self) -> &Fault {
        &self.said.fault
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let place = match &self.said.place {
            Place::Path(path) => path.to_string(),
            Place::Spot { line, column, path } if path.is_whole_file() => {
                format!("line {line} column {column}")
            }
            Place::Spot { line, column, path } => format!("line {line} column {column} ({path})"),
        };
        let about = self
            .said
            .about
            .as_ref()
            .map_or(String::new(), |name| format!(" ({name})"));
        let sentence = format!("{place}{about}: {}", self.said.fault);
        if sentence.chars().count() <= Refusal::LONGEST {
            return out.write_str(&sentence);
        }
        let cut: String = sentence.chars().take(Refusal::LONGEST - 1).collect();
        write!(out, "{cut}…")
    }
}

impl std::error::Error for Refusal {}

/// What is wrong with a survey file, by the part of it that is at fault.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Fault {
    /// It is no JSON.
    #[error(transparent)]
    Syntax(#[from] SyntaxFault),
    /// Keys and kinds of value.
    #[error(transparent)]
    Shape(#[from] ShapeFault),
    /// A number, a length or an angle.
    #[error(transparent)]
    Measure(#[from] MeasureFault),
    /// A body as a whole.
    #[error(transparent)]
    Body(#[from] BodyFault),
    /// Corners given as known.
    #[error(transparent)]
    Outline(#[from] OutlineFault),
    /// A taped value.
    #[error(transparent)]
    Reading(#[from] ReadingFault),
    /// What rises at a leg.
    #[error(transparent)]
    Edge(#[from] EdgeFault),
    /// A reading of a slope.
    #[error(transparent)]
    Slope(#[from] SlopeFault),
    /// All that is no body.
    #[error(transparent)]
    Extra(#[from] ExtraFault),
    /// Something seen of the roof.
    #[error(transparent)]
    RoofObservation(#[from] SeenFault),
    /// Rates or the code profile.
    #[error(transparent)]
    Terms(#[from] TermsFault),
}

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
