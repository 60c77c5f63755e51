//! Readings of one slope.

use super::json::Reader;
use super::refusal::{MeasureFault, Refusal, ShapeFault, SlopeFault};
use crate::pitch::Tilt;
use crate::survey::{PitchReading, SlopePlace, Way};
use crate::units::{Angle, Pitch, quotable};

const KEYS: &[&str] = &[
    "degrees",
    "gravity",
    "level_and_tape",
    "run_in",
    "rise_in",
    "sighted",
    "number",
    "reversed",
    "sigma",
    "place",
];
/// Readings of one slope.
const MOST_READINGS: usize = 100;
/// The angle of 48 in 12, rounded up, and that rise.
const MOST_DEGREES: f64 = 76.0;
const MOST_IN_12: f64 = 48.0;

pub(super) fn readings(reader: &mut Reader<'_>) -> Result<Vec<PitchReading>, Refusal> {
    let wanted = "a list such as [{\"degrees\": 26.5}]";
    let readings = reader.list(wanted, MOST_READINGS, reading)?;
    if readings.is_empty() {
        return Err(reader.refuse(SlopeFault::NoReading));
    }
    Ok(readings)
}

/// What was read, by the key that gives it.
struct ParsedSlope {
    key: &'static str,
    angle: Angle,
    way: Way,
}

fn reading(reader: &mut Reader<'_>) -> Result<PitchReading, Refusal> {
    let mut said: Option<ParsedSlope> = None;
    let mut level = None;
    let (mut run, mut rise, mut reversed, mut sigma, mut place) = (None, None, None, None, None);
    reader.object("a reading such as {\"degrees\": 26.5}", |reader, key| {
        let now = match key {
            "degrees" => {
                let degrees = reader.number("a number of degrees")?;
                ParsedSlope {
                    key: "degrees",
                    angle: sloping(reader, Angle::degrees(degrees))?,
                    way: Way::Forward,
                }
            }
            "gravity" => ParsedSlope {
                key: "gravity",
                angle: gravity(reader)?,
                way: Way::Forward,
            },
            "sighted" => in_12(reader, "sighted", Way::Sighted)?,
            "number" => in_12(reader, "number", Way::Number)?,
            "run_in" => return inches(reader, &mut run),
            "rise_in" => return inches(reader, &mut rise),
            "reversed" => {
                reversed = Some(reader.truth("true or false")?);
                return Ok(());
            }
            "level_and_tape" => {
                level = Some(reader.truth("true or false")?);
                return Ok(());
            }
            "sigma" => {
                let given = reader.number("the rise in 12 that is one standard deviation")?;
                if !(given > 0.0 && given <= MOST_IN_12) {
                    return Err(reader.refuse(MeasureFault::Sigma { sigma: given }));
                }
                sigma = Some(given);
                return Ok(());
            }
            "place" => {
                place = Some(place_on_face(reader)?);
                return Ok(());
            }
            _ => return Err(reader.unknown_key(key, KEYS)),
        };
        one_thing(reader, &mut said, now)
    })?;
    if run.is_some() || rise.is_some() {
        let run = reader.must_have(run, "run_in", "\"run_in\": 12")?;
        let rise: f64 = reader.must_have(rise, "rise_in", "\"rise_in\": 6")?;
        let now = ParsedSlope {
            key: "run_in",
            angle: rising(reader, 12.0 * rise / run)?,
            way: Way::LevelAndTape,
        };
        one_thing(reader, &mut said, now)?;
    }
    let said = reader.must_have(said, "degrees", "\"degrees\": 26.5")?;
    let said = match (level, said.key) {
        (Some(true), "degrees") => ParsedSlope {
            way: Way::LevelAndTape,
            ..said
        },
        (Some(_), "degrees") | (None, _) => said,
        (Some(_), _) => {
            let (key, with) = ("level_and_tape", "degrees");
            return Err(reader.refuse(SlopeFault::OnlyWith { key, with }));
        }
    };
    let by_phone = said.way == Way::Forward;
    let sighted = said.way == Way::Sighted;
    let stray = [
        (
            reversed == Some(true) && !by_phone,
            "reversed",
            "degrees or gravity",
        ),
        (sigma.is_some() && !sighted, "sigma", "sighted"),
        (
            place.is_some() && matches!(said.way, Way::Sighted | Way::Number),
            "place",
            "a reading on the roof",
        ),
    ];
    for (is_stray, key, with) in stray {
        if is_stray {
            return Err(reader.refuse(SlopeFault::OnlyWith { key, with }));
        }
    }
    Ok(PitchReading {
        angle: said.angle,
        way: if reversed == Some(true) {
            Way::Reversed
        } else {
            said.way
        },
        place,
        sigma: sigma.map(|sigma| Pitch::from_angle(said.angle).spread_in_angle(sigma)),
    })
}

