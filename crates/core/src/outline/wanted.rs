//! What no reading says, in the words of a person at the house, and what to read for it.

use super::lack::Freedom;
use super::nominal::Nominal;
use crate::survey::Point;
use crate::units::Length;
use std::fmt::{self, Display, Formatter};

/// A length that no reading says.
#[derive(Clone, Debug, PartialEq)]
pub struct Lack {
    /// Legs that can grow or shrink with it.
    pub legs: Vec<usize>,
    /// How many readings are wanting.
    pub readings: usize,
    /// Which way they run.
    pub way: Way,
    /// On which side of the house they lie; none for the house as a whole.
    pub side: Option<Side>,
    /// A span over several legs that would say it as well: from corner, to corner, along leg.
    pub overall: Option<(usize, usize, usize)>,
}

/// Which way a length runs, seen from the first leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Along the first leg.
    Wide,
    /// Square to it.
    Deep,
    /// Neither.
    Slanting,
}

/// A side of the house, seen by somebody who stands before its first leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// That of the first leg.
    Front,
    /// The other one.
    Back,
    /// To the left.
    Left,
    /// To the right.
    Right,
}

/// Corners that hang together while nothing says where they lie from the others.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its corners, in order.
    pub corners: Vec<usize>,
    /// From its first corner to its last, along leg 0 and square to it.
    pub sum: [Length; 2],
}

/// A part of a mode this small is rounding noise.
const MOVES: f64 = 0.02;
/// A leg lies on a side when it is this far from the middle, as a part of the half extent.
const TO_ONE_SIDE: f64 = 0.2;

/// What is wanting, a lack for each set of legs that can change without the others.
pub(super) fn lacks(shape: &Nominal, freedom: &Freedom, read: &[Option<f64>]) -> Vec<Lack> {
    let legs = shape.legs();
    // The projection on what can move does not depend on which modes happen to span it.
    let moves_with = |one: usize, other: usize| -> f64 {
        freedom
            .modes
            .iter()
            .map(|mode| mode[one] * mode[other])
            .sum()
    };
    let mut met = vec![false; legs];
    let mut lacks = Vec::new();
    for first in 0..legs {
        if met[first] || moves_with(first, first) < MOVES * MOVES {
            continue;
        }
        met[first] = true;
        let mut together = vec![first];
        let mut next = 0;
        while next < together.len() {
            for (leg, met) in met.iter_mut().enumerate() {
                if !*met && moves_with(together[next], leg).abs() > MOVES * MOVES {
                    *met = true;
                    together.push(leg);
                }
            }
            next += 1;
        }
        together.sort_unstable();
        let rank: f64 = together.iter().map(|leg| moves_with(*leg, *leg)).sum();
        lacks.push(lack(shape, freedom, read, together, rank));
    }
    lacks
}

fn lack(
    shape: &Nominal,
    freedom: &Freedom,
    read: &[Option<f64>],
    legs: Vec<usize>,
    rank: f64,
) -> Lack {
    let all = |axis: usize| legs.iter().all(|leg| shape.units[*leg][axis].abs() > 0.9);
    let way = if all(0) {
        Way::Wide
    } else if all(1) {
        Way::Deep
    } else {
        Way::Slanting
    };
    let drawn = drawn(shape, read);
    let readings = (rank.round() as usize).max(1);
    Lack {
        way,
        side: side(shape, &drawn, &legs),
        overall: (readings == 1)
            .then(|| overall(shape, freedom, &drawn, &legs))
            .flatten(),
        readings,
        legs,
    }
}

/// Corners of the shape with every unread leg as long as the others are on average.
fn drawn(shape: &Nominal, read: &[Option<f64>]) -> Vec<Point> {
    let known: Vec<f64> = read.iter().flatten().copied().collect();
    let typical = if known.is_empty() {
        30.0
    } else {
        known.iter().sum::<f64>() / known.len() as f64
    };
    let mut at = Point { x: 0.0, y: 0.0 };
    read.iter()
        .zip(&shape.units)
        .map(|(length, unit)| {
            let corner = at;
            let feet = length.unwrap_or(typical);
            at = Point {
                x: at.x + feet * unit[0],
                y: at.y + feet * unit[1],
            };
            corner
        })
        .collect()
}

/// The side on which legs lie, where the house has more than four corners and they all lie on one.
fn side(shape: &Nominal, drawn: &[Point], legs: &[usize]) -> Option<Side> {
    if shape.legs() <= 4 {
        return None;
    }
    let toward = shape.way_round.sign();
    // How far all of them lie to one side, as a part of the half extent; 0 where they lie on both.
    let off = |of: fn(&Point) -> f64| {
        let (low, high) = drawn
            .iter()
            .map(of)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
                (low.min(v), high.max(v))
            });
        let middle_of = |leg: &usize| {
            let ends = of(&drawn[*leg]) + of(&drawn[shape.end_of(*leg)]);
            toward * (ends - low - high) / (high - low).max(1.0)
        };
        let (least, most) = legs
            .iter()
            .map(middle_of)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), v| {
                (least.min(v), most.max(v))
            });
        if least > TO_ONE_SIDE {
            least
        } else if most < -TO_ONE_SIDE {
            most
        } else {
            0.0
        }
    };
    let (right, back) = (off(|p| p.x), off(|p| p.y));
    if right.abs().max(back.abs()) < TO_ONE_SIDE {
        None
    } else if back.abs() >= right.abs() {
        Some(if back > 0.0 { Side::Back } else { Side::Front })
    } else {
        Some(if right > 0.0 { Side::Right } else { Side::Left })
    }
}

