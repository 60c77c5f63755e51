use crate::path::Path;
use crate::units::quotable;
use serde::de::{self, Expected, Unexpected};
use std::fmt;

/// Why rates or a code profile cannot be used: the path of the key, what is wrong, what to write.
#[derive(Clone, Debug, PartialEq)]
pub struct SettingFault {
    path: Path,
    lack: SettingLack,
}

/// What is wrong with one key of rates or of a code profile.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SettingLack {
    /// A key that nothing reads.
    #[error("the key is not known here: take it out or mend its name, known are {}", known.join(", "))]
    UnknownKey {
        /// Those that are known.
        known: &'static [&'static str],
    },
    /// A key that everything needs.
    #[error("the key is missing: give it, in the unit that its name says")]
    Missing,
    /// A table without the row for all else.
    #[error("the key is missing: give the figure for what is not listed")]
    OtherMissing,
    /// A price that was left out.
    #[error("the price is missing: write money as text, such as \"34.50\"")]
    PriceMissing,
    /// Another kind of value.
    #[error("write {wanted} here, not {found}")]
    Wrong {
        /// What stands there.
        found: String,
        /// What should.
        wanted: String,
    },
    /// A word that is none of a few.
    #[error("\"{word}\" is none of its words: write {}", listed(known))]
    UnknownWord {
        /// The word.
        word: String,
        /// Those that are known.
        known: &'static [&'static str],
    },
    /// A number out of its range.
    #[error("{} is out of range: write a number from {} to {}", short(*number), short(*least), short(*most))]
    Range {
        /// As written.
        number: f64,
        /// Least.
        least: f64,
        /// Most.
        most: f64,
    },
    /// A number below zero.
    #[error("{} is below 0: write 0 or more", quotable(number))]
    BelowZero {
        /// As written.
        number: String,
    },
    /// Zero, where something is divided by it or nothing could be laid.
    #[error("0 cannot be: write a number above 0")]
    Zero,
    /// A number that is more than another one allows.
    #[error("{} is more than {other}, {}: mend one of the two", short(*number), short(*limit))]
    Over {
        /// As written.
        number: f64,
        /// The other key.
        other: &'static str,
        /// What it says.
        limit: f64,
    },
    /// A number that leaves nothing of another one.
    #[error("{} leaves nothing of {other}, {}: mend one of the two", short(*number), short(*limit))]
    NothingLeft {
        /// As written.
        number: f64,
        /// The other key.
        other: &'static str,
        /// What it says.
        limit: f64,
    },
    /// A share of the price that leaves nothing for the cost.
    #[error(
        "a margin of {percent} per cent of the price leaves nothing for the cost: write at most 99.99, or method \"markup\""
    )]
    WholeMargin {
        /// As written.
        percent: String,
    },
    /// An amount of money past counting.
    #[error("{amount} is too great an amount: write at most {most}")]
    TooDear {
        /// As written.
        amount: String,
        /// The most.
        most: String,
    },
    /// Least, likeliest and most that do not rise.
    #[error("{} {} {} do not rise: write the least, the likeliest and the most", short(figures[0]), short(figures[1]), short(figures[2]))]
    NotRising {
        /// As written.
        figures: [f64; 3],
    },
    /// Chances that are not all there is.
    #[error("the chances sum to {}: let them sum to 1", short(*sum))]
    Chances {
        /// Their sum.
        sum: f64,
    },
    /// A list without rows, or with too many.
    #[error("the list has {rows} places: write 1 to {most}")]
    Rows {
        /// How many stand there.
        rows: usize,
        /// The most.
        most: usize,
    },
    /// A day that is none.
    #[error("\"{day}\" is no day: write year, month and day as 2024-05-01")]
    NoDay {
        /// As written.
        day: String,
    },
    /// Money, a per cent or a list in other words.
    #[error("{0}")]
    Worded(String),
}

impl SettingFault {
    pub(super) fn new(path: Path, lack: SettingLack) -> SettingFault {
        SettingFault { path, lack }
    }

    fn here(lack: SettingLack) -> SettingFault {
        SettingFault::new(Path::default(), lack)
    }

