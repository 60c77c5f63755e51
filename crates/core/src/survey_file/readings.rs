//! Taped values.

use super::json::Reader;
use super::measures::{self, Least, Written};
use super::refusal::{ReadingFault, Refusal};
use crate::path::Path;
use crate::survey::{Reading, Span};
use crate::units::Length;

const KEYS: &[&str] = &[
    "id",
    "leg",
    "tie",
    "overall",
    "along_leg",
    "wall_of_leg",
    "overhangs",
    "value",
    "sigma",
];
/// Readings of one body.
const MOST: usize = 2000;

/// The readings of one body; the id of one that gave none is empty.
pub(super) fn readings(reader: &mut Reader<'_>) -> Result<Vec<Reading>, Refusal> {
    reader.list("a list of readings", MOST, reading)
}

/// What a reading said of its span, by key.
#[derive(Default)]
struct ParsedSpan {
    leg: Option<usize>,
    tie: Option<[usize; 2]>,
    overall: Option<[usize; 2]>,
    along_leg: Option<usize>,
    wall_of_leg: Option<usize>,
    overhangs: Option<[Length; 2]>,
}

fn reading(reader: &mut Reader<'_>) -> Result<Reading, Refusal> {
    let mut id: Option<String> = None;
    let mut value = None;
    let mut sigma = None;
    let mut said = ParsedSpan::default();
    let named = |id: &Option<String>, refusal: Refusal| match id {
        Some(id) => refusal.about("reading", id),
        None => refusal,
    };
    let wanted = "a reading such as {\"id\": \"r1\", \"leg\": 0, \"value\": \"60'\"}";
    let whole = reader.object(wanted, |reader, key| {
        match key {
            "id" => id = Some(measures::name(reader, "an id such as \"r1\"")?),
            "leg" => said.leg = Some(measures::index(reader)?),
            "tie" => said.tie = Some(reader.pair("two corners", measures::index)?),
            "overall" => said.overall = Some(reader.pair("two corners", measures::index)?),
            "along_leg" => said.along_leg = Some(measures::index(reader)?),
            "wall_of_leg" => said.wall_of_leg = Some(measures::index(reader)?),
            "overhangs" => {
                let overhang = |reader: &mut Reader<'_>| measures::length(reader, Least::Zero);
                said.overhangs = Some(reader.pair("two overhangs", overhang)?);
            }
            // Judged once the id is known, which may come after it.
            "value" => value = Some(Written::take(reader)?),
            "sigma" => sigma = Some(measures::sigma(reader)?),
            _ => return Err(reader.unknown_key(key, KEYS)),
        }
        Ok(())
    });
    whole.map_err(|refusal| named(&id, refusal))?;
    let finish = || -> Result<Reading, Refusal> {
        let span = span(&said).map_err(|fault| reader.refuse(fault))?;
        let value = reader.must_have(value, "value", "\"value\": \"42' 7\\\"\"")?;
        let (value, text) = value
            .length(Least::AboveZero)
            .map_err(|fault| Refusal::at(reader.path().key("value"), fault))?;
        Ok(Reading {
            id: id.clone().unwrap_or_default(),
            span,
            value,
            text,
            sigma,
        })
    };
    finish().map_err(|refusal| named(&id, refusal))
}

fn span(said: &ParsedSpan) -> Result<Span, ReadingFault> {
    let given = [
        ("leg", said.leg.is_some()),
        ("tie", said.tie.is_some()),
        ("overall", said.overall.is_some()),
        ("wall_of_leg", said.wall_of_leg.is_some()),
    ];
    let mut given = given.into_iter().filter(|(_, is)| *is).map(|(key, _)| key);
    if let (Some(first), Some(second)) = (given.next(), given.next()) {
        return Err(ReadingFault::TwoSpans { first, second });
    }
    if said.along_leg.is_some() && said.overall.is_none() {
        let (key, with) = ("along_leg", "overall");
        return Err(ReadingFault::KeyAlone { key, with });
    }
    if said.overhangs.is_some() && said.wall_of_leg.is_none() {
        let (key, with) = ("overhangs", "wall_of_leg");
        return Err(ReadingFault::KeyAlone { key, with });
    }
    if let Some(leg) = said.leg {
        Ok(Span::Leg(leg))
    } else if let Some([from, to]) = said.tie {
        Ok(Span::Tie(from, to))
    } else if let Some([from, to]) = said.overall {
        let along_leg = said.along_leg.ok_or(ReadingFault::KeyLacks {
            key: "overall",
            lacking: "along_leg",
            example: "\"along_leg\": 0",
        })?;
        Ok(Span::Overall {
            from,
            to,
            along_leg,
        })
    } else if let Some(leg) = said.wall_of_leg {
        let overhangs = said.overhangs.ok_or(ReadingFault::KeyLacks {
            key: "wall_of_leg",
            lacking: "overhangs",
            example: "\"overhangs\": [1, 1], at its start and its end",
        })?;
        Ok(Span::WallOfLeg { leg, overhangs })
    } else {
        Err(ReadingFault::NoSpan)
    }
}

/// Refuses a reading of a leg or corner that an outline of so many corners does not have.
pub(super) fn check_span(reading: &Reading, corners: usize, path: &Path) -> Result<(), Refusal> {
    let refuse = |key: &str, fault| Refusal::at(path.key(key), fault).about("reading", &reading.id);
    let leg_exists = |key, leg| {
        if leg < corners {
            return Ok(());
        }
        let legs = corners;
        Err(refuse(key, ReadingFault::NoSuchLeg { leg, legs }))
    };
    let two_corners = |key, from, to| {
        if let Some(&corner) = [from, to].iter().find(|corner| **corner >= corners) {
            return Err(refuse(key, ReadingFault::NoSuchCorner { corner, corners }));
        }
        if from == to {
            return Err(refuse(key, ReadingFault::SameCorner { corner: from }));
        }
        Ok(())
    };
    match reading.span {
        Span::Leg(leg) => leg_exists("leg", leg),
        Span::Tie(from, to) => two_corners("tie", from, to),
        Span::Overall {
            from,
            to,
            along_leg,
        } => {
            two_corners("overall", from, to)?;
            leg_exists("along_leg", along_leg)
        }
        Span::WallOfLeg { leg, .. } => leg_exists("wall_of_leg", leg),
    }
}

/// A refusal of a reading whose id an earlier one has.
pub(super) fn id_reused(reading: &Reading, path: &Path) -> Refusal {
    let id = crate::units::quotable(&reading.id);
    Refusal::at(path.key("id"), ReadingFault::IdReused { id })
}