/// A span from end to end of the house, over several legs, that would say it.
fn overall(
    shape: &Nominal,
    freedom: &Freedom,
    drawn: &[Point],
    legs: &[usize],
) -> Option<(usize, usize, usize)> {
    let along_leg = *legs.first()?;
    let axis = shape.units[along_leg];
    let reach: Vec<f64> = drawn
        .iter()
        .map(|p| p.x * axis[0] + p.y * axis[1])
        .collect();
    let end = |better: fn(f64, f64) -> bool| {
        (1..reach.len()).fold(0, |best, k| {
            if better(reach[k], reach[best]) {
                k
            } else {
                best
            }
        })
    };
    let (from, to) = (
        end(|new, best| new < best - 1e-6),
        end(|new, best| new > best + 1e-6),
    );
    let (from, to) = (from.min(to), from.max(to));
    let grows: f64 = shape
        .legs_between(from, to)
        .map(|leg| {
            let u = shape.units[leg];
            let part: f64 = freedom.modes.iter().map(|mode| mode[leg].abs()).sum();
            part * (u[0] * axis[0] + u[1] * axis[1])
        })
        .sum();
    // One leg from end to end is no other reading than the leg.
    let is_a_leg = (0..shape.legs()).any(|leg| {
        let (a, b) = (reach[leg], reach[shape.end_of(leg)]);
        let whole = (reach[to] - reach[from]).abs();
        ((a - b).abs() - whole).abs() < 1e-6
    });
    (grows.abs() > MOVES && !is_a_leg).then_some((from, to, along_leg))
}

/// The parts into which the outline falls; none where it hangs together. `places`: the corners, in
/// each part as far from one another as they should be.
pub(super) fn parts(shape: &Nominal, freedom: &Freedom, places: &[Point]) -> Vec<Part> {
    let mut at = vec![[0.0; 2]; freedom.modes.len()];
    let mut shifts: Vec<Vec<[f64; 2]>> = Vec::with_capacity(shape.legs());
    for (leg, unit) in shape.units.iter().enumerate() {
        shifts.push(at.clone());
        for (shift, mode) in at.iter_mut().zip(&freedom.modes) {
            shift[0] += mode[leg] * unit[0];
            shift[1] += mode[leg] * unit[1];
        }
    }
    let alike = |a: &[[f64; 2]], b: &[[f64; 2]]| {
        a.iter()
            .zip(b)
            .all(|(p, q)| (p[0] - q[0]).hypot(p[1] - q[1]) < MOVES)
    };
    let mut parts: Vec<Part> = Vec::new();
    for (corner, shift) in shifts.iter().enumerate() {
        let there = parts
            .iter_mut()
            .find(|part| alike(&shifts[part.corners[0]], shift));
        match there {
            Some(part) => part.corners.push(corner),
            None => parts.push(Part {
                corners: vec![corner],
                sum: [Length::ZERO; 2],
            }),
        }
    }
    if parts.len() < 2 {
        return Vec::new();
    }
    for part in &mut parts {
        if let (Some(first), Some(last)) = (part.corners.first(), part.corners.last()) {
            let (a, b) = (places[*first], places[*last]);
            part.sum = [b.x - a.x, b.y - a.y].map(Length::feet);
        }
    }
    parts
}

impl Lack {
    /// The sentence, with the first leg and corner counted from this number.
    #[must_use]
    pub fn words(&self, first: usize) -> String {
        let whose = match self.side {
            None => "the house",
            Some(Side::Front) => "the front wing",
            Some(Side::Back) => "the back wing",
            Some(Side::Left) => "the left wing",
            Some(Side::Right) => "the right wing",
        };
        let what = match self.way {
            Way::Wide => format!("how wide {whose} is"),
            Way::Deep => format!("how deep {whose} is"),
            Way::Slanting => format!("how long the slanting legs of {whose} are"),
        };
        let legs: Vec<String> = self
            .legs
            .iter()
            .map(|leg| (leg + first).to_string())
            .collect();
        let mut read = match self.readings {
            1 => format!("read leg {}", list(&legs, "or leg")),
            n if n >= self.legs.len() => format!("read legs {}", list(&legs, "and")),
            n => format!("read {n} of legs {}", list(&legs, "and")),
        };
        if let Some((from, to, _)) = self.overall {
            read.push_str(&format!(
                " or the overall from corner {} to {}",
                from + first,
                to + first
            ));
        }
        format!("nothing says {what}: {read}")
    }
}

impl Display for Lack {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(0))
    }
}

impl Display for Part {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        let [along, across] = self.sum.map(|length| length.in_feet().abs());
        match self.corners.as_slice() {
            [only] => write!(f, "corner {only} by itself"),
            [first, .., last] => write!(
                f,
                "corners {first} to {last}, {along:.1} ft along and {across:.1} ft across"
            ),
            [] => Ok(()),
        }
    }
}

fn list(names: &[String], last: &str) -> String {
    match names {
        [] => String::new(),
        [only] => only.clone(),
        [most @ .., end] => format!("{} {last} {end}", most.join(", ")),
    }
}
