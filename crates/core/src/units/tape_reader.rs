//! Tape text to what it says: signs, then parts (a number with its unit), then one length.

use super::TapeFault;
use super::tape::{Inches, Marks, length, shortened};
use rust_decimal::Decimal;

/// More signs than any reading has, even spelt out.
const MOST_SIGNS: usize = 60;

pub(super) fn marks(text: &str) -> Result<Marks, TapeFault> {
    if text.len() > 4 * MOST_SIGNS || text.chars().count() > MOST_SIGNS {
        return Err(TapeFault::TooManySigns);
    }
    let signs = signs(text)?;
    let parts = parts(&signs)?;
    let marks = one_length(&parts)?;
    let length = length(marks);
    if length.is_a_reading() {
        Ok(marks)
    } else if length.in_feet() > 0.0 {
        Err(TapeFault::OverLongest)
    } else {
        Err(TapeFault::Nothing)
    }
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Sign {
    /// Digits, with a point among them or not.
    Number(String),
    Fraction(u32, u32),
    Unit(Unit),
    Dash,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Unit {
    Feet,
    Inches,
    Metres,
    Centimetres,
    Millimetres,
}

/// A sign, and whether a blank stands before it.
#[derive(Clone, Debug)]
struct Spaced {
    sign: Sign,
    after_blank: bool,
}

fn signs(text: &str) -> Result<Vec<Spaced>, TapeFault> {
    let letters: Vec<char> = text.chars().flat_map(plain).collect();
    let mut signs = Vec::new();
    let mut after_blank = false;
    let mut at = 0;
    while let Some(&letter) = letters.get(at) {
        let rest = letters.get(at..).unwrap_or_default();
        let (taken, sign) = match letter {
            ' ' => {
                after_blank = true;
                at += 1;
                continue;
            }
            '0'..='9' => number(rest)?,
            '\'' if rest.get(1) == Some(&'\'') => (2, Sign::Unit(Unit::Inches)),
            '\'' => (1, Sign::Unit(Unit::Feet)),
            '"' => (1, Sign::Unit(Unit::Inches)),
            '-' => (1, Sign::Dash),
            '.' => return Err(TapeFault::NakedPoint),
            ',' => return Err(TapeFault::Comma),
            letter if letter.is_alphabetic() => word(rest)?,
            letter => match vulgar_fraction(letter) {
                Some((numerator, denominator)) => (1, Sign::Fraction(numerator, denominator)),
                None => return Err(TapeFault::UnknownSign { sign: letter }),
            },
        };
        signs.push(Spaced { sign, after_blank });
        after_blank = false;
        at += taken;
    }
    Ok(signs)
}

/// The plain sign for one that looks like it, in small letters.
fn plain(sign: char) -> impl Iterator<Item = char> {
    let plain = match sign {
        '’' | '‘' | '′' | 'ʼ' | '´' => '\'',
        '”' | '“' | '″' => '"',
        '\u{a0}' | '\u{2002}' | '\u{2003}' | '\u{2007}' | '\u{2009}' | '\u{202f}' => ' ',
        '⁄' | '∕' => '/',
        '‐' | '‑' | '‒' | '–' | '—' | '−' => '-',
        other => other,
    };
    plain.to_lowercase()
}

const fn vulgar_fraction(sign: char) -> Option<(u32, u32)> {
    match sign {
        '½' => Some((1, 2)),
        '¼' => Some((1, 4)),
        '¾' => Some((3, 4)),
        '⅛' => Some((1, 8)),
        '⅜' => Some((3, 8)),
        '⅝' => Some((5, 8)),
        '⅞' => Some((7, 8)),
        _ => None,
    }
}

/// A number or a fraction at the start of `letters`, and how many letters it takes.
fn number(letters: &[char]) -> Result<(usize, Sign), TapeFault> {
    let (whole, digits) = digits(letters);
    match letters.get(whole) {
        Some('.') => {
            let (places, decimals) = self::digits(letters.get(whole + 1..).unwrap_or_default());
            if places == 0 {
                return Err(TapeFault::NakedPoint);
            }
            let taken = whole + 1 + places;
            if letters.get(taken) == Some(&'/') {
                return Err(TapeFault::DecimalBesideFraction);
            }
            Ok((taken, Sign::Number(format!("{digits}.{decimals}"))))
        }
        Some('/') => {
            let (below, denominator) = self::digits(letters.get(whole + 1..).unwrap_or_default());
            if below == 0 {
                return Err(TapeFault::UnknownSign { sign: '/' });
            }
            let part = |digits: &str| digits.parse().map_err(|_| TapeFault::TooManyDigits);
            let sign = Sign::Fraction(part(&digits)?, part(&denominator)?);
            Ok((whole + 1 + below, sign))
        }
        Some(_) | None => Ok((whole, Sign::Number(digits))),
    }
}

fn digits(letters: &[char]) -> (usize, String) {
    let digits: String = letters.iter().take_while(|l| l.is_ascii_digit()).collect();
    (digits.len(), digits)
}

/// A unit by its name at the start of `letters`, with the point of an abbreviation or without.
fn word(letters: &[char]) -> Result<(usize, Sign), TapeFault> {
    let word: String = letters.iter().take_while(|l| l.is_alphabetic()).collect();
    let length = word.chars().count();
    let (unit, short) = match word.as_str() {
        "ft" => (Unit::Feet, true),
        "foot" | "feet" => (Unit::Feet, false),
        "in" => (Unit::Inches, true),
        "inch" | "inches" => (Unit::Inches, false),
        "m" | "metre" | "metres" | "meter" | "meters" => (Unit::Metres, false),
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => {
            (Unit::Centimetres, false)
        }
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => {
            (Unit::Millimetres, false)
        }
        _ => return Err(TapeFault::UnknownWord { word }),
    };
    let point = short && letters.get(length) == Some(&'.');
    Ok((length + usize::from(point), Sign::Unit(unit)))
}

/// A number with its unit.
#[derive(Clone, Debug)]
struct Part {
    amount: Amount,
    unit: Option<Unit>,
    /// A dash stands between it and the part before.
    after_dash: bool,
}

#[derive(Clone, Debug)]
enum Amount {
    Number(String),
    Mixed {
        whole: u32,
        numerator: u32,
        denominator: u32,
    },
}

fn parts(signs: &[Spaced]) -> Result<Vec<Part>, TapeFault> {
    let mut parts: Vec<Part> = Vec::new();
    let mut rest = signs;
    while !rest.is_empty() {
        let mut after_dash = false;
        if let [
            Spaced {
                sign: Sign::Dash,
                after_blank,
            },
            after @ ..,
        ] = rest
        {
            // `38' -4"` is a minus sign, `38'-4"` and `38' - 4"` join two parts.
            let joins = !after_blank || after.first().is_some_and(|next| next.after_blank);
            if parts.is_empty() || !joins {
                return Err(TapeFault::BelowZero);
            }
            after_dash = true;
            rest = after;
        }
        let (taken, amount) = amount(rest)?;
        rest = rest.get(taken..).unwrap_or_default();
        let unit = match rest.first() {
            Some(Spaced {
                sign: Sign::Unit(unit),
                ..
            }) => Some(*unit),
            Some(_) | None => None,
        };
        rest = rest.get(usize::from(unit.is_some())..).unwrap_or_default();
        parts.push(Part {
            amount,
            unit,
            after_dash,
        });
    }
    Ok(parts)
}

/// The amount at the start of `signs`, and how many signs it takes: `4`, `4.5`, `1/2`, `4 1/2`
/// or `4-1/2`.
fn amount(signs: &[Spaced]) -> Result<(usize, Amount), TapeFault> {
    let (taken, whole, fraction) = match signs.first().map(|first| &first.sign) {
        Some(Sign::Fraction(numerator, denominator)) => (1, None, (*numerator, *denominator)),
        Some(Sign::Number(digits)) => {
            let tight = |place: usize| signs.get(place).filter(|sign| !sign.after_blank);
            match (signs.get(1).map(|next| &next.sign), tight(1), tight(2)) {
                (Some(Sign::Fraction(numerator, denominator)), _, _) => {
                    (2, Some(digits), (*numerator, *denominator))
                }
                (
                    Some(Sign::Dash),
                    Some(_),
                    Some(Spaced {
                        sign: Sign::Fraction(numerator, denominator),
                        ..
                    }),
                ) => (3, Some(digits), (*numerator, *denominator)),
                (Some(_) | None, _, _) => return Ok((1, Amount::Number(digits.clone()))),
            }
        }
        Some(Sign::Unit(_) | Sign::Dash) | None => return Err(TapeFault::NoNumber),
    };
    let (numerator, denominator) = fraction;
    if numerator >= denominator {
        return Err(TapeFault::FractionNotUnderOne {
            numerator,
            denominator,
        });
    }
    let whole = match whole {
        None => 0,
        Some(digits) if digits.contains('.') => return Err(TapeFault::DecimalBesideFraction),
        Some(digits) => digits.parse().map_err(|_| TapeFault::OverLongest)?,
    };
    let (numerator, denominator) = shortened(numerator, denominator);
    let amount = Amount::Mixed {
        whole,
        numerator,
        denominator,
    };
    Ok((taken, amount))
}

fn one_length(parts: &[Part]) -> Result<Marks, TapeFault> {
    use Unit::{Centimetres, Feet, Inches, Metres, Millimetres};
    match parts {
        [] => Err(TapeFault::Empty),
        [part] => match part.unit.ok_or(TapeFault::NoUnit)? {
            Feet => feet(decimal(&part.amount)?),
            Inches => inches(&part.amount).map(Marks::Inches),
            Metres => decimal(&part.amount).map(Marks::Meters),
            Centimetres => decimal(&part.amount).map(Marks::Centimeters),
            Millimetres => decimal(&part.amount).map(Marks::Millimeters),
        },
        [first, second] => match (first.unit, second.unit) {
            (Some(Feet), Some(Inches) | None) => feet_and_inches(&first.amount, &second.amount),
            // 38-4 1/2: feet, dash, inches.
            (None, Some(Inches) | None) if second.after_dash => {
                feet_and_inches(&first.amount, &second.amount)
            }
            (Some(Metres), Some(Centimetres)) => {
                metres_and_centimetres(&first.amount, &second.amount)
            }
            (Some(Inches), Some(Feet)) => Err(TapeFault::InchesFirst),
            (None, _) | (_, None) => Err(TapeFault::NoUnit),
            (Some(_), Some(_)) => Err(TapeFault::NoOneLength),
        },
        [_, _, _, ..] => Err(TapeFault::NoOneLength),
    }
}

fn feet(feet: Decimal) -> Result<Marks, TapeFault> {
    if !feet.is_integer() {
        return Ok(Marks::Feet(feet));
    }
    match u32::try_from(feet) {
        Ok(0) => Err(TapeFault::Nothing),
        Ok(feet) => Ok(Marks::FeetInches(feet, self::Inches::whole(0))),
        Err(_) => Err(TapeFault::OverLongest),
    }
}

fn feet_and_inches(feet: &Amount, beside: &Amount) -> Result<Marks, TapeFault> {
    let feet = decimal(feet)?;
    if !feet.is_integer() {
        return Err(TapeFault::DecimalFeetBesideInches);
    }
    let feet = u32::try_from(feet).map_err(|_| TapeFault::OverLongest)?;
    let inches = inches(beside)?;
    let over = match inches {
        Inches::Parts { whole, .. } => whole > 11,
        Inches::Decimal(inches) => inches >= Decimal::from(12),
    };
    if over {
        return Err(TapeFault::InchesOverEleven {
            inches: match inches {
                Inches::Parts { whole, .. } => whole.to_string(),
                Inches::Decimal(inches) => inches.to_string(),
            },
        });
    }
    Ok(match feet {
        0 => Marks::Inches(inches),
        feet => Marks::FeetInches(feet, inches),
    })
}

fn metres_and_centimetres(metres: &Amount, beside: &Amount) -> Result<Marks, TapeFault> {
    let (metres, centimetres) = (decimal(metres)?, decimal(beside)?);
    if !metres.is_integer() {
        return Err(TapeFault::NoOneLength);
    }
    if !centimetres.is_integer() || centimetres > Decimal::from(99) {
        return Err(TapeFault::CentimetresOver99 {
            centimetres: centimetres.to_string(),
        });
    }
    metres
        .checked_add(centimetres / Decimal::from(100))
        .map(|metres| Marks::Meters(metres.normalize()))
        .ok_or(TapeFault::OverLongest)
}

fn inches(amount: &Amount) -> Result<Inches, TapeFault> {
    match *amount {
        Amount::Mixed {
            whole,
            numerator,
            denominator,
        } => Ok(Inches::Parts {
            whole,
            numerator,
            denominator,
        }),
        Amount::Number(_) => {
            let inches = decimal(amount)?;
            if inches.is_integer() {
                let whole = u32::try_from(inches).map_err(|_| TapeFault::OverLongest)?;
                Ok(Inches::whole(whole))
            } else {
                Ok(Inches::Decimal(inches))
            }
        }
    }
}

/// The amount as a decimal without trailing zeros, for a unit that goes by decimals.
fn decimal(amount: &Amount) -> Result<Decimal, TapeFault> {
    match amount {
        Amount::Number(digits) => Decimal::from_str_exact(digits)
            .map(|decimal| decimal.normalize())
            .map_err(|_| TapeFault::TooManyDigits),
        Amount::Mixed { .. } => Err(TapeFault::FractionOfNoInch),
    }
}
