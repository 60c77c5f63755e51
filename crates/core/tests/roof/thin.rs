//! Strips too thin to build.

use super::bodies::{area_within, body, hipped, roof};
use eavebook_core::roof::{BodyShape, EdgeKind, Roof, RoofCaution, raise};
use eavebook_core::survey::Point;
use eavebook_core::units::{Angle, Area};
use eavebook_houses::{Grid, Numbers, cells};
use proptest::prelude::*;

/// A wing off a front whose second part stands `back` behind the first.
fn wing(back: f64) -> [[f64; 2]; 8] {
    [
        [0.0, 16.0],
        [24.0, 16.0],
        [24.0, 0.0],
        [44.0, 0.0],
        [44.0, 16.0 + back],
        [70.0, 16.0 + back],
        [70.0, 50.0],
        [0.0, 50.0],
    ]
}

/// The same outline as if it had been read, no two legs seen parallel: nothing is squared.
fn read(mut shape: BodyShape) -> BodyShape {
    let legs = 0..shape.corners.len();
    shape.nominal_directions = Some(legs.map(|leg| Angle::degrees(7.0 * leg as f64)).collect());
    shape
}

/// Leg, taker, width and length of every strip that was not built.
fn strips(told: &Roof) -> Vec<(usize, usize, f64, f64)> {
    told.cautions
        .iter()
        .filter_map(|caution| match caution {
            RoofCaution::Sliver {
                leg,
                taken_by,
                width,
                length,
                ..
            } => Some((*leg, *taken_by, width.in_feet(), length.in_feet())),
            RoofCaution::GableAtInsideCorner { .. }
            | RoofCaution::IdleWall { .. }
            | RoofCaution::LevelValley { .. } => None,
        })
        .collect()
}

fn placed(shape: &BodyShape, place: impl Fn(f64, f64) -> (f64, f64)) -> BodyShape {
    let mut shape = shape.clone();
    for corner in &mut shape.corners {
        let (x, y) = place(corner.x, corner.y);
        *corner = Point { x, y };
    }
    shape
}

const SLOPED: [EdgeKind; 3] = [EdgeKind::Ridge, EdgeKind::Hip, EdgeKind::Valley];

#[test]
fn a_strip_too_thin_to_build_goes_to_the_slope_beside_it_and_is_said() {
    let exact = roof(&hipped(&wing(0.0), 6.0));
    let told = roof(&read(hipped(&wing(0.3), 6.0)));
    // The slope of the wing's side runs on 7 ft in plan either way between the two fronts.
    let [(leg, taken_by, width, length)] = strips(&told)[..] else {
        unreachable!("one strip: {:?}", told.cautions);
    };
    assert_eq!((leg, taken_by), (3, 4));
    assert!((width - 0.3 / 2.0_f64.sqrt()).abs() < 1e-6, "{width}");
    assert!((length - 7.0 * 2.0_f64.sqrt()).abs() < 0.5, "{length}");
    for kind in SLOPED {
        let off = told.length_of(kind).in_feet() - exact.length_of(kind).in_feet();
        assert!(off.abs() < 0.5, "{kind:?}: {off}");
    }
    // The fronts keep their own ridges, a hair out of line.
    assert_eq!(told.edges.len(), exact.edges.len() + 1, "{:#?}", told.edges);
}

#[test]
fn corners_that_are_known_keep_every_strip() {
    let told = roof(&hipped(&wing(0.3), 6.0));
    assert_eq!(strips(&told), []);
    let exact = roof(&hipped(&wing(0.0), 6.0));
    assert!(
        told.length_of(EdgeKind::Hip).in_feet() - exact.length_of(EdgeKind::Hip).in_feet() > 9.0
    );
}

#[test]
fn a_strip_wide_enough_is_built() {
    let exact = roof(&hipped(&wing(0.0), 6.0));
    let told = roof(&read(hipped(&wing(0.4), 6.0)));
    assert_eq!(strips(&told), []);
    assert!(
        told.length_of(EdgeKind::Hip).in_feet() - exact.length_of(EdgeKind::Hip).in_feet() > 9.0
    );
}

#[test]
fn a_step_of_two_inches_in_a_front_has_no_slope_of_its_own() {
    let corners = [
        [0.0, 0.0],
        [30.0, 0.0],
        [30.0, 0.17],
        [60.0, 0.17],
        [60.0, 30.0],
        [0.0, 30.0],
    ];
    let told = roof(&read(hipped(&corners, 6.0)));
    assert_eq!(
        strips(&told)
            .iter()
            .map(|strip| strip.0)
            .collect::<Vec<_>>(),
        [1]
    );
    assert!(told.faces.iter().all(|face| face.leg != 1));
    assert!((told.length_of(EdgeKind::Valley).in_feet()).abs() < 1e-9);
    // Its eave is still there.
    let round = 30.0 + 0.17 + 30.0 + 29.83 + 60.0 + 30.0;
    assert!((told.length_of(EdgeKind::Eave).in_feet() - round).abs() < 1e-6);
    assert!(
        (told.plan_area().in_square_feet() - area_within(&hipped(&corners, 6.0).corners)).abs()
            < 1e-6
    );
}

