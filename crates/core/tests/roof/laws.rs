//! Laws that hold for the roof over any outline.

use super::bodies::{area_within, body, height_from_leg, hipped, roof};
use eavebook_core::roof::{BodyShape, EdgeKind, Rise, Roof};
use eavebook_core::survey::Point;
use eavebook_core::units::{Area, Point3};
use eavebook_houses::{Grid, Numbers, cells, tangle};
use proptest::prelude::*;

/// Any outline of 4 to 24 legs: a tangle, or right-angled, evenly or not.
fn outline() -> impl Strategy<Value = Vec<[f64; 2]>> {
    (any::<u32>(), 4_usize..24, 0..3).prop_map(|(seed, legs, family)| {
        let mut numbers = Numbers::new(u64::from(seed));
        match family {
            0 => cells(&mut numbers, legs, Grid::Even),
            1 => cells(&mut numbers, legs, Grid::Uneven),
            _ => tangle(&mut numbers, legs),
        }
    })
}

/// Faces by leg and edges by kind: what must not change when the house is only moved about.
fn figures(told: &Roof, legs: usize) -> Vec<f64> {
    let by_leg = (0..legs).map(|leg| {
        told.faces
            .iter()
            .filter(|face| face.leg == leg)
            .map(|face| face.area.in_square_feet())
            .sum::<f64>()
    });
    let by_kind = EdgeKind::ALL
        .iter()
        .map(|&kind| told.length_of(kind).in_feet());
    by_leg.chain(by_kind).collect()
}

fn same(ours: &[f64], theirs: &[f64]) -> Result<(), TestCaseError> {
    for (one, other) in ours.iter().zip(theirs) {
        prop_assert!(
            (one - other).abs() < 1e-5 * (1.0 + one.abs()),
            "{one} and {other}"
        );
    }
    Ok(())
}

