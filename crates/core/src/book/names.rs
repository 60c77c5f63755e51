//! What the sides and the faces of a house are called: on a screen and on a paper alike.

use super::fold::FieldBook;
use super::house_side::HouseSide;
use super::kinds::EndKind;
use super::lay_out::LaidOut;

/// What rises at a leg, from 1; a slope where nobody said otherwise.
#[must_use]
pub fn end_of(book: &FieldBook, leg: u32) -> EndKind {
    let said = book.leg_ends.iter().rev().find(|(_, at, _)| *at == leg);
    said.map_or(EndKind::Sloped, |(_, _, end)| *end)
}

/// The face of each leg by the side to which it falls, what rises there, and its number where a
/// side has several of a kind, in the order of the walk.
#[must_use]
pub fn face_places(book: &FieldBook, laid: &LaidOut) -> Vec<FacePlace> {
    let kinds: Vec<(HouseSide, EndKind)> = (1..=laid.legs)
        .map(|leg| {
            let leg = u32::try_from(leg).unwrap_or(u32::MAX);
            let side = laid.side_of_leg(leg).unwrap_or(HouseSide::Front);
            (side, end_of(book, leg))
        })
        .collect();
    let placed = kinds.iter().enumerate().map(|(place, &(side, end))| {
        let same = |other: &&(HouseSide, EndKind)| **other == (side, end);
        let several = kinds.iter().filter(same).count() > 1;
        FacePlace {
            side,
            end,
            number: several.then(|| kinds[..=place].iter().filter(same).count()),
        }
    });
    placed.collect()
}

/// Where a face is, and which of several it is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FacePlace {
    /// The side to which it falls.
    pub side: HouseSide,
    /// What rises there: a gable is no face, but stands in the list of its side.
    pub end: EndKind,
    /// Its number, from 1, where the side has several of its kind.
    pub number: Option<usize>,
}

impl FacePlace {
    /// `Back 2`, `Front gable`.
    #[must_use]
    pub fn name(&self) -> String {
        let side = match self.side {
            HouseSide::Front => "Front",
            HouseSide::Right => "Right",
            HouseSide::Back => "Back",
            HouseSide::Left => "Left",
        };
        let word = match self.end {
            EndKind::Sloped => side.to_owned(),
            EndKind::Gable => format!("{side} gable"),
            EndKind::Wall => format!("{side} wall"),
        };
        match self.number {
            Some(number) => format!("{word} {number}"),
            None => word,
        }
    }
}

/// A text as the beginning of a sentence: `Back 2`.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}
