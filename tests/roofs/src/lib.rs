//! Our roofs beside those of geometry libraries: outlines as both sides take them.

use eavebook_core::roof::{BodyShape, Face, LegRise, Rise, Roof};
use eavebook_core::survey::Point;
use eavebook_core::units::{Length, Pitch};

/// Counter-clockwise corners in feet, and the rise in 12 of each leg; none: a gable.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// Corners; leg i runs from corner i to the next.
    pub corners: Vec<[f64; 2]>,
    /// What rises at each leg.
    pub pitches: Vec<Option<f64>>,
}

impl Outline {
    /// All legs at one pitch; corners in either order.
    #[must_use]
    pub fn hipped(mut corners: Vec<[f64; 2]>, pitch: f64) -> Outline {
        if signed_area(&corners) < 0.0 {
            corners.reverse();
        }
        let pitches = vec![Some(pitch); corners.len()];
        Outline { corners, pitches }
    }

    /// As our kernel takes it, its eaves at height 0.
    #[must_use]
    pub fn shape(&self) -> BodyShape {
        let rise = |pitch: &Option<f64>| match pitch {
            Some(pitch) => Rise::slope(Pitch::rise_in_12(*pitch)),
            None => Rise::Gable,
        };
        BodyShape {
            id: "main".to_owned(),
            corners: self.corners.iter().map(|&[x, y]| Point { x, y }).collect(),
            nominal_directions: None,
            legs: self
                .pitches
                .iter()
                .map(|pitch| LegRise {
                    rise: rise(pitch),
                    overhang: Length::ZERO,
                })
                .collect(),
            eave_height: Length::ZERO,
        }
    }

    /// Run of each leg's front per rise; 0 at a gable.
    #[must_use]
    pub fn runs(&self) -> Vec<f64> {
        let run = |pitch: &Option<f64>| pitch.map_or(0.0, |pitch| 12.0 / pitch);
        self.pitches.iter().map(run).collect()
    }

    /// Area within, sq ft.
    #[must_use]
    pub fn area(&self) -> f64 {
        signed_area(&self.corners)
    }

    /// For each leg the first one whose slope lies in the same plane: legs in one line that rise
    /// alike have one plane, and where it is cut between them is free.
    #[must_use]
    pub fn planes(&self) -> Vec<usize> {
        let count = self.corners.len();
        let line = |leg: usize| {
            let ([ax, ay], [bx, by]) = (self.corners[leg], self.corners[(leg + 1) % count]);
            let length = (bx - ax).hypot(by - ay);
            let (dx, dy) = ((bx - ax) / length, (by - ay) / length);
            [dx, dy, ax * dy - ay * dx]
        };
        let alike = |one: usize, other: usize| {
            let near = line(one)
                .iter()
                .zip(line(other))
                .all(|(a, b)| (a - b).abs() < 1e-9);
            near && self.pitches[one] == self.pitches[other]
        };
        (0..count)
            .map(|leg| (0..leg).find(|&first| alike(first, leg)).unwrap_or(leg))
            .collect()
    }

    /// Areas by leg as areas by plane, each at the first leg of its plane.
    #[must_use]
    pub fn by_plane(&self, by_leg: &[f64]) -> Vec<f64> {
        let mut sums = vec![0.0; by_leg.len()];
        for (area, plane) in by_leg.iter().zip(self.planes()) {
            sums[plane] += area;
        }
        sums
    }
}

/// Area in plan of the slope of each leg, sq ft.
#[must_use]
pub fn areas_by_leg(roof: &Roof, legs: usize) -> Vec<f64> {
    let mut areas = vec![0.0; legs];
    for face in &roof.faces {
        areas[face.leg] += face.plan_area.in_square_feet();
    }
    areas
}

/// Area in plan of what stands higher than a level, sq ft.
#[must_use]
pub fn area_above(roof: &Roof, level: f64) -> f64 {
    roof.faces.iter().map(|face| face_above(face, level)).sum()
}

/// Its ring cut at the level (Sutherland and Hodgman, *Reentrant polygon clipping*, 1974): pieces
/// that fall apart stay joined by stretches without area.
fn face_above(face: &Face, level: f64) -> f64 {
    let ring = &face.polygon;
    let mut kept: Vec<[f64; 2]> = Vec::new();
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (a, b) = (a.in_feet(), b.in_feet());
        if a[2] >= level {
            kept.push([a[0], a[1]]);
        }
        if (a[2] >= level) != (b[2] >= level) {
            let part = (level - a[2]) / (b[2] - a[2]);
            kept.push([a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])]);
        }
    }
    signed_area(&kept)
}

/// Area within a ring, counter-clockwise positive.
fn signed_area(ring: &[[f64; 2]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let pairs = ring.iter().zip(next);
    pairs.map(|(a, b)| (a[0] * b[1] - a[1] * b[0]) / 2.0).sum()
}
