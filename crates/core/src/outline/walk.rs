//! A walk round the building, leg by leg, to the shape of its outline.
//!
//! The one place where the side on which a person walks becomes left and right: from here on left
//! turns are positive.

use super::closure::{Closure, ClosureState, Tolerance, close_walk, sums};
use super::nominal::{Nominal, WayRound};
use super::words::{ClosureWords, LastLeg};
use crate::book::kinds::{Side, Turn};
use crate::survey::{Point, Sketch};
use crate::units::{Angle, Length};

/// One leg of a walk, in the order walked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WalkedLeg {
    /// What is known of its length.
    pub length: LegLength,
    /// The corner tapped at its far end.
    pub turn: Option<Turn>,
}

/// What is known of the length of a walked leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LegLength {
    /// Its reading, or the mean of them.
    Read(Length),
    /// It cannot be got: it is worked out from the others.
    CannotGet,
    /// Nothing yet.
    NotYet,
}

impl LegLength {
    fn feet(self) -> Option<f64> {
        match self {
            LegLength::Read(length) => Some(length.in_feet()),
            LegLength::CannotGet | LegLength::NotYet => None,
        }
    }
}

/// A walk as it stands, in feet; corner 0 at the origin, leg 0 along the first axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Walk {
    /// Turns as far as they follow from one another, left positive; when it has come round, one a
    /// leg with a sum of +-360 degrees, the last at corner 0.
    pub turns: Vec<Angle>,
    /// Whether it has come round.
    pub round: Round,
    /// Legs whose direction is known, end to end as read.
    pub legs: Vec<DrawnLeg>,
    /// From the end of the last leg to corner 0, along leg 0 and square to it, left positive; none
    /// where a leg in that direction is not read.
    pub to_close: [Option<Length>; 2],
    /// The two sums, in words too.
    pub closure: Closure,
}

/// Whether a walk has come round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Round {
    /// Corners are still to come.
    NotYet,
    /// The last leg read comes back to the start; its corner there was not tapped. With a gap it
    /// may be that the walk only looks finished.
    LastCornerUntapped,
    /// Every corner was tapped, once around.
    EveryCornerTapped,
}

/// A leg as it can be drawn before anything is adjusted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawnLeg {
    /// Where it begins.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// Where its length comes from.
    pub length: DrawnLength,
}

/// Where the length of a drawn leg comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawnLength {
    /// It was read.
    Read,
    /// It was not read: drawn as long as the others are on average.
    Guessed,
}

/// One standard deviation of a turn that was only seen, degrees: half an inch on the 20 ft side of
/// 12-16-20 is the usual limit for a square corner, 0.25 degrees.
const SEEN_TURN_SIGMA: f64 = 0.21;
/// Turns of the last corner that need no tap, degrees toward the building.
const USUAL_TURNS: [f64; 11] = [
    90.0, -90.0, 45.0, -45.0, 60.0, -60.0, 120.0, 30.0, 135.0, 72.0, 22.5,
];
/// Turns given as an angle are judged by eye: their sum may be this far from once around, degrees.
const BY_EYE: f64 = 5.0;
/// Turns of 90 degrees are exact.
const ROUND_OFF: f64 = 1e-6;

/// What a walk says so far, from its legs and corner taps.
///
/// It has come round when every leg has its corner and the turns sum to once around; or when the
/// last corner is untapped, the turn missing there is a usual one, and the legs close or miss along
/// the direction of one leg only, as they do after one slip. A leg that cannot be got leaves its
/// direction unchecked.
#[must_use]
pub fn walk(legs: &[WalkedLeg], building_on: Side, tolerance: &Tolerance) -> Walk {
    let begun = legs
        .iter()
        .rposition(|leg| leg.length != LegLength::NotYet)
        .map_or(0, |last| last + 1);
    let legs = &legs[..begun];
    let taps: Vec<Turn> = legs.iter().map_while(|leg| leg.turn).collect();
    let reached = begun.min(taps.len() + 1);
    let read: Vec<Option<f64>> = legs[..reached]
        .iter()
        .map(|leg| leg.length.feet())
        .collect();
    let way_round = match building_on {
        Side::Left => WayRound::Left,
        Side::Right => WayRound::Right,
    };

    let (round, toward) = come_round(&taps, &read, begun, way_round, tolerance);
    let turns: Vec<Angle> = toward
        .iter()
        .map(|degrees| Angle::degrees(degrees * way_round.sign()))
        .collect();
    let shape = shape_of(&toward, reached, way_round);
    let closure = match round {
        Round::NotYet => still_open(&read, &shape),
        Round::LastCornerUntapped => close_walk(&read, &shape, tolerance, LastLeg::Perhaps),
        Round::EveryCornerTapped => {
            let sure = misses_along_one_leg(&read, &shape, tolerance);
            let last_leg = if sure {
                LastLeg::Known
            } else {
                LastLeg::Perhaps
            };
            close_walk(&read, &shape, tolerance, last_leg)
        }
    };
    Walk {
        turns,
        round,
        legs: draw(&read, &shape),
        to_close: sums(&read, &shape).map(|sum| sum.map(|feet| Length::feet(-feet))),
        closure,
    }
}

