//! One reading of a tape, exactly as marked: whole numbers, fractions and decimals.

use super::tape_reader;
use super::{Length, RoundTo, TapeRefusal};
use rust_decimal::Decimal;

/// One reading: the text as written, and its exact value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tape {
    text: String,
    marks: Marks,
}

/// The exact value of a reading, in simplest form: no feet of 0, no whole decimal, no reducible
/// fraction. So the canonical text of a reading parses to the same reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Marks {
    /// 1 ft or more, with inches under 12.
    FeetInches(u32, Inches),
    /// Feet with a decimal.
    Feet(Decimal),
    /// Inches alone, of any number.
    Inches(Inches),
    /// Meters.
    Meters(Decimal),
    /// Centimeters.
    Centimeters(Decimal),
    /// Millimeters.
    Millimeters(Decimal),
}

/// Inches, with a fraction or a decimal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inches {
    /// Whole inches and a fraction; 0/1 means no fraction.
    Parts {
        /// Whole inches.
        whole: u32,
        /// Parts of an inch.
        numerator: u32,
        /// Parts in one inch, at least 1.
        denominator: u32,
    },
    /// Inches with a decimal.
    Decimal(Decimal),
}

impl Inches {
    /// Returns whole inches.
    #[must_use]
    pub const fn whole(whole: u32) -> Inches {
        Inches::Parts {
            whole,
            numerator: 0,
            denominator: 1,
        }
    }
}

impl Tape {
    /// Parses tape text: `38' 4 1/2"`, `38-4 1/2`, `38 ft 4.5 in`, `38.38 ft`, `460 1/2"`,
    /// `11.71 m`, `11 m 71 cm`, `1171 cm`, `11710 mm`. Curly and prime marks, no-break spaces,
    /// the fraction slash, ½, capitals and leading zeros are accepted; units are never guessed.
    ///
    /// # Errors
    /// The text and the first error in it: see [`super::TapeError`].
    pub fn read(text: &str) -> Result<Tape, TapeRefusal> {
        match tape_reader::marks(text) {
            Ok(marks) => Ok(Tape {
                text: text.to_owned(),
                marks,
            }),
            Err(error) => Err(TapeRefusal::new(text, error)),
        }
    }

    /// Returns a computed length in whole steps of `to`; the length is not negative.
    #[must_use]
    pub fn rounded(length: Length, to: RoundTo) -> Tape {
        let steps = (length / to.step()).round();
        let whole = Decimal::from(steps as u64);
        let marks = match to {
            RoundTo::Inch => feet_inches(steps as u64, 1),
            RoundTo::EighthInch => feet_inches(steps as u64, 8),
            RoundTo::TenthFoot => Marks::Feet((whole / Decimal::from(10)).normalize()),
            RoundTo::HundredthFoot => Marks::Feet((whole / Decimal::from(100)).normalize()),
            RoundTo::Centimeter => Marks::Meters((whole / Decimal::from(100)).normalize()),
        };
        let text = canonical(marks);
        Tape { text, marks }
    }

    /// Returns the exact value.
    #[must_use]
    pub fn marks(&self) -> Marks {
        self.marks
    }

    /// Returns the text as written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Returns the length: the binary fraction nearest to the exact value.
    #[must_use]
    pub fn length(&self) -> Length {
        length(self.marks)
    }

    /// Returns the reading in the one form of stored entries and `data-value`: `42 ft 7 1/2 in`,
    /// `40 ft`, `40.3 ft`, `12.25 m`. No trailing zeros; [`Tape::read`] parses it to the same reading.
    #[must_use]
    pub fn canonical(&self) -> String {
        canonical(self.marks)
    }
}

impl RoundTo {
    /// Returns the length of one step.
    #[must_use]
    pub fn step(self) -> Length {
        match self {
            RoundTo::Inch => Length::inches(1.0),
            RoundTo::EighthInch => Length::inches(0.125),
            RoundTo::TenthFoot => Length::feet(0.1),
            RoundTo::HundredthFoot => Length::feet(0.01),
            RoundTo::Centimeter => Length::meters(0.01),
        }
    }
}

/// Returns feet and inches from a number of parts of an inch.
fn feet_inches(parts: u64, parts_in_inch: u32) -> Marks {
    let in_foot = u64::from(parts_in_inch) * 12;
    let rest = (parts % in_foot) as u32;
    let (numerator, denominator) = shortened(rest % parts_in_inch, parts_in_inch);
    let inches = Inches::Parts {
        whole: rest / parts_in_inch,
        numerator,
        denominator,
    };
    match u32::try_from(parts / in_foot).unwrap_or(u32::MAX) {
        0 => Marks::Inches(inches),
        feet => Marks::FeetInches(feet, inches),
    }
}

/// Returns a fraction in lowest terms; 0/1 for zero.
pub(super) fn shortened(numerator: u32, denominator: u32) -> (u32, u32) {
    let (mut divisor, mut rest) = (denominator, numerator);
    while rest != 0 {
        (divisor, rest) = (rest, divisor % rest);
    }
    (numerator / divisor, denominator / divisor)
}

pub(super) fn length(marks: Marks) -> Length {
    match marks {
        Marks::FeetInches(feet, inches) => Length::feet(feet_from(feet, inches)),
        Marks::Feet(feet) => Length::feet(nearest(feet)),
        Marks::Inches(inches) => Length::feet(feet_from(0, inches)),
        Marks::Meters(meters) => Length::meters(nearest(meters)),
        Marks::Centimeters(amount) => Length::meters(nearest(amount) / 100.0),
        Marks::Millimeters(amount) => Length::meters(nearest(amount) / 1000.0),
    }
}

fn feet_from(feet: u32, inches: Inches) -> f64 {
    match inches {
        Inches::Parts {
            whole,
            numerator,
            denominator,
        } => {
            // Integers up to the one division, so that it rounds once. 128 bits hold any three u32.
            let inches = u128::from(feet) * 12 + u128::from(whole);
            let parts = inches * u128::from(denominator) + u128::from(numerator);
            parts as f64 / (12.0 * f64::from(denominator))
        }
        Inches::Decimal(inches) => nearest(Decimal::from(feet) * Decimal::from(12) + inches) / 12.0,
    }
}

/// Returns the binary fraction nearest to a decimal.
fn nearest(decimal: Decimal) -> f64 {
    // Parsing the text rounds once; digits with a point always parse.
    decimal.to_string().parse().unwrap_or(f64::NAN)
}

fn canonical(marks: Marks) -> String {
    match marks {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => format!("{feet} ft"),
        Marks::FeetInches(feet, inches) => format!("{feet} ft {} in", canonical_inches(inches)),
        Marks::Feet(feet) => format!("{feet} ft"),
        Marks::Inches(inches) => format!("{} in", canonical_inches(inches)),
        Marks::Meters(amount) => format!("{amount} m"),
        Marks::Centimeters(amount) => format!("{amount} cm"),
        Marks::Millimeters(amount) => format!("{amount} mm"),
    }
}

fn canonical_inches(inches: Inches) -> String {
    match inches {
        Inches::Decimal(inches) => inches.to_string(),
        Inches::Parts {
            whole,
            numerator: 0,
            denominator: _,
        } => whole.to_string(),
        Inches::Parts {
            whole: 0,
            numerator,
            denominator,
        } => format!("{numerator}/{denominator}"),
        Inches::Parts {
            whole,
            numerator,
            denominator,
        } => format!("{whole} {numerator}/{denominator}"),
    }
}
