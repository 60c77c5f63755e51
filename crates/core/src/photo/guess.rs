//! Which side each photo of a walk shows, by heading and by order.
//!
//! The hidden state is the side, the way round and the error of the front's heading, which all
//! photos share; photos follow each other along the walk (Rabiner 1989, *A tutorial on hidden Markov
//! models*: the forward pass is the guess at the shutter, forward and backward that after the walk).
//! Beside it stands a second model in which order says nothing, and the two are averaged by their
//! evidence: order helps only if it is allowed to be wrong. All numbers are judged, none measured.

use super::side::{Confirmed, Shot};
use crate::book::house_side::HouseSide;

/// Errors of the front's heading, degrees: -50 to 50 by 5, spread 12.
const ERRORS: usize = 21;
const ERROR_STEP: f64 = 5.0;
const ERROR_SIGMA: f64 = 12.0;
/// Spread of a photo's heading about square on, degrees, and the share that follow nothing.
const AIM_SIGMA: f64 = 16.0;
const STRAY: f64 = 0.05;
/// Chance that a walk begins at each side.
const BEGINS: [f64; 4] = [0.55, 0.15, 0.15, 0.15];
/// Of moves to another side: to the next, past one, back.
const MOVES: [f64; 3] = [0.72, 0.18, 0.10];
/// Chance beforehand that order says nothing.
const NO_ORDER: f64 = 0.15;
/// One chip is enough from this chance on, and this far from the boundary of two sides, degrees.
const ONE_CHIP: f64 = 0.80;
const NEAR_BOUNDARY: f64 = 15.0;

/// Chances of the four sides for one photo.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideChances {
    chances: [f64; 4],
    looked_at_corner: bool,
}

impl SideChances {
    /// The chance of a side.
    #[must_use]
    pub fn of(&self, side: HouseSide) -> f64 {
        self.chances[side.index()]
    }

    /// Sides, the likeliest first.
    #[must_use]
    pub fn ranked(&self) -> [HouseSide; 4] {
        let mut sides = HouseSide::CLOCKWISE;
        sides.sort_by(|a, b| self.of(*b).total_cmp(&self.of(*a)));
        sides
    }

    /// What to offer: the likeliest, and a second where it is not sure or the camera looked at a
    /// corner. Never taken as said by itself, however sure.
    #[must_use]
    pub fn chips(&self) -> (HouseSide, Option<HouseSide>) {
        let [first, second, ..] = self.ranked();
        let two = self.of(first) < ONE_CHIP || self.looked_at_corner;
        (first, two.then_some(second))
    }
}

/// Guesses for the photos of one walk.
#[derive(Clone, Debug, PartialEq)]
pub struct Guesses {
    /// With what was known at each shutter.
    pub at_once: Vec<SideChances>,
    /// With all that is known now.
    pub after: Vec<SideChances>,
    /// Chance that the order of the photos says nothing.
    pub order_says_nothing: f64,
}

/// Likelihood of one photo at each error and side.
type ShotLikelihood = [[f64; 4]; ERRORS];
/// Chance of each error, way round and side.
type Belief = [[[f64; 4]; 2]; ERRORS];

/// Guesses the side that each photo shows; photos in the order in which they were taken.
#[must_use]
pub fn guess_sides(shots: &[Shot]) -> Guesses {
    let seen: Vec<ShotLikelihood> = shots.iter().map(seen_of).collect();
    let ordered = Ordered::pass(shots, &seen);
    let apart = Apart::pass(&seen);
    let share = |k: usize| {
        let more = ordered.evidence[k] - apart.evidence[k];
        NO_ORDER / (NO_ORDER + (1.0 - NO_ORDER) * more.clamp(-50.0, 50.0).exp())
    };
    let mixed = |k: usize, share: f64, apart: &[f64; 4], ordered: &[f64; 4]| {
        let mut chances = [0.0; 4];
        for (chance, (apart, ordered)) in chances.iter_mut().zip(apart.iter().zip(ordered)) {
            *chance = share * apart + (1.0 - share) * ordered;
        }
        SideChances {
            chances,
            looked_at_corner: looked_at_corner(&shots[k]),
        }
    };
    let last = shots.len().checked_sub(1).map_or(NO_ORDER, share);
    Guesses {
        at_once: (0..shots.len())
            .map(|k| mixed(k, share(k), &apart.at_once[k], &ordered.at_once[k]))
            .collect(),
        after: (0..shots.len())
            .map(|k| mixed(k, last, &apart.after[k], &ordered.after[k]))
            .collect(),
        order_says_nothing: last,
    }
}