    /// The same fault, found below a key.
    #[must_use]
    pub(super) fn below_key(mut self, key: &str) -> SettingFault {
        self.path = self.path.below_key(key);
        self
    }

    /// The same fault, found below a place in a list.
    #[must_use]
    pub(super) fn below_place(mut self, place: usize) -> SettingFault {
        self.path = self.path.below_place(place);
        self
    }

    /// Where it is wrong.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Where and what, apart.
    #[must_use]
    pub fn into_parts(self) -> (Path, SettingLack) {
        (self.path, self.lack)
    }

    /// What is wrong.
    #[must_use]
    pub fn lack(&self) -> &SettingLack {
        &self.lack
    }
}

impl fmt::Display for SettingFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}: {}", self.path, self.lack)
    }
}

impl std::error::Error for SettingFault {}

/// What serde says when a value does not fit its table.
impl de::Error for SettingFault {
    fn custom<T: fmt::Display>(said: T) -> SettingFault {
        SettingFault::here(SettingLack::Worded(said.to_string()))
    }

    fn invalid_type(found: Unexpected<'_>, wanted: &dyn Expected) -> SettingFault {
        let found = match found {
            Unexpected::Str(text) => format!("the text \"{}\"", quotable(text)),
            Unexpected::Bool(truth) => truth.to_string(),
            Unexpected::Float(number) => format!("the number {}", short(number)),
            Unexpected::Unsigned(number) => format!("the number {number}"),
            Unexpected::Signed(number) => format!("the number {number}"),
            Unexpected::Unit => "null".to_owned(),
            Unexpected::Seq => "a list".to_owned(),
            Unexpected::Map => "a table".to_owned(),
            Unexpected::Char(_)
            | Unexpected::Bytes(_)
            | Unexpected::Option
            | Unexpected::NewtypeStruct
            | Unexpected::Enum
            | Unexpected::UnitVariant
            | Unexpected::NewtypeVariant
            | Unexpected::TupleVariant
            | Unexpected::StructVariant
            | Unexpected::Other(_) => "this value".to_owned(),
        };
        let wanted = in_our_words(&wanted.to_string());
        SettingFault::here(SettingLack::Wrong { found, wanted })
    }

    fn invalid_value(found: Unexpected<'_>, wanted: &dyn Expected) -> SettingFault {
        SettingFault::invalid_type(found, wanted)
    }

    fn invalid_length(found: usize, wanted: &dyn Expected) -> SettingFault {
        let found = format!("{found} places");
        let wanted = in_our_words(&wanted.to_string());
        SettingFault::here(SettingLack::Wrong { found, wanted })
    }

    fn unknown_variant(word: &str, known: &'static [&'static str]) -> SettingFault {
        let word = quotable(word);
        SettingFault::here(SettingLack::UnknownWord { word, known })
    }

    fn unknown_field(key: &str, known: &'static [&'static str]) -> SettingFault {
        SettingFault::here(SettingLack::UnknownKey { known }).below_key(key)
    }

    fn missing_field(key: &'static str) -> SettingFault {
        SettingFault::here(SettingLack::Missing).below_key(key)
    }
}

/// serde names types of Rust; a person reads what to write.
fn in_our_words(wanted: &str) -> String {
    let words = match wanted {
        "f64" => "a number",
        "u32" => "a whole number",
        "a boolean" => "true or false",
        "a string" => "text in quotes",
        "a map" => "a table",
        "an array of length 2" | "a tuple of size 2" => "a list of two",
        "an array of length 3" => "a list of the least, the likeliest and the most",
        "a sequence" => "a list",
        wanted if wanted.starts_with("struct ") => "a table with all its keys",
        wanted if wanted.contains("enum ") => "one of its words, in quotes",
        wanted => wanted,
    };
    words.to_owned()
}

/// A number as it stands in a sentence: never hundreds of digits.
fn short(number: f64) -> String {
    if number.abs() < 1e12 && (number.abs() > 1e-6 || number == 0.0) {
        number.to_string()
    } else {
        format!("{number:e}")
    }
}

fn listed(words: &[&str]) -> String {
    words
        .iter()
        .map(|word| format!("\"{word}\""))
        .collect::<Vec<_>>()
        .join(" or ")
}
