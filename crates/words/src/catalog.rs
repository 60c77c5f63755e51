use crate::{Count, Label, Language, Message, Noun};
use eavebook_core::units::Tape;
use serde::Serialize;

/// What a text is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A sentence, shown or printed.
    Sentence,
    /// A button, a state, a unit.
    Label,
    /// The title of a place, a region or a paper.
    Heading,
    /// Read aloud.
    Spoken,
    /// A counted thing.
    Noun,
}

/// One sample of one text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CatalogLine {
    /// `closure.gap`.
    pub id: String,
    /// Its number among the samples of that id, from 1. Where the text has a count, samples 1 and 2
    /// have that count.
    pub sample: usize,
    /// What it is for.
    pub kind: Kind,
    /// The text.
    pub text: String,
    /// The texts of both languages may be equal.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub same: bool,
}

/// Readings whose spoken form is listed.
const SPOKEN: [&str; 5] = ["42' 7 1/2\"", "1' 1\"", "40.3 ft", "1/2\"", "12.25 m"];

/// Every text in a language, with samples for its arguments.
#[must_use]
pub fn catalog(language: Language) -> Vec<CatalogLine> {
    let mut lines: Vec<CatalogLine> = Vec::new();
    for message in Message::samples() {
        let id = message.id();
        let before = lines.iter().rev().take_while(|line| line.id == id).count();
        lines.push(CatalogLine {
            id,
            sample: before + 1,
            kind: Kind::Sentence,
            text: message.text(language),
            same: false,
        });
    }
    lines.extend(Label::all().into_iter().map(|label| CatalogLine {
        id: label.id(),
        sample: 1,
        kind: label.kind(),
        text: label.text(language).to_owned(),
        same: label.may_be_same(),
    }));
    let format = language.format();
    for noun in Noun::ALL {
        lines.extend([1, 2].map(|n| CatalogLine {
            id: noun.id(),
            sample: n,
            kind: Kind::Noun,
            text: format.count(Count::new(n, *noun)),
            same: false,
        }));
    }
    let readings = SPOKEN.iter().filter_map(|text| Tape::read(text).ok());
    lines.extend(readings.enumerate().map(|(place, tape)| CatalogLine {
        id: "spoken.reading".to_owned(),
        sample: place + 1,
        kind: Kind::Spoken,
        text: format.spoken(&tape),
        same: false,
    }));
    lines
}
