//! Roofs whose figures are known without a computer.

use super::bodies::{bands, body, hipped, rectangle, roof, with_ends};
use eavebook_core::roof::{EdgeKind, Rise, Roof};

const NEAR: f64 = 1e-9;

fn near(what: &str, ours: f64, known: f64) {
    assert!(
        (ours - known).abs() < NEAR * (1.0 + known.abs()),
        "{what}: {ours}, known {known}"
    );
}

fn face(roof: &Roof, leg: usize) -> f64 {
    roof.faces
        .iter()
        .filter(|face| face.leg == leg)
        .map(|face| face.plan_area.in_square_feet())
        .sum()
}

/// Area on the slope over plan area.
fn factor(pitch: f64) -> f64 {
    (1.0 + (pitch / 12.0_f64).powi(2)).sqrt()
}

/// Length of a hip over the common run.
fn hip_factor(pitch: f64) -> f64 {
    (2.0 + (pitch / 12.0_f64).powi(2)).sqrt()
}

#[test]
fn a_hipped_rectangle_has_its_ridge_hips_and_faces() {
    let (length, width, pitch) = (46.0, 25.0, 8.0);
    let told = roof(&hipped(&rectangle(length, width), pitch));
    near(
        "ridge",
        told.length_of(EdgeKind::Ridge).in_feet(),
        length - width,
    );
    near(
        "hips",
        told.length_of(EdgeKind::Hip).in_feet(),
        4.0 * width / 2.0 * hip_factor(pitch),
    );
    near(
        "eaves",
        told.length_of(EdgeKind::Eave).in_feet(),
        2.0 * (length + width),
    );
    near(
        "long face",
        face(&told, 0),
        width * (2.0 * length - width) / 4.0,
    );
    near("short face", face(&told, 1), width * width / 4.0);
    near(
        "area",
        told.area().in_square_feet(),
        length * width * factor(pitch),
    );
    assert_eq!(
        told.edges
            .iter()
            .filter(|edge| edge.kind == EdgeKind::Ridge)
            .count(),
        1
    );
    assert_eq!(told.edges.len(), 4 + 4 + 1);
}

#[test]
fn a_hipped_square_comes_to_a_point() {
    let told = roof(&hipped(&rectangle(30.0, 30.0), 6.0));
    near("ridge", told.length_of(EdgeKind::Ridge).in_feet(), 0.0);
    near(
        "hips",
        told.length_of(EdgeKind::Hip).in_feet(),
        4.0 * 15.0 * hip_factor(6.0),
    );
}

#[test]
fn a_gabled_rectangle_has_two_faces_and_four_rakes() {
    let (length, width, pitch) = (40.0, 24.0, 5.0);
    let shape = with_ends(
        hipped(&rectangle(length, width), pitch),
        &[1, 3],
        &Rise::Gable,
    );
    let told = roof(&shape);
    near("ridge", told.length_of(EdgeKind::Ridge).in_feet(), length);
    near(
        "rakes",
        told.length_of(EdgeKind::Rake).in_feet(),
        4.0 * width / 2.0 * factor(pitch),
    );
    near(
        "area",
        told.area().in_square_feet(),
        length * width * factor(pitch),
    );
    assert_eq!(told.faces.len(), 2);
}

#[test]
fn one_gable_and_one_hip_share_a_ridge() {
    let (length, width) = (40.0, 24.0);
    let told = roof(&with_ends(
        hipped(&rectangle(length, width), 5.0),
        &[1],
        &Rise::Gable,
    ));
    near(
        "ridge",
        told.length_of(EdgeKind::Ridge).in_feet(),
        length - width / 2.0,
    );
}

#[test]
fn unequal_pitches_put_the_ridge_off_the_middle() {
    let (length, width, front, back) = (40.0, 24.0, 4.0, 12.0);
    let shape = with_ends(
        body(&rectangle(length, width), &[front, 1.0, back, 1.0]),
        &[1, 3],
        &Rise::Gable,
    );
    let told = roof(&shape);
    let run = width * back / (front + back);
    near("front face", face(&told, 0), length * run);
    near(
        "area",
        told.area().in_square_feet(),
        length * (run * factor(front) + (width - run) * factor(back)),
    );
}

