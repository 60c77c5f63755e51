//! A thin strip of one face given to the face beside it: which creases and rings that leaves.

use super::edges::ONE_SURFACE;
use super::plan::{Plan, Vec2, twice_area};
use super::planes::Plane;
use super::rings::{Places, Region, regions};
use super::slivers::{Bank, Strip, banks};
use super::sweep::{Crease, Side, Sweep, SweptFace, Vec3, lift, tidy};

/// What the two faces may lose or gain together, sq ft for each foot round them.
const SAME_AREA: f64 = 1e-5;

/// A directed piece around what the face may keep, by the numbers of its ends.
#[derive(Clone, Copy)]
struct Piece {
    ends: [usize; 2],
    /// The bank it is a part of; none for a cut across the strip.
    bank: Option<Bank>,
}

/// The sweep with a strip given to its taker; none if what is left does not close.
pub(super) fn transferred(plan: &Plan, sweep: &Sweep, strip: &Strip) -> Option<Sweep> {
    let mut places = Places::default();
    let (mut taken, mut left) = (Vec::new(), Vec::new());
    for bank in banks(sweep, strip.face) {
        for (ends, in_strip) in strip.parts(&bank) {
            let ends = ends.map(|end| places.number(end));
            if ends[0] != ends[1] {
                let piece = Piece {
                    ends,
                    bank: Some(bank),
                };
                if in_strip { &mut taken } else { &mut left }.push(piece);
            }
        }
    }
    for ends in strip.cuts() {
        let ends = ends.map(|end| places.number(end));
        // A cut along what ends the strip anyway is none.
        let reverse = [ends[1], ends[0]];
        if let Some(place) = left.iter().position(|piece| piece.ends == reverse) {
            taken.push(left.swap_remove(place));
        } else if ends[0] != ends[1] {
            left.push(Piece { ends, bank: None });
        }
    }
    let ends: Vec<[usize; 2]> = left.iter().map(|piece| piece.ends).collect();
    let mut kept = regions(&ends, &places)?;
    // Oblique ends leave scraps.
    kept.retain(|region| region.area > 2.0 * strip.width * strip.width);
    let mut after = Sweep {
        faces: sweep.faces.clone(),
        creases: (0..sweep.creases.len())
            .filter(|&crease| {
                let crease = &sweep.creases[crease];
                ![crease.left, crease.right].contains(&Side::Face(strip.face))
            })
            .map(|crease| sweep.creases[crease])
            .collect(),
    };
    let mut is_kept = vec![false; left.len()];
    for (part, region) in kept.iter().enumerate() {
        let face = if part == 0 {
            strip.face
        } else {
            after.faces.push(sweep.faces[strip.face].clone());
            after.faces.len() - 1
        };
        for &piece in region.rings.iter().flatten() {
            is_kept[piece] = true;
            after
                .creases
                .push(strip.keep(plan, sweep, &left[piece], &places, face));
        }
        after.faces[face].ring = ring(plan, &after.faces[face], region, &left, &places)?;
    }
    for (piece, kept) in left.iter().zip(&is_kept) {
        if !kept {
            taken.push(*piece);
        }
    }
    let moved = taken
        .iter()
        .filter_map(|piece| strip.give(plan, sweep, piece, &places));
    after.creases.extend(moved);
    let (around, region) = around(&after, strip.taker)?;
    after.faces[strip.taker].ring = ring(
        plan,
        &after.faces[strip.taker],
        &region,
        &around.0,
        &around.1,
    )?;
    if kept.is_empty() {
        after.faces[strip.face].ring.clear();
    }
    let round: f64 = around
        .0
        .iter()
        .map(|piece| around.1.length(piece.ends))
        .sum();
    let area = |sweep: &Sweep| sweep.faces.iter().map(SweptFace::plan_area).sum::<f64>();
    if (area(&after) - area(sweep)).abs() > SAME_AREA * round {
        return None;
    }
    Some(if kept.is_empty() {
        without(after, strip.face)
    } else {
        after
    })
}

/// The pieces around a face and the one region they bound.
fn around(sweep: &Sweep, face: usize) -> Option<((Vec<Piece>, Places), Region)> {
    let mut places = Places::default();
    let pieces: Vec<Piece> = banks(sweep, face)
        .into_iter()
        .map(|bank| Piece {
            ends: [bank.from, bank.to].map(|end| places.number(end.xy())),
            bank: Some(bank),
        })
        .filter(|piece| piece.ends[0] != piece.ends[1])
        .collect();
    let ends: Vec<[usize; 2]> = pieces.iter().map(|piece| piece.ends).collect();
    let mut found = regions(&ends, &places)?;
    let region = found.pop()?;
    found.is_empty().then_some(((pieces, places), region))
}

