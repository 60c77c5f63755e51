//! Numbers, lengths and places as the file writes them.

use super::json::{Kind, Reader};
use super::refusal::{MeasureFault, Refusal, ShapeFault};
use crate::survey::Point;
use crate::units::{Length, Tape};

/// Which lengths are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Least {
    /// Above zero, as a tape reads.
    AboveZero,
    /// Zero too.
    Zero,
}

/// A length as written, not yet looked at.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Written {
    Feet(f64),
    Text(String),
}

impl Written {
    pub(super) fn take(reader: &mut Reader<'_>) -> Result<Written, Refusal> {
        const WANTED: &str = "a number of feet, or tape text such as \"42' 7 1/2\\\"\"";
        if reader.kind()? == Kind::Text {
            reader.text(WANTED).map(Written::Text)
        } else {
            reader.number(WANTED).map(Written::Feet)
        }
    }

    /// The length, and the text where it was one.
    pub(super) fn length(self, least: Least) -> Result<(Length, Option<String>), MeasureFault> {
        match self {
            Written::Text(text) => {
                let tape = Tape::read(&text)?;
                Ok((tape.length(), Some(text)))
            }
            Written::Feet(feet) => {
                let length = Length::feet(feet);
                let fault = match least {
                    Least::AboveZero => MeasureFault::Length { feet },
                    Least::Zero if length == Length::ZERO => return Ok((length, None)),
                    Least::Zero => MeasureFault::LengthOrNone { feet },
                };
                length.is_a_reading().then_some((length, None)).ok_or(fault)
            }
        }
    }
}

/// A length.
pub(super) fn length(reader: &mut Reader<'_>, least: Least) -> Result<Length, Refusal> {
    let (length, _) = Written::take(reader)?
        .length(least)
        .map_err(|fault| reader.refuse(fault))?;
    Ok(length)
}

/// A length given in inches.
pub(super) fn inches(reader: &mut Reader<'_>, least: Least) -> Result<Length, Refusal> {
    let inches = reader.number("a number of inches")?;
    let (length, _) = Written::Feet(inches / 12.0).length(least).map_err(|_| {
        let least = match least {
            Least::AboveZero => "more than 0",
            Least::Zero => "0",
        };
        reader.refuse(MeasureFault::Inches { inches, least })
    })?;
    Ok(length)
}

/// One standard deviation of a length.
pub(super) fn sigma(reader: &mut Reader<'_>) -> Result<Length, Refusal> {
    let written = Written::take(reader)?;
    if let Written::Feet(sigma) = written
        && sigma <= 0.0
    {
        return Err(reader.refuse(MeasureFault::Sigma { sigma }));
    }
    let (length, _) = written
        .length(Least::AboveZero)
        .map_err(|fault| reader.refuse(fault))?;
    Ok(length)
}

/// A number within a range.
pub(super) fn number_from(reader: &mut Reader<'_>, least: f64, most: f64) -> Result<f64, Refusal> {
    let number = reader.number("a number")?;
    if (least..=most).contains(&number) {
        Ok(number)
    } else {
        Err(reader.refuse(MeasureFault::Range {
            number,
            least,
            most,
        }))
    }
}

/// A whole number.
pub(super) fn count(reader: &mut Reader<'_>, least: u32, most: u32) -> Result<u32, Refusal> {
    let number = reader.number("a whole number")?;
    let whole = number as u32;
    let is_whole = (number - f64::from(whole)).abs() < f64::EPSILON;
    if is_whole && (least..=most).contains(&whole) {
        Ok(whole)
    } else {
        Err(reader.refuse(MeasureFault::Count {
            number,
            least,
            most,
        }))
    }
}

/// The number of a leg or corner, from 0.
pub(super) fn index(reader: &mut Reader<'_>) -> Result<usize, Refusal> {
    count(reader, 0, 99_999).map(|number| number as usize)
}

/// A place in plan: `[x, y]`.
pub(super) fn point(reader: &mut Reader<'_>) -> Result<Point, Refusal> {
    const FARTHEST: f64 = 10_000_000.0;
    let [x, y] = reader.pair("[x, y] in feet", |reader| {
        let feet = reader.number("a number of feet")?;
        if feet.abs() > FARTHEST {
            return Err(reader.refuse(MeasureFault::Place { feet }));
        }
        Ok(feet)
    })?;
    Ok(Point { x, y })
}

/// A text that is more than blanks.
pub(super) fn name(reader: &mut Reader<'_>, wanted: &'static str) -> Result<String, Refusal> {
    let text = reader.text(wanted)?;
    if text.trim().is_empty() {
        let found = "an empty text".to_owned();
        return Err(reader.refuse(ShapeFault::Wrong { found, wanted }));
    }
    Ok(text)
}