fn placed(shape: &BodyShape, place: impl Fn(f64, f64) -> (f64, f64)) -> BodyShape {
    let mut shape = shape.clone();
    for corner in &mut shape.corners {
        let (x, y) = place(corner.x, corner.y);
        *corner = Point { x, y };
    }
    shape
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn faces_tile_the_plan_without_gap_or_overlap(corners in outline(), pitch in 1.0..20.0) {
        let shape = hipped(&corners, pitch);
        let told = roof(&shape);
        let plan = area_within(&shape.corners);
        prop_assert!((told.plan_area().in_square_feet() - plan).abs() < 1e-9 * plan);
        // Signed areas that add up to the outline's leave no room for an overlap if none is
        // negative.
        prop_assert!(told.faces.iter().all(|face| face.plan_area > Area::ZERO));
        let factor = (1.0 + (pitch / 12.0_f64).powi(2)).sqrt();
        prop_assert!((told.area().in_square_feet() - plan * factor).abs() < 1e-9 * plan * factor);
    }

    #[test]
    fn a_gable_instead_of_a_hip_leaves_the_area(corners in outline(), leg in 0_usize..24) {
        let count = corners.len();
        let leg = leg % count;
        let hip = hipped(&corners, 6.0);
        let mut gable = hip.clone();
        gable.legs[leg].rise = Rise::Gable;
        // A gable beside a slope in its own line, or one that leaves a part without slope, has
        // no roof; where there is one, its area is the same.
        if let Ok(told) = eavebook_core::roof::raise(&[gable], &[]) {
            let area = roof(&hip).area().in_square_feet();
            prop_assert!((told.area().in_square_feet() - area).abs() < 1e-8 * area);
        }
    }

    #[test]
    fn areas_go_with_the_square_of_the_size_and_edges_with_the_size(
        corners in outline(), size in 0.2..5.0,
    ) {
        let shape = hipped(&corners, 6.0);
        let legs = corners.len();
        let one = figures(&roof(&shape), legs);
        let other = figures(&roof(&placed(&shape, |x, y| (x * size, y * size))), legs);
        for (place, (one, other)) in one.iter().zip(&other).enumerate() {
            let grown: f64 = if place < legs { one * size * size } else { one * size };
            prop_assert!((grown - other).abs() < 1e-5 * (1.0 + grown.abs()), "{grown} and {other}");
        }
    }

    #[test]
    fn turning_and_moving_the_house_changes_no_figure(
        corners in outline(), turn in 0.0..360.0_f64, away in -1000.0..1000.0,
    ) {
        let shape = hipped(&corners, 6.0);
        let (sine, cosine) = turn.to_radians().sin_cos();
        let turned = placed(&shape, |x, y| (x * cosine - y * sine + away, x * sine + y * cosine));
        let legs = corners.len();
        let (one, other) = (roof(&shape), roof(&turned));
        // Where corners are in line by the grid alone, turning moves them a rounding out of line
        // and the cut between two legs of one plane is free: compare what is not free.
        let plane = |told: &Roof| told.area().in_square_feet();
        prop_assert!((plane(&one) - plane(&other)).abs() < 1e-7 * plane(&one));
        let kinds = |told: &Roof| figures(told, legs)[legs..].to_vec();
        let less = |kinds: &[f64]| {
            let of = |kind: EdgeKind| {
                EdgeKind::ALL.iter().position(|&one| one == kind).map_or(0.0, |at| kinds[at])
            };
            vec![of(EdgeKind::Eave), of(EdgeKind::Ridge), of(EdgeKind::Hip) - of(EdgeKind::Valley)]
        };
        same(&less(&kinds(&one)), &less(&kinds(&other)))?;
    }

    #[test]
    fn mirroring_the_house_changes_no_figure(corners in outline()) {
        let shape = hipped(&corners, 6.0);
        let legs = corners.len();
        let mirrored = placed(&shape, |x, y| (-x, y));
        let kinds = |told: &Roof| figures(told, legs)[legs..].to_vec();
        same(&kinds(&roof(&shape)), &kinds(&roof(&mirrored)))?;
    }

    #[test]
    fn beginning_at_another_corner_changes_no_figure(corners in outline(), first in 0_usize..24) {
        let first = first % corners.len();
        let mut turned = corners.clone();
        turned.rotate_left(first);
        let legs = corners.len();
        let kinds = |told: &Roof| figures(told, legs)[legs..].to_vec();
        same(&kinds(&roof(&hipped(&corners, 6.0))), &kinds(&roof(&hipped(&turned, 6.0))))?;
    }

    #[test]
    fn walking_clockwise_changes_no_figure(seed in any::<u32>(), legs in 4_usize..24) {
        let mut numbers = Numbers::new(u64::from(seed));
        let corners = tangle(&mut numbers, legs);
        let pitches: Vec<f64> = corners.iter().map(|_| numbers.between(3.0, 12.0)).collect();
        let one = figures(&roof(&body(&corners, &pitches)), legs);
        let backward: Vec<[f64; 2]> = corners.iter().rev().copied().collect();
        // Leg i of the walk back joins corners n-1-i and n-2-i: it was leg n-2-i.
        let order = |leg: usize| (2 * legs - 2 - leg) % legs;
        let turned: Vec<f64> = (0..legs).map(|leg| pitches[order(leg)]).collect();
        let other = figures(&roof(&body(&backward, &turned)), legs);
        let back: Vec<f64> = (0..legs).map(|leg| other[order(leg)]).collect();
        same(&one[..legs], &back)?;
        same(&one[legs..], &other[legs..])?;
    }

    #[test]
    fn an_edge_has_one_length_from_both_its_faces(seed in any::<u32>(), legs in 4_usize..24) {
        let mut numbers = Numbers::new(u64::from(seed));
        let corners = tangle(&mut numbers, legs);
        let pitches: Vec<f64> = corners.iter().map(|_| numbers.between(3.0, 12.0)).collect();
        let shape = body(&corners, &pitches);
        let told = roof(&shape);
        for edge in &told.edges {
            for &face in &edge.faces {
                for end in [edge.from, edge.to].map(Point3::in_feet) {
                    let leg = told.faces[face].leg;
                    let height = height_from_leg(&shape, leg, [end[0], end[1]]);
                    prop_assert!((height - end[2]).abs() < 1e-5, "{edge:?}: {height}");
                }
            }
        }
    }

    #[test]
    fn every_face_drains_to_its_own_eave(corners in outline()) {
        let shape = hipped(&corners, 6.0);
        for face in &roof(&shape).faces {
            let lowest = face.polygon.iter().map(|at| at.height().in_feet()).fold(f64::INFINITY, f64::min);
            prop_assert!((lowest - 9.0).abs() < 1e-9, "a face off its eave: {face:?}");
            // Straight up the slope a line meets the face once: water on it never leaves it but
            // over the eave or into a valley below.
            let count = shape.corners.len();
            let (a, b) = (shape.corners[face.leg], shape.corners[(face.leg + 1) % count]);
            let along = |at: Point3| {
                let place = at.in_feet();
                place[0] * (b.x - a.x) + place[1] * (b.y - a.y)
            };
            let steps: Vec<f64> = (0..face.polygon.len())
                .map(|at| {
                    let next = face.polygon[(at + 1) % face.polygon.len()];
                    along(next) - along(face.polygon[at])
                })
                .filter(|step| step.abs() > 1e-5)
                .collect();
            let turns = (0..steps.len())
                .filter(|&at| steps[at] * steps[(at + 1) % steps.len()] < 0.0)
                .count();
            prop_assert_eq!(turns, 2, "{:?}", face);
        }
    }
}
