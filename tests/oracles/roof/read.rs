//! The part of a survey file that these cases use: known corners, edges, walls.

use eavebook_core::roof::{BodyShape, LegRise, Rise};
use eavebook_core::survey::{self, Point, WallSegment};
use eavebook_core::units::{Length, Pitch};
use serde::Deserialize;

#[derive(Deserialize)]
struct Survey {
    bodies: Vec<Body>,
    #[serde(default)]
    walls: Vec<Wall>,
}

#[derive(Deserialize)]
struct Body {
    id: String,
    #[serde(default)]
    eave_height: f64,
    outline: Outline,
    edges: Vec<Edge>,
}

#[derive(Deserialize)]
struct Outline {
    corners: Vec<[f64; 2]>,
}

#[derive(Deserialize)]
struct Edge {
    pitch: Option<f64>,
    bands: Option<Vec<Band>>,
    end: Option<String>,
    #[serde(default)]
    overhang: f64,
}

#[derive(Deserialize)]
struct Band {
    pitch: f64,
    rise: Option<f64>,
}

#[derive(Deserialize)]
struct Wall {
    from: [f64; 2],
    to: [f64; 2],
    top: f64,
}

/// Bodies and walls of one case.
pub fn survey(text: &str) -> (Vec<BodyShape>, Vec<WallSegment>) {
    let survey: Survey = serde_json::from_str(text).expect("a survey");
    let place = |[x, y]: [f64; 2]| Point { x, y };
    let bodies = survey.bodies.iter().map(|body| BodyShape {
        id: body.id.clone(),
        corners: body.outline.corners.iter().copied().map(place).collect(),
        nominal_directions: None,
        legs: body.edges.iter().map(leg).collect(),
        eave_height: Length::feet(body.eave_height),
    });
    let walls = survey.walls.iter().map(|wall| WallSegment {
        from: place(wall.from),
        to: place(wall.to),
        top: Length::feet(wall.top),
    });
    (bodies.collect(), walls.collect())
}

fn leg(edge: &Edge) -> LegRise {
    let rise = match (edge.pitch, &edge.bands, edge.end.as_deref()) {
        (Some(pitch), None, None) => Rise::slope(Pitch::rise_in_12(pitch)),
        (None, Some(bands), None) => Rise::Slopes(
            bands
                .iter()
                .map(|band| survey::Band {
                    pitch: Pitch::rise_in_12(band.pitch),
                    rise: band.rise.map(Length::feet),
                })
                .collect(),
        ),
        (None, None, Some("gable")) => Rise::Gable,
        (None, None, Some("wall")) => Rise::Wall,
        (pitch, _, end) => unreachable!("an edge of {pitch:?} and {end:?}"),
    };
    LegRise {
        rise,
        overhang: Length::feet(edge.overhang),
    }
}
