use super::{Area, Tape};
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Div, Mul, Neg, Sub};

/// A length, built and read by a named unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length {
    feet: f64,
}

/// Metres in one international foot, exact by definition.
const METERS_IN_FOOT: f64 = 0.3048;

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length { feet: 0.0 };

    /// The longest reading that is taken: beyond it a unit or a point went wrong.
    pub const LONGEST: Length = Length { feet: 10_000.0 };

    /// From feet.
    #[must_use]
    pub const fn feet(feet: f64) -> Length {
        Length { feet }
    }

    /// From inches.
    #[must_use]
    pub fn inches(inches: f64) -> Length {
        Length {
            feet: inches / 12.0,
        }
    }

    /// From metres.
    #[must_use]
    pub fn meters(meters: f64) -> Length {
        Length {
            feet: meters / METERS_IN_FOOT,
        }
    }

    /// In feet.
    #[must_use]
    pub const fn in_feet(self) -> f64 {
        self.feet
    }

    /// In inches.
    #[must_use]
    pub fn in_inches(self) -> f64 {
        self.feet * 12.0
    }

    /// In metres.
    #[must_use]
    pub fn in_meters(self) -> f64 {
        self.feet * METERS_IN_FOOT
    }

    /// The same length, its sign dropped.
    #[must_use]
    pub const fn abs(self) -> Length {
        Length {
            feet: self.feet.abs(),
        }
    }

    /// Something a tape can have read: above 0 and at most [`Length::LONGEST`].
    #[must_use]
    pub fn is_a_reading(self) -> bool {
        self > Length::ZERO && self <= Length::LONGEST
    }

    /// In words, rounded: `18 ft 2 in`, `2 in`, `40.3 ft`, `12.25 m`; below zero with a `-` before
    /// it. A length that is no number is `not known`.
    #[must_use]
    pub fn words(self, to: RoundTo) -> String {
        if !self.feet.is_finite() {
            return "not known".to_owned();
        }
        let rounded = Tape::rounded(self.abs(), to).canonical();
        if self.feet < 0.0 && !rounded.starts_with("0 ") {
            format!("-{rounded}")
        } else {
            rounded
        }
    }
}

/// How finely a worked-out length is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoundTo {
    /// Feet and whole inches.
    Inch,
    /// Feet, inches and eighths.
    EighthInch,
    /// Feet and tenths.
    TenthFoot,
    /// Feet and hundredths.
    HundredthFoot,
    /// Metres and centimetres.
    Centimeter,
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length::feet(self.feet + other.feet)
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length::feet(self.feet - other.feet)
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length::feet(-self.feet)
    }
}

impl Mul<f64> for Length {
    type Output = Length;
    fn mul(self, factor: f64) -> Length {
        Length::feet(self.feet * factor)
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Length) -> Area {
        Area::square_feet(self.feet * other.feet)
    }
}

impl Div for Length {
    type Output = f64;
    fn div(self, other: Length) -> f64 {
        self.feet / other.feet
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_worked_out_length_is_said_to_the_inch_with_twelve_carried() {
        let said = |feet| Length::feet(feet).words(RoundTo::Inch);
        assert_eq!(said(18.1667), "18 ft 2 in");
        assert_eq!(said(0.17), "2 in");
        assert_eq!(said(17.97), "18 ft");
        assert_eq!(said(11.99 / 12.0), "1 ft");
        assert_eq!(said(0.0), "0 in");
        assert_eq!(said(-18.1667), "-18 ft 2 in");
        assert_eq!(said(-0.01), "0 in");
        assert_eq!(said(f64::NAN), "not known");
    }

    #[test]
    fn a_worked_out_length_is_said_in_the_marks_of_the_tape() {
        let length = Length::feet(42.63);
        assert_eq!(length.words(RoundTo::EighthInch), "42 ft 7 1/2 in");
        assert_eq!(length.words(RoundTo::TenthFoot), "42.6 ft");
        assert_eq!(length.words(RoundTo::HundredthFoot), "42.63 ft");
        assert_eq!(length.words(RoundTo::Centimeter), "12.99 m");
        assert_eq!(Length::ZERO.words(RoundTo::Centimeter), "0 m");
    }

    #[test]
    fn a_length_times_a_length_is_an_area_and_over_one_a_ratio() {
        let side = Length::feet(12.0);
        assert!(((side * side).in_square_feet() - 144.0).abs() < 1e-12);
        assert!((side / Length::inches(12.0) - 12.0).abs() < 1e-12);
        let around: Length = [side, side * 2.0, -side].into_iter().sum();
        assert!((around.in_feet() - 24.0).abs() < 1e-12);
    }

    #[test]
    fn what_a_tape_can_have_read_ends_at_ten_thousand_feet() {
        assert!(Length::LONGEST.is_a_reading());
        assert!(!Length::feet(10_000.1).is_a_reading());
        assert!(!Length::ZERO.is_a_reading());
        assert!(!Length::feet(f64::NAN).is_a_reading());
    }
}
