//! The sketch of the outline beside the readings: corners in feet, turned so that the walker's side is
//! at the foot. What the roof looks like is drawn by `drawn`.

use crate::names;
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::plan::reply::{LineKind, LineView, PlanView};
use eavebook_core::book::kinds::{EndKind, Side, Thing};
use eavebook_core::check::State;
use eavebook_core::survey::Point;

/// What to draw. `in_hand`: the thing for which the keypad is open.
#[must_use]
pub fn view(seen: &SolvedJob, in_hand: Option<&Thing>) -> PlanView {
    let corners = corners(seen);
    let turned = Turned::with_leg_at_foot(seen, leg_at_foot(seen, in_hand));
    let mut lines = leg_lines(seen, in_hand, &corners, &turned);
    lines.extend(tie_lines(seen, in_hand, &corners, &turned));
    let last = corners.last().copied().filter(|_| corners.len() > 1);
    PlanView {
        lines,
        to_close: last
            .filter(|_| !seen.is_shut())
            .map(|last| [turned.point(last), turned.point(Point { x: 0.0, y: 0.0 })]),
        walker: if seen.is_shut() {
            None
        } else {
            corners.last().map(|at| turned.point(*at))
        },
    }
}

/// Corners in the frame of leg 1. Of an outline that has come round the adjusted ones; else walked
/// from the start as far as turns are known, the walker's place last.
fn corners(seen: &SolvedJob) -> Vec<Point> {
    if let Some(outline) = seen.outline() {
        let known = outline
            .corners
            .iter()
            .map_while(|corner| corner.map(|corner| corner.at));
        let known: Vec<Point> = known.collect();
        if known.len() == seen.laid.legs {
            return known;
        }
    }
    let start = Point { x: 0.0, y: 0.0 };
    std::iter::once(start)
        .chain(seen.laid.walk.legs.iter().map(|leg| leg.to))
        .collect()
}

/// The leg in hand, else the one being walked, else the front.
fn leg_at_foot(seen: &SolvedJob, in_hand: Option<&Thing>) -> u32 {
    if let Some(Thing::Leg { leg } | Thing::Overhang { leg }) = in_hand {
        return *leg;
    }
    if seen.is_shut() {
        return 1;
    }
    let read = seen.laid.lengths.iter().rposition(Option::is_some);
    u32::try_from(read.unwrap_or(0) + 1).unwrap_or(1)
}

/// A quarter turn or more, so that one leg lies at the foot with the building above it.
struct Turned {
    sin: f64,
    cos: f64,
}

impl Turned {
    fn with_leg_at_foot(seen: &SolvedJob, leg: u32) -> Turned {
        let index = (leg as usize).saturating_sub(1);
        let direction = seen
            .laid
            .directions
            .get(index)
            .copied()
            .flatten()
            .unwrap_or(0.0);
        // With the building on the left the leg runs to the right along the foot, else to the left.
        let runs = match seen.building_on {
            Side::Left => 0.0,
            Side::Right => 180.0,
        };
        let (sin, cos) = f64::to_radians(runs - direction).sin_cos();
        Turned { sin, cos }
    }

    fn point(&self, at: Point) -> [f64; 2] {
        self.place([at.x, at.y])
    }

    fn place(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [x * self.cos - y * self.sin, x * self.sin + y * self.cos].map(to_hundredth)
    }
}

/// A drawing needs no more, and the same job draws the same text.
fn to_hundredth(feet: f64) -> f64 {
    // Adding 0.0 turns a negative zero into zero.
    (feet * 100.0).round() / 100.0 + 0.0
}

fn leg_lines(
    seen: &SolvedJob,
    in_hand: Option<&Thing>,
    corners: &[Point],
    turned: &Turned,
) -> Vec<LineView> {
    let ends = (1..=seen.laid.legs).filter_map(|leg| {
        let from = corners.get(leg - 1)?;
        let to = match corners.get(leg) {
            Some(to) => to,
            None if seen.is_shut() => corners.first()?,
            None => return None,
        };
        Some((u32::try_from(leg).ok()?, from, to))
    });
    ends.map(|(leg, from, to)| {
        let thing = Thing::Leg { leg };
        line(
            seen,
            &thing,
            LineKind::Leg,
            in_hand,
            [turned.point(*from), turned.point(*to)],
        )
    })
    .collect()
}

fn tie_lines(
    seen: &SolvedJob,
    in_hand: Option<&Thing>,
    corners: &[Point],
    turned: &Turned,
) -> Vec<LineView> {
    let at = |corner: u32| corners.get((corner as usize).checked_sub(1)?);
    let ties = things::all(seen).into_iter().filter_map(|thing| {
        let Thing::Tie { from, to } = thing else {
            return None;
        };
        let ends = [turned.point(*at(from)?), turned.point(*at(to)?)];
        Some(line(seen, &thing, LineKind::Tie, in_hand, ends))
    });
    ties.collect()
}

fn line(
    seen: &SolvedJob,
    thing: &Thing,
    kind: LineKind,
    in_hand: Option<&Thing>,
    [from, to]: [[f64; 2]; 2],
) -> LineView {
    let state = seen.state(thing);
    let value = things::value(seen, thing).filter(|_| !seen.hides(thing));
    LineView {
        thing: names::name(thing),
        kind,
        from,
        to,
        label: value.map(|value| value.words),
        // A leg out of reach is drawn as long as the others are on average: dashed too.
        worked_out: matches!(
            state,
            State::WorkedOut | State::CannotGet | State::NotLooked
        ),
        suspect: state == State::Suspect,
        in_hand: in_hand == Some(thing),
    }
}

/// What rises at a leg; a slope where nobody said otherwise.
#[must_use]
pub fn end_of(seen: &SolvedJob, leg: u32) -> EndKind {
    eavebook_core::book::names::end_of(seen.book, leg)
}