/// Degrees from -180 to 180.
fn wrapped(degrees: f64) -> f64 {
    (degrees + 180.0).rem_euclid(360.0) - 180.0
}

/// The camera looked at a corner, and nobody said which side the photo shows.
fn looked_at_corner(shot: &Shot) -> bool {
    let heading = shot.heading.map(|heading| heading.in_degrees());
    heading.is_some_and(|heading| {
        let off_square = (heading + 45.0).rem_euclid(90.0) - 45.0;
        shot.confirmed == Confirmed::Not && off_square.abs() > 45.0 - NEAR_BOUNDARY
    })
}

fn errors() -> impl Iterator<Item = f64> {
    (0..ERRORS).map(|k| ERROR_STEP * (k as f64 - (ERRORS / 2) as f64))
}

fn errors_beforehand() -> [f64; ERRORS] {
    let mut chances = [0.0; ERRORS];
    for (chance, error) in chances.iter_mut().zip(errors()) {
        *chance = (-0.5 * (error / ERROR_SIGMA).powi(2)).exp();
    }
    let sum: f64 = chances.iter().sum();
    chances.map(|chance| chance / sum)
}

fn seen_of(shot: &Shot) -> ShotLikelihood {
    let mut seen = [[1.0 / 360.0; 4]; ERRORS];
    let heading = shot.heading.map(|heading| heading.in_degrees());
    if let Some(heading) = heading.filter(|heading| heading.is_finite()) {
        let doubt = shot.heading_doubt.in_degrees();
        let doubt = if doubt.is_finite() { doubt } else { 180.0 };
        let sigma = AIM_SIGMA.hypot(doubt);
        let top = (1.0 - STRAY) / (sigma * std::f64::consts::TAU.sqrt());
        for (row, error) in seen.iter_mut().zip(errors()) {
            for (chance, side) in row.iter_mut().zip(HouseSide::CLOCKWISE) {
                let off = wrapped(heading - side.square_on().in_degrees() - error);
                *chance = top * (-0.5 * (off / sigma).powi(2)).exp() + STRAY / 360.0;
            }
        }
    }
    if let Confirmed::Side(said) = shot.confirmed {
        // What was said stands, and what the heading says of it pulls the front's error.
        for row in &mut seen {
            for (side, chance) in row.iter_mut().enumerate() {
                if side != said.index() {
                    *chance = 0.0;
                }
            }
        }
    }
    seen
}

/// Chance of each move of a walk that goes round one way, from side to side.
fn moves(since_last: Option<f64>, way: usize) -> [[f64; 4]; 4] {
    let moved = match since_last {
        Some(seconds) if seconds < 15.0 => 0.06,
        Some(seconds) if seconds >= 25.0 => 0.65,
        Some(_) | None => 0.25,
    };
    let on = if way == 0 { 1 } else { 3 };
    let mut to = [[0.0; 4]; 4];
    for (from, row) in to.iter_mut().enumerate() {
        row[from] += 1.0 - moved;
        for (share, steps) in MOVES.iter().zip([on, 2, 4 - on]) {
            row[(from + steps) % 4] += moved * share;
        }
    }
    to
}

fn sides_of(belief: &Belief) -> [f64; 4] {
    let mut sides = [0.0; 4];
    for side in belief.iter().flatten() {
        for (sum, chance) in sides.iter_mut().zip(side) {
            *sum += chance;
        }
    }
    let sum: f64 = sides.iter().sum();
    sides.map(|side| side / sum)
}

/// The model in which photos follow a walk.
struct Ordered {
    at_once: Vec<[f64; 4]>,
    after: Vec<[f64; 4]>,
    /// Logarithm of the chance of all up to each photo.
    evidence: Vec<f64>,
}

