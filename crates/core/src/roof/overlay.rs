//! Which parts of each body's faces are seen, where bodies meet.
//!
//! A face is hidden where another body is a solid at its height ([`super::solid`]). That can change
//! only on known lines: the face's own creases, the lines on which it meets another face's plane,
//! the feet and wall lines of other bodies, and the level of their eaves. All are cut where they
//! cross, and each piece is asked on both its sides.

use super::edges::LegAt;
use super::plan::{Vec2, nearest_on};
use super::raised::Raised;
use super::rings::{Places, Region, SAME, regions};
use super::solid::{Bounds, Segment, Slab, Solid};
use super::sweep::{Side, Vec3};

/// How far beside a piece it is asked what is seen, feet.
const BESIDE: f64 = 1e-5;
/// Where along a piece it is asked.
pub(super) const ASKED: f64 = 0.4637;
/// Bodies nearer than this in plan are looked at together, feet.
const MARGIN: f64 = 1e-2;

/// Why a line may bound what is seen of a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Line {
    /// A crease of the body itself: what lies beyond, and its seam with the face to the left.
    Own(Side, Option<Vec3>),
    /// Where a face of another body, by body and place in its sweep, has the same height.
    Meets(usize, usize),
    /// Over or under a leg of another body.
    Foot(LegAt),
    /// Where the face rises past the eave of another body.
    EaveLevel(usize),
}

/// A directed piece around what is seen of a face, which lies to the left.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bound {
    pub from: Vec2,
    pub to: Vec2,
    pub line: Line,
}

/// One connected part of a face that is seen.
pub(super) struct VisiblePart {
    pub body: usize,
    pub swept: usize,
    pub area: f64,
    /// The outer ring, then the holes.
    pub rings: Vec<Vec<Bound>>,
}

/// The seen parts of one face; none if the pieces around them do not close.
pub(super) fn seen(slab: &Slab, raised: &Raised, solids: &[Solid]) -> Option<Vec<VisiblePart>> {
    let others: Vec<&Solid> = solids
        .iter()
        .filter(|solid| solid.body != slab.body && solid.bounds.wider(MARGIN).meets(&slab.bounds))
        .collect();
    let lines = lines(slab, raised, &others);
    let is_seen = |place: Vec2| {
        let height = slab.plane.height(place);
        slab.holds(place)
            && !others
                .iter()
                .any(|solid| solid.hides(place, height, slab.body))
    };
    let mut places = Places::default();
    let mut pieces: Vec<[usize; 2]> = Vec::new();
    let mut bounds: Vec<Line> = Vec::new();
    for (number, (segment, line)) in lines.iter().enumerate() {
        let cuts = cuts(*segment, lines.iter().map(|(other, _)| *other), number);
        for ends in cuts.windows(2) {
            let [from, to] = [ends[0], ends[1]];
            let length = (to - from).norm();
            if length <= 0.0 {
                continue;
            }
            let way = (to - from) / length;
            let aside = Vec2::new(-way.y, way.x) * BESIDE.min(length / 8.0);
            // Off the middle: there the ridges of equal wings run.
            let middle = from + (to - from) * ASKED;
            let directed = match (is_seen(middle + aside), is_seen(middle - aside)) {
                (true, false) => [from, to],
                (false, true) => [to, from],
                (true, true) | (false, false) => continue,
            }
            .map(|end| places.number(end));
            if directed[0] == directed[1] {
                continue;
            }
            // Lines that lie on each other bound the same: the first says why.
            if !pieces.contains(&directed) {
                pieces.push(directed);
                bounds.push(*line);
            }
        }
    }
    let regions = regions(&pieces, &places)?;
    let bound = |piece: usize| {
        let [from, to] = pieces[piece].map(|number| places.at(number));
        Bound {
            from,
            to,
            line: bounds[piece],
        }
    };
    Some(
        regions
            .into_iter()
            .map(|Region { rings, area }| VisiblePart {
                body: slab.body,
                swept: slab.swept,
                area,
                rings: rings
                    .into_iter()
                    .map(|ring| ring.into_iter().map(bound).collect())
                    .collect(),
            })
            .collect(),
    )
}

/// All lines on which what is seen of a face may end, its own first.
fn lines(slab: &Slab, raised: &Raised, others: &[&Solid]) -> Vec<(Segment, Line)> {
    let near = slab.bounds.wider(MARGIN);
    let own = Side::Face(slab.swept);
    let mut lines: Vec<(Segment, Line)> = raised
        .sweep
        .creases
        .iter()
        .filter_map(|crease| {
            let (beyond, seam) = match (crease.left == own, crease.right == own) {
                (true, false) => (crease.right, crease.seam),
                (false, true) => (crease.left, crease.seam.map(|way| -way)),
                (true, true) | (false, false) => return None,
            };
            let ends = [crease.from, crease.to].map(|end| end.xy() + raised.plan.origin);
            Some((ends, Line::Own(beyond, seam)))
        })
        .collect();
    for solid in others {
        for other in &solid.slabs {
            // The planes matter only where both faces are.
            let Some(both) = other.bounds.wider(MARGIN).common(&near) else {
                continue;
            };
            let apart = slab.plane.gradient - other.plane.gradient;
            if let Some(chord) = both.chord(slab.plane.level - other.plane.level, apart) {
                lines.push((chord, Line::Meets(other.body, other.swept)));
            }
        }
        let feet = solid.feet.iter().chain(&solid.walls);
        lines.extend(
            feet.filter(|(piece, _)| Bounds::around(piece).meets(&near))
                .map(|&(piece, at)| (piece, Line::Foot(at))),
        );
        if !solid.walls.is_empty()
            && let Some(chord) = near.chord(slab.plane.level - solid.eave, slab.plane.gradient)
        {
            lines.push((chord, Line::EaveLevel(solid.body)));
        }
    }
    lines
}

/// The places at which a segment begins, is crossed or touched by others, and ends, in order.
pub(super) fn cuts(
    [from, to]: Segment,
    others: impl Iterator<Item = Segment>,
    own: usize,
) -> Vec<Vec2> {
    let run = to - from;
    let length = run.norm();
    let mut shares = vec![0.0, 1.0];
    for (_, [a, b]) in others.enumerate().filter(|(number, _)| *number != own) {
        let other = b - a;
        let sine = run.perp(&other);
        if sine.abs() > 1e-12 * length * other.norm() {
            let here = (a - from).perp(&other) / sine;
            let there = (a - from).perp(&run) / sine;
            let slack = SAME / other.norm();
            if (0.0..=1.0).contains(&here) && there >= -slack && there <= 1.0 + slack {
                shares.push(here);
            }
        }
        for end in [a, b] {
            if (nearest_on(from, to, end) - end).norm() <= SAME {
                shares.push(((end - from).dot(&run) / (length * length)).clamp(0.0, 1.0));
            }
        }
    }
    shares.sort_by(f64::total_cmp);
    shares.dedup_by(|a, b| (*a - *b) * length <= SAME / 10.0);
    shares.into_iter().map(|share| from + run * share).collect()
}
