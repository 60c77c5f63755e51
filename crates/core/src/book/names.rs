//! What rises at the legs of a house.

use super::fold::FieldBook;
use super::kinds::EndKind;

/// What rises at a leg, from 1; a slope where nobody said otherwise.
#[must_use]
pub fn end_of(book: &FieldBook, leg: u32) -> EndKind {
    let said = book.leg_ends.iter().rev().find(|(_, at, _)| *at == leg);
    said.map_or(EndKind::Sloped, |(_, _, end)| *end)
}

/// A text as the beginning of a sentence: `Back 2`.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}
