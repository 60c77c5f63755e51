//! Roof bodies: outline, readings, edges, and where a body lies.

use super::edges::edges;
use super::json::Reader;
use super::known_outline;
use super::measures::{self, Least};
use super::readings::{check_span, id_reused, readings};
use super::refusal::{BodyFault, MeasureFault, Refusal};
use crate::outline::default_sigma;
use crate::path::Path;
use crate::survey::{Body, PlacedFrom, Point, Sketch};
use crate::units::{Angle, Length, quotable};
use std::collections::{BTreeMap, BTreeSet};

const KEYS: &[&str] = &["id", "eave_height", "outline", "readings", "edges", "from"];
const OUTLINE_KEYS: &[&str] = &[
    "start",
    "heading_deg",
    "turns_deg",
    "turn_sigma_deg",
    "corners",
    "from",
];
const FROM_KEYS: &[&str] = &["body", "corner", "offset", "sigma"];

/// Bodies of one survey, corners of one outline given as known, corners of all together.
const MOST_BODIES: usize = 100;
const MOST_CORNERS: usize = 500;
const MOST_CORNERS_IN_ALL: usize = 1000;

/// One standard deviation of a turn about its nominal value, where none is given: two directions
/// of 0.15 degrees (builders' tolerances of squareness; see the outline kernel).
const TURN_SIGMA: f64 = 0.21;
/// How far from once around the turns may sum, degrees: rounding, not measuring.
const ROUND_OFF: f64 = 1e-6;

pub(super) fn bodies(reader: &mut Reader<'_>) -> Result<Vec<Body>, Refusal> {
    let mut corners = 0;
    let mut place = 0;
    let mut bodies = reader.list("a list of bodies", MOST_BODIES, |reader| {
        place += 1;
        let body = body(reader, place)?;
        corners += corner_count(&body.outline);
        if corners > MOST_CORNERS_IN_ALL {
            let most = MOST_CORNERS_IN_ALL;
            return Err(reader.refuse(BodyFault::TooManyCorners { most }));
        }
        Ok(body)
    })?;
    if bodies.is_empty() {
        return Err(reader.refuse(BodyFault::NoBodies));
    }
    name_by_place(&mut bodies);
    check_ids(&bodies, reader.path())?;
    check_places(&bodies, reader.path())?;
    Ok(bodies)
}

/// The body at a place in the list, from 1: without an id it is named by it.
fn body(reader: &mut Reader<'_>, place: usize) -> Result<Body, Refusal> {
    let mut id: Option<String> = None;
    let mut eave_height = Length::ZERO;
    let mut sketch = None;
    let mut taped = Vec::new();
    let mut legs = Vec::new();
    let mut placed_from = None;
    let wanted = "a body such as {\"id\": \"main\", \"outline\": {...}}";
    let read = reader.object(wanted, |reader, key| {
        match key {
            "id" => id = Some(measures::name(reader, "an id such as \"main\"")?),
            "eave_height" => eave_height = measures::length(reader, Least::Zero)?,
            "outline" => sketch = Some(outline(reader)?),
            "readings" => taped = readings(reader)?,
            "edges" => legs = edges(reader)?,
            "from" => placed_from = Some(from(reader)?),
            _ => return Err(reader.unknown_key(key, KEYS)),
        }
        Ok(())
    });
    read.map_err(|refusal| match &id {
        Some(id) => refusal.in_body(id),
        None => refusal,
    })?;
    let id = id.unwrap_or_else(|| format!("body {place}"));
    let named = |refusal: Refusal| refusal.about("body", &id);
    let example = "\"outline\": {\"corners\": [[x, y], ...]} or {\"turns_deg\": [...]}";
    let sketch = reader
        .must_have(sketch, "outline", example)
        .map_err(named)?;
    let in_outline = reader.path().key("outline");
    let placed_from = match (placed_from, sketch.placed_from) {
        (Some(_), Some(_)) => {
            let key = "from in its outline";
            return Err(named(Refusal::at(
                in_outline,
                BodyFault::PlacedTwice { key },
            )));
        }
        (one, other) => one.or(other),
    };
    if let (Some(_), Some(key)) = (&placed_from, sketch.place_key) {
        return Err(named(Refusal::at(
            in_outline,
            BodyFault::PlacedTwice { key },
        )));
    }
    if let Sketch::Known(corners) = &sketch.outline {
        known_outline::check(corners)
            .map_err(|fault| named(Refusal::at(in_outline.key("corners"), fault)))?;
    }
    let corners = corner_count(&sketch.outline);
    if !legs.is_empty() && legs.len() != corners {
        let (edges, legs) = (legs.len(), corners);
        let fault = BodyFault::EdgesCount { edges, legs };
        return Err(named(Refusal::at(reader.path().key("edges"), fault)));
    }
    let in_readings = reader.path().key("readings");
    for (place, reading) in taped.iter().enumerate() {
        check_span(reading, corners, &in_readings.place(place))?;
    }
    Ok(Body {
        id,
        eave_height,
        outline: sketch.outline,
        readings: taped,
        edges: legs,
        placed_from,
    })
}

