//! A field book laid out as the survey that the kernels take: legs in the order of the walk, turns
//! at the corners, readings in force.
//!
//! The walk turns toward the building or away from it; here, and nowhere else, that becomes left
//! and right.

use super::fold::{BookedReading, FieldBook};
use super::kinds::{Corner, EndKind, Followed, HowRead, PitchRead, Side, Thing, Turn};
use crate::survey::{Body, LegEdge, PitchReading, Point, Reading, Rise, Sketch, Span, Survey, Way};
use crate::units::{Angle, Length, Pitch, Tape};
use std::collections::BTreeMap;

/// A field book laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidOut {
    /// Legs walked or under way, from 1 to this; the legs of the outline once it is shut.
    pub legs: usize,
    /// Turn at the far corner of each leg in degrees, left positive; none where nobody tapped it.
    /// Of a shut outline every one is known.
    pub turns: Vec<Option<f64>>,
    /// Direction of each leg in degrees, leg 1 along 0, left positive; none past an unknown turn.
    pub directions: Vec<Option<f64>>,
    /// Length that the readings in force give each leg, feet: their mean.
    pub lengths: Vec<Option<f64>>,
    /// Whether the line has come round.
    pub line: Line,
    /// What the kernels take, once the line has come round.
    pub survey: Option<Survey>,
}

/// Whether the line of an outline has come round to its start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Corners or legs are still to come.
    Open,
    /// The turns close.
    Shut,
}

/// One standard deviation of a turn about its nominal value: half an inch on the 20 ft hypotenuse
/// of a 12-16-20 check is 0.25 degrees, taken as 1.2 of them.
const TURN_SIGMA_DEG: f64 = 0.21;

/// What a field book says, laid out. `none_tapped`: the side on which the building stands while no
/// corner has been tapped.
#[must_use]
pub fn lay_out(book: &FieldBook, none_tapped: Side) -> LaidOut {
    let toward = toward_building(book);
    let lengths_of = readings_by_leg(book);
    let cannot = book
        .cannot_get
        .iter()
        .filter_map(|(_, thing, _)| leg_of(thing));
    let named = lengths_of.keys().copied().chain(cannot);
    let last_named = named.max().unwrap_or(0);
    let tapped = toward.keys().copied().max().unwrap_or(0);
    // A corner after the last leg of all begins another, unless the turns have come round.
    let count = last_named.max(tapped);
    let side = book
        .corners
        .first()
        .map_or(none_tapped, |(_, corner)| corner.building_on);
    let sign = match side {
        Side::Left => 1.0,
        Side::Right => -1.0,
    };
    let walked = (1..).take_while(|leg| toward.contains_key(leg)).count();
    let turned: f64 = (1..=walked).filter_map(|leg| toward.get(&leg)).sum();
    let length = |leg: usize| lengths_of.get(&leg).map(|read| mean(read));
    let round = |legs: usize, last: f64| {
        let mut turns: Vec<f64> = (1..legs)
            .filter_map(|leg| toward.get(&leg))
            .map(|turn| sign * turn)
            .collect();
        turns.push(sign * last);
        let directions = directions(turns.iter().copied().map(Some));
        let lengths: Vec<Option<f64>> = (1..=legs).map(length).collect();
        LaidOut {
            legs,
            survey: Some(survey(book, &turns)),
            turns: turns.into_iter().map(Some).collect(),
            directions,
            lengths,
            line: Line::Shut,
        }
    };
    if walked >= 3 && (turned - FULL).abs() < NEARLY && count <= walked {
        return round(walked, toward.get(&walked).copied().unwrap_or(0.0));
    }
    let last = FULL - turned;
    let closing_leg_is_named = last_named == walked + 1 && count == walked + 1;
    if walked >= 2 && closing_leg_is_named && last > NEARLY && last < 180.0 - NEARLY {
        let shut = round(walked + 1, last);
        if comes_round(&shut) {
            return shut;
        }
    }
    let legs = if tapped == count && count > 0 {
        count + 1
    } else {
        count
    };
    let turns: Vec<Option<f64>> = (1..=legs)
        .map(|leg| toward.get(&leg).map(|turn| sign * turn))
        .collect();
    LaidOut {
        legs,
        directions: directions(turns.iter().copied()),
        turns,
        lengths: (1..=legs).map(length).collect(),
        line: Line::Open,
        survey: None,
    }
}

