//! What somebody saw of the roof from where one stood, set beside the computed one: it agrees, it
//! is explained, or it is flagged with what would explain it. Nothing is changed by it.

use super::solved::{Solved, solve};
use crate::pitch::SettledRise;
use crate::roof::{BodyShape, EdgeKind, Face, Roof, raise};
use crate::settled::{Ground, SolvedBody, shapes};
use crate::survey::{ObservedEnd, Rise, RoofObservation, Survey};
use crate::uncertainty::{MOVE_DEG, MOVE_FT, unsure_pitches, with_corner, with_slope};
use crate::units::Length;
use std::fmt;

/// What the legs and ridges of a survey are called where a sentence is shown.
pub trait Named {
    /// A leg of a body, both from 0: `leg 1 of main`.
    fn leg(&self, body: usize, leg: usize) -> String;
    /// The ridge of a body: `the ridge of main`.
    fn ridge(&self, body: usize) -> String;
}

/// The names that a survey file gives.
impl Named for Survey {
    fn leg(&self, body: usize, leg: usize) -> String {
        format!("leg {leg} of {}", self.bodies[body].id)
    }

    fn ridge(&self, body: usize) -> String {
        format!("the ridge of {}", self.bodies[body].id)
    }
}

/// What comes of one thing seen, with its sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum Comparison {
    /// The computed roof has it.
    Agrees(String),
    /// The computed roof differs, by no more than is known of it or in what is easily missed.
    Explained(String),
    /// The computed roof differs: the sentence says what would explain it and what to do.
    Flagged(String),
    /// It cannot be compared: there is no such leg, or no roof yet.
    NotCompared(String),
}

impl Comparison {
    /// What came of it, in a word for a file: `agrees`, `explained`, `flagged`, `not_compared`.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            Comparison::Agrees(_) => "agrees",
            Comparison::Explained(_) => "explained",
            Comparison::Flagged(_) => "flagged",
            Comparison::NotCompared(_) => "not_compared",
        }
    }

    /// The sentence.
    #[must_use]
    pub fn words(&self) -> &str {
        match self {
            Comparison::Agrees(words)
            | Comparison::Explained(words)
            | Comparison::Flagged(words)
            | Comparison::NotCompared(words) => words,
        }
    }
}

