//! The shape of an outline as seen: which way each leg runs, before any reading is used.

use crate::units::Angle;

/// Directions of the legs in the frame of leg 0, whose direction is the first axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Nominal {
    /// Direction of each leg from leg 0, left positive.
    pub directions: Vec<Angle>,
    /// The same as unit vectors; exact for multiples of 90 degrees.
    pub units: Vec<[f64; 2]>,
    /// Which way round the outline runs.
    pub way_round: WayRound,
}

/// Which way round an outline runs, seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayRound {
    /// Counter-clockwise: left turns, the building on the left of a walker.
    Left,
    /// Clockwise: right turns, the building on the right of a walker.
    Right,
}

impl WayRound {
    /// 1 for left, -1 for right.
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            WayRound::Left => 1.0,
            WayRound::Right => -1.0,
        }
    }
}

impl Nominal {
    /// The shape with these turns at corners 1, 2 ..; left positive. The turn at corner 0, the last
    /// of a closed outline, moves no leg but counts for the way round.
    #[must_use]
    pub fn of_turns(turns: &[Angle]) -> Nominal {
        let mut heading = 0.0;
        let mut directions = Vec::with_capacity(turns.len());
        for turn in turns {
            directions.push(Angle::degrees(heading));
            heading += turn.in_degrees();
        }
        Nominal {
            units: directions
                .iter()
                .map(|direction| unit_vector(*direction))
                .collect(),
            directions,
            way_round: if heading < 0.0 {
                WayRound::Right
            } else {
                WayRound::Left
            },
        }
    }

    /// Number of legs.
    #[must_use]
    pub fn legs(&self) -> usize {
        self.units.len()
    }

    /// The corner at the far end of a leg.
    #[must_use]
    pub fn end_of(&self, leg: usize) -> usize {
        (leg + 1) % self.legs()
    }

    /// Legs walked from one corner on to another.
    pub fn legs_between(&self, from: usize, to: usize) -> impl Iterator<Item = usize> + use<> {
        let legs = self.legs();
        let count = (to + legs - from) % legs;
        (0..count).map(move |k| (from + k) % legs)
    }
}

/// Returns the unit vector (x, y) of a direction; multiples of 90 degrees come out without rounding, so
/// that sums of right-angled legs cancel exactly.
#[must_use]
pub fn unit_vector(direction: Angle) -> [f64; 2] {
    let turned = direction.in_degrees().rem_euclid(360.0);
    let quarter = (turned / 90.0).round();
    let rest = turned - 90.0 * quarter;
    let (sin, cos) = rest.to_radians().sin_cos();
    match quarter.rem_euclid(4.0) {
        q if q < 0.5 => [cos, sin],
        q if q < 1.5 => [-sin, cos],
        q if q < 2.5 => [-cos, -sin],
        _ => [sin, -cos],
    }
}
