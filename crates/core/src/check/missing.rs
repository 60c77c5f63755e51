//! What nobody read that would help.

use crate::outline::{Outline, default_sigma, unit_vector};
use crate::pitch::SettledRise;
use crate::settled::SolvedBody;
use crate::survey::{Body, Sketch, Span};
use crate::uncertainty::{AreaVariance, Gain, SpanRow};
use crate::units::{Angle, Length};

/// Something that nobody read.
#[derive(Clone, Debug, PartialEq)]
pub struct MissingReading {
    /// Index of the body.
    pub body: usize,
    /// What.
    pub unread: Unread,
    /// What reading it would take off the variance of the area, sq ft squared; none where without
    /// it there is no area.
    pub gain: Option<f64>,
    /// What it may be expected to take off the doubt in the area, in which the suspects count too; as
    /// `gain` while there are none.
    pub doubt: Option<f64>,
    /// How well it tells the suspects apart, 0 to 1.
    pub separates: f64,
}

/// What can be read and was not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// A leg.
    Leg(usize),
    /// A tie across an inside corner: it can be taped from outside.
    Tie(usize, usize),
    /// From a wall that looks one way to a wall that looks the other: two sticks held out from them.
    Overall {
        /// A corner of the first wall.
        from: usize,
        /// A corner of the second wall.
        to: usize,
        /// The leg along which it is taped.
        along_leg: usize,
    },
    /// What rises at a leg.
    Pitch(usize),
}

impl Unread {
    /// What a tape would span; none for a slope.
    #[must_use]
    pub fn span(self) -> Option<Span> {
        match self {
            Unread::Leg(leg) => Some(Span::Leg(leg)),
            Unread::Tie(from, to) => Some(Span::Tie(from, to)),
            Unread::Overall {
                from,
                to,
                along_leg,
            } => Some(Span::Overall {
                from,
                to,
                along_leg,
            }),
            Unread::Pitch(_) => None,
        }
    }
}

/// The usual spread of a reading hardly depends on its length, feet.
const USUAL_LEG: Length = Length::feet(30.0);

/// Legs and slopes that nobody read, ties across inside corners and overalls that nobody took: what is
/// lacking for an area first, then by what a reading may be expected to take off the doubt in it.
#[must_use]
pub fn missing_readings(
    bodies: &[Body],
    solved: &[SolvedBody],
    variance: &AreaVariance,
) -> Vec<MissingReading> {
    let mut all = Vec::new();
    for (k, (body, solved)) in bodies.iter().zip(solved).enumerate() {
        for (leg, rise) in solved.rises.iter().enumerate() {
            if matches!(rise, SettledRise::Unknown) {
                all.push(MissingReading {
                    body: k,
                    unread: Unread::Pitch(leg),
                    gain: None,
                    doubt: None,
                    separates: 0.0,
                });
            }
        }
        let sigma = solved.outline.roughness * default_sigma(USUAL_LEG).in_feet();
        for unread in unread_spans(body, solved) {
            let row = unread
                .span()
                .and_then(|span| SpanRow::new(span, body, solved));
            let gain = row.and_then(|row| variance.gain_of_reading(k, &row, sigma));
            let is_lacking = lacks(&solved.outline, unread);
            if gain.is_none() && !is_lacking && matches!(unread, Unread::Overall { .. }) {
                continue;
            }
            let gain: Option<Gain> = gain.filter(|_| !is_lacking);
            all.push(MissingReading {
                body: k,
                unread,
                gain: gain.map(|gain| gain.variance),
                doubt: gain.map(|gain| gain.doubt),
                separates: gain.map_or(0.0, |gain| gain.separates),
            });
        }
    }
    all.sort_by(|a, b| lack_then_doubt(b).total_cmp(&lack_then_doubt(a)));
    all
}

fn lack_then_doubt(help: &MissingReading) -> f64 {
    help.doubt.unwrap_or(f64::INFINITY)
}

/// Whether it would say what nothing says.
fn lacks(outline: &Outline, unread: Unread) -> bool {
    outline.lacks.iter().any(|lack| match unread {
        Unread::Leg(leg) => lack.legs.contains(&leg),
        Unread::Overall {
            from,
            to,
            along_leg,
        } => lack.overall == Some((from, to, along_leg)),
        Unread::Tie(..) | Unread::Pitch(_) => false,
    })
}

fn unread_spans(body: &Body, solved: &SolvedBody) -> Vec<Unread> {
    let Sketch::Turned { heading, turns, .. } = &body.outline else {
        return Vec::new();
    };
    let n = turns.len();
    let whole: f64 = turns.iter().map(|turn| turn.in_degrees()).sum();
    let legs = solved
        .outline
        .legs
        .iter()
        .enumerate()
        .filter(|(_, leg)| leg.worked_out)
        .map(|(leg, _)| Unread::Leg(leg));
    let ties = turns
        .iter()
        .enumerate()
        .filter(|(_, turn)| turn.in_degrees() * whole < 0.0)
        .map(|(leg, _)| (leg, (leg + 2) % n))
        .filter(|ends| !has_tie(body, *ends))
        .map(|(from, to)| Unread::Tie(from, to));
    let lacking = solved.outline.lacks.iter().filter_map(|lack| lack.overall);
    let mut overalls: Vec<(usize, usize, usize)> = lacking.collect();
    let turned = turns.iter().map(|turn| turn.in_degrees());
    for overall in overalls_of(solved, heading.in_degrees(), turned, whole) {
        if !overalls.contains(&overall) {
            overalls.push(overall);
        }
    }
    let overalls = overalls
        .into_iter()
        .filter(|overall| !has_overall(body, solved, *overall))
        .map(|(from, to, along_leg)| Unread::Overall {
            from,
            to,
            along_leg,
        });
    legs.chain(ties).chain(overalls).collect()
}

