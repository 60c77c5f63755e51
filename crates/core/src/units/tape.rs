use super::tape_reader;
use super::{Length, RoundTo, TapeRefusal, Tongue};
use rust_decimal::Decimal;

/// One reading as it was read: the text, and what it says in whole numbers and decimals.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tape {
    text: String,
    marks: Marks,
}

/// What a tape said, exactly. In its plainest form: no feet of 0, no decimal that is whole, no
/// fraction that can be shortened. So the words of a reading read back are the same reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Marks {
    /// 1 ft or more, with inches under 12.
    FeetInches(u32, Inches),
    /// Feet with a decimal.
    Feet(Decimal),
    /// Inches alone, as many as there are.
    Inches(Inches),
    /// Metres.
    Meters(Decimal),
    /// Centimetres.
    Centimeters(Decimal),
    /// Millimetres.
    Millimeters(Decimal),
}

/// Inches, by fraction or by decimal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inches {
    /// Whole inches and a fraction; 0 over 1 where there is none.
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
    /// Whole inches.
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
    /// Reads tape text: `38' 4 1/2"`, `38-4 1/2`, `38 ft 4.5 in`, `38.38 ft`, `460 1/2"`,
    /// `11.71 m`, `11 m 71 cm`, `1171 cm`, `11710 mm`. Curly and prime marks, no-break spaces,
    /// the fraction slash, ½, capitals and leading zeros are taken; units are never guessed.
    ///
    /// # Errors
    /// One sentence that names the text and the remedy: see [`super::TapeFault`].
    pub fn read(text: &str) -> Result<Tape, TapeRefusal> {
        let refuse = |fault| TapeRefusal::new(text, fault);
        Ok(Tape {
            marks: tape_reader::marks(text).map_err(refuse)?,
            text: text.to_owned(),
        })
    }

    /// A worked-out length in whole steps of `to`, not negative.
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
        let text = words(marks);
        Tape { text, marks }
    }

    /// What the tape said, exactly.
    #[must_use]
    pub fn marks(&self) -> Marks {
        self.marks
    }

    /// The text as it was read.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The reading as a length: the nearest binary fraction to what the tape said.
    #[must_use]
    pub fn length(&self) -> Length {
        length(self.marks)
    }

    /// The reading in the one form of screens and book: `42 ft 7 1/2 in`, `40 ft`, `40.3 ft`,
    /// `12.25 m`. No trailing zeros, no naked point; [`Tape::read`] takes it back unchanged.
    #[must_use]
    pub fn words(&self) -> String {
        words(self.marks)
    }

    /// The reading as it is spoken, digits singly: "four two feet, seven and a half inches".
    #[must_use]
    pub fn spoken(&self, tongue: Tongue) -> String {
        super::spoken::spoken(self.marks, tongue)
    }
}

impl RoundTo {
    /// The length of one step.
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

/// Feet and inches of so many parts of an inch.
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

/// A fraction by the least numbers; 0 over 1 for nothing.
pub(super) fn shortened(numerator: u32, denominator: u32) -> (u32, u32) {
    let (mut divisor, mut rest) = (denominator, numerator);
    while rest != 0 {
        (divisor, rest) = (rest, divisor % rest);
    }
    (numerator / divisor, denominator / divisor)
}

pub(super) fn length(marks: Marks) -> Length {
    match marks {
        Marks::FeetInches(feet, inches) => Length::feet(feet_of(feet, inches)),
        Marks::Feet(feet) => Length::feet(nearest(feet)),
        Marks::Inches(inches) => Length::feet(feet_of(0, inches)),
        Marks::Meters(meters) => Length::meters(nearest(meters)),
        Marks::Centimeters(amount) => Length::meters(nearest(amount) / 100.0),
        Marks::Millimeters(amount) => Length::meters(nearest(amount) / 1000.0),
    }
}

fn feet_of(feet: u32, inches: Inches) -> f64 {
    match inches {
        Inches::Parts {
            whole,
            numerator,
            denominator,
        } => {
            // Whole numbers up to the one division, so that it rounds once; wide enough for whatever
            // three numbers somebody writes.
            let inches = u128::from(feet) * 12 + u128::from(whole);
            let parts = inches * u128::from(denominator) + u128::from(numerator);
            parts as f64 / (12.0 * f64::from(denominator))
        }
        Inches::Decimal(inches) => nearest(Decimal::from(feet) * Decimal::from(12) + inches) / 12.0,
    }
}

/// The binary fraction nearest to a decimal.
fn nearest(decimal: Decimal) -> f64 {
    // By way of the text, which rounds once; digits with a point are always a number.
    decimal.to_string().parse().unwrap_or(f64::NAN)
}

fn words(marks: Marks) -> String {
    match marks {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => format!("{feet} ft"),
        Marks::FeetInches(feet, inches) => format!("{feet} ft {} in", inch_words(inches)),
        Marks::Feet(feet) => format!("{feet} ft"),
        Marks::Inches(inches) => format!("{} in", inch_words(inches)),
        Marks::Meters(amount) => format!("{amount} m"),
        Marks::Centimeters(amount) => format!("{amount} cm"),
        Marks::Millimeters(amount) => format!("{amount} mm"),
    }
}

fn inch_words(inches: Inches) -> String {
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
