//! An outline made ready: checked, counter-clockwise, near the origin, a speed for every leg.

use super::refusal::RaiseError;
use super::squared::Squaring;
use super::{BodyShape, Rise};
use crate::units::{Angle, Length};
use nalgebra::Vector2;

/// A place or direction in plan, feet.
pub(super) type Vec2 = Vector2<f64>;

/// Corners nearer than this are one place, feet.
const SAME_PLACE: f64 = 0.01;
/// Legs that come nearer than this touch, feet.
const TOUCHING: f64 = 1e-6;
/// Sine of the angle under which two neighbouring legs lie in one line.
const IN_ONE_LINE: f64 = 1e-6;
/// Steepest slope taken, rise in 12 of run.
const STEEPEST: f64 = 48.0;
/// Most bands on one leg.
const MOST_BANDS: usize = 4;
/// Most legs of one body: the time to raise a roof grows with their square.
const MOST_LEGS: usize = 500;

/// One body's outline, counter-clockwise, moved so that its first corner is the origin.
#[derive(Clone, Debug)]
pub(super) struct Plan {
    pub body: String,
    pub legs: Vec<Leg>,
    /// Where the first corner was.
    pub origin: Vec2,
    pub eave_height: f64,
    /// How the corners as given became those of the legs; none where they are the same.
    pub squared: Option<Squared>,
}

/// How an outline was squared, and the corners before, from the plan's origin.
#[derive(Clone, Debug)]
pub(super) struct Squared {
    pub squaring: Squaring,
    pub taped: Vec<Vec2>,
}

/// One leg of a [`Plan`]: it starts at `from` and ends where the next one starts.
#[derive(Clone, Debug)]
pub(super) struct Leg {
    /// Its number in the outline as given.
    pub number: usize,
    /// The corners as given at its start and at its end.
    pub ends: [usize; 2],
    pub from: Vec2,
    /// Unit direction.
    pub along: Vec2,
    /// Unit normal into the body.
    pub inward: Vec2,
    pub length: f64,
    pub climb: Climb,
    /// How far it stands out past the wall, feet.
    pub overhang: f64,
}

/// How a leg's front moves in as the height grows.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Climb {
    /// A vertical end stands still.
    Stands(End),
    /// One slope after the other, from the eave up.
    Slopes(Vec<Slope>),
}

/// What kind of vertical end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    Gable,
    Wall,
}

/// One slope of a leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slope {
    /// Rise in 12.
    pub pitch: f64,
    /// Height above the eave at which it ends; infinite for the last.
    pub top: f64,
}

impl Leg {
    /// Run of the front per rise on one of its slopes; 0 where it stands.
    pub fn speed(&self, band: usize) -> f64 {
        match &self.climb {
            Climb::Stands(_) => 0.0,
            Climb::Slopes(slopes) => 12.0 / slopes[band].pitch,
        }
    }

    /// Height above the eave at which one of its slopes ends.
    pub fn top(&self, band: usize) -> f64 {
        match &self.climb {
            Climb::Stands(_) => f64::INFINITY,
            Climb::Slopes(slopes) => slopes[band].top,
        }
    }

    /// How it rises, in words.
    pub fn in_words(&self) -> String {
        match &self.climb {
            Climb::Stands(End::Gable) => "a gable".to_string(),
            Climb::Stands(End::Wall) => "a wall".to_string(),
            Climb::Slopes(slopes) => slopes
                .iter()
                .map(|slope| format!("{}/12", slope.pitch))
                .collect::<Vec<_>>()
                .join(" then "),
        }
    }

    /// Slope over plan of the face: its uphill gradient on one slope.
    pub fn gradient(&self, band: usize) -> Vec2 {
        match &self.climb {
            Climb::Stands(_) => Vec2::zeros(),
            Climb::Slopes(slopes) => self.inward * (slopes[band].pitch / 12.0),
        }
    }
}