/// The one ring of a region, in the plane of a face.
fn ring(
    plan: &Plan,
    face: &SweptFace,
    region: &Region,
    pieces: &[Piece],
    places: &Places,
) -> Option<Vec<Vec3>> {
    let [outer] = region.rings.as_slice() else {
        return None;
    };
    let plane = Plane::new(&plan.legs[face.leg], face.band);
    let ring = outer.iter().map(|&piece| {
        let at = places.at(pieces[piece].ends[0]);
        lift(at, plane.height(at))
    });
    Some(tidy(ring.collect()))
}

/// The way in which two faces meet, as near as it can to a given one; that one where they do not.
fn meeting(plan: &Plan, sweep: &Sweep, faces: [usize; 2], near: Vec3) -> Vec3 {
    let [one, other] = faces.map(|face| {
        let swept = &sweep.faces[face];
        Plane::new(&plan.legs[swept.leg], swept.band)
    });
    if one.fold(&other) < ONE_SURFACE {
        return near;
    }
    let apart = one.gradient - other.gradient;
    let along = Vec2::new(-apart.y, apart.x);
    let along = along * along.dot(&near.xy()).signum();
    lift(along, one.gradient.dot(&along))
}

/// A sweep without a face that no crease names any more.
fn without(mut sweep: Sweep, gone: usize) -> Sweep {
    sweep.faces.remove(gone);
    let renumbered = |side: Side| match side {
        Side::Face(face) if face > gone => Side::Face(face - 1),
        Side::Face(_) | Side::End(_) | Side::Air(_) => side,
    };
    for crease in &mut sweep.creases {
        crease.left = renumbered(crease.left);
        crease.right = renumbered(crease.right);
    }
    sweep
}

impl Strip {
    /// A bank of the face cut where the strip begins and ends along it: from, to, and whether the
    /// part lies along the strip.
    fn parts(&self, bank: &Bank) -> Vec<([Vec2; 2], bool)> {
        let ends = [bank.from.xy(), bank.to.xy()];
        if !self.banks.iter().any(|own| own.crease == bank.crease) {
            return vec![(ends, false)];
        }
        let mut span = self.span;
        if self.axis.dot(&(ends[1] - ends[0])) < 0.0 {
            span.reverse();
        }
        let [first, last] = span.map(|at| bank.at(self.axis, at));
        vec![
            ([ends[0], first], false),
            ([first, last], true),
            ([last, ends[1]], false),
        ]
    }

    /// The cuts across the strip at its two ends, what lies past it to the left.
    fn cuts(&self) -> [[Vec2; 2]; 2] {
        let [[a, b], [d, c]] = self
            .span
            .map(|at| [0, 1].map(|bank: usize| self.banks[bank].at(self.axis, at)));
        [[a, b], [c, d]]
    }

    /// A piece around what the face keeps, as a crease.
    fn keep(
        &self,
        plan: &Plan,
        sweep: &Sweep,
        piece: &Piece,
        places: &Places,
        face: usize,
    ) -> Crease {
        let [from, to] = self.lifted(plan, sweep, piece, places);
        let (right, seam) = match piece.bank {
            Some(bank) => (bank.beyond, bank.seam),
            // Across the strip the face meets its taker as it does beside it.
            None => (
                Side::Face(self.taker),
                Some(self.banks[0].to - self.banks[0].from),
            ),
        };
        Crease {
            from,
            to,
            left: Side::Face(face),
            right,
            seam,
        }
    }

    /// A piece around what the taker takes, as a crease; none within the taker.
    fn give(&self, plan: &Plan, sweep: &Sweep, piece: &Piece, places: &Places) -> Option<Crease> {
        let bank = piece.bank?;
        let taker = Side::Face(self.taker);
        if bank.beyond == taker {
            return None;
        }
        let [from, to] = self.lifted(plan, sweep, piece, places);
        let seam = match bank.beyond {
            Side::Face(beyond) => {
                let way = bank.seam.unwrap_or(to - from);
                Some(meeting(plan, sweep, [self.taker, beyond], way))
            }
            Side::End(_) | Side::Air(_) => None,
        };
        Some(Crease {
            from,
            to,
            left: taker,
            right: bank.beyond,
            seam,
        })
    }

    fn lifted(&self, plan: &Plan, sweep: &Sweep, piece: &Piece, places: &Places) -> [Vec3; 2] {
        let swept = &sweep.faces[self.face];
        let plane = Plane::new(&plan.legs[swept.leg], swept.band);
        piece.ends.map(|end| {
            let at = places.at(end);
            lift(at, plane.height(at))
        })
    }
}

impl SweptFace {
    /// Area in plan, sq ft.
    pub fn plan_area(&self) -> f64 {
        let ring: Vec<Vec2> = self.ring.iter().map(Vec3::xy).collect();
        twice_area(&ring) / 2.0
    }
}

impl Places {
    fn length(&self, ends: [usize; 2]) -> f64 {
        (self.at(ends[1]) - self.at(ends[0])).norm()
    }
}