impl Walk {
    /// The shape for [`super::adjust()`]; none until the walk has come round.
    #[must_use]
    pub fn sketch(&self) -> Option<Sketch> {
        match self.round {
            Round::NotYet => None,
            Round::LastCornerUntapped | Round::EveryCornerTapped => Some(Sketch::Turned {
                start: Point { x: 0.0, y: 0.0 },
                heading: Angle::degrees(0.0),
                turns: self.turns.clone(),
                turn_sigma: Angle::degrees(SEEN_TURN_SIGMA),
            }),
        }
    }
}

/// Degrees toward the building.
fn toward_building(turn: Turn) -> f64 {
    match turn {
        Turn::Outside => 90.0,
        Turn::Inside => -90.0,
        Turn::Angled { degrees } => degrees,
        Turn::Straight => 0.0,
    }
}

/// Whether the walk has come round, and its turns in degrees toward the building.
fn come_round(
    taps: &[Turn],
    read: &[Option<f64>],
    legs: usize,
    way_round: WayRound,
    tolerance: &Tolerance,
) -> (Round, Vec<f64>) {
    let tapped: Vec<f64> = taps.iter().copied().map(toward_building).collect();
    let by_eye = taps.iter().any(|t| matches!(t, Turn::Angled { .. }));
    let slack = if by_eye { BY_EYE } else { ROUND_OFF };
    let missing = 360.0 - tapped.iter().sum::<f64>();
    if legs < 3 || read.len() < legs {
        return (Round::NotYet, tapped);
    }
    if taps.len() == legs {
        return if missing.abs() <= slack {
            (Round::EveryCornerTapped, spread(tapped, taps, missing))
        } else {
            (Round::NotYet, tapped)
        };
    }
    let last_turns = USUAL_TURNS.into_iter().chain([0.0]);
    let comes_back = last_turns
        .filter(|last| (last - missing).abs() <= slack)
        .find_map(|last| {
            let turns = spread(tapped.clone(), taps, missing - last);
            let shape = shape_of(&turns, legs, way_round);
            let comes_back = if last.abs() < ROUND_OFF {
                // Back at the start in the middle of a wall: only a sum that closes says so.
                read.iter().all(Option::is_some) && could_close(read, &shape, tolerance)
            } else {
                could_close(read, &shape, tolerance)
                    || misses_along_one_leg(read, &shape, tolerance)
            };
            comes_back.then_some(turns)
        });
    match comes_back {
        Some(mut turns) => {
            turns.push(360.0 - turns.iter().sum::<f64>());
            (Round::LastCornerUntapped, turns)
        }
        None => (Round::NotYet, tapped),
    }
}

/// What is missing to once around, evenly over the turns that were judged by eye.
fn spread(mut tapped: Vec<f64>, taps: &[Turn], missing: f64) -> Vec<f64> {
    let by_eye = |turn: &Turn| matches!(turn, Turn::Angled { .. });
    let count = taps.iter().filter(|turn| by_eye(turn)).count();
    for (degrees, turn) in tapped.iter_mut().zip(taps) {
        if by_eye(turn) {
            *degrees += missing / count as f64;
        }
    }
    tapped
}

/// The first legs of a walk with these turns, degrees toward the building.
fn shape_of(toward: &[f64], legs: usize, way_round: WayRound) -> Nominal {
    let turns: Vec<Angle> = (0..legs)
        .map(|k| toward.get(k).copied().unwrap_or_default())
        .map(|degrees| Angle::degrees(degrees * way_round.sign()))
        .collect();
    Nominal {
        way_round,
        ..Nominal::of_turns(&turns)
    }
}