impl Plan {
    /// Checks a body and makes it ready.
    pub fn new(shape: &BodyShape) -> Result<Plan, RaiseError> {
        check_counts(shape)?;
        check_numbers(shape)?;
        let origin = Vec2::new(shape.corners[0].x, shape.corners[0].y);
        let mut corners: Vec<Vec2> = shape
            .corners
            .iter()
            .map(|corner| Vec2::new(corner.x, corner.y) - origin)
            .collect();
        let mut numbers: Vec<usize> = (0..corners.len()).collect();
        check_lengths(shape, &corners)?;
        let mut squared = None;
        if let Some(nominal) = &shape.nominal_directions
            && let Some(squaring) = Squaring::decide(&corners, &degrees(nominal))
        {
            let taped = std::mem::take(&mut corners);
            corners = squaring.apply(&taped);
            squared = Some(Squared { squaring, taped });
        }
        if breadth(&corners) < SAME_PLACE {
            return Err(RaiseError::WithoutArea {
                body: shape.id.clone(),
            });
        }
        let clockwise = twice_area(&corners) < 0.0;
        if clockwise {
            // Walked the other way round, leg i still joins corners i and i + 1.
            corners.reverse();
            numbers.reverse();
            numbers.rotate_left(1);
        }
        let legs = corners
            .iter()
            .enumerate()
            .map(|(place, &from)| {
                let run = corners[(place + 1) % corners.len()] - from;
                let along = run.normalize();
                let number = numbers[place];
                let after = (number + 1) % corners.len();
                Ok(Leg {
                    number,
                    ends: if clockwise {
                        [after, number]
                    } else {
                        [number, after]
                    },
                    from,
                    along,
                    inward: Vec2::new(-along.y, along.x),
                    length: run.norm(),
                    climb: climb(shape, number)?,
                    overhang: shape.legs[number].overhang.in_feet(),
                })
            })
            .collect::<Result<Vec<_>, RaiseError>>()?;
        let plan = Plan {
            body: shape.id.clone(),
            legs,
            origin,
            eave_height: shape.eave_height.in_feet(),
            squared,
        };
        plan.check_simple()?;
        plan.check_one_line()?;
        if plan
            .legs
            .iter()
            .all(|leg| matches!(leg.climb, Climb::Stands(_)))
        {
            return Err(RaiseError::NeverCloses { body: plan.body });
        }
        Ok(plan)
    }

    /// The leg after this one.
    pub fn next(&self, leg: usize) -> &Leg {
        &self.legs[(leg + 1) % self.legs.len()]
    }

    /// Area within the outline, sq ft.
    pub fn area(&self) -> f64 {
        let corners: Vec<Vec2> = self.legs.iter().map(|leg| leg.from).collect();
        twice_area(&corners) / 2.0
    }

    fn check_simple(&self) -> Result<(), RaiseError> {
        let crosses = |one: usize, two: usize| {
            let (leg, other) = (self.legs[one].number, self.legs[two].number);
            Err(RaiseError::CrossesItself {
                body: self.body.clone(),
                leg: leg.min(other),
                other: leg.max(other),
            })
        };
        let count = self.legs.len();
        for one in 0..count {
            let (a, b) = (self.legs[one].from, self.next(one).from);
            // A leg that turns back along its neighbour.
            let after = &self.legs[(one + 1) % count];
            if self.legs[one].along.dot(&after.along) < 0.0
                && self.legs[one].along.perp(&after.along).abs() < IN_ONE_LINE
            {
                return crosses(one, (one + 1) % count);
            }
            for two in one + 2..count {
                if one == 0 && two == count - 1 {
                    continue;
                }
                if distance(a, b, self.legs[two].from, self.next(two).from) < TOUCHING {
                    return crosses(one, two);
                }
            }
        }
        Ok(())
    }

    fn check_one_line(&self) -> Result<(), RaiseError> {
        for (place, leg) in self.legs.iter().enumerate() {
            let after = self.next(place);
            if leg.along.perp(&after.along).abs() < IN_ONE_LINE && leg.climb != after.climb {
                return Err(RaiseError::LegsInOneLine {
                    body: self.body.clone(),
                    leg: leg.number.min(after.number),
                    other: leg.number.max(after.number),
                });
            }
        }
        Ok(())
    }
}

fn check_counts(shape: &BodyShape) -> Result<(), RaiseError> {
    let body = shape.id.clone();
    let legs = shape.corners.len();
    if legs < 3 {
        return Err(RaiseError::TooFewCorners {
            body,
            corners: legs,
        });
    }
    if legs > MOST_LEGS {
        return Err(RaiseError::TooManyLegs {
            body,
            legs,
            most: MOST_LEGS,
        });
    }
    if shape.legs.len() != legs {
        return Err(RaiseError::EdgesCount {
            body,
            legs,
            rises: shape.legs.len(),
        });
    }
    Ok(())
}

