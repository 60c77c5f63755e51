//! Figures of others beside ours: compared, never used.

use crate::settled::{SolvedBody, Totals};
use crate::survey::{Body, Hearsay, Point, Survey};
use crate::units::Length;
use std::fmt::{self, Display, Formatter};

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
    /// What most likely makes the difference.
    pub reason: Option<Reason>,
    /// The chance of that reason among all that are weighed.
    pub chance: Option<f64>,
    /// They lie further apart than the like of them do, twice their spread.
    pub warn: bool,
}

/// What may make the difference between a figure of somebody else and ours.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// There is none to speak of.
    Agree,
    /// Theirs ends at the walls, ours at the eaves.
    NoOverhang,
    /// Theirs holds the overhangs too.
    OverhangsCounted,
    /// Their garage is not under this roof, or counted twice.
    GarageCounted,
    /// A garage under this roof is not in theirs.
    GarageLeftOut,
    /// The floors are counted otherwise.
    Floors(f64),
    /// Theirs is the area in plan, ours that on the slope.
    InPlan,
    /// Theirs holds waste.
    WithWaste,
    /// Theirs has a pitch one step higher.
    PitchHigher,
    /// Theirs has a pitch one step lower.
    PitchLower,
    /// None of these: one of the two outlines is wrong.
    Unexplained,
}

impl Display for Reason {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Reason::Agree => write!(f, "the two agree"),
            Reason::NoOverhang => write!(f, "it ends at the walls and leaves the overhangs out"),
            Reason::OverhangsCounted => write!(f, "it counts the overhangs too"),
            Reason::GarageCounted => write!(f, "it counts a garage that is not under this roof"),
            Reason::GarageLeftOut => write!(f, "it leaves a garage under this roof out"),
            Reason::Floors(floors) => write!(f, "its floors are on {floors} storeys"),
            Reason::InPlan => write!(f, "it is the area in plan, not on the slope"),
            Reason::WithWaste => write!(f, "it holds waste"),
            Reason::PitchHigher => write!(f, "it takes the pitch a step higher"),
            Reason::PitchLower => write!(f, "it takes the pitch a step lower"),
            Reason::Unexplained => {
                write!(f, "nothing usual explains it, so one of the two is wrong")
            }
        }
    }
}

/// Differences up to this are not worth a question, per cent.
const CLOSE: f64 = 5.0;
/// One standard deviation of a record of floors and of a report of a roof, as parts: assumptions.
const RECORD: f64 = 0.05;
const REPORT: f64 = 0.03;
/// What others get wrong without a usual reason has this spread, as a part.
const ANYTHING: f64 = 0.35;
/// A garage that a record leaves out, sq ft, and its spread.
const GARAGE: f64 = 420.0;
const GARAGE_SIGMA: f64 = 110.0;

/// A reason on trial: how often it is met (an assumption), what theirs would then be as a part of ours,
/// and one standard deviation of that part.
struct Trial {
    reason: Reason,
    often: f64,
    part: f64,
    sigma: f64,
}

/// Compares what others said: a roof area with the roof's area; floors with the plan area, less
/// the strip of the overhangs, since floors end at the walls. Each usual reason for a difference is
/// weighed with how well it fits.
#[must_use]
pub fn compare(survey: &Survey, solved: &[SolvedBody], totals: &Totals) -> Vec<Compared> {
    let plan = totals.plan_area.map(|area| area.in_square_feet());
    let roof = totals.area.map(|area| area.value.in_square_feet());
    let unsure = totals.area.map_or(0.0, |area| {
        area.sigma.in_square_feet() / area.value.in_square_feet().max(1.0)
    });
    let strip: f64 = survey
        .bodies
        .iter()
        .zip(solved)
        .map(|(body, solved)| strip_of_overhangs(body, solved))
        .sum();
    survey
        .hearsay
        .iter()
        .map(|said| {
            let (theirs, ours, ours_like_theirs, kind) = if let Some(theirs) = said.roof_area {
                (Some(theirs), roof, roof, REPORT)
            } else {
                let walls = plan.map(|plan| plan - strip);
                (ground_floor(said), plan, walls, RECORD)
            };
            let percent = |ours: Option<f64>| match (theirs, ours) {
                (Some(theirs), Some(ours)) if ours > 0.0 => Some(100.0 * (theirs - ours) / ours),
                _ => None,
            };
            let trials = match (ours_like_theirs, plan) {
                (Some(roof), Some(plan)) if said.roof_area.is_some() => {
                    of_report(roof, plan, strip)
                }
                (Some(walls), Some(plan)) => of_record(said, walls, plan),
                _ => Vec::new(),
            };
            let left = percent(ours_like_theirs);
            let likeliest = left.and_then(|left| likeliest(&trials, 1.0 + left / 100.0, unsure));
            let apart = left.map(|left| left.abs() / 100.0);
            Compared {
                source: said.source.clone(),
                difference_percent: percent(ours),
                explained: left.map(|left| left.abs() <= CLOSE),
                reason: likeliest.map(|(reason, _)| reason),
                chance: likeliest.map(|(_, chance)| chance),
                warn: apart.is_some_and(|apart| apart > 2.0 * kind.max(RECORD).hypot(unsure)),
            }
        })
        .collect()
}

