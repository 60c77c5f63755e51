use super::words::grouped;
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Mul, Sub};

/// An area, built and read by a named unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Area {
    square_feet: f64,
}

/// Square feet in one roofing square (US Army EN5156, para 3-15).
const SQUARE_FEET_IN_SQUARE: f64 = 100.0;

impl Area {
    /// No area at all.
    pub const ZERO: Area = Area { square_feet: 0.0 };

    /// From square feet.
    #[must_use]
    pub const fn square_feet(square_feet: f64) -> Area {
        Area { square_feet }
    }

    /// In square feet.
    #[must_use]
    pub const fn in_square_feet(self) -> f64 {
        self.square_feet
    }

    /// In roofing squares of 100 sq ft.
    #[must_use]
    pub fn in_squares(self) -> f64 {
        self.square_feet / SQUARE_FEET_IN_SQUARE
    }

    /// In words, to the square foot: `2,013 sq ft`. An area that is no number is `not known`.
    #[must_use]
    pub fn words(self) -> String {
        if self.square_feet.is_finite() {
            format!("{} sq ft", grouped(self.square_feet))
        } else {
            "not known".to_owned()
        }
    }
}

impl Add for Area {
    type Output = Area;
    fn add(self, other: Area) -> Area {
        Area::square_feet(self.square_feet + other.square_feet)
    }
}

impl Sub for Area {
    type Output = Area;
    fn sub(self, other: Area) -> Area {
        Area::square_feet(self.square_feet - other.square_feet)
    }
}

impl Mul<f64> for Area {
    type Output = Area;
    fn mul(self, factor: f64) -> Area {
        Area::square_feet(self.square_feet * factor)
    }
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Area>>(areas: I) -> Area {
        areas.fold(Area::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_area_is_said_to_the_square_foot_with_thousands_grouped() {
        assert_eq!(Area::square_feet(2013.4).words(), "2,013 sq ft");
        assert_eq!(Area::square_feet(999.6).words(), "1,000 sq ft");
        assert_eq!(Area::square_feet(1_234_567.0).words(), "1,234,567 sq ft");
        assert_eq!(Area::square_feet(-1500.0).words(), "-1,500 sq ft");
        assert_eq!(Area::square_feet(-0.2).words(), "0 sq ft");
        assert_eq!(Area::square_feet(f64::INFINITY).words(), "not known");
    }

    #[test]
    fn areas_add_up_and_a_hundred_square_feet_are_a_square() {
        let roof: Area = [1600.0, 413.0].map(Area::square_feet).into_iter().sum();
        assert!((roof.in_squares() - 20.13).abs() < 1e-12);
        assert!(((roof - Area::square_feet(13.0)) * 2.0).in_squares() - 40.0 < 1e-12);
    }
}
