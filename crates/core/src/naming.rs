//! Names of faces and edges, the same on every screen, paper and drawing.
//!
//! A name is data: the crate of sentences renders it. Only the short code of an edge (`e4`) is a text
//! here, since it reads alike in every language.

use crate::book::fold::FieldBook;
use crate::book::house_side::HouseSide;
use crate::book::kinds::EndKind;
use crate::book::lay_out::LaidOut;
use crate::book::names::{capital, end_of};
use crate::roof::{EdgeKind, Face};
use std::collections::BTreeMap;

/// The name of a face: the side to which it falls, its number there, and a letter where one leg
/// carries several faces. A gable or a wall over a leg has one too, for its row in the list of its side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FaceName {
    /// The side to which it falls.
    pub side: HouseSide,
    /// What rises there.
    pub end: EndKind,
    /// Its number, from 1; `None` if the side has one of its kind.
    pub number: Option<usize>,
    /// Its letter; `None` if its leg carries one face.
    pub letter: Option<char>,
}

/// The name of an edge: `e4`, `r2`, `k3b`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct EdgeName {
    /// What it is; `None` for a leg of an outline without a roof.
    pub kind: Option<EdgeKind>,
    /// Its leg, from 1, of a leg, an eave or a rake; its number among its kind of any other edge.
    pub number: u32,
    /// Its letter; `None` if its leg has one edge of the kind.
    pub letter: Option<char>,
}

impl FaceName {
    /// Returns the name in English, for callers that do not render by language yet.
    #[must_use]
    pub fn name(&self) -> String {
        let side = capital(self.side.word());
        let word = match self.end {
            EndKind::Sloped => side,
            EndKind::Gable => format!("{side} gable"),
            EndKind::Wall => format!("{side} wall"),
        };
        word + &self.suffix()
    }

    /// Returns what follows the word for its side: ` 2b`, or nothing.
    #[must_use]
    pub fn suffix(&self) -> String {
        match (self.number, self.letter) {
            (Some(number), Some(letter)) => format!(" {number}{letter}"),
            (Some(number), None) => format!(" {number}"),
            (None, Some(letter)) => format!(" {letter}"),
            (None, None) => String::new(),
        }
    }
}

impl EdgeName {
    /// A leg, from 1, of an outline without a roof.
    #[must_use]
    pub const fn leg(number: u32) -> EdgeName {
        EdgeName {
            kind: None,
            number,
            letter: None,
        }
    }

    /// Its code on drawings and in tables: `e4`, `k3b`.
    #[must_use]
    pub fn code(self) -> String {
        let kind = self.kind.unwrap_or(EdgeKind::Eave).letter();
        let number = self.number;
        match self.letter {
            Some(letter) => format!("{kind}{number}{letter}"),
            None => format!("{kind}{number}"),
        }
    }
}

/// Returns the name of the face over each leg, in the order of the walk. Faces of one kind on one side
/// are numbered.
#[must_use]
pub fn leg_face_names(book: &FieldBook, laid: &LaidOut) -> Vec<FaceName> {
    let places: Vec<(HouseSide, EndKind)> = (1..=laid.legs)
        .map(|leg| {
            let leg = u32::try_from(leg).unwrap_or(u32::MAX);
            let side = laid.side_of_leg(leg).unwrap_or(HouseSide::Front);
            (side, end_of(book, leg))
        })
        .collect();
    let names = places.iter().enumerate().map(|(index, &(side, end))| {
        let alike = |other: &&(HouseSide, EndKind)| **other == (side, end);
        let several = places.iter().filter(alike).count() > 1;
        FaceName {
            side,
            end,
            number: several.then(|| places[..=index].iter().filter(alike).count()),
            letter: None,
        }
    });
    names.collect()
}

/// Returns the name of each face of a roof, `None` where `by_leg` lacks its leg. Faces of one leg are
/// told apart by a letter.
#[must_use]
pub fn face_names(faces: &[Face], by_leg: &[FaceName]) -> Vec<Option<FaceName>> {
    let mut named: BTreeMap<usize, usize> = BTreeMap::new();
    let names = faces.iter().map(|face| {
        let several = faces.iter().filter(|other| other.leg == face.leg).count() > 1;
        let before = named.entry(face.leg).or_default();
        let letter = several.then(|| letter(*before));
        *before += 1;
        by_leg
            .get(face.leg)
            .map(|name| FaceName { letter, ..*name })
    });
    names.collect()
}

/// Returns the name of each edge by its kind and, for an eave or a rake, its leg from 1. An edge without
/// a leg is numbered among its kind.
#[must_use]
pub fn edge_names(edges: &[(EdgeKind, Option<u32>)]) -> Vec<EdgeName> {
    let mut named: BTreeMap<(EdgeKind, Option<u32>), usize> = BTreeMap::new();
    let names = edges.iter().map(|&(kind, leg)| {
        let before = named.entry((kind, leg)).or_default();
        let nth = *before;
        *before += 1;
        let Some(number) = leg else {
            return EdgeName {
                kind: Some(kind),
                number: u32::try_from(nth + 1).unwrap_or(u32::MAX),
                letter: None,
            };
        };
        let several = edges.iter().filter(|other| **other == (kind, leg)).count() > 1;
        EdgeName {
            kind: Some(kind),
            number,
            letter: several.then(|| letter(nth)),
        }
    });
    names.collect()
}

/// `a` for 0; `z` for 25 and all after.
fn letter(nth: usize) -> char {
    char::from(b'a' + u8::try_from(nth).unwrap_or(25).min(25))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edge_of_a_leg_with_two_pieces_has_a_letter_and_a_ridge_a_number() {
        let (eave, rake, ridge) = (EdgeKind::Eave, EdgeKind::Rake, EdgeKind::Ridge);
        let edges = [
            (eave, Some(1)),
            (eave, Some(3)),
            (eave, Some(3)),
            (rake, Some(3)),
            (rake, None),
            (ridge, None),
            (ridge, None),
        ];
        let codes = edge_names(&edges).into_iter().map(EdgeName::code);
        assert_eq!(
            codes.collect::<Vec<_>>(),
            ["e1", "e3a", "e3b", "k3", "k1", "r1", "r2"]
        );
        assert_eq!(EdgeName::leg(2).code(), "e2");
    }
}