/// Whether lengths above 0 of the unread legs bring both sums within tolerance.
fn could_close(read: &[Option<f64>], shape: &Nominal, tolerance: &Tolerance) -> bool {
    let widest = tolerance.for_legs(read);
    let gap = gap_of_read(read, shape);
    let within = |rest: [f64; 2]| rest.iter().all(|part| part.abs() <= widest);
    let unread: Vec<[f64; 2]> = read
        .iter()
        .zip(&shape.units)
        .filter(|(length, _)| length.is_none())
        .map(|(_, unit)| *unit)
        .collect();
    // Least lengths that do it use at most two of the directions.
    within(gap)
        || unread.iter().any(|u| {
            let length = -(gap[0] * u[0] + gap[1] * u[1]);
            length > 0.0 && within([gap[0] + length * u[0], gap[1] + length * u[1]])
        })
        || unread.iter().enumerate().any(|(k, u)| {
            unread[k + 1..].iter().any(|v| {
                let cross = u[0] * v[1] - u[1] * v[0];
                let first = -(gap[0] * v[1] - gap[1] * v[0]) / cross;
                let second = -(u[0] * gap[1] - u[1] * gap[0]) / cross;
                cross.abs() > 0.1 && first > 0.0 && second > 0.0
            })
        })
}

/// Whether every leg is read and the sums miss along the direction of one leg only, or not at all.
fn misses_along_one_leg(read: &[Option<f64>], shape: &Nominal, tolerance: &Tolerance) -> bool {
    let widest = tolerance.for_legs(read);
    let gap = gap_of_read(read, shape);
    let beside = |u: &[f64; 2]| (gap[0] * u[1] - gap[1] * u[0]).abs();
    read.iter().all(Option::is_some) && shape.units.iter().any(|u| beside(u) <= widest)
}

/// Sum of the legs that were read, along leg 0 and square to it.
fn gap_of_read(read: &[Option<f64>], shape: &Nominal) -> [f64; 2] {
    read.iter()
        .zip(&shape.units)
        .filter_map(|(length, unit)| Some((((*length)?), unit)))
        .fold([0.0, 0.0], |sum, (length, u)| {
            [sum[0] + length * u[0], sum[1] + length * u[1]]
        })
}

fn still_open(read: &[Option<f64>], shape: &Nominal) -> Closure {
    let [along, across] = sums(read, shape);
    let left = |sum: Option<f64>| sum.map(|s| Length::feet(s.abs()));
    Closure {
        along: along.map(Length::feet),
        across: across.map(Length::feet),
        state: ClosureState::Open,
        words: ClosureWords::ToClose {
            along: left(along),
            across: left(across),
        },
        hints: Vec::new(),
        cannot_see: Vec::new(),
    }
}