/// An outline as the file says it.
struct ParsedOutline {
    outline: Sketch,
    placed_from: Option<PlacedFrom>,
    /// The key that says where it lies, but for `from`.
    place_key: Option<&'static str>,
}

fn outline(reader: &mut Reader<'_>) -> Result<ParsedOutline, Refusal> {
    let mut corners = None;
    let mut start = None;
    let mut heading = None;
    let mut turned = None;
    let mut turn_sigma = None;
    let mut placed_from = None;
    reader.object("an outline", |reader, key| {
        match key {
            "corners" => {
                let wanted = "a list of corners, each [x, y] in feet";
                corners = Some(reader.list(wanted, MOST_CORNERS, measures::point)?);
            }
            "start" => start = Some(measures::point(reader)?),
            "heading_deg" => heading = Some(measures::number_from(reader, -360.0, 360.0)?),
            "turns_deg" => turned = Some(turns(reader)?),
            "turn_sigma_deg" => {
                let sigma = measures::number_from(reader, 0.0, 45.0)?;
                if sigma <= 0.0 {
                    return Err(reader.refuse(MeasureFault::Sigma { sigma }));
                }
                turn_sigma = Some(Angle::degrees(sigma));
            }
            "from" => placed_from = Some(from(reader)?),
            _ => return Err(reader.unknown_key(key, OUTLINE_KEYS)),
        }
        Ok(())
    })?;
    match (corners, turned) {
        (Some(corners), turned) => {
            let others = [
                ("turns_deg", turned.is_some()),
                ("start", start.is_some()),
                ("heading_deg", heading.is_some()),
                ("turn_sigma_deg", turn_sigma.is_some()),
            ];
            if let Some((key, _)) = others.into_iter().find(|(_, given)| *given) {
                return Err(reader.refuse(BodyFault::CornersAnd { key }));
            }
            Ok(ParsedOutline {
                outline: Sketch::Known(corners),
                placed_from,
                place_key: Some("corners"),
            })
        }
        (None, Some(turns)) => Ok(ParsedOutline {
            outline: Sketch::Turned {
                start: start.unwrap_or(Point { x: 0.0, y: 0.0 }),
                heading: Angle::degrees(heading.unwrap_or(0.0)),
                turns,
                turn_sigma: turn_sigma.unwrap_or(Angle::degrees(TURN_SIGMA)),
            },
            placed_from,
            place_key: start.map(|_| "start"),
        }),
        (None, None) => Err(reader.refuse(BodyFault::NoShape)),
    }
}