impl Ordered {
    fn pass(shots: &[Shot], seen: &[ShotLikelihood]) -> Ordered {
        let mut belief = [[[0.0; 4]; 2]; ERRORS];
        for (ways, error) in belief.iter_mut().zip(errors_beforehand()) {
            *ways = [BEGINS.map(|begins| 0.5 * error * begins); 2];
        }
        let mut filtered: Vec<Belief> = Vec::with_capacity(shots.len());
        let (mut evidence, mut so_far) = (Vec::with_capacity(shots.len()), 0.0);
        for (k, (shot, seen)) in shots.iter().zip(seen).enumerate() {
            if k > 0 {
                belief = onward(&belief, shot);
            }
            weigh(&mut belief, seen);
            so_far += scale(&mut belief).ln();
            evidence.push(so_far);
            filtered.push(belief);
        }
        Ordered {
            at_once: filtered.iter().map(sides_of).collect(),
            after: smoothed(shots, seen, &filtered),
            evidence,
        }
    }
}

fn weigh(belief: &mut Belief, seen: &ShotLikelihood) {
    for (ways, seen) in belief.iter_mut().zip(seen) {
        for sides in ways {
            for (chance, seen) in sides.iter_mut().zip(seen) {
                *chance *= seen;
            }
        }
    }
}

/// Makes the sum one, and gives what it was.
fn scale(belief: &mut Belief) -> f64 {
    // Never nothing: a stray photo may look anywhere, and a walk may go anywhere.
    let sum: f64 = belief.iter().flatten().flatten().sum();
    for chance in belief.iter_mut().flatten().flatten() {
        *chance /= sum;
    }
    sum
}

fn onward(belief: &Belief, shot: &Shot) -> Belief {
    let moves = [0, 1].map(|way| moves(shot.since_last, way));
    let mut next = [[[0.0; 4]; 2]; ERRORS];
    for (next, ways) in next.iter_mut().zip(belief) {
        for ((next, sides), moves) in next.iter_mut().zip(ways).zip(&moves) {
            for (chance, moves) in sides.iter().zip(moves) {
                for (next, moved) in next.iter_mut().zip(moves) {
                    *next += chance * moved;
                }
            }
        }
    }
    next
}

/// Backward over the walk: each photo in the light of those after it too.
fn smoothed(shots: &[Shot], seen: &[ShotLikelihood], filtered: &[Belief]) -> Vec<[f64; 4]> {
    let mut later: Belief = [[[1.0; 4]; 2]; ERRORS];
    let mut after = vec![[0.0; 4]; shots.len()];
    for k in (0..shots.len()).rev() {
        let mut both = filtered[k];
        for (both, later) in both
            .iter_mut()
            .flatten()
            .flatten()
            .zip(later.iter().flatten().flatten())
        {
            *both *= later;
        }
        after[k] = sides_of(&both);
        weigh(&mut later, &seen[k]);
        later = back(&later, &shots[k]);
        scale(&mut later);
    }
    after
}

fn back(later: &Belief, shot: &Shot) -> Belief {
    let moves = [0, 1].map(|way| moves(shot.since_last, way));
    let mut before = [[[0.0; 4]; 2]; ERRORS];
    for (before, ways) in before.iter_mut().zip(later) {
        for ((before, sides), moves) in before.iter_mut().zip(ways).zip(&moves) {
            for (before, moves) in before.iter_mut().zip(moves) {
                *before = sides
                    .iter()
                    .zip(moves)
                    .map(|(side, moved)| side * moved)
                    .sum();
            }
        }
    }
    before
}

/// The model in which each photo stands for itself and only the front's error is shared.
struct Apart {
    at_once: Vec<[f64; 4]>,
    after: Vec<[f64; 4]>,
    evidence: Vec<f64>,
}

impl Apart {
    fn pass(seen: &[ShotLikelihood]) -> Apart {
        let mut errors = errors_beforehand();
        let (mut evidence, mut so_far) = (Vec::with_capacity(seen.len()), 0.0);
        let mut at_once = Vec::with_capacity(seen.len());
        for seen in seen {
            for (chance, sides) in errors.iter_mut().zip(seen) {
                *chance *= sides.iter().sum::<f64>() / 4.0;
            }
            let sum: f64 = errors.iter().sum();
            errors = errors.map(|chance| chance / sum);
            so_far += sum.ln();
            evidence.push(so_far);
            at_once.push(alone(seen, &errors));
        }
        Apart {
            at_once,
            after: seen.iter().map(|seen| alone(seen, &errors)).collect(),
            evidence,
        }
    }
}

