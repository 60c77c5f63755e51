use super::singly;
use eavebook_core::units::{Inches, Marks};
use rust_decimal::Decimal;

/// An angle to the tenth of a degree: "two six point six degrees".
pub(in crate::format) fn degrees(degrees: f64) -> String {
    format!("{} degrees", singly(&format!("{degrees:.1}"), name))
}

/// What a tape said: "four two feet, seven and a half inches".
pub(in crate::format) fn tape(marks: Marks) -> String {
    match marks {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => feet_spoken(feet),
        Marks::FeetInches(feet, inches) => {
            format!("{}, {}", feet_spoken(feet), inches_spoken(inches))
        }
        Marks::Feet(feet) => format!("{} feet", figure(feet)),
        Marks::Inches(inches) => inches_spoken(inches),
        Marks::Meters(amount) => measured(amount, "meter", "meters"),
        Marks::Centimeters(amount) => measured(amount, "centimeter", "centimeters"),
        Marks::Millimeters(amount) => measured(amount, "millimeter", "millimeters"),
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
