//! What rises at each leg.

use super::json::Reader;
use super::measures::{self, Least};
use super::refusal::{EdgeFault, Refusal};
use super::slopes;
use crate::survey::{Band, LegEdge, Rise};
use crate::units::{Length, Pitch, quotable};

const KEYS: &[&str] = &[
    "pitch",
    "pitch_readings",
    "same_as",
    "bands",
    "end",
    "overhang",
];
/// Edges of one body.
const MOST_EDGES: usize = 500;

pub(super) fn edges(reader: &mut Reader<'_>) -> Result<Vec<LegEdge>, Refusal> {
    let mut leg = 0;
    reader.list("a list of edges, one a leg", MOST_EDGES, |reader| {
        let number = leg.to_string();
        leg += 1;
        edge(reader).map_err(|refusal| refusal.about("leg", &number))
    })
}

fn edge(reader: &mut Reader<'_>) -> Result<LegEdge, Refusal> {
    let mut said: Option<(&'static str, Rise)> = None;
    let mut overhang = None;
    reader.object("an edge such as {\"pitch\": 6}", |reader, key| {
        let (name, rise) = match key {
            "pitch" => ("pitch", Rise::Pitch(pitch(reader)?)),
            "pitch_readings" => (
                "pitch_readings",
                Rise::PitchReadings(slopes::readings(reader)?),
            ),
            "same_as" => ("same_as", Rise::SameAs(measures::index(reader)?)),
            "bands" => ("bands", Rise::Bands(bands(reader)?)),
            "end" => ("end", end(reader)?),
            "overhang" => {
                overhang = Some(measures::length(reader, Least::Zero)?);
                return Ok(());
            }
            _ => return Err(reader.unknown_key(key, KEYS)),
        };
        match said.replace((name, rise)) {
            None => Ok(()),
            Some((first, _)) => {
                let second = name;
                Err(reader.refuse(EdgeFault::TwoThings { first, second }))
            }
        }
    })?;
    let (_, rise) = said.ok_or_else(|| reader.refuse(EdgeFault::Empty))?;
    Ok(LegEdge { rise, overhang })
}

fn pitch(reader: &mut Reader<'_>) -> Result<Pitch, Refusal> {
    const STEEPEST: f64 = 48.0;
    let pitch = reader.number("the rise in 12 as a number")?;
    if pitch > 0.0 && pitch <= STEEPEST {
        Ok(Pitch::rise_in_12(pitch))
    } else {
        Err(reader.refuse(EdgeFault::PitchRange { pitch }))
    }
}

fn end(reader: &mut Reader<'_>) -> Result<Rise, Refusal> {
    match reader.text("gable, wall or unknown")?.as_str() {
        "gable" => Ok(Rise::Gable),
        "wall" => Ok(Rise::Wall),
        "unknown" => Ok(Rise::Unknown),
        other => Err(reader.refuse(EdgeFault::UnknownEnd {
            end: quotable(other),
        })),
    }
}

fn bands(reader: &mut Reader<'_>) -> Result<Vec<Band>, Refusal> {
    let bands = reader.list("a list of bands from the eave up", 100, band)?;
    if !(1..=4).contains(&bands.len()) {
        let bands = bands.len();
        return Err(reader.refuse(EdgeFault::BandCount { bands }));
    }
    for (place, band) in bands.iter().enumerate() {
        let fault = match (band.rise, place + 1 == bands.len()) {
            (None, false) => EdgeFault::BandWithoutRise,
            (Some(_), true) => EdgeFault::LastBandWithRise,
            (None, true) | (Some(_), false) => continue,
        };
        return Err(Refusal::at(reader.path().place(place), fault));
    }
    Ok(bands)
}

fn band(reader: &mut Reader<'_>) -> Result<Band, Refusal> {
    let mut slope: Option<Pitch> = None;
    let mut rise: Option<Length> = None;
    reader.object(
        "a band such as {\"pitch\": 20, \"rise\": 8}",
        |reader, key| {
            match key {
                "pitch" => slope = Some(pitch(reader)?),
                "rise" => rise = Some(measures::length(reader, Least::AboveZero)?),
                _ => return Err(reader.unknown_key(key, &["pitch", "rise"])),
            }
            Ok(())
        },
    )?;
    let pitch = reader.must_have(slope, "pitch", "\"pitch\": 6")?;
    Ok(Band { pitch, rise })
}