#[test]
fn one_pitched_leg_makes_a_shed() {
    let (length, width, pitch) = (30.0, 14.0, 3.0);
    let shape = with_ends(
        hipped(&rectangle(length, width), pitch),
        &[1, 2, 3],
        &Rise::Gable,
    );
    let told = roof(&shape);
    near(
        "rakes",
        told.length_of(EdgeKind::Rake).in_feet(),
        2.0 * width * factor(pitch) + length,
    );
    near(
        "area",
        told.area().in_square_feet(),
        length * width * factor(pitch),
    );
}

#[test]
fn a_shed_under_a_wall_ends_in_a_head_wall_and_two_side_walls() {
    let (length, width, pitch) = (30.0, 14.0, 3.0);
    let shape = with_ends(
        hipped(&rectangle(length, width), pitch),
        &[1, 2, 3],
        &Rise::Wall,
    );
    let told = roof(&shape);
    near(
        "head wall",
        told.length_of(EdgeKind::HeadWall).in_feet(),
        length,
    );
    near(
        "side walls",
        told.length_of(EdgeKind::SideWall).in_feet(),
        2.0 * width * factor(pitch),
    );
    near("rakes", told.length_of(EdgeKind::Rake).in_feet(), 0.0);
}

#[test]
fn a_regular_octagon_comes_to_a_point() {
    let corners: Vec<[f64; 2]> = (0..8)
        .map(|corner| {
            let (sine, cosine) = (f64::from(corner) * std::f64::consts::FRAC_PI_4).sin_cos();
            [10.0 * cosine, 10.0 * sine]
        })
        .collect();
    let told = roof(&hipped(&corners, 9.0));
    let rise = 10.0 * std::f64::consts::FRAC_PI_8.cos() * 9.0 / 12.0;
    near(
        "hips",
        told.length_of(EdgeKind::Hip).in_feet(),
        8.0 * 10.0_f64.hypot(rise),
    );
    assert_eq!(told.edges.len(), 16);
}

#[test]
fn a_mansard_breaks_where_its_lower_slope_ends() {
    let (length, width) = (40.0, 30.0);
    let mut shape = hipped(&rectangle(length, width), 4.0);
    for leg in &mut shape.legs {
        leg.rise = bands(&[(24.0, Some(8.0)), (4.0, None)]);
    }
    let told = roof(&shape);
    let run = 8.0 * 12.0 / 24.0;
    near(
        "breaks",
        told.length_of(EdgeKind::PitchBreak).in_feet(),
        2.0 * (length + width) - 8.0 * run,
    );
    near(
        "ridge",
        told.length_of(EdgeKind::Ridge).in_feet(),
        length - width,
    );
    assert_eq!(told.faces.len(), 8);
    assert_eq!(told.faces[1].band, Some(1));
}

#[test]
fn an_l_of_equal_wings_has_one_valley_and_two_ridges_that_meet() {
    // Wings 20 wide, 50 and 40 long over their outer legs.
    let corners = [
        [0.0, 0.0],
        [50.0, 0.0],
        [50.0, 20.0],
        [20.0, 20.0],
        [20.0, 40.0],
        [0.0, 40.0],
    ];
    let told = roof(&hipped(&corners, 6.0));
    near(
        "valley",
        told.length_of(EdgeKind::Valley).in_feet(),
        10.0 * hip_factor(6.0),
    );
    near(
        "hips",
        told.length_of(EdgeKind::Hip).in_feet(),
        5.0 * 10.0 * hip_factor(6.0),
    );
    near(
        "ridges",
        told.length_of(EdgeKind::Ridge).in_feet(),
        30.0 + 20.0,
    );
}

#[test]
fn an_edge_over_two_legs_in_one_line_is_one_edge() {
    let corners = [
        [0.0, 0.0],
        [18.0, 0.0],
        [46.0, 0.0],
        [46.0, 25.0],
        [0.0, 25.0],
    ];
    let told = roof(&hipped(&corners, 8.0));
    let count = |kind: EdgeKind| told.edges.iter().filter(|edge| edge.kind == kind).count();
    assert_eq!(count(EdgeKind::Ridge), 1);
    assert_eq!(count(EdgeKind::Eave), 4);
    near(
        "long side",
        face(&told, 0) + face(&told, 1),
        25.0 * (92.0 - 25.0) / 4.0,
    );
}