/// Walls nearer than this to one line are one line, feet.
const ONE_LINE: f64 = 0.5;
/// Overalls listed for one body, the longest first.
const MOST_OVERALLS: usize = 40;

/// Spans along the directions of the house, from a wall that looks back along it to one that looks
/// forward, except where one leg spans it already.
fn overalls_of(
    solved: &SolvedBody,
    heading: f64,
    turns: impl Iterator<Item = f64>,
    whole: f64,
) -> Vec<(usize, usize, usize)> {
    let corners: Option<Vec<[f64; 2]>> = solved
        .outline
        .corners
        .iter()
        .map(|corner| corner.map(|c| [c.at.x, c.at.y]))
        .collect();
    let Some(corners) = corners else {
        return Vec::new();
    };
    let n = corners.len();
    let units: Vec<[f64; 2]> = turns
        .scan(heading, |direction, turn| {
            let here = *direction;
            *direction += turn;
            Some(unit_vector(Angle::degrees(here)))
        })
        .collect();
    let unit = |leg: usize| units[leg];
    // Outward, to the right of a walk with the building on the left.
    let out = |leg: usize| {
        let [x, y] = unit(leg);
        if whole < 0.0 { [-y, x] } else { [y, -x] }
    };
    let mut found: Vec<((usize, usize, usize), f64)> = Vec::new();
    for along in 0..n {
        let axis = unit(along);
        let parallel = |leg: usize| (unit(leg)[0] * axis[1] - unit(leg)[1] * axis[0]).abs() < 0.02;
        if (0..along).any(parallel) {
            continue;
        }
        let reach = |corner: usize| corners[corner][0] * axis[0] + corners[corner][1] * axis[1];
        let looks = |leg: usize| out(leg)[0] * axis[0] + out(leg)[1] * axis[1];
        let spans: Vec<[f64; 2]> = (0..n)
            .filter(|leg| parallel(*leg))
            .map(|leg| [reach(leg), reach((leg + 1) % n)])
            .collect();
        for back in (0..n).filter(|leg| looks(*leg) < -0.99) {
            for forward in (0..n).filter(|leg| looks(*leg) > 0.99) {
                let (from, to) = (reach(back), reach(forward));
                let is_leg = spans.iter().any(|[a, b]| {
                    (a.min(*b) - from).abs() < ONE_LINE && (a.max(*b) - to).abs() < ONE_LINE
                });
                let is_there = found.iter().any(|((a, b, k), _)| {
                    *k == along
                        && (reach(*a).min(reach(*b)) - from).abs() < ONE_LINE
                        && (reach(*a).max(reach(*b)) - to).abs() < ONE_LINE
                });
                if to - from > 4.0 * ONE_LINE && !is_leg && !is_there {
                    let pair = (back.min(forward), back.max(forward), along);
                    found.push((pair, to - from));
                }
            }
        }
    }
    found.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    found.truncate(MOST_OVERALLS);
    found.into_iter().map(|(overall, _)| overall).collect()
}

fn has_tie(body: &Body, (from, to): (usize, usize)) -> bool {
    body.readings
        .iter()
        .any(|reading| reading.span == Span::Tie(from, to) || reading.span == Span::Tie(to, from))
}

/// Whether somebody taped it, from whichever corners of the same two walls.
fn has_overall(
    body: &Body,
    solved: &SolvedBody,
    (from, to, along_leg): (usize, usize, usize),
) -> bool {
    let of = |span| SpanRow::new(span, body, solved);
    let wanted = of(Span::Overall {
        from,
        to,
        along_leg,
    });
    let reach = |row: &SpanRow, corner: usize| {
        let place = solved.outline.corners.get(corner).copied().flatten();
        place.map(|c| c.at.x * row.along[0] + c.at.y * row.along[1])
    };
    body.readings.iter().any(|reading| {
        let Span::Overall {
            from: a,
            to: b,
            along_leg: leg,
        } = reading.span
        else {
            return false;
        };
        if (a.min(b), a.max(b)) == (from.min(to), from.max(to)) && leg == along_leg {
            return true;
        }
        let (Some(wanted), Some(taken)) = (wanted, of(reading.span)) else {
            return false;
        };
        let parallel = wanted.along[0] * taken.along[1] - wanted.along[1] * taken.along[0];
        let near = |one: usize, other: usize| {
            let apart = reach(&wanted, one).zip(reach(&wanted, other));
            apart.is_some_and(|(p, q)| (p - q).abs() < ONE_LINE)
        };
        parallel.abs() < 0.02 && ((near(a, from) && near(b, to)) || (near(a, to) && near(b, from)))
    })
}