fn turns(reader: &mut Reader<'_>) -> Result<Vec<Angle>, Refusal> {
    let wanted = "a list of turns in degrees, one a leg";
    let turns = reader.list(wanted, crate::outline::MOST_CORNERS, |reader| {
        measures::number_from(reader, -179.0, 179.0).map(Angle::degrees)
    })?;
    if turns.len() < 3 {
        let turns = turns.len();
        return Err(reader.refuse(BodyFault::TooFewTurns { turns }));
    }
    let sum: f64 = turns.iter().map(|turn| turn.in_degrees()).sum();
    if (sum.abs() - 360.0).abs() > ROUND_OFF {
        return Err(reader.refuse(BodyFault::TurnsSum { sum }));
    }
    Ok(turns)
}

fn from(reader: &mut Reader<'_>) -> Result<PlacedFrom, Refusal> {
    let mut body = None;
    let mut corner = None;
    let mut offset = Point { x: 0.0, y: 0.0 };
    let mut sigma = None;
    let wanted = "a place such as {\"body\": \"main\", \"corner\": 2, \"offset\": [x, y]}";
    reader.object(wanted, |reader, key| {
        match key {
            "body" => body = Some(measures::name(reader, "the id of another body")?),
            "corner" => corner = Some(measures::index(reader)?),
            "offset" => offset = measures::point(reader)?,
            "sigma" => sigma = Some(measures::sigma(reader)?),
            _ => return Err(reader.unknown_key(key, FROM_KEYS)),
        }
        Ok(())
    })?;
    Ok(PlacedFrom {
        body: reader.must_have(body, "body", "\"body\": \"main\"")?,
        corner: reader.must_have(corner, "corner", "\"corner\": 0")?,
        offset,
        sigma: sigma.unwrap_or_else(|| default_sigma(Length::feet(offset.x.hypot(offset.y)))),
    })
}

fn corner_count(outline: &Sketch) -> usize {
    match outline {
        Sketch::Known(corners) => corners.len(),
        Sketch::Turned { turns, .. } => turns.len(),
    }
}

/// Names each reading without an id by its place among all of the file, from 1.
fn name_by_place(bodies: &mut [Body]) {
    let readings = bodies.iter_mut().flat_map(|body| &mut body.readings);
    for (place, reading) in readings.enumerate() {
        if reading.id.is_empty() {
            reading.id = format!("reading {}", place + 1);
        }
    }
}

/// Ids of bodies, and of readings in the whole file, are each their own.
fn check_ids(bodies: &[Body], path: &Path) -> Result<(), Refusal> {
    let mut body_ids = BTreeSet::new();
    let mut reading_ids = BTreeSet::new();
    for (place, body) in bodies.iter().enumerate() {
        let here = path.place(place);
        if !body_ids.insert(body.id.as_str()) {
            let id = quotable(&body.id);
            return Err(Refusal::at(here.key("id"), BodyFault::IdReused { id }));
        }
        for (place, reading) in body.readings.iter().enumerate() {
            if !reading_ids.insert(reading.id.as_str()) {
                return Err(id_reused(reading, &here.key("readings").place(place)));
            }
        }
    }
    Ok(())
}

/// Each body placed from another comes down, corner by corner, to one that has a start.
fn check_places(bodies: &[Body], path: &Path) -> Result<(), Refusal> {
    let by_id: BTreeMap<&str, &Body> = bodies.iter().map(|b| (b.id.as_str(), b)).collect();
    for (place, body) in bodies.iter().enumerate() {
        let refuse =
            |fault| Refusal::at(path.place(place).key("from"), fault).about("body", &body.id);
        let mut from = body.placed_from.as_ref();
        let mut passed = 0;
        while let Some(placed) = from {
            let name = || quotable(&placed.body);
            let Some(other) = by_id.get(placed.body.as_str()) else {
                return Err(refuse(BodyFault::NoSuchBody { body: name() }));
            };
            let corners = corner_count(&other.outline);
            if placed.corner >= corners {
                let (body, last) = (name(), corners - 1);
                return Err(refuse(BodyFault::NoSuchCorner { body, last }));
            }
            passed += 1;
            if passed > bodies.len() {
                return Err(refuse(BodyFault::PlacedInCircle));
            }
            from = other.placed_from.as_ref();
        }
    }
    Ok(())
}
