//! Numbers, lengths and money, apart from the names of their units.

use eavebook_core::units::{Inches, Length, Marks, Money, RoundTo, Tape};
use rust_decimal::{Decimal, RoundingStrategy};

/// The names of units in a language: singular and plural where they differ.
#[derive(Clone, Copy, Debug)]
pub struct Units {
    /// `ft`; Spanish `pie`.
    pub foot: &'static str,
    /// `ft`; Spanish `pies`.
    pub feet: &'static str,
    /// `in`; Spanish `pulg`.
    pub inches: &'static str,
    /// `sq ft`.
    pub square_feet: &'static str,
    /// `lb`.
    pub pounds: &'static str,
    /// The word between rise and run: `in`, `en`.
    pub rise_in: &'static str,
}

/// A number to `places` decimals at most, without trailing zeros or a negative zero, its thousands
/// grouped by commas: `-1,234.5`.
#[must_use]
pub fn grouped(number: f64, places: usize) -> String {
    let text = format!("{:.places$}", number.abs());
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let part = part.trim_end_matches('0');
    let mut grouped = group(whole);
    if !part.is_empty() {
        grouped.push('.');
        grouped.push_str(part);
    }
    if number < 0.0 && grouped != "0" {
        grouped.insert(0, '-');
    }
    grouped
}

/// Whole digits with a comma before each third from the right.
fn group(digits: &str) -> String {
    let mut grouped = String::with_capacity(digits.len() + digits.len() / 3);
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    grouped
}

/// An amount to so many decimals, half away from zero: `-$1,234.50`.
pub(super) fn money(money: Money, places: u32) -> String {
    let amount = money
        .as_decimal()
        .round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero);
    let text = format!("{:.*}", places as usize, amount.abs());
    let (whole, cents) = text.split_once('.').unwrap_or((&text, ""));
    let sign = if amount < Decimal::ZERO { "-" } else { "" };
    let point = if cents.is_empty() { "" } else { "." };
    format!("{sign}${}{point}{cents}", group(whole))
}

/// A length, rounded; `None` for one that is no number.
pub(super) fn length(length: Length, to: RoundTo, units: &Units) -> Option<String> {
    if !length.in_feet().is_finite() {
        return None;
    }
    let rounded = tape(Tape::rounded(length.abs(), to).marks(), units);
    let is_zero = rounded.starts_with("0 ");
    Some(if length.in_feet() < 0.0 && !is_zero {
        format!("-{rounded}")
    } else {
        rounded
    })
}

/// A length in the marks of a drawing: `14' 3"`; `None` for one that is no number.
pub(super) fn drawn(length: Length, to: RoundTo) -> Option<String> {
    if !length.in_feet().is_finite() {
        return None;
    }
    let sign = if length.in_feet() < 0.0 { "-" } else { "" };
    Some(match Tape::rounded(length.abs(), to).marks() {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => format!("{sign}{feet}'"),
        Marks::FeetInches(feet, inches) => format!("{sign}{feet}' {}\"", number_of(inches)),
        Marks::Inches(inches) if inches == Inches::whole(0) => "0\"".to_owned(),
        Marks::Inches(inches) => format!("{sign}{}\"", number_of(inches)),
        Marks::Feet(feet) => format!("{sign}{feet}'"),
        Marks::Meters(amount) => format!("{sign}{amount} m"),
        Marks::Centimeters(amount) => format!("{sign}{amount} cm"),
        Marks::Millimeters(amount) => format!("{sign}{amount} mm"),
    })
}

/// The least whole number of steps that holds a length.
pub(super) fn rounded_up(length: Length, to: RoundTo) -> Length {
    let step = to.step();
    // A length that is a whole number of steps but for binary rounding stays where it is.
    step * (length / step - 1e-9).ceil().max(0.0)
}

/// What a tape said, with units: `42 ft 7 1/2 in`.
pub(super) fn tape(marks: Marks, units: &Units) -> String {
    match marks {
        Marks::FeetInches(feet, inches) if inches == Inches::whole(0) => whole_feet(feet, units),
        Marks::FeetInches(feet, inches) => {
            format!("{} {}", whole_feet(feet, units), with_inches(inches, units))
        }
        Marks::Feet(feet) if feet == Decimal::ONE => format!("{feet} {}", units.foot),
        Marks::Feet(feet) => format!("{feet} {}", units.feet),
        Marks::Inches(inches) => with_inches(inches, units),
        Marks::Meters(amount) => format!("{amount} m"),
        Marks::Centimeters(amount) => format!("{amount} cm"),
        Marks::Millimeters(amount) => format!("{amount} mm"),
    }
}

fn whole_feet(feet: u32, units: &Units) -> String {
    let unit = if feet == 1 { units.foot } else { units.feet };
    format!("{feet} {unit}")
}

fn with_inches(inches: Inches, units: &Units) -> String {
    format!("{} {}", number_of(inches), units.inches)
}

/// `7 1/2`.
fn number_of(inches: Inches) -> String {
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