fn draw(read: &[Option<f64>], shape: &Nominal) -> Vec<DrawnLeg> {
    let known: Vec<f64> = read.iter().flatten().copied().collect();
    let typical = known.iter().sum::<f64>() / known.len().max(1) as f64;
    let mut from = Point { x: 0.0, y: 0.0 };
    read.iter()
        .zip(&shape.units)
        .map(|(length, unit)| {
            let feet = length.unwrap_or(typical);
            let to = Point {
                x: from.x + feet * unit[0],
                y: from.y + feet * unit[1],
            };
            let leg = DrawnLeg {
                from,
                to,
                length: match length {
                    Some(_) => DrawnLength::Read,
                    None => DrawnLength::Guessed,
                },
            };
            from = to;
            leg
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::words::GapHint;
    use super::*;

    const OUT: Option<Turn> = Some(Turn::Outside);
    const IN: Option<Turn> = Some(Turn::Inside);

    fn read(feet: f64, turn: Option<Turn>) -> WalkedLeg {
        WalkedLeg {
            length: LegLength::Read(Length::feet(feet)),
            turn,
        }
    }

    fn unread(turn: Option<Turn>) -> WalkedLeg {
        WalkedLeg {
            length: LegLength::CannotGet,
            turn,
        }
    }

    fn with_building_on_the_right(legs: &[WalkedLeg]) -> Walk {
        walk(legs, Side::Right, &Tolerance::default())
    }

    /// A T with a stem of 18 by 12 in front of a bar of 50 by 26.
    fn tee() -> Vec<WalkedLeg> {
        let corners = [OUT, IN, OUT, OUT, OUT, OUT, IN, None];
        let feet = [18.0, 12.0, 16.0, 26.0, 50.0, 26.0, 16.0, 12.0];
        feet.into_iter()
            .zip(corners)
            .map(|(feet, turn)| read(feet, turn))
            .collect()
    }

    fn says(walk: &Walk) -> String {
        walk.closure.words.to_string()
    }

    #[test]
    fn a_closing_leg_needs_no_corner() {
        let walk = with_building_on_the_right(&tee());
        assert_eq!(walk.round, Round::LastCornerUntapped);
        assert_eq!(walk.closure.state, ClosureState::Closes);
        assert_eq!(says(&walk), "Closes within 1 in.");
        assert_eq!(walk.closure.cannot_see.len(), 4);
        let sum: f64 = walk.turns.iter().map(|t| t.in_degrees()).sum();
        assert_eq!((walk.turns.len(), sum.round() as i32), (8, -360));
    }

    #[test]
    fn the_same_walk_with_the_building_on_the_left_is_its_mirror() {
        let right = with_building_on_the_right(&tee());
        let left = walk(&tee(), Side::Left, &Tolerance::default());
        for (a, b) in right.legs.iter().zip(&left.legs) {
            assert!((a.to.x - b.to.x).abs() < 1e-12 && (a.to.y + b.to.y).abs() < 1e-12);
        }
        assert_eq!(right.closure.words, left.closure.words);
    }

    #[test]
    fn a_walk_under_way_says_what_is_left_to_close() {
        let walk = with_building_on_the_right(&tee()[..2]);
        assert_eq!(walk.round, Round::NotYet);
        assert_eq!(says(&walk), "To close: 18 ft along, 12 ft across.");
        assert_eq!(walk.legs.len(), 2);
        assert!(walk.sketch().is_none());
    }

    #[test]
    fn no_place_of_a_clean_tee_looks_finished_half_way_round() {
        for legs in 1..8 {
            let walk = with_building_on_the_right(&tee()[..legs]);
            let expected = if legs == 6 {
                // Five corners out and one in are once around already.
                Round::EveryCornerTapped
            } else {
                Round::NotYet
            };
            assert_eq!(walk.round, expected, "after leg {legs}");
        }
        let after_six = with_building_on_the_right(&tee()[..6]);
        assert_eq!(
            says(&after_six),
            "If this was the last leg, it is 16 ft short along the front and 12 ft long across it."
        );
    }

    #[test]
    fn swapped_digits_are_a_gap_that_says_so() {
        let mut legs = tee();
        legs[3] = read(62.0, OUT);
        let walk = with_building_on_the_right(&legs);
        assert_eq!(walk.closure.state, ClosureState::Gap);
        assert_eq!(
            says(&walk),
            "If this was the last leg, it is 36 ft long across the front."
        );
        assert_eq!(
            walk.closure.hints.first(),
            Some(&GapHint::SwappedDigits { legs: vec![3, 5] })
        );
    }

    #[test]
    fn a_gap_with_every_corner_tapped_is_a_gap() {
        let legs = [
            read(60.0, OUT),
            read(30.0, OUT),
            read(42.0, OUT),
            read(30.0, OUT),
        ];
        let walk = with_building_on_the_right(&legs);
        assert_eq!(walk.round, Round::EveryCornerTapped);
        assert_eq!(says(&walk), "18 ft long along the front.");
    }

    #[test]
    fn a_leg_that_cannot_be_got_is_worked_out_and_nothing_is_checked() {
        let legs = [
            read(60.0, OUT),
            read(30.0, OUT),
            read(60.0, OUT),
            unread(None),
        ];
        let walk = with_building_on_the_right(&legs);
        assert_eq!(walk.closure.state, ClosureState::NotChecked);
        assert_eq!(
            says(&walk),
            "Not checked: a leg is worked out from the others."
        );
        assert_eq!(walk.closure.across, None);
        assert!(
            walk.closure
                .along
                .is_some_and(|along| along.in_feet().abs() < 1e-12)
        );
        assert_eq!(walk.legs[3].length, DrawnLength::Guessed);
    }

    #[test]
    fn a_missing_tap_leaves_the_rest_of_the_walk_without_direction() {
        let mut legs = tee();
        legs[2].turn = None;
        let walk = with_building_on_the_right(&legs);
        assert_eq!(walk.round, Round::NotYet);
        assert_eq!(walk.legs.len(), 3);
    }

    #[test]
    fn corners_judged_by_eye_share_what_is_missing() {
        let by_eye = |degrees| Some(Turn::Angled { degrees });
        let legs = [
            read(20.0, OUT),
            read(20.0, OUT),
            read(10.0, by_eye(46.0)),
            read(14.142, by_eye(46.0)),
            read(10.0, None),
        ];
        let walk = with_building_on_the_right(&legs);
        assert_eq!(walk.round, Round::LastCornerUntapped);
        assert_eq!(walk.closure.state, ClosureState::Closes);
        let turns: Vec<f64> = walk.turns.iter().map(|t| t.in_degrees()).collect();
        for (turn, expected) in turns.iter().zip([-90.0, -90.0, -45.0, -45.0, -90.0]) {
            assert!((turn - expected).abs() < 1e-9, "{turns:?}");
        }
    }

    #[test]
    fn an_empty_walk_is_open() {
        let walk = with_building_on_the_right(&[]);
        assert_eq!(says(&walk), "To close: 0 along, 0 across.");
    }
}
