//! The four sides of a house, and the side along which a leg runs.

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
