//! Areas and lengths of the whole roof.

use super::body::SolvedBody;
use super::shape::RoofUnavailable;
use crate::roof::{EdgeKind, Roof};
use crate::survey::Point;
use crate::units::{Area, Figure, Length};
use std::collections::BTreeMap;

/// Areas and lengths of the whole roof; none where something they need is not known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Totals {
    /// Area in plan.
    pub plan_area: Option<Area>,
    /// One standard deviation of the area in plan while there is no roof; with one see
    /// [`crate::uncertainty::length_spread`].
    pub outline_sigma: Option<Area>,
    /// Area on the slope, with one standard deviation.
    pub area: Option<Figure<Area>>,
    /// Length of each kind of edge that the roof has.
    pub edges: BTreeMap<EdgeKind, Length>,
}

/// Returns the totals of a roof; without one, the plan area of a single body whose corners are all
/// known. `variance`: of the area, sq ft squared.
#[must_use]
pub fn total(bodies: &[SolvedBody], roof: &Result<Roof, RoofUnavailable>, variance: f64) -> Totals {
    match roof {
        Ok(roof) => {
            let mut edges = BTreeMap::new();
            for edge in &roof.edges {
                let sum: &mut Length = edges.entry(edge.kind).or_insert(Length::ZERO);
                *sum = *sum + edge.length;
            }
            Totals {
                plan_area: Some(roof.plan_area()),
                outline_sigma: None,
                area: Some(Figure {
                    value: roof.area(),
                    sigma: Area::square_feet(variance.sqrt()),
                }),
                edges,
            }
        }
        Err(RoofUnavailable::RiseUnknown { .. }) => match bodies {
            [body] => of_outline(body, variance).unwrap_or_default(),
            _ => Totals::default(),
        },
        Err(_) => Totals::default(),
    }
}

/// Area within an outline and its spread. None while a corner is not known.
fn of_outline(body: &SolvedBody, variance: f64) -> Option<Totals> {
    Some(Totals {
        plan_area: Some(Area::square_feet(outline_area(&corners(body))?)),
        outline_sigma: Some(Area::square_feet(variance.sqrt())),
        ..Totals::default()
    })
}

fn corners(body: &SolvedBody) -> Vec<Option<Point>> {
    body.outline
        .corners
        .iter()
        .map(|corner| corner.map(|corner| corner.at))
        .collect()
}

/// Square feet within an outline; none while a corner is not known.
fn outline_area(corners: &[Option<Point>]) -> Option<f64> {
    let corners: Vec<Point> = corners.iter().copied().collect::<Option<_>>()?;
    let twice: f64 = corners
        .iter()
        .zip(corners.iter().cycle().skip(1))
        .map(|(a, b)| a.x * b.y - b.x * a.y)
        .sum();
    Some(twice.abs() / 2.0)
}
