//! A reading as it is spoken back: digits singly, as in radio telephony (ICAO Annex 10 vol. II,
//! 5.2.1.4), fractions by their names.

use super::spoken_es;
use super::tape::{Inches, Marks};
use rust_decimal::Decimal;

/// A language in which figures are spoken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tongue {
    /// English.
    English,
    /// Spanish.
    Spanish,
}

/// An angle as it is spoken, to the tenth of a degree, digits singly: "two six point six degrees".
#[must_use]
pub fn degrees_spoken(degrees: f64, tongue: Tongue) -> String {
    let figure = format!("{degrees:.1}");
    match tongue {
        Tongue::English => format!("{} degrees", singly(&figure, name)),
        Tongue::Spanish => format!("{} grados", singly(&figure, spoken_es::name)),
    }
}

pub(super) fn spoken(marks: Marks, tongue: Tongue) -> String {
    match tongue {
        Tongue::English => english(marks),
        Tongue::Spanish => spoken_es::spanish(marks),
    }
}

fn english(marks: Marks) -> String {
    match marks {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => feet_spoken(feet),
        Marks::FeetInches(feet, inches) => {
            format!("{}, {}", feet_spoken(feet), inches_spoken(inches))
        }
        Marks::Feet(feet) => format!("{} feet", figure(feet)),
        Marks::Inches(inches) => inches_spoken(inches),
        Marks::Meters(amount) => measured(amount, "metre", "metres"),
        Marks::Centimeters(amount) => measured(amount, "centimetre", "centimetres"),
        Marks::Millimeters(amount) => measured(amount, "millimetre", "millimetres"),
    }
}

fn feet_spoken(feet: u32) -> String {
    measured(Decimal::from(feet), "foot", "feet")
}

fn measured(amount: Decimal, one: &str, many: &str) -> String {
    let unit = if amount == Decimal::ONE { one } else { many };
    format!("{} {unit}", figure(amount))
}

fn inches_spoken(inches: Inches) -> String {
    match inches {
        Inches::Decimal(inches) => measured(inches, "inch", "inches"),
        Inches::Parts {
            whole,
            numerator: 0,
            denominator: _,
        } => measured(Decimal::from(whole), "inch", "inches"),
        Inches::Parts {
            whole: 0,
            numerator: 1,
            denominator: 2,
        } => "half an inch".to_owned(),
        Inches::Parts {
            whole: 0,
            numerator,
            denominator,
        } => format!("{} of an inch", fraction(numerator, denominator)),
        Inches::Parts {
            whole,
            numerator,
            denominator,
        } => format!(
            "{} and {} inches",
            figure(Decimal::from(whole)),
            fraction(numerator, denominator)
        ),
    }
}

/// `a half`, `three eighths`, `one five sixteenths`; others `5 over 9` digit by digit.
fn fraction(numerator: u32, denominator: u32) -> String {
    let (one, many) = match denominator {
        2 => ("a half", "halves"),
        4 => ("a quarter", "quarters"),
        8 => ("an eighth", "eighths"),
        16 => ("a sixteenth", "sixteenths"),
        32 => ("a thirty-second", "thirty-seconds"),
        64 => ("a sixty-fourth", "sixty-fourths"),
        _ => {
            let [above, below] = [numerator, denominator].map(|part| figure(Decimal::from(part)));
            return format!("{above} over {below}");
        }
    };
    if numerator == 1 {
        one.to_owned()
    } else {
        format!("{} {many}", figure(Decimal::from(numerator)))
    }
}

fn figure(number: Decimal) -> String {
    singly(&number.to_string(), name)
}

/// The signs of a figure one by one; what has no name is left out.
pub(super) fn singly(figure: &str, name: impl Fn(char) -> Option<&'static str>) -> String {
    let names: Vec<&str> = figure.chars().filter_map(name).collect();
    names.join(" ")
}

const fn name(sign: char) -> Option<&'static str> {
    match sign {
        '0' => Some("zero"),
        '1' => Some("one"),
        '2' => Some("two"),
        '3' => Some("three"),
        '4' => Some("four"),
        '5' => Some("five"),
        '6' => Some("six"),
        '7' => Some("seven"),
        '8' => Some("eight"),
        '9' => Some("nine"),
        '.' => Some("point"),
        _ => None,
    }
}
