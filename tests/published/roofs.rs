//! Rafters, hips, valleys and areas of whole roofs, read off the roof that the kernel raises.

use crate::checks::{self, Check};
use crate::published;
use eavebook_core::roof::{self, BodyShape, Edge, EdgeKind, LegRise, Rise, Roof};
use eavebook_core::survey::Point;
use eavebook_core::units::{Length, Pitch, Tape};

/// A roof over corners, each leg sloped or, where named, a gable.
fn raise(corners: &[[f64; 2]], pitch: Pitch, gables: &[usize]) -> Roof {
    let rise = |leg| {
        if gables.contains(&leg) {
            Rise::Gable
        } else {
            Rise::slope(pitch)
        }
    };
    let legs = (0..corners.len()).map(|leg| LegRise {
        rise: rise(leg),
        overhang: Length::ZERO,
    });
    let body = BodyShape {
        id: "main".to_owned(),
        corners: corners.iter().map(|&[x, y]| Point { x, y }).collect(),
        nominal_directions: None,
        legs: legs.collect(),
        eave_height: Length::ZERO,
    };
    roof::raise(&[body], &[]).unwrap()
}

fn rectangle(length: f64, width: f64) -> [[f64; 2]; 4] {
    [[0.0, 0.0], [length, 0.0], [length, width], [0.0, width]]
}

fn gable(length: f64, width: f64, pitch: Pitch) -> Roof {
    raise(&rectangle(length, width), pitch, &[1, 3])
}

fn hip(length: f64, width: f64, pitch: Pitch) -> Roof {
    raise(&rectangle(length, width), pitch, &[])
}

fn pitch(check: &Check) -> Pitch {
    Pitch::rise_in_12(check.input("rise_in_per_12"))
}

fn one_of(roof: &Roof, kind: EdgeKind) -> &Edge {
    let found = roof.edges.iter().find(|edge| edge.kind == kind);
    found.unwrap_or_else(|| panic!("no {kind:?}"))
}

/// Feet of rafter from eave to ridge of a gable so wide: its rake.
fn rafter(width: f64, pitch: Pitch) -> f64 {
    one_of(&gable(40.0, width, pitch), EdgeKind::Rake)
        .length
        .in_feet()
}

/// Feet in plan between the ends of an edge.
fn run(edge: &Edge) -> f64 {
    let ([x, y, _], [to_x, to_y, _]) = (edge.from.in_feet(), edge.to.in_feet());
    (to_x - x).hypot(to_y - y)
}

/// Area of a gable of such a length and such slopes, whatever its pitch.
fn gable_by_slopes(length: f64, slope: f64) -> f64 {
    let pitch = Pitch::rise_in_12(5.0);
    gable(length, 2.0 * slope / pitch.slope_factor(), pitch)
        .area()
        .in_square_feet()
}

published! {
    a_rafter_over_16_ft = "WX-01", |check| {
        12.0 * rafter(check.input("span_ft"), pitch(check))
    };
    a_rafter_over_25_ft = "WX-02", |check| rafter(check.input("span_ft"), pitch(check));
    a_hip_over_a_run_of_15_ft = "WX-03", |check| {
        let roof = hip(60.0, 2.0 * check.input("common_run_ft"), pitch(check));
        one_of(&roof, EdgeKind::Hip).length.in_feet()
    };
    the_run_of_a_hip_over_15_ft = "WX-04", |check| {
        let roof = hip(60.0, 2.0 * check.input("common_run_ft"), Pitch::rise_in_12(8.0));
        run(one_of(&roof, EdgeKind::Hip))
    };
    a_valley_of_an_addition_as_wide_as_the_house = "WX-05", |check| {
        let wide = check.input("addition_span_ft");
        let house = [
            [0.0, 0.0], [20.0, 0.0], [20.0, -25.0], [20.0 + wide, -25.0], [20.0 + wide, 0.0],
            [100.0, 0.0], [100.0, wide], [0.0, wide],
        ];
        one_of(&raise(&house, pitch(check), &[2, 5, 7]), EdgeKind::Valley)
            .length
            .in_feet()
    };
    a_rafter_over_20_ft_8_in = "WX-06", |check| {
        let width = Tape::read(check.inputs["building_width"].as_str().unwrap()).unwrap();
        12.0 * rafter(width.length().in_feet(), pitch(check))
    };
    a_rafter_over_28_ft = "WX-07", |check| rafter(check.input("house_width_ft"), pitch(check));
    a_rafter_over_a_run_of_14_ft = "WX-08", |check| {
        12.0 * rafter(2.0 * check.input("run_ft"), pitch(check))
    };
    a_gable_by_its_two_slopes = "WX-11", |check| {
        gable_by_slopes(check.input("length_ft"), check.input("two_slopes_total_width_ft") / 2.0)
    };
    another_gable_by_its_slopes = "WX-15", |check| {
        gable_by_slopes(check.input("length_ft"), check.input("slope_len_ft"))
    };
    the_ridge_of_a_60_ft_building = "WX-26", |check| {
        let roof = gable(40.0, check.input("width_ft"), pitch(check));
        one_of(&roof, EdgeKind::Ridge).from.height().in_feet()
    };
    a_hip_roof = "ID-01", |check| {
        hip(check.input("L_ft"), check.input("W_ft"), pitch(check))
            .area()
            .in_square_feet()
    };
    a_hip_at_12_in_12_over_a_run_of_15_ft = "ID-02", |check| {
        let roof = hip(60.0, 2.0 * check.input("run_ft"), pitch(check));
        one_of(&roof, EdgeKind::Hip).length.in_feet()
    };
    half_of_perimeter_times_rafter_is_not_the_area_of_a_hip = "TR-01", |check| {
        hip(check.input("L_ft"), check.input("W_ft"), pitch(check))
            .area()
            .in_square_feet()
    };
}

/// Entries that are no plain number, tested below.
pub const IN_WORDS: &[&str] = &["WX-25"];

#[test]
fn a_half_pitch_rafter_is_the_tape_text_that_the_handbook_prints() {
    let check = checks::find("WX-25");
    let printed = Tape::read(check.expected.as_str().unwrap()).unwrap();
    let rafter = Length::feet(rafter(check.input("width_ft"), pitch(&check)));
    // The handbook means a sixteenth of an inch.
    let sixteenth = 1.0 / 16.0;
    assert!(
        (rafter - printed.length()).in_inches().abs() <= sixteenth,
        "{}",
        check.source
    );
}

#[test]
fn a_hip_roof_has_the_area_of_the_gable_roof_on_the_same_plan() {
    let check = checks::find("ID-01");
    let (length, width) = (check.input("L_ft"), check.input("W_ft"));
    let hip = hip(length, width, pitch(&check));
    let gable = gable(length, width, pitch(&check));
    let apart = (hip.area() - gable.area()).in_square_feet();
    assert!(apart.abs() < check.tolerance);
    let squares = hip.area().in_squares();
    assert!((squares - 13.4164).abs() < 1e-3);
}
