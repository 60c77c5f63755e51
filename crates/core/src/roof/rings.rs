//! Directed pieces around a region to rings: outer ones counter-clockwise, holes clockwise.

use super::plan::{Vec2, twice_area};
use super::solid::winds_round;

/// Places nearer than this are one, feet.
pub(super) const SAME: f64 = 1e-6;
/// Regions of less area are not kept, sq ft.
const LEAST_AREA: f64 = 1e-5;

/// Places told apart.
#[derive(Default)]
pub(super) struct Places {
    places: Vec<Vec2>,
}

impl Places {
    /// The number of a place.
    pub fn number(&mut self, place: Vec2) -> usize {
        match self
            .places
            .iter()
            .position(|other| (other - place).norm() <= SAME)
        {
            Some(number) => number,
            None => {
                self.places.push(place);
                self.places.len() - 1
            }
        }
    }

    pub fn at(&self, number: usize) -> Vec2 {
        self.places[number]
    }
}

/// One connected region, by the numbers of the pieces around it.
pub(super) struct Region {
    /// Pieces of the outer ring in order, then of each hole.
    pub rings: Vec<Vec<usize>>,
    pub area: f64,
}

/// The regions that lie left of directed pieces `[from, to]`; none if they do not close.
pub(super) fn regions(pieces: &[[usize; 2]], places: &Places) -> Option<Vec<Region>> {
    let mut used = vec![false; pieces.len()];
    let mut rings = Vec::new();
    for first in 0..pieces.len() {
        if used[first] {
            continue;
        }
        let mut ring = vec![first];
        used[first] = true;
        let mut last = first;
        while pieces[last][1] != pieces[first][0] {
            let next = leftmost(pieces, &used, last, places)?;
            used[next] = true;
            ring.push(next);
            last = next;
        }
        rings.push(ring);
    }
    let corners = |ring: &[usize]| -> Vec<Vec2> {
        ring.iter()
            .map(|&piece| places.at(pieces[piece][0]))
            .collect()
    };
    let area = |ring: &[usize]| twice_area(&corners(ring)) / 2.0;
    let (outer, holes): (Vec<_>, Vec<_>) = rings.into_iter().partition(|ring| area(ring) > 0.0);
    let mut regions: Vec<Region> = outer
        .into_iter()
        .map(|ring| Region {
            area: area(&ring),
            rings: vec![ring],
        })
        .collect();
    for hole in holes {
        let lost = area(&hole);
        if lost > -LEAST_AREA {
            continue;
        }
        let [from, to] = pieces[hole[0]].map(|number| places.at(number));
        let way = to - from;
        let beside = (from + to) / 2.0 + Vec2::new(-way.y, way.x).normalize() * SAME;
        let around = regions
            .iter_mut()
            .filter(|region| winds_round(&corners(&region.rings[0]), beside))
            .min_by(|a, b| a.area.total_cmp(&b.area))?;
        around.rings.push(hole);
        around.area += lost;
    }
    regions.retain(|region| region.area > LEAST_AREA);
    Some(regions)
}

/// Of the unused pieces that go on from the end of one, the one farthest to the left: it keeps to
/// its own region where regions touch in a point.
fn leftmost(pieces: &[[usize; 2]], used: &[bool], last: usize, places: &Places) -> Option<usize> {
    let way = |piece: usize| places.at(pieces[piece][1]) - places.at(pieces[piece][0]);
    let turn = |piece: usize| {
        way(last)
            .perp(&way(piece))
            .atan2(way(last).dot(&way(piece)))
    };
    (0..pieces.len())
        .filter(|&piece| !used[piece] && pieces[piece][0] == pieces[last][1])
        .max_by(|&a, &b| turn(a).total_cmp(&turn(b)))
}