fn check_numbers(shape: &BodyShape) -> Result<(), RaiseError> {
    let not_a_number = |what: String| {
        Err(RaiseError::NotANumber {
            body: shape.id.clone(),
            what,
        })
    };
    for (number, corner) in shape.corners.iter().enumerate() {
        if !(corner.x.is_finite() && corner.y.is_finite()) {
            return not_a_number(format!("corner {number}"));
        }
    }
    for (number, leg) in shape.legs.iter().enumerate() {
        if !leg.overhang.in_feet().is_finite() {
            return not_a_number(format!("the overhang of leg {number}"));
        }
    }
    if !shape.eave_height.in_feet().is_finite() {
        return not_a_number("the eave height".to_string());
    }
    Ok(())
}

fn check_lengths(shape: &BodyShape, corners: &[Vec2]) -> Result<(), RaiseError> {
    for (leg, from) in corners.iter().enumerate() {
        let to = (leg + 1) % corners.len();
        if (corners[to] - from).norm() < SAME_PLACE {
            return Err(RaiseError::CornersEqual {
                body: shape.id.clone(),
                leg,
                from: leg,
                to,
            });
        }
    }
    Ok(())
}

fn climb(shape: &BodyShape, leg: usize) -> Result<Climb, RaiseError> {
    let bands = match &shape.legs[leg].rise {
        Rise::Gable => return Ok(Climb::Stands(End::Gable)),
        Rise::Wall => return Ok(Climb::Stands(End::Wall)),
        Rise::Slopes(bands) => bands,
    };
    let refused = RaiseError::Bands {
        body: shape.id.clone(),
        leg,
    };
    if bands.is_empty() || bands.len() > MOST_BANDS {
        return Err(refused);
    }
    let mut top = 0.0;
    let mut slopes = Vec::with_capacity(bands.len());
    for (place, band) in bands.iter().enumerate() {
        let pitch = band.pitch.in_12();
        if !(pitch > 0.0 && pitch <= STEEPEST) {
            return Err(RaiseError::Pitch {
                body: shape.id.clone(),
                leg,
                pitch: pitch.to_string(),
            });
        }
        top = match (band.rise.map(Length::in_feet), place + 1 == bands.len()) {
            (None, true) => f64::INFINITY,
            (Some(rise), false) if rise > 0.0 && rise.is_finite() => top + rise,
            (None | Some(_), _) => return Err(refused),
        };
        slopes.push(Slope { pitch, top });
    }
    Ok(Climb::Slopes(slopes))
}

fn degrees(angles: &[Angle]) -> Vec<f64> {
    angles.iter().map(|angle| angle.in_degrees()).collect()
}

/// Twice the area within a ring, counter-clockwise positive.
pub(super) fn twice_area(ring: &[Vec2]) -> f64 {
    (0..ring.len())
        .map(|place| ring[place].perp(&ring[(place + 1) % ring.len()]))
        .sum()
}

/// How far the corners stand off the line from the first one (the origin) to the farthest one.
fn breadth(corners: &[Vec2]) -> f64 {
    let farthest = corners
        .iter()
        .copied()
        .max_by(|a, b| a.norm_squared().total_cmp(&b.norm_squared()))
        .unwrap_or_else(Vec2::zeros);
    let length = farthest.norm().max(SAME_PLACE);
    corners
        .iter()
        .map(|corner| (farthest.perp(corner) / length).abs())
        .fold(0.0, f64::max)
}

/// Distance between the segments a-b and c-d.
fn distance(a: Vec2, b: Vec2, c: Vec2, d: Vec2) -> f64 {
    let side = |p: Vec2, q: Vec2, r: Vec2| (q - p).perp(&(r - p));
    if side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0 {
        return 0.0;
    }
    let near = |p: Vec2, q: Vec2, r: Vec2| (nearest_on(q, r, p) - p).norm();
    near(a, c, d)
        .min(near(b, c, d))
        .min(near(c, a, b))
        .min(near(d, a, b))
}

/// The place on segment a-b nearest to p.
pub(super) fn nearest_on(a: Vec2, b: Vec2, p: Vec2) -> Vec2 {
    let run = b - a;
    let square = run.norm_squared();
    if square <= 0.0 {
        return a;
    }
    a + run * ((p - a).dot(&run) / square).clamp(0.0, 1.0)
}