fn alone(seen: &ShotLikelihood, errors: &[f64; ERRORS]) -> [f64; 4] {
    let mut sides = [0.0; 4];
    for (seen, error) in seen.iter().zip(errors) {
        let sum: f64 = seen.iter().sum();
        for (side, seen) in sides.iter_mut().zip(seen) {
            *side += error * seen / sum;
        }
    }
    let sum: f64 = sides.iter().sum();
    sides.map(|side| side / sum)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Angle;

    fn looking(degrees: f64) -> Shot {
        Shot {
            heading: Some(Angle::degrees(degrees)),
            heading_doubt: Angle::degrees(0.0),
            since_last: Some(20.0),
            confirmed: Confirmed::Not,
        }
    }

    fn said(degrees: f64, side: HouseSide) -> Shot {
        Shot {
            confirmed: Confirmed::Side(side),
            ..looking(degrees)
        }
    }

    #[test]
    fn four_square_photos_are_the_four_sides() {
        let guesses = guess_sides(&[0.0, 92.0, 181.0, 268.0].map(looking));
        let first: Vec<HouseSide> = guesses.after.iter().map(|one| one.ranked()[0]).collect();
        assert_eq!(first, HouseSide::CLOCKWISE);
        assert_eq!(guesses.after[1].chips(), (HouseSide::Left, None));
    }

    #[test]
    fn a_photo_of_a_corner_is_offered_two_sides() {
        let guesses = guess_sides(&[looking(0.0), looking(40.0)]);
        let (first, second) = guesses.at_once[1].chips();
        let mut both = [Some(first), second];
        both.sort();
        assert_eq!(both, [Some(HouseSide::Front), Some(HouseSide::Left)]);
    }

    #[test]
    fn what_was_said_stands_and_pulls_the_front_for_the_others() {
        let open = guess_sides(&[looking(35.0), looking(130.0)]);
        let held = guess_sides(&[
            said(35.0, HouseSide::Front),
            said(127.0, HouseSide::Left),
            looking(130.0),
        ]);
        assert!((held.after[0].of(HouseSide::Front) - 1.0).abs() < 1e-9);
        assert!(held.after[2].of(HouseSide::Left) > open.after[1].of(HouseSide::Left));
        assert_eq!(held.after[0].chips(), (HouseSide::Front, None));
    }

    #[test]
    fn what_was_said_stands_against_every_heading() {
        let shots = [said(0.0, HouseSide::Back), said(180.0, HouseSide::Front)].repeat(40);
        let guesses = guess_sides(&shots);
        for (k, one) in guesses.after.iter().enumerate() {
            let side = if k % 2 == 0 {
                HouseSide::Back
            } else {
                HouseSide::Front
            };
            assert!((one.of(side) - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn photos_with_no_heading_are_told_by_their_neighbors_and_not_surely() {
        let blind = Shot {
            heading: None,
            since_last: Some(5.0),
            ..looking(0.0)
        };
        let guesses = guess_sides(&[looking(90.0), looking(91.0), blind, looking(89.0)]);
        assert_eq!(guesses.after[2].ranked()[0], HouseSide::Left);
        let alone = guess_sides(&[blind]);
        assert!(alone.after[0].chips().1.is_some());
        assert_eq!(guess_sides(&[]).after, []);
    }

    #[test]
    fn numbers_that_are_none_say_nothing() {
        let none = Shot {
            heading: Some(Angle::degrees(f64::NAN)),
            heading_doubt: Angle::degrees(f64::INFINITY),
            since_last: Some(f64::NAN),
            ..looking(0.0)
        };
        let far = Shot {
            heading_doubt: Angle::degrees(f64::INFINITY),
            ..looking(1e300)
        };
        for one in guess_sides(&[none, far, none]).after {
            let sum: f64 = HouseSide::CLOCKWISE.iter().map(|side| one.of(*side)).sum();
            assert!((sum - 1.0).abs() < 1e-9);
        }
    }
}