impl fmt::Display for Comparison {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// Heights that differ by less than this many standard deviations agree.
const AGREES: f64 = 2.0;
/// A kind of edge that changes by less is not spoken of, feet.
const SPOKEN: f64 = 0.5;
/// A face that holds a smaller share of what rises from its leg is easily missed.
const EASILY_MISSED: f64 = 0.05;

/// Each thing that a survey says was seen, judged against the roof that was computed of it, in its
/// order.
#[must_use]
pub fn judge_seen(survey: &Survey, solved: &Solved, names: &dyn Named) -> Vec<Comparison> {
    let judge = |seen: &RoofObservation| judge(survey, solved, seen, names);
    let seen = survey.seen.iter().map(judge);
    seen.map(|judged| judged.unwrap_or_else(Comparison::NotCompared))
        .collect()
}

fn judge(
    survey: &Survey,
    solved: &Solved,
    seen: &RoofObservation,
    names: &dyn Named,
) -> Result<Comparison, String> {
    let roof = solved.roof.as_ref().map_err(ToString::to_string)?;
    match *seen {
        RoofObservation::End { body, leg, end } => {
            check(survey, solved, body, Some(leg))?;
            let name = names.leg(body, leg);
            Ok(judge_end(survey, solved, (body, leg), end, &name))
        }
        RoofObservation::Ridge {
            body,
            over_eaves,
            sigma,
        } => {
            check(survey, solved, body, None)?;
            let heights = [over_eaves, sigma].map(Length::in_feet);
            let name = names.ridge(body);
            Ok(judge_ridge(survey, solved, body, heights, &name))
        }
        RoofObservation::Faces { body, leg, count } => {
            check(survey, solved, body, Some(leg))?;
            let faces = roof.faces.iter();
            let faces: Vec<&Face> = faces
                .filter(|face| face.body == body && face.leg == leg)
                .collect();
            Ok(judge_faces(&faces, count, &names.leg(body, leg)))
        }
    }
}

/// Whether there is such a body, and such a leg of it.
fn check(survey: &Survey, solved: &Solved, body: usize, leg: Option<usize>) -> Result<(), String> {
    let Some(id) = survey.bodies.get(body).map(|body| body.id.as_str()) else {
        return Err(format!(
            "there is no body {body}: say of which one it was seen"
        ));
    };
    match leg.filter(|leg| *leg >= solved.bodies[body].rises.len()) {
        Some(leg) => Err(format!(
            "{id} has no leg {leg}: say over which one it was seen"
        )),
        None => Ok(()),
    }
}

fn judge_end(
    survey: &Survey,
    solved: &Solved,
    (body, leg): (usize, usize),
    end: ObservedEnd,
    name: &str,
) -> Comparison {
    let rises = &solved.bodies[body].rises;
    let slopes = |rise: &SettledRise| matches!(rise, SettledRise::Slope(_) | SettledRise::Bands(_));
    let (seen, booked) = match end {
        ObservedEnd::Gable => ("a gable", "a slope"),
        ObservedEnd::Slope => ("a slope", "an end"),
    };
    if slopes(&rises[leg]) == (end == ObservedEnd::Slope) {
        return Comparison::Agrees(format!("{name} was seen as {seen}, as it is drawn"));
    }
    let rise = match end {
        ObservedEnd::Gable => Some(Rise::Gable),
        ObservedEnd::Slope => rises.iter().position(slopes).map(Rise::SameAs),
    };
    let mut other = Survey {
        seen: Vec::new(),
        ..survey.clone()
    };
    let changed = rise
        .zip(other.bodies[body].edges.get_mut(leg))
        .map(|(rise, edge)| {
            edge.rise = rise;
        });
    let would = changed.and_then(|()| solve(&other).ok());
    let would = match would.as_ref().map(|solved| &solved.roof) {
        Some(Ok(roof)) => differences(solved.roof.as_ref().ok(), roof),
        Some(Err(refusal)) => format!("with it there would be no roof, for {refusal}"),
        None => "its slope is not known".to_owned(),
    };
    Comparison::Flagged(format!(
        "{name} was seen as {seen} and is drawn as {booked}: as seen, {would}. Look again and say \
         which it is."
    ))
}

/// How area and edges change from one roof to another.
fn differences(from: Option<&Roof>, to: &Roof) -> String {
    let Some(from) = from else {
        return "there is nothing to compare".to_owned();
    };
    let [was, is] = [from, to].map(|roof| roof.area().in_square_feet());
    let mut said = vec![if (was - is).abs() < SPOKEN {
        "the area stays".to_owned()
    } else {
        format!("the area goes from {was:.0} to {is:.0} sq ft")
    }];
    for kind in EdgeKind::ALL {
        let [was, is] = [from, to].map(|roof| roof.length_of(kind).in_feet());
        if (was - is).abs() > SPOKEN {
            let kind = kind.title().to_lowercase();
            said.push(format!("{kind} from {was:.1} to {is:.1} ft"));
        }
    }
    said.join(", ")
}

fn judge_ridge(
    survey: &Survey,
    solved: &Solved,
    body: usize,
    [seen, sigma]: [f64; 2],
    name: &str,
) -> Comparison {
    let top = solved.roof.as_ref().ok();
    let top = top.and_then(|roof| over_eaves(survey, roof, body));
    let Some(top) = top else {
        return Comparison::NotCompared(format!("no face stands under {name}: nothing to compare"));
    };
    let spread = ridge_spread(survey, solved, body, top);
    let computed = format!("{top:.1} ft ± {spread:.1}");
    let off = (seen - top).abs();
    if off <= AGREES * sigma.hypot(spread) {
        let words = format!("{name} was seen {seen:.1} ft over its eaves, computed {computed}");
        return if off < 0.05 {
            Comparison::Agrees(words)
        } else {
            Comparison::Explained(format!("{words}: within what is known of both"))
        };
    }
    let slopes: Vec<f64> = solved.bodies[body]
        .rises
        .iter()
        .filter_map(|rise| match rise {
            SettledRise::Slope(pitch) => Some(pitch.used.in_12()),
            SettledRise::Unknown
            | SettledRise::Bands(_)
            | SettledRise::Gable
            | SettledRise::Wall => None,
        })
        .collect();
    // With every slope of a body times one factor its plan stays and its heights go with the factor.
    let share = seen / top;
    let steepest = slopes.iter().copied().fold(0.0, f64::max);
    let (higher, or) = if seen < top {
        ("lower", "a flatter slope above a break")
    } else {
        ("higher", "a body that stands above it")
    };
    Comparison::Flagged(format!(
        "{name} was seen {seen:.1} ft over its eaves, {higher} than the computed \
         {computed}: slopes {share:.2} times as steep ({:.1} in 12 for {steepest:.1}) would bring \
         it there, or {or}. Read a slope again and look at the upper part of the roof.",
        steepest * share
    ))
}

/// How high the faces of a body reach over its eaves, feet; none without a face.
fn over_eaves(survey: &Survey, roof: &Roof, body: usize) -> Option<f64> {
    let faces = roof.faces.iter().filter(|face| face.body == body);
    let heights = faces.flat_map(|face| face.polygon.iter().map(|at| at.height().in_feet()));
    let top = heights.max_by(f64::total_cmp)?;
    Some(top - survey.bodies[body].eave_height.in_feet())
}

/// One standard deviation of the height of a body's ridge, feet: the roof raised again with each
/// corner and each slope of the body moved by a little, carried by their covariance.
fn ridge_spread(survey: &Survey, solved: &Solved, body: usize, top: f64) -> f64 {
    let Ok(shapes) = shapes(&survey.bodies, &solved.bodies, Ground::Squared) else {
        return 0.0;
    };
    let by_unit = |moved: &[BodyShape], by: f64| {
        let again = raise(moved, &survey.walls).ok();
        let again = again.and_then(|roof| over_eaves(survey, &roof, body));
        again.map_or(0.0, |again| (again - top) / by)
    };
    let SolvedBody { outline, rises } = &solved.bodies[body];
    let corners = 0..2 * shapes[body].corners.len();
    let by_corner: Vec<f64> = corners
        .map(|k| by_unit(&with_corner(&shapes, body, k), MOVE_FT))
        .collect();
    let mut variance = 0.0;
    for (k, one) in by_corner.iter().enumerate() {
        for (l, other) in by_corner.iter().enumerate() {
            variance += one * other * outline.covariance.get((k, l)).copied().unwrap_or(0.0);
        }
    }
    for (read_at, sigma) in unsure_pitches(rises) {
        let turned = with_slope(&shapes, body, rises, (read_at, MOVE_DEG));
        variance += (by_unit(&turned, MOVE_DEG) * sigma).powi(2);
    }
    variance.max(0.0).sqrt()
}

fn judge_faces(faces: &[&Face], count: usize, name: &str) -> Comparison {
    let found = faces.len();
    if count == found {
        return Comparison::Agrees(format!("{} seen over {name}, as drawn", counted(count)));
    }
    if count > found {
        return Comparison::Flagged(format!(
            "{} seen over {name}, where the outline gives {found}: a dormer or a wing is a body of \
             its own, a change of slope is a band. Say which it is.",
            counted(count)
        ));
    }
    let all: f64 = faces.iter().map(|face| face.area.in_square_feet()).sum();
    let mut areas: Vec<f64> = faces
        .iter()
        .map(|face| face.area.in_square_feet())
        .collect();
    areas.sort_by(f64::total_cmp);
    let missed: f64 = areas.iter().take(found - count).sum();
    let words = format!(
        "{} seen over {name}, where the outline gives {found}",
        counted(count)
    );
    if missed < EASILY_MISSED * all {
        Comparison::Explained(format!(
            "{words}: what was not seen holds {missed:.1} sq ft and is easily missed"
        ))
    } else {
        Comparison::Flagged(format!(
            "{words}: what was not seen holds {missed:.0} sq ft. Look again from where all of it \
             shows."
        ))
    }
}

fn counted(count: usize) -> String {
    match count {
        1 => "1 face was".to_owned(),
        _ => format!("{count} faces were"),
    }
}
