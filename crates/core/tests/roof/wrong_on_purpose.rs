//! The law of any roof sees a roof that is wrong on purpose.

use super::bodies::{hipped, rectangle, roof};
use super::inputs::{drains, no_more_than_alone, whole};
use eavebook_core::roof::{BodyShape, Face, Roof};
use eavebook_core::units::{Area, Point3};

fn ell() -> BodyShape {
    let corners = [
        [0.0, 0.0],
        [40.0, 0.0],
        [40.0, 18.0],
        [16.0, 18.0],
        [16.0, 34.0],
        [0.0, 34.0],
    ];
    hipped(&corners, 6.0)
}

/// What is said of its roof made wrong.
fn fault(wrong: impl Fn(&mut Roof)) -> String {
    let body = ell();
    let mut told = roof(&body);
    assert_eq!(whole(&body, &told), Ok(()));
    wrong(&mut told);
    whole(&body, &told).expect_err("a wrong roof that nobody saw")
}

#[test]
fn a_face_left_out_is_seen() {
    assert!(fault(|roof| drop(roof.faces.pop())).starts_with("faces hold"));
}

#[test]
fn a_face_over_another_is_seen() {
    // One hipped end of a rectangle stands where the other is: the sums are right.
    let body = hipped(&rectangle(40.0, 18.0), 6.0);
    let mut told = roof(&body);
    told.faces[3] = told.faces[1].clone();
    let said = whole(&body, &told).expect_err("a wrong roof that nobody saw");
    assert!(said.contains("faces at"), "{said}");
}

#[test]
fn a_corner_an_inch_too_high_is_seen() {
    let said = fault(|roof| {
        let corner = &mut roof.faces[2].polygon[1];
        let [x, y, height] = corner.in_feet();
        *corner = Point3::feet([x, y, height + 1.0 / 12.0]);
    });
    assert!(said.contains("its plane at"), "{said}");
}

#[test]
fn a_face_said_to_rise_from_another_leg_is_seen() {
    let said = fault(|roof| roof.faces[3].leg = 4);
    assert!(said.contains("its plane at"), "{said}");
}

/// The hipped end over leg 1, its eave at x = 40, made wrong: what is said of how it drains.
fn end_drains(wrong: impl Fn(&mut Face)) -> Result<(), String> {
    let body = ell();
    let mut told = roof(&body);
    wrong(&mut told.faces[1]);
    drains(&body, &told.faces[1])
}

#[test]
fn a_face_that_never_reaches_its_eave_is_seen() {
    assert_eq!(end_drains(|_| ()), Ok(()));
    let said = end_drains(|face| {
        for corner in &mut face.polygon {
            let [x, y, height] = corner.in_feet();
            *corner = Point3::feet([x, y, height.max(9.5)]);
        }
    });
    assert_eq!(
        said,
        Err("the face of leg 1 begins 0.5 ft above its eave".to_string())
    );
}

#[test]
fn water_that_comes_back_to_a_face_is_seen() {
    // A finger of the face reaches along the ridge beside it, with a gap below it.
    let finger = [[38.0, 6.0, 10.0], [37.0, 14.0, 10.5], [37.5, 5.0, 10.25]];
    let said = end_drains(|face| face.polygon.extend(finger.map(Point3::feet)));
    assert_eq!(
        said,
        Err("water leaves the face of leg 1 and comes back to it".to_string())
    );
}

#[test]
fn an_area_that_is_no_factor_of_the_plan_is_seen() {
    let said = fault(|roof| {
        let face = &mut roof.faces[4];
        face.area = face.area + Area::square_feet(0.01);
    });
    assert!(said.contains("by the factor"), "{said}");
}

#[test]
fn a_roof_that_counts_the_same_place_twice_is_seen() {
    let body = ell();
    let mut told = roof(&body);
    let bodies = [body];
    assert_eq!(no_more_than_alone(&bodies, &told), Ok(()));
    told.faces.push(told.faces[0].clone());
    assert!(no_more_than_alone(&bodies, &told).is_err());
}
