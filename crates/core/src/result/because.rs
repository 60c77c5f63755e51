//! What made each figure, by name.

use crate::pitch::SettledRise;
use crate::roof::Roof;
use crate::solve::{Priced, Solved};
use crate::survey::{Body, Sketch, Survey};
use crate::takeoff::Cause;
use serde::{Serialize, Serializer};
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

/// What made a figure. A survey may hold very many readings and each makes every total, so the
/// names are written out of the survey, not copied.
#[derive(Clone, Debug)]
pub(super) enum Because<'a> {
    /// All outlines, and all slopes or none.
    Whole(Whole<'a>),
    /// What a line names.
    Line(Vec<String>),
}

#[derive(Clone, Copy, Debug)]
pub(super) struct Whole<'a> {
    survey: &'a Survey,
    solved: &'a Solved,
    made_of: MadeOf,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum MadeOf {
    Outlines,
    OutlinesAndSlopes,
}

impl Serialize for Because<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Because::Whole(whole) => whole.serialize(serializer),
            Because::Line(names) => names.serialize(serializer),
        }
    }
}

impl Serialize for Whole<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let outlines = self
            .survey
            .bodies
            .iter()
            .flat_map(|body| match body.outline {
                Sketch::Known(_) => vec![Cow::Owned(known_corners(body))],
                Sketch::Turned { .. } => body
                    .readings
                    .iter()
                    .map(|reading| Cow::Borrowed(reading.id.as_str()))
                    .collect(),
            });
        let slopes = self
            .survey
            .bodies
            .iter()
            .zip(&self.solved.bodies)
            .filter(|_| self.made_of == MadeOf::OutlinesAndSlopes)
            .flat_map(|(body, solved)| {
                solved
                    .rises
                    .iter()
                    .enumerate()
                    .filter(|(_, rise)| {
                        matches!(rise, SettledRise::Slope(_) | SettledRise::Bands(_))
                    })
                    .map(|(leg, _)| Cow::Owned(slope_of(body, leg)))
            });
        serializer.collect_seq(outlines.chain(slopes))
    }
}

fn known_corners(body: &Body) -> String {
    format!("{} corners", body.id)
}

fn slope_of(body: &Body, leg: usize) -> String {
    format!("{} leg {leg} pitch", body.id)
}

/// For each total the readings, slopes and known corners that made it.
pub(super) fn of_totals<'a>(
    survey: &'a Survey,
    solved: &'a Solved,
) -> BTreeMap<String, Because<'a>> {
    let made_of = |made_of| {
        Because::Whole(Whole {
            survey,
            solved,
            made_of,
        })
    };
    let mut because = BTreeMap::new();
    if solved.totals.plan_area.is_some() {
        because.insert("totals.plan_area".to_owned(), made_of(MadeOf::Outlines));
    }
    let both = made_of(MadeOf::OutlinesAndSlopes);
    if solved.totals.area.is_some() {
        because.insert("totals.area".to_owned(), both.clone());
        because.insert("totals.squares".to_owned(), both.clone());
    }
    for kind in solved.totals.edges.keys() {
        because.insert(format!("totals.{}", kind.key()), both.clone());
    }
    because
}

/// For each line of takeoff and price the legs, readings, slopes, penetrations and keys that made
/// it.
pub(super) fn of_lines<'a>(
    survey: &Survey,
    roof: &Roof,
    priced: &Priced,
) -> Vec<(String, Because<'a>)> {
    let Priced { takeoff, price, .. } = priced;
    let order = takeoff.order.iter().enumerate();
    let order = order.map(|(index, line)| (format!("takeoff.order[{index}]"), &line.because));
    let lines = price.lines.iter().enumerate();
    let lines = lines.map(|(index, line)| (format!("price.lines[{index}]"), &line.because));
    let figures = [
        ("takeoff.tear_off", &takeoff.tear_off.because),
        ("takeoff.ventilation", &takeoff.ventilation.because),
        ("takeoff.labour.lay_hours", &takeoff.labor.lay_because),
        ("takeoff.labour.strip_hours", &takeoff.labor.strip_because),
        ("takeoff.billing", &takeoff.billing.because),
        ("price.total", &price.because),
    ];
    let figures = figures.map(|(name, because)| (name.to_owned(), because));
    order
        .chain(lines)
        .chain(figures)
        .map(|(name, causes)| (name, Because::Line(names(survey, roof, causes))))
        .collect()
}

/// Bodies with more readings are named as a whole in lines.
const MOST_READINGS: usize = 500;

/// The causes by name, each face and edge as the legs and readings that placed it.
fn names(survey: &Survey, roof: &Roof, causes: &[Cause]) -> Vec<String> {
    let mut legs: BTreeSet<(usize, usize)> = BTreeSet::new();
    let mut rest = Vec::new();
    for cause in causes {
        match cause {
            Cause::Face(face) => {
                legs.extend(leg_of(roof, *face));
            }
            Cause::Edge(edge) => {
                let faces = roof.edges.get(*edge).map_or(&[][..], |edge| &edge.faces);
                legs.extend(faces.iter().filter_map(|face| leg_of(roof, *face)));
            }
            Cause::Penetration(index) => rest.push(format!("penetrations[{index}]")),
            Cause::Covering => rest.push("covering".to_owned()),
            Cause::Deck => rest.push("deck".to_owned()),
            Cause::OrderLine(index) => rest.push(format!("takeoff.order[{index}]")),
            Cause::PriceLine(index) => rest.push(format!("price.lines[{index}]")),
            Cause::Rate(key) => rest.push(format!("rates.{key}")),
            Cause::Code(key) => rest.push(format!("code.{key}")),
        }
    }
    let mut names = Vec::new();
    for (index, body) in survey.bodies.iter().enumerate() {
        let here: BTreeSet<usize> = legs
            .range((index, 0)..(index + 1, 0))
            .map(|(_, leg)| *leg)
            .collect();
        if !here.is_empty() {
            names.extend(readings(body));
            names.extend(here.iter().map(|leg| slope_of(body, *leg)));
        }
    }
    names.extend(rest);
    names
}

fn leg_of(roof: &Roof, face: usize) -> Option<(usize, usize)> {
    roof.faces.get(face).map(|face| (face.body, face.leg))
}

/// Readings that placed the legs of a body: one net, so each of them moved each leg a little.
fn readings(body: &Body) -> Vec<String> {
    if let Sketch::Known(_) = body.outline {
        return vec![known_corners(body)];
    }
    if body.readings.len() > MOST_READINGS {
        return vec![format!("{} readings", body.id)];
    }
    body.readings.iter().map(|it| it.id.clone()).collect()
}
