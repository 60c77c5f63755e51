//! Figures of others beside ours: compared, never used.

use crate::solve::{SolvedBody, Totals};
use crate::survey::{Body, Hearsay, Point, Survey};
use crate::units::Length;

/// A figure of somebody else beside ours.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// Who said so.
    pub source: String,
    /// Theirs against ours, per cent of ours; none where ours is not known or theirs says nothing.
    pub difference_percent: Option<f64>,
    /// The difference is accounted for: by the overhangs, for a record of floors; by its own
    /// smallness, for a roof.
    pub explained: Option<bool>,
}

/// Differences up to this are not worth a question, per cent.
const CLOSE: f64 = 5.0;

/// Compares what others said: a roof area with the roof's area; floors with the plan area, less
/// the strip of the overhangs, since floors end at the walls.
#[must_use]
pub fn compare(survey: &Survey, solved: &[SolvedBody], totals: &Totals) -> Vec<Compared> {
    survey
        .hearsay
        .iter()
        .map(|said| {
            let (theirs, ours, ours_like_theirs) = if let Some(theirs) = said.roof_area {
                let ours = totals.area.map(|area| area.value.in_square_feet());
                (Some(theirs), ours, ours)
            } else {
                let ours = totals.plan_area.map(|area| area.in_square_feet());
                let strip: f64 = survey
                    .bodies
                    .iter()
                    .zip(solved)
                    .map(|(body, solved)| strip_of_overhangs(body, solved))
                    .sum();
                (ground_floor(said), ours, ours.map(|ours| ours - strip))
            };
            let percent = |ours: Option<f64>| match (theirs, ours) {
                (Some(theirs), Some(ours)) if ours > 0.0 => Some(100.0 * (theirs - ours) / ours),
                _ => None,
            };
            Compared {
                source: said.source.clone(),
                difference_percent: percent(ours),
                explained: percent(ours_like_theirs).map(|left| left.abs() <= CLOSE),
            }
        })
        .collect()
}

/// What a record says of the ground floor and the garage, sq ft.
fn ground_floor(said: &Hearsay) -> Option<f64> {
    let storeys = said.storeys.filter(|storeys| *storeys > 0.0).unwrap_or(1.0);
    match (said.living_area, said.garage) {
        (None, None) => None,
        (living, garage) => Some(living.unwrap_or(0.0) / storeys + garage.unwrap_or(0.0)),
    }
}

/// Square feet between an outline and the walls below it.
fn strip_of_overhangs(body: &Body, solved: &SolvedBody) -> f64 {
    let corners: Option<Vec<Point>> = solved
        .outline
        .corners
        .iter()
        .map(|corner| corner.map(|corner| corner.at))
        .collect();
    let Some(corners) = corners else {
        return 0.0;
    };
    let overhangs: Vec<f64> = (0..corners.len())
        .map(|leg| {
            body.edges
                .get(leg)
                .and_then(|edge| edge.overhang)
                .map_or(0.0, Length::in_feet)
        })
        .collect();
    twice_area(&corners).abs() / 2.0 - twice_area(&wall_line(&corners, &overhangs)).abs() / 2.0
}

fn twice_area(corners: &[Point]) -> f64 {
    corners
        .iter()
        .zip(corners.iter().cycle().skip(1))
        .map(|(a, b)| a.x * b.y - b.x * a.y)
        .sum()
}

/// The outline with each leg moved in by its overhang.
fn wall_line(corners: &[Point], overhangs: &[f64]) -> Vec<Point> {
    let n = corners.len();
    let inward = twice_area(corners).signum();
    // Each leg as a point moved in and its unit direction.
    let moved: Vec<(Point, [f64; 2])> = (0..n)
        .map(|leg| {
            let (a, b) = (corners[leg], corners[(leg + 1) % n]);
            let length = (b.x - a.x).hypot(b.y - a.y).max(f64::MIN_POSITIVE);
            let unit = [(b.x - a.x) / length, (b.y - a.y) / length];
            let by = inward * overhangs[leg];
            let point = Point {
                x: a.x - by * unit[1],
                y: a.y + by * unit[0],
            };
            (point, unit)
        })
        .collect();
    (0..n)
        .map(|corner| meet(moved[(corner + n - 1) % n], moved[corner]))
        .collect()
}

/// Where two lines meet; for lines in one direction, the start of the second.
fn meet((p, u): (Point, [f64; 2]), (q, v): (Point, [f64; 2])) -> Point {
    let cross = u[0] * v[1] - u[1] * v[0];
    if cross.abs() < 1e-6 {
        return q;
    }
    let along = ((q.x - p.x) * v[1] - (q.y - p.y) * v[0]) / cross;
    Point {
        x: p.x + along * u[0],
        y: p.y + along * u[1],
    }
}