fn one_thing(
    reader: &Reader<'_>,
    said: &mut Option<ParsedSlope>,
    now: ParsedSlope,
) -> Result<(), Refusal> {
    let second = now.key;
    match said.replace(now) {
        None => Ok(()),
        Some(ParsedSlope { key: first, .. }) => {
            Err(reader.refuse(SlopeFault::TwoWays { first, second }))
        }
    }
}

fn in_12(reader: &mut Reader<'_>, key: &'static str, way: Way) -> Result<ParsedSlope, Refusal> {
    let pitch = reader.number("the rise in 12 as a number")?;
    let angle = rising(reader, pitch)?;
    Ok(ParsedSlope { key, angle, way })
}

fn inches(reader: &mut Reader<'_>, into: &mut Option<f64>) -> Result<(), Refusal> {
    const LONGEST: f64 = 480.0;
    let inches = reader.number("inches as a number")?;
    if !(inches > 0.0 && inches <= LONGEST) {
        let (number, least, most) = (inches, 0.0, LONGEST);
        return Err(reader.refuse(MeasureFault::Range {
            number,
            least,
            most,
        }));
    }
    *into = Some(inches);
    Ok(())
}

fn rising(reader: &Reader<'_>, pitch: f64) -> Result<Angle, Refusal> {
    if pitch > 0.0 && pitch <= MOST_IN_12 {
        Ok(Pitch::rise_in_12(pitch).angle())
    } else {
        Err(reader.refuse(SlopeFault::PitchRange { pitch }))
    }
}

fn sloping(reader: &Reader<'_>, angle: Angle) -> Result<Angle, Refusal> {
    let degrees = angle.in_degrees();
    if degrees > 0.0 && degrees <= MOST_DEGREES {
        Ok(angle)
    } else {
        Err(reader.refuse(SlopeFault::DegreesRange { degrees }))
    }
}

/// The vertical as the phone felt it: x to the right of its screen, y to its top, z out of it.
fn gravity(reader: &mut Reader<'_>) -> Result<Angle, Refusal> {
    let wanted = "gravity such as [0.1, 4.4, 8.8]";
    let axes = reader.list(wanted, 3, |reader| reader.number("a number"))?;
    let found = axes.len();
    let vertical: [f64; 3] = axes.try_into().map_err(|_| {
        let wanted = 3;
        reader.refuse(ShapeFault::Count { found, wanted })
    })?;
    let tilt =
        Tilt::from_vertical(vertical).map_err(|fault| reader.refuse(SlopeFault::from(fault)))?;
    sloping(reader, tilt.pitch)
}

fn place_on_face(reader: &mut Reader<'_>) -> Result<SlopePlace, Refusal> {
    match reader.text("a place such as near the eave")?.as_str() {
        "near the eave" => Ok(SlopePlace::NearEave),
        "above the second course" => Ok(SlopePlace::AboveSecondCourse),
        "near the ridge" => Ok(SlopePlace::NearRidge),
        other => Err(reader.refuse(SlopeFault::UnknownPlace {
            place: quotable(other),
        })),
    }
}
