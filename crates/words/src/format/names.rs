use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::EndKind;
use eavebook_core::book::names::FacePlace;

/// The one name of a face: the side to which it falls, its number there, and a letter where one leg
/// carries several faces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FaceName {
    /// The side to which it falls.
    pub side: HouseSide,
    /// What rises there.
    pub end: EndKind,
    /// Its number, from 1, where the side has several of its kind.
    pub number: Option<usize>,
    /// Its letter where its leg carries several faces.
    pub letter: Option<char>,
}

impl From<FacePlace> for FaceName {
    fn from(place: FacePlace) -> FaceName {
        FaceName {
            side: place.side,
            end: place.end,
            number: place.number,
            letter: None,
        }
    }
}

impl FaceName {
    /// ` 2b` after the word for its side; empty where the word alone names it.
    pub(super) fn suffix(self) -> String {
        match (self.number, self.letter) {
            (Some(number), Some(letter)) => format!(" {number}{letter}"),
            (Some(number), None) => format!(" {number}"),
            (None, Some(letter)) => format!(" {letter}"),
            (None, None) => String::new(),
        }
    }
}
