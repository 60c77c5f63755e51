//! What the sides and the faces of a house are called: on a screen and on a paper alike.

use super::fold::FieldBook;
use super::kinds::EndKind;
use super::lay_out::LaidOut;

/// A side of the house, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HouseSide {
    /// Where leg 1 runs.
    Front,
    /// On the right of somebody who looks at the front.
    Right,
    /// Opposite the front.
    Back,
    /// On the left of somebody who looks at the front.
    Left,
}

/// Between two sides, degrees, with room for a turn judged by eye.
const HALFWAY: f64 = 46.0;

impl HouseSide {
    /// The side along which a leg runs: `direction` in degrees from leg 1, left positive. A walk
    /// with the building on the left comes from the front to the right side by a turn of 90, one
    /// with the building on the right comes to the left side by a turn of -90.
    #[must_use]
    pub fn from_direction(direction: f64) -> HouseSide {
        let direction = direction.rem_euclid(360.0);
        // A leg halfway, as of a bay, belongs to the front or the back of which it is a part.
        if direction <= HALFWAY || direction >= 360.0 - HALFWAY {
            HouseSide::Front
        } else if direction < 180.0 - HALFWAY {
            HouseSide::Right
        } else if direction <= 180.0 + HALFWAY {
            HouseSide::Back
        } else {
            HouseSide::Left
        }
    }

    /// The side of a leg, from 1, as far as the corners say.
    #[must_use]
    pub fn of_leg(laid: &LaidOut, leg: u32) -> Option<HouseSide> {
        let index = (leg as usize).checked_sub(1)?;
        laid.directions
            .get(index)
            .copied()
            .flatten()
            .map(HouseSide::from_direction)
    }

    /// In a word: `back`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            HouseSide::Front => "front",
            HouseSide::Right => "right",
            HouseSide::Back => "back",
            HouseSide::Left => "left",
        }
    }
}

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
            let side = HouseSide::of_leg(laid, leg).unwrap_or(HouseSide::Front);
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_walk_with_the_building_on_the_right_meets_front_left_back_right() {
        let sides = [0.0, -90.0, -180.0, -270.0]
            .map(HouseSide::from_direction)
            .map(HouseSide::word);
        assert_eq!(sides, ["front", "left", "back", "right"]);
    }

    #[test]
    fn a_walk_with_the_building_on_the_left_meets_front_right_back_left() {
        let sides = [0.0, 90.0, 180.0, 270.0]
            .map(HouseSide::from_direction)
            .map(HouseSide::word);
        assert_eq!(sides, ["front", "right", "back", "left"]);
    }

    #[test]
    fn both_sides_of_a_bay_belong_to_its_front() {
        assert_eq!(
            [45.0, -45.0].map(HouseSide::from_direction),
            [HouseSide::Front; 2]
        );
        assert_eq!(
            [135.0, -135.0].map(HouseSide::from_direction),
            [HouseSide::Back; 2]
        );
    }
}
