//! The shape of an outline as seen: which way each leg runs, before any reading is used.

use crate::units::Angle;

/// Directions of the legs in the frame of leg 0, whose direction is the first axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Nominal {
    /// Direction of each leg from leg 0, radians, left positive.
    pub directions: Vec<f64>,
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
        let mut degrees = Vec::with_capacity(turns.len());
        for turn in turns {
            degrees.push(heading);
            heading += turn.in_degrees();
        }
        Nominal {
            directions: degrees.iter().map(|d| d.to_radians()).collect(),
            units: degrees.iter().map(|d| unit_vector(*d)).collect(),
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

/// Unit vector of a direction in degrees; multiples of 90 without rounding, so that sums of
/// right-angled legs cancel exactly.
#[must_use]
pub fn unit_vector(degrees: f64) -> [f64; 2] {
    let turned = degrees.rem_euclid(360.0);
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
