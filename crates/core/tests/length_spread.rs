//! How unsure edges and plan are, against hips worked by hand and roofs raised over other readings.

use eavebook_core::roof::EdgeKind;
use eavebook_core::solve::{LengthSpread, length_spread, solve};
use eavebook_core::survey::Survey;
use eavebook_core::units::Length;
use eavebook_houses::house;

fn near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "{found} is not {expected} +- {within}"
    );
}

fn spread(survey: &Survey) -> Option<LengthSpread> {
    length_spread(survey, &solve(survey).ok()?)
}

/// 60 x 30 read once with 0.15 ft a side: each dimension is the mean of two readings.
fn rectangle() -> Survey {
    let mut survey = house("60' out 30' out 60' out 30' out").pitch(6.0).survey();
    for reading in &mut survey.bodies[0].readings {
        reading.sigma = Some(Length::feet(0.15));
    }
    survey
}

#[test]
fn a_hip_worked_by_hand() {
    let told = spread(&rectangle());
    let told = told.as_ref();
    let of = |kind| told.map_or(f64::NAN, |told| told.by_kind[&kind].in_feet());
    let side = 0.15 / 2.0_f64.sqrt();
    // The ridge is 60 - 30, the eaves are 2 (60 + 30), each hip is 1.5 times half the short side.
    near(of(EdgeKind::Ridge), side * 2.0_f64.sqrt(), 0.002);
    near(of(EdgeKind::Eave), 2.0 * side * 2.0_f64.sqrt(), 0.002);
    near(of(EdgeKind::Hip), 4.0 * 0.75 * side, 0.004);
    let plan = told.map_or(f64::NAN, |told| told.plan_area.in_square_feet());
    near(plan, side * 30.0_f64.hypot(60.0), 0.05);
    // Every edge of its own: four eaves, a ridge, four hips.
    let known = told.map_or(0, |told| told.edges.iter().flatten().count());
    assert_eq!(known, 9);
}

#[test]
fn corners_that_are_known_leave_no_length_unsure() {
    let mut survey = rectangle();
    let solved = solve(&survey);
    let corners = solved.map(|solved| solved.bodies[0].outline.corners.clone());
    let corners = corners
        .unwrap_or_default()
        .into_iter()
        .flatten()
        .map(|corner| corner.at);
    survey.bodies[0].outline = eavebook_core::survey::Sketch::Known(corners.collect());
    survey.bodies[0].readings.clear();
    let told = spread(&survey);
    let sums = told.map(|told| {
        told.by_kind
            .values()
            .map(|sigma| sigma.in_feet())
            .sum::<f64>()
    });
    near(sums.unwrap_or(f64::NAN), 0.0, 1e-9);
}

#[test]
fn without_a_roof_nothing_is_said() {
    let survey = house("60' out 30' out 60' out 30' out").survey();
    assert!(spread(&survey).is_none());
}
