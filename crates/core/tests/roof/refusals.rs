//! What admits no roof is refused with a sentence that names body, leg and remedy.

use super::bodies::{bands, body, hipped, rectangle, with_ends};
use eavebook_core::roof::{BodyShape, Rise, RoofCaution, raise};

fn refused(shape: BodyShape) -> String {
    raise(&[shape], &[]).expect_err("a refusal").to_string()
}

#[test]
fn all_gables() {
    let shape = with_ends(
        hipped(&rectangle(40.0, 20.0), 6.0),
        &[0, 1, 2, 3],
        &Rise::Gable,
    );
    assert_eq!(
        refused(shape),
        "every leg of main is an end, so the roof never closes: give at least one leg a pitch"
    );
}

#[test]
fn a_slope_that_runs_out_between_gables() {
    // Only the end of one wing is pitched: the plane of the leaning gable cuts its slope off.
    let corners = [
        [0.0, 0.0],
        [50.0, 0.0],
        [50.0, 20.0],
        [20.0, 20.0],
        [24.0, 40.0],
        [0.0, 40.0],
    ];
    let shape = with_ends(hipped(&corners, 6.0), &[0, 2, 3, 4, 5], &Rise::Gable);
    assert_eq!(
        refused(shape),
        "the roof of main never closes: no slope reaches what lies between the ends at legs \
         0, 3, 4, 5, give one of them a pitch"
    );
}

#[test]
fn a_step_whose_fronts_overtake() {
    // A step in the front: leg 0 is flatter and starts behind leg 2.
    let corners = [
        [0.0, 0.0],
        [30.0, 0.0],
        [30.0, 2.0],
        [60.0, 2.0],
        [60.0, 40.0],
        [0.0, 40.0],
    ];
    let told = refused(body(&corners, &[3.0, 12.0, 12.0, 6.0, 6.0, 6.0]));
    assert_eq!(
        told,
        "legs 0 and 2 of main face the same way at 3/12 and 12/12 and their slopes overlap: \
         give one of them its own body"
    );
}

#[test]
fn neighbors_in_one_line_that_rise_differently() {
    let corners = [
        [0.0, 0.0],
        [10.0, 0.0],
        [20.0, 0.0],
        [20.0, 20.0],
        [0.0, 20.0],
    ];
    assert_eq!(
        refused(body(&corners, &[4.0, 8.0, 6.0, 6.0, 6.0])),
        "legs 0 and 1 of main lie in one line and rise differently: give one of them its own body"
    );
}

#[test]
fn legs_that_cross_and_legs_that_touch() {
    let crossed = [[0.0, 0.0], [20.0, 20.0], [20.0, 0.0], [0.0, 20.0]];
    assert_eq!(
        refused(hipped(&crossed, 6.0)),
        "the outline of main crosses itself: legs 0 and 2 meet, move a corner or split the body \
         there"
    );
    let touching = [
        [0.0, 0.0],
        [20.0, 0.0],
        [20.0, 20.0],
        [10.0, 0.0],
        [0.0, 20.0],
    ];
    assert!(refused(hipped(&touching, 6.0)).contains("crosses itself: legs 0 and 2 meet"));
}

#[test]
fn corners_in_one_place_and_corners_in_one_line() {
    let twice = [
        [0.0, 0.0],
        [20.0, 0.0],
        [20.0, 0.005],
        [20.0, 20.0],
        [0.0, 20.0],
    ];
    assert_eq!(
        refused(hipped(&twice, 6.0)),
        "leg 1 of main has no length: corners 1 and 2 are one place, leave one out"
    );
    let line = [[0.0, 0.0], [20.0, 0.0], [30.0, 0.0]];
    assert_eq!(
        refused(hipped(&line, 6.0)),
        "the outline of main holds no area: its corners lie in one line, read a turn again"
    );
    assert_eq!(
        refused(hipped(&[[0.0, 0.0], [9.0, 0.0]], 6.0)),
        "main has 2 corners: an outline needs at least 3"
    );
}

#[test]
fn pitches_that_no_roof_has() {
    for (pitch, said) in [(0.0, "0"), (-4.0, "-4"), (48.5, "48.5"), (f64::NAN, "NaN")] {
        assert_eq!(
            refused(body(&rectangle(40.0, 20.0), &[6.0, 6.0, pitch, 6.0])),
            format!(
                "leg 2 of main has the pitch {said}: a pitch is more than 0 and at most 48 in 12"
            )
        );
    }
}

#[test]
fn bands_that_do_not_stand_on_each_other() {
    for slopes in [
        &[][..],
        &[(12.0, None), (4.0, None)],
        &[(12.0, Some(8.0))],
        &[(12.0, Some(0.0)), (4.0, None)],
    ] {
        let mut shape = hipped(&rectangle(40.0, 20.0), 6.0);
        shape.legs[1].rise = bands(slopes);
        assert_eq!(
            refused(shape),
            "leg 1 of main: bands go from the eave up, 1 to 4 of them, each but the last with a \
             rise above 0 and the last with none"
        );
    }
}

#[test]
fn figures_that_are_no_numbers() {
    let mut shape = hipped(&rectangle(40.0, 20.0), 6.0);
    shape.corners[2].y = f64::NAN;
    assert_eq!(
        refused(shape),
        "main: corner 2 is not a number: read it again"
    );
}

#[test]
fn edges_that_are_too_few() {
    let mut shape = hipped(&rectangle(40.0, 20.0), 6.0);
    shape.legs.pop();
    assert_eq!(
        refused(shape),
        "main has 4 legs but 3 edges: give each leg its pitch or its end"
    );
}

#[test]
fn more_legs_than_any_house_has_are_refused_at_once() {
    let corners: Vec<[f64; 2]> = (0..20_000)
        .map(|corner| {
            let (sine, cosine) = (f64::from(corner) * 3e-4).sin_cos();
            [9000.0 * cosine, 9000.0 * sine]
        })
        .collect();
    assert_eq!(
        refused(hipped(&corners, 6.0)),
        "main has 20000 legs: draw it as bodies of at most 500 legs"
    );
}

#[test]
fn no_body_at_all() {
    let told = raise(&[], &[]).expect_err("nothing to raise");
    assert_eq!(
        told.to_string(),
        "there is no roof body: give at least one outline"
    );
}

#[test]
fn a_gable_at_an_inside_corner_is_raised_with_a_caution() {
    let corners = [
        [0.0, 0.0],
        [58.0, 0.0],
        [58.0, 17.0],
        [20.0, 17.0],
        [20.0, 47.0],
        [0.0, 47.0],
    ];
    let shape = with_ends(hipped(&corners, 6.0), &[2], &Rise::Gable);
    let told = raise(&[shape], &[]).expect("a roof");
    assert_eq!(
        told.cautions,
        [RoofCaution::GableAtInsideCorner {
            body: "main".to_string(),
            leg: 2
        }]
    );
}