#[test]
fn another_body_beside_it_changes_nothing_about_a_strip() {
    let thin = read(hipped(&wing(0.3), 6.0));
    let alone = roof(&thin);
    let mut shed = hipped(
        &[[100.0, 0.0], [120.0, 0.0], [120.0, 14.0], [100.0, 14.0]],
        4.0,
    );
    shed.id = "shed".to_string();
    let together = raise(&[thin, shed.clone()], &[]).unwrap_or_default();
    let shed = roof(&shed);
    for kind in EdgeKind::ALL {
        let sum = alone.length_of(kind).in_feet() + shed.length_of(kind).in_feet();
        assert!(
            (together.length_of(kind).in_feet() - sum).abs() < 1e-6,
            "{kind:?}: {} and {sum}",
            together.length_of(kind).in_feet()
        );
    }
    assert!(
        (together.area().in_square_feet()
            - alone.area().in_square_feet()
            - shed.area().in_square_feet())
        .abs()
            < 1e-4
    );
}

/// A right-angled outline whose lines stand a hair apart at random: many strips.
fn read_outline() -> impl Strategy<Value = BodyShape> {
    (any::<u32>(), 6_usize..20, 2.0..14.0).prop_map(|(seed, legs, pitch)| {
        let mut numbers = Numbers::new(u64::from(seed));
        let mut corners = cells(&mut numbers, legs, Grid::Even);
        // Each leg moved along its normal keeps the angles right.
        let count = corners.len();
        for leg in 0..count {
            let (from, to) = (leg, (leg + 1) % count);
            let axis = usize::from((corners[from][0] - corners[to][0]).abs() > 1.0);
            let by = 0.1 * numbers.normal();
            corners[from][axis] += by;
            corners[to][axis] += by;
        }
        read(hipped(&corners, pitch))
    })
}

/// Areas by leg, then lengths by kind.
fn figures(told: &Roof, leg_of: impl Fn(usize) -> usize, legs: usize) -> Vec<f64> {
    let by_leg = (0..legs).map(|leg| {
        let leg = leg_of(leg);
        let faces = told.faces.iter().filter(|face| face.leg == leg);
        faces.map(|face| face.area.in_square_feet()).sum::<f64>()
    });
    let by_kind = EdgeKind::ALL
        .iter()
        .map(|&kind| told.length_of(kind).in_feet());
    by_leg.chain(by_kind).collect()
}

fn same(ours: &[f64], theirs: &[f64]) -> Result<(), TestCaseError> {
    for (one, other) in ours.iter().zip(theirs) {
        prop_assert!(
            (one - other).abs() < 1e-4 * (1.0 + one.abs()),
            "{one} and {other}"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn strips_given_away_leave_the_area_within_the_outline(shape in read_outline()) {
        let told = roof(&shape);
        let plan = area_within(&shape.corners);
        prop_assert!((told.plan_area().in_square_feet() - plan).abs() < 1e-8 * plan);
        prop_assert!(told.faces.iter().all(|face| face.plan_area > Area::ZERO));
    }

    #[test]
    fn turned_and_mirrored_houses_lose_the_same_strips(
        shape in read_outline(), turn in 0.0..360.0_f64, first in 0_usize..20,
    ) {
        let legs = shape.corners.len();
        let (sine, cosine) = turn.to_radians().sin_cos();
        let told = roof(&shape);
        let ours = figures(&told, |leg| leg, legs);
        let turned = placed(&shape, |x, y| (x * cosine - y * sine, x * sine + y * cosine));
        same(&ours, &figures(&roof(&turned), |leg| leg, legs))?;
        let mirrored = roof(&placed(&shape, |x, y| (-x, y)));
        same(&ours, &figures(&mirrored, |leg| leg, legs))?;
        prop_assert_eq!(strips(&told).len(), strips(&mirrored).len());
        let mut begun = shape.clone();
        begun.corners.rotate_left(first % legs);
        let begun = roof(&begun);
        same(&ours, &figures(&begun, |leg| (leg + legs - first % legs) % legs, legs))?;
    }

    #[test]
    fn a_larger_house_whose_strips_stay_thin_has_larger_figures(
        // At a front of 9/12 the strip is 0.83 of the step wide: 0.27 ft x 1.1 is under 0.25 ft yet.
        back in 0.02..0.27_f64, size in 0.5..1.1_f64, front in 3.0..9.0_f64,
    ) {
        let pitches = [front, 6.0, 6.0, 6.0, front, 6.0, 6.0, 6.0];
        let shape = read(body(&wing(back), &pitches));
        let (one, other) = (roof(&shape), roof(&placed(&shape, |x, y| (x * size, y * size))));
        prop_assert_eq!(strips(&one).len(), 1);
        prop_assert_eq!(strips(&other).len(), 1);
        prop_assert!((one.area().in_square_feet() * size * size - other.area().in_square_feet()).abs() < 1e-6 * other.area().in_square_feet());
        for kind in EdgeKind::ALL {
            let grown = one.length_of(kind).in_feet() * size;
            prop_assert!((grown - other.length_of(kind).in_feet()).abs() < 1e-6 * (1.0 + grown), "{kind:?}");
        }
    }
}