const FULL: f64 = 360.0;
/// Turns are whole degrees or what a person dialled: a sum this near is meant.
const NEARLY: f64 = 0.5;

/// Whether a walk whose last corner nobody tapped has come round. It has when a leg is yet to be
/// worked out, or when what is left to the start can be walked along one of the legs, so that one
/// slip explains it. A walk with legs still to come is away from its start in two directions.
fn comes_round(shut: &LaidOut) -> bool {
    let Some(gap) = shut.gap() else {
        return true;
    };
    let slack = shut.tolerance();
    let along = |direction: f64| {
        let [x, y] = unit(direction);
        (gap[0] * y - gap[1] * x).abs() <= slack
    };
    shut.directions.iter().flatten().copied().any(along)
}

impl LaidOut {
    /// From the end of the last leg to the start, feet; none where a leg or a turn is not known.
    #[must_use]
    pub fn gap(&self) -> Option<[f64; 2]> {
        let mut at = [0.0, 0.0];
        for (length, direction) in self.lengths.iter().zip(&self.directions) {
            let ([x, y], length) = (unit((*direction)?), (*length)?);
            at = [at[0] + x * length, at[1] + y * length];
        }
        Some([-at[0], -at[1]])
    }

    /// Within this the two sums of the outline close, feet: the larger of 4 inches and half a
    /// hundredth of the perimeter, common practice for a tape.
    #[must_use]
    pub fn tolerance(&self) -> f64 {
        let perimeter: f64 = self.lengths.iter().flatten().sum();
        (4.0_f64 / 12.0).max(0.005 * perimeter)
    }
}

/// Degrees toward the building at the far corner of each leg that was tapped.
fn toward_building(book: &FieldBook) -> BTreeMap<usize, f64> {
    let first = book.corners.first().map(|(_, corner)| corner.building_on);
    let turn = |corner: &Corner| {
        let toward = match corner.turn {
            Turn::Outside => 90.0,
            Turn::Inside => -90.0,
            Turn::Angled { degrees } => degrees,
            Turn::Straight => 0.0,
        };
        // A walker who changed sides midway turns the other way for the same corner.
        if Some(corner.building_on) == first {
            toward
        } else {
            -toward
        }
    };
    book.corners
        .iter()
        .map(|(_, corner)| (corner.after_leg as usize, turn(corner)))
        .collect()
}

fn leg_of(thing: &Thing) -> Option<usize> {
    match thing {
        Thing::Leg { leg } => Some(*leg as usize),
        Thing::Tie { .. } => None,
    }
}

/// Values of the readings that count, by leg from 1.
fn readings_by_leg(book: &FieldBook) -> BTreeMap<usize, Vec<f64>> {
    let mut by_leg: BTreeMap<usize, Vec<f64>> = BTreeMap::new();
    for read in book.readings.iter().filter(|read| counts(read)) {
        if let (Some(leg), Ok(tape)) = (leg_of(&read.thing), Tape::read(&read.text)) {
            by_leg.entry(leg).or_default().push(tape.length().in_feet());
        }
    }
    by_leg
}

