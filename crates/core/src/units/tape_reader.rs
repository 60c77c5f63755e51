//! Parses tape text: characters to tokens, tokens to parts (a number with its unit), parts to one
//! length.

use super::TapeError;
use super::tape::{Inches, Marks, length, shortened};
use rust_decimal::Decimal;

/// More characters than any reading has, even with units spelled out.
const MOST_CHARACTERS: usize = 60;

pub(super) fn marks(text: &str) -> Result<Marks, TapeError> {
    if text.len() > 4 * MOST_CHARACTERS || text.chars().count() > MOST_CHARACTERS {
        return Err(TapeError::TooLong);
    }
    let tokens = tokens(text)?;
    let parts = parts(&tokens)?;
    let marks = one_length(&parts)?;
    let length = length(marks);
    if length.is_a_reading() {
        Ok(marks)
    } else if length.in_feet() > 0.0 {
        Err(TapeError::OverLongest)
    } else {
        Err(TapeError::Zero)
    }
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Token {
    /// Digits, with or without a point.
    Number(String),
    Fraction(u32, u32),
    Unit(Unit),
    Dash,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Unit {
    Feet,
    Inches,
    Meters,
    Centimeters,
    Millimeters,
}

/// A token, and whether a blank precedes it.
#[derive(Clone, Debug)]
struct Spaced {
    token: Token,
    after_blank: bool,
}

fn tokens(text: &str) -> Result<Vec<Spaced>, TapeError> {
    let letters: Vec<char> = text.chars().flat_map(plain).collect();
    let mut tokens = Vec::new();
    let mut after_blank = false;
    let mut at = 0;
    while let Some(&letter) = letters.get(at) {
        let rest = letters.get(at..).unwrap_or_default();
        let (taken, token) = match letter {
            ' ' => {
                after_blank = true;
                at += 1;
                continue;
            }
            '0'..='9' => number(rest)?,
            '\'' if rest.get(1) == Some(&'\'') => (2, Token::Unit(Unit::Inches)),
            '\'' => (1, Token::Unit(Unit::Feet)),
            '"' => (1, Token::Unit(Unit::Inches)),
            '-' => (1, Token::Dash),
            '.' => return Err(TapeError::PointWithoutDigit),
            ',' => return Err(TapeError::Comma),
            letter if letter.is_alphabetic() => word(rest)?,
            letter => match vulgar_fraction(letter) {
                Some((numerator, denominator)) => (1, Token::Fraction(numerator, denominator)),
                None => return Err(TapeError::UnknownCharacter { character: letter }),
            },
        };
        tokens.push(Spaced { token, after_blank });
        after_blank = false;
        at += taken;
    }
    Ok(tokens)
}

/// Returns the ASCII character for one that looks like it, in lower case.
fn plain(character: char) -> impl Iterator<Item = char> {
    let plain = match character {
        '’' | '‘' | '′' | 'ʼ' | '´' => '\'',
        '”' | '“' | '″' => '"',
        '\u{a0}' | '\u{2002}' | '\u{2003}' | '\u{2007}' | '\u{2009}' | '\u{202f}' => ' ',
        '⁄' | '∕' => '/',
        '‐' | '‑' | '‒' | '–' | '—' | '−' => '-',
        other => other,
    };
    plain.to_lowercase()
}

const fn vulgar_fraction(character: char) -> Option<(u32, u32)> {
    match character {
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

/// Returns the number or fraction at the start of `letters`, and how many letters it takes.
fn number(letters: &[char]) -> Result<(usize, Token), TapeError> {
    let (whole, digits) = digits(letters);
    match letters.get(whole) {
        Some('.') => {
            let (places, decimals) = self::digits(letters.get(whole + 1..).unwrap_or_default());
            if places == 0 {
                return Err(TapeError::PointWithoutDigit);
            }
            let taken = whole + 1 + places;
            if letters.get(taken) == Some(&'/') {
                return Err(TapeError::DecimalWithFraction);
            }
            Ok((taken, Token::Number(format!("{digits}.{decimals}"))))
        }
        Some('/') => {
            let (below, denominator) = self::digits(letters.get(whole + 1..).unwrap_or_default());
            if below == 0 {
                return Err(TapeError::UnknownCharacter { character: '/' });
            }
            let part = |digits: &str| digits.parse().map_err(|_| TapeError::TooManyDigits);
            let fraction = Token::Fraction(part(&digits)?, part(&denominator)?);
            Ok((whole + 1 + below, fraction))
        }
        Some(_) | None => Ok((whole, Token::Number(digits))),
    }
}

fn digits(letters: &[char]) -> (usize, String) {
    let digits: String = letters.iter().take_while(|l| l.is_ascii_digit()).collect();
    (digits.len(), digits)
}

/// Returns the unit named at the start of `letters`, with or without the point of an abbreviation.
fn word(letters: &[char]) -> Result<(usize, Token), TapeError> {
    let word: String = letters.iter().take_while(|l| l.is_alphabetic()).collect();
    let length = word.chars().count();
    let (unit, short) = match word.as_str() {
        "ft" => (Unit::Feet, true),
        "foot" | "feet" => (Unit::Feet, false),
        "in" => (Unit::Inches, true),
        "inch" | "inches" => (Unit::Inches, false),
        "m" | "metre" | "metres" | "meter" | "meters" => (Unit::Meters, false),
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => {
            (Unit::Centimeters, false)
        }
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => {
            (Unit::Millimeters, false)
        }
        _ => return Err(TapeError::UnknownWord { word }),
    };
    let point = short && letters.get(length) == Some(&'.');
    Ok((length + usize::from(point), Token::Unit(unit)))
}

/// A number with its unit.
#[derive(Clone, Debug)]
struct Part {
    amount: Amount,
    unit: Option<Unit>,
    /// A dash separates it from the part before.
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

fn parts(tokens: &[Spaced]) -> Result<Vec<Part>, TapeError> {
    let mut parts: Vec<Part> = Vec::new();
    let mut rest = tokens;
    while !rest.is_empty() {
        let mut after_dash = false;
        if let [
            Spaced {
                token: Token::Dash,
                after_blank,
            },
            after @ ..,
        ] = rest
        {
            // `38' -4"` is a minus sign, `38'-4"` and `38' - 4"` join two parts.
            let joins = !after_blank || after.first().is_some_and(|next| next.after_blank);
            if parts.is_empty() || !joins {
                return Err(TapeError::Negative);
            }
            after_dash = true;
            rest = after;
        }
        let (taken, amount) = amount(rest)?;
        rest = rest.get(taken..).unwrap_or_default();
        let unit = match rest.first() {
            Some(Spaced {
                token: Token::Unit(unit),
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

/// Returns the amount at the start of `tokens`, and how many tokens it takes: `4`, `4.5`, `1/2`,
/// `4 1/2` or `4-1/2`.
fn amount(tokens: &[Spaced]) -> Result<(usize, Amount), TapeError> {
    let (taken, whole, fraction) = match tokens.first().map(|first| &first.token) {
        Some(Token::Fraction(numerator, denominator)) => (1, None, (*numerator, *denominator)),
        Some(Token::Number(digits)) => {
            let tight = |place: usize| tokens.get(place).filter(|token| !token.after_blank);
            match (tokens.get(1).map(|next| &next.token), tight(1), tight(2)) {
                (Some(Token::Fraction(numerator, denominator)), _, _) => {
                    (2, Some(digits), (*numerator, *denominator))
                }
                (
                    Some(Token::Dash),
                    Some(_),
                    Some(Spaced {
                        token: Token::Fraction(numerator, denominator),
                        ..
                    }),
                ) => (3, Some(digits), (*numerator, *denominator)),
                (Some(_) | None, _, _) => return Ok((1, Amount::Number(digits.clone()))),
            }
        }
        Some(Token::Unit(_) | Token::Dash) | None => return Err(TapeError::NoNumber),
    };
    let (numerator, denominator) = fraction;
    if numerator >= denominator {
        return Err(TapeError::FractionNotUnderOne {
            numerator,
            denominator,
        });
    }
    let whole = match whole {
        None => 0,
        Some(digits) if digits.contains('.') => return Err(TapeError::DecimalWithFraction),
        Some(digits) => digits.parse().map_err(|_| TapeError::OverLongest)?,
    };
    let (numerator, denominator) = shortened(numerator, denominator);
    let amount = Amount::Mixed {
        whole,
        numerator,
        denominator,
    };
    Ok((taken, amount))
}

fn one_length(parts: &[Part]) -> Result<Marks, TapeError> {
    use Unit::{Centimeters, Feet, Inches, Meters, Millimeters};
    match parts {
        [] => Err(TapeError::Empty),
        [part] => match part.unit.ok_or(TapeError::NoUnit)? {
            Feet => feet(decimal(&part.amount)?),
            Inches => inches(&part.amount).map(Marks::Inches),
            Meters => decimal(&part.amount).map(Marks::Meters),
            Centimeters => decimal(&part.amount).map(Marks::Centimeters),
            Millimeters => decimal(&part.amount).map(Marks::Millimeters),
        },
        [first, second] => match (first.unit, second.unit) {
            (Some(Feet), Some(Inches) | None) => feet_and_inches(&first.amount, &second.amount),
            // 38-4 1/2: feet, dash, inches.
            (None, Some(Inches) | None) if second.after_dash => {
                feet_and_inches(&first.amount, &second.amount)
            }
            (Some(Meters), Some(Centimeters)) => {
                meters_and_centimeters(&first.amount, &second.amount)
            }
            (Some(Inches), Some(Feet)) => Err(TapeError::InchesBeforeFeet),
            (None, _) | (_, None) => Err(TapeError::NoUnit),
            (Some(_), Some(_)) => Err(TapeError::NotOneLength),
        },
        [_, _, _, ..] => Err(TapeError::NotOneLength),
    }
}

fn feet(feet: Decimal) -> Result<Marks, TapeError> {
    if !feet.is_integer() {
        return Ok(Marks::Feet(feet));
    }
    match u32::try_from(feet) {
        Ok(0) => Err(TapeError::Zero),
        Ok(feet) => Ok(Marks::FeetInches(feet, self::Inches::whole(0))),
        Err(_) => Err(TapeError::OverLongest),
    }
}

fn feet_and_inches(feet: &Amount, inches: &Amount) -> Result<Marks, TapeError> {
    let feet = decimal(feet)?;
    if !feet.is_integer() {
        return Err(TapeError::DecimalFeetWithInches);
    }
    let feet = u32::try_from(feet).map_err(|_| TapeError::OverLongest)?;
    let inches = self::inches(inches)?;
    let over = match inches {
        Inches::Parts { whole, .. } => whole > 11,
        Inches::Decimal(inches) => inches >= Decimal::from(12),
    };
    if over {
        return Err(TapeError::InchesOverEleven {
            inches: match inches {
                Inches::Parts { whole, .. } => Decimal::from(whole),
                Inches::Decimal(inches) => inches,
            },
        });
    }
    Ok(match feet {
        0 => Marks::Inches(inches),
        feet => Marks::FeetInches(feet, inches),
    })
}

fn meters_and_centimeters(meters: &Amount, centimeters: &Amount) -> Result<Marks, TapeError> {
    let (meters, centimeters) = (decimal(meters)?, decimal(centimeters)?);
    if !meters.is_integer() {
        return Err(TapeError::NotOneLength);
    }
    if !centimeters.is_integer() || centimeters > Decimal::from(99) {
        return Err(TapeError::CentimetersOver99 { centimeters });
    }
    meters
        .checked_add(centimeters / Decimal::from(100))
        .map(|meters| Marks::Meters(meters.normalize()))
        .ok_or(TapeError::OverLongest)
}

fn inches(amount: &Amount) -> Result<Inches, TapeError> {
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
                let whole = u32::try_from(inches).map_err(|_| TapeError::OverLongest)?;
                Ok(Inches::whole(whole))
            } else {
                Ok(Inches::Decimal(inches))
            }
        }
    }
}

/// Returns the amount as a decimal without trailing zeros, for a unit without fractions.
fn decimal(amount: &Amount) -> Result<Decimal, TapeError> {
    match amount {
        Amount::Number(digits) => Decimal::from_str_exact(digits)
            .map(|decimal| decimal.normalize())
            .map_err(|_| TapeError::TooManyDigits),
        Amount::Mixed { .. } => Err(TapeError::FractionOfOtherUnit),
    }
}