/// The reason that fits best with its chance. `part`: theirs as a part of ours.
fn likeliest(trials: &[Trial], part: f64, unsure: f64) -> Option<(Reason, f64)> {
    let weigh = |trial: &Trial| {
        let sigma = trial.sigma.hypot(unsure);
        trial.often / sigma * (-0.5 * ((part - trial.part) / sigma).powi(2)).exp()
    };
    let all: f64 = trials.iter().map(weigh).sum();
    let best = trials
        .iter()
        .max_by(|a, b| weigh(a).total_cmp(&weigh(b)))
        .filter(|_| all > 0.0)?;
    Some((best.reason, weigh(best) / all))
}

fn trial(reason: Reason, often: f64, part: f64, sigma: f64) -> Trial {
    Trial {
        reason,
        often,
        part,
        sigma,
    }
}

/// Against the area on the slope.
fn of_report(roof: f64, plan: f64, strip: f64) -> Vec<Trial> {
    let factor = roof / plan;
    // One slope that makes the same of the plan, rise in 12.
    let rise = 12.0 * (factor * factor - 1.0).max(0.0).sqrt();
    let stepped = |by: f64| (((rise + by).max(0.0) / 12.0).powi(2) + 1.0).sqrt() / factor;
    vec![
        trial(Reason::Agree, 0.5, 1.0, REPORT),
        trial(Reason::WithWaste, 0.12, 1.10, 0.04),
        trial(Reason::InPlan, 0.08, 1.0 / factor, REPORT),
        trial(Reason::NoOverhang, 0.08, (plan - strip) / plan, REPORT),
        trial(Reason::PitchHigher, 0.06, stepped(1.0), REPORT),
        trial(Reason::PitchLower, 0.06, stepped(-1.0), REPORT),
        trial(Reason::Unexplained, 0.1, 1.0, ANYTHING),
    ]
}

/// Against the area within the walls.
fn of_record(said: &Hearsay, walls: f64, plan: f64) -> Vec<Trial> {
    let with_overhang = plan / walls;
    let nothing = if with_overhang > 1.01 {
        Reason::NoOverhang
    } else {
        Reason::Agree
    };
    let mut trials = vec![
        trial(nothing, 0.5, 1.0, RECORD),
        trial(Reason::Unexplained, 0.1, 1.0, ANYTHING),
    ];
    if with_overhang > 1.02 {
        trials.push(trial(Reason::OverhangsCounted, 0.1, with_overhang, RECORD));
    }
    match said.garage.filter(|garage| *garage > 0.0) {
        Some(garage) => {
            let part = 1.0 + garage / walls;
            trials.push(trial(Reason::GarageCounted, 0.1, part, RECORD));
        }
        None => {
            let part = 1.0 - GARAGE / walls;
            let sigma = RECORD.hypot(GARAGE_SIGMA / walls);
            trials.push(trial(Reason::GarageLeftOut, 0.1, part, sigma));
        }
    }
    let said_floors = said.floors.filter(|s| *s > 0.0).unwrap_or(1.0);
    if let (Some(living), Some(all)) = (said.living_area, ground_floor(said)) {
        for floors in [1.0, 1.5, 2.0, 3.0] {
            if f64::abs(floors - said_floors) > 0.01 {
                let floor = all - living / said_floors + living / floors;
                let part = all / floor;
                trials.push(trial(Reason::Floors(floors), 0.04, part, RECORD));
            }
        }
    }
    trials
}

/// What a record says of the ground floor and the garage, sq ft.
fn ground_floor(said: &Hearsay) -> Option<f64> {
    let floors = said.floors.filter(|floors| *floors > 0.0).unwrap_or(1.0);
    match (said.living_area, said.garage) {
        (None, None) => None,
        (living, garage) => Some(living.unwrap_or(0.0) / floors + garage.unwrap_or(0.0)),
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