/// Whether a reading counts: in force, and neither somebody else's figure nor the length of a wall
/// whose overhangs nobody gave.
#[must_use]
pub fn counts(read: &BookedReading) -> bool {
    read.struck.is_none() && read.how != HowRead::Told && read.followed != Followed::Wall
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn directions(turns: impl Iterator<Item = Option<f64>>) -> Vec<Option<f64>> {
    let mut direction = Some(0.0);
    turns
        .map(|turn| {
            let here = direction;
            direction = direction
                .zip(turn)
                .map(|(direction, turn)| direction + turn);
            here
        })
        .collect()
}

fn unit(degrees: f64) -> [f64; 2] {
    let (sin, cos) = degrees.to_radians().sin_cos();
    [cos, sin]
}

/// The survey of one shut outline with these turns.
fn survey(book: &FieldBook, turns: &[f64]) -> Survey {
    let legs = turns.len();
    let readings = book.readings.iter().filter(|read| counts(read));
    let body = Body {
        id: "main".to_owned(),
        // Heights count from the eave: nobody has read how high it is.
        eave_height: Length::ZERO,
        outline: Sketch::Turned {
            start: Point { x: 0.0, y: 0.0 },
            heading: Angle::degrees(0.0),
            turns: turns.iter().map(|turn| Angle::degrees(*turn)).collect(),
            turn_sigma: Angle::degrees(TURN_SIGMA_DEG),
        },
        readings: readings.filter_map(|read| reading(read, legs)).collect(),
        edges: (1..=legs).map(|leg| edge(book, leg, legs)).collect(),
        placed_from: None,
    };
    Survey {
        bodies: vec![body],
        ..Survey::default()
    }
}

/// A booked reading as the kernels take it; its id is that of its entry. None where it spans
/// nothing of this outline.
fn reading(read: &BookedReading, legs: usize) -> Option<Reading> {
    let corner = |corner: u32| {
        (corner as usize)
            .checked_sub(1)
            .filter(|corner| *corner < legs)
    };
    let span = match read.thing {
        Thing::Leg { leg } => Span::Leg(corner(leg)?),
        Thing::Tie { from, to } if from == to => return None,
        Thing::Tie { from, to } => Span::Tie(corner(from)?, corner(to)?),
    };
    let value = Tape::read(&read.text).ok()?.length();
    Some(Reading {
        id: read.entry.to_string(),
        span,
        value,
        text: Some(read.text.clone()),
        sigma: sigma(read, value),
    })
}

/// One standard deviation where it is not that of a tape along an eave. From memory and our own
/// judgement, to be replaced by a crew's own repeats: a slack or slanted line, half a pace and 3 %
/// of what was paced, a length scaled off a photo.
fn sigma(read: &BookedReading, value: Length) -> Option<Length> {
    let length = value.in_feet();
    let feet = match (read.how, read.followed) {
        (HowRead::Paced, _) => 1.25_f64.hypot(0.03 * length),
        (HowRead::OffPhoto, _) => 0.25_f64.hypot(0.005 * length),
        (HowRead::Taped | HowRead::Told, Followed::GutterFace) => 0.25_f64.hypot(0.001 * length),
        (HowRead::Taped | HowRead::Told, Followed::EaveEdge | Followed::Wall) => return None,
    };
    Some(Length::feet(feet))
}

/// What rises at a leg, as far as somebody said.
fn edge(book: &FieldBook, leg: usize, legs: usize) -> LegEdge {
    let end = book
        .leg_ends
        .iter()
        .rev()
        .find(|(_, at, _)| *at as usize == leg);
    let rise = match end.map(|(_, _, end)| *end) {
        Some(EndKind::Gable) => Rise::Gable,
        Some(EndKind::Wall) => Rise::Wall,
        Some(EndKind::Sloped) | None => slope(book, leg, legs),
    };
    LegEdge {
        rise,
        overhang: None,
    }
}

/// The slope of a leg: what was read there, else the last number given, else the leg that it was
/// taken over from.
fn slope(book: &FieldBook, leg: usize, legs: usize) -> Rise {
    let mut read = Vec::new();
    let mut told = Rise::Unknown;
    let here = book
        .pitches
        .iter()
        .filter(|pitch| pitch.leg as usize == leg);
    for pitch in here.filter(|pitch| pitch.struck.is_none()) {
        match pitch.read {
            PitchRead::Phone { degrees, reversed } => read.push(PitchReading {
                angle: Angle::degrees(degrees),
                way: if reversed {
                    Way::Reversed
                } else {
                    Way::Forward
                },
            }),
            PitchRead::LevelAndTape { run_in, rise_in } => read.push(PitchReading {
                angle: Pitch::rise_in_12(12.0 * rise_in / run_in).angle(),
                way: Way::LevelAndTape,
            }),
            PitchRead::Number { in_12 } => told = Rise::Pitch(Pitch::rise_in_12(in_12)),
            PitchRead::SameAs { leg } if told == Rise::Unknown => {
                if let Some(leg) = (leg as usize).checked_sub(1).filter(|leg| *leg < legs) {
                    told = Rise::SameAs(leg);
                }
            }
            PitchRead::SameAs { .. } => {}
        }
    }
    if read.is_empty() {
        told
    } else {
        Rise::PitchReadings(read)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::kinds::TapeMarks;
    use uuid::Uuid;

    const O: Turn = Turn::Outside;
    const I: Turn = Turn::Inside;

    /// A walk with the building on the right: lengths in feet of the legs read, corners tapped.
    fn walk(lengths: &[f64], corners: &[Turn]) -> FieldBook {
        let readings = lengths.iter().zip(1..).map(|(length, leg)| BookedReading {
            entry: Uuid::from_u128(u128::from(leg)),
            thing: Thing::Leg { leg },
            text: format!("{length} ft"),
            tape: TapeMarks::FeetTenths,
            how: HowRead::Taped,
            followed: Followed::EaveEdge,
            blind: false,
            read_back: false,
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
            author: "me".to_owned(),
            device: Uuid::nil(),
            struck: None,
        });
        let corner = |(turn, after_leg): (&Turn, u32)| Corner {
            after_leg,
            turn: *turn,
            building_on: Side::Right,
        };
        FieldBook {
            readings: readings.collect(),
            corners: corners
                .iter()
                .zip(1..)
                .map(|at| (Uuid::nil(), corner(at)))
                .collect(),
            ..FieldBook::default()
        }
    }

    fn line(lengths: &[f64], corners: &[Turn]) -> (Line, usize) {
        let laid = lay_out(&walk(lengths, corners), Side::Right);
        (laid.line, laid.legs)
    }

    const T: [f64; 8] = [40.0, 20.0, 14.0, 16.0, 12.0, 16.0, 14.0, 20.0];
    const T_CORNERS: [Turn; 7] = [O, O, I, O, O, I, O];

    #[test]
    fn a_closing_leg_needs_no_corner() {
        assert_eq!(line(&[60.0, 30.0, 60.0, 30.0], &[O, O, O]), (Line::Shut, 4));
        assert_eq!(line(&T, &T_CORNERS), (Line::Shut, 8));
    }

    #[test]
    fn a_walk_is_open_at_every_leg_before_the_last() {
        assert_eq!(line(&[], &[]), (Line::Open, 0));
        for legs in 1..8 {
            assert_eq!(
                line(&T[..legs], &T_CORNERS[..legs - 1]),
                (Line::Open, legs),
                "{legs}"
            );
            assert_eq!(
                line(&T[..legs], &T_CORNERS[..legs]).0,
                Line::Open,
                "{legs} and a corner"
            );
        }
    }

    #[test]
    fn one_slip_in_any_leg_leaves_a_line_that_has_come_round() {
        for wrong in 0..8 {
            let mut lengths = T;
            lengths[wrong] += 18.0;
            assert_eq!(line(&lengths, &T_CORNERS), (Line::Shut, 8), "leg {wrong}");
        }
    }

    #[test]
    fn a_corner_that_completes_the_turns_shuts_the_line_whatever_was_read() {
        assert_eq!(
            line(&[60.0, 30.0, 48.0, 12.0], &[O, O, O, O]),
            (Line::Shut, 4)
        );
    }

    #[test]
    fn a_leg_that_nobody_can_reach_is_left_to_the_others() {
        let mut book = walk(&[60.0, 30.0, 60.0], &[O, O, O]);
        assert_eq!(lay_out(&book, Side::Right).line, Line::Open);
        book.cannot_get
            .push((Uuid::nil(), Thing::Leg { leg: 4 }, None));
        let laid = lay_out(&book, Side::Right);
        assert_eq!((laid.line, laid.legs), (Line::Shut, 4));
        assert_eq!(laid.lengths[3], None);
    }

    #[test]
    fn with_the_building_on_the_right_an_outside_corner_turns_right() {
        let laid = lay_out(&walk(&[60.0, 30.0], &[O, I]), Side::Right);
        assert_eq!(laid.directions, [Some(0.0), Some(-90.0), Some(0.0)]);
    }

    #[test]
    fn a_corner_that_nobody_tapped_leaves_the_way_open() {
        let mut book = walk(&[60.0, 30.0, 20.0], &[O, O]);
        book.corners.remove(0);
        let laid = lay_out(&book, Side::Right);
        assert_eq!(laid.directions, [Some(0.0), None, None]);
        assert_eq!((laid.line, laid.legs), (Line::Open, 3));
    }

    #[test]
    fn a_wall_and_a_told_length_are_kept_and_not_counted() {
        let mut book = walk(&[60.0, 30.0, 60.0, 30.0], &[O, O, O]);
        book.readings[0].followed = Followed::Wall;
        book.readings[1].how = HowRead::Told;
        let laid = lay_out(&book, Side::Right);
        assert_eq!(laid.lengths, [None, None, Some(60.0), Some(30.0)]);
    }
}
