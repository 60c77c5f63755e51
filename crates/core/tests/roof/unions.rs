//! Bodies that meet, by the hundred: at every place asked, what is seen is what the definition of
//! a solid says, worked out body by body.

use super::bodies::{body, height_from_leg, holds, rectangle, roof, with_ends};
use eavebook_core::roof::{BodyShape, EdgeKind, Rise, Roof, raise, spread};
use eavebook_core::survey::Point;
use eavebook_core::units::{Length, Point3};
use eavebook_houses::{Numbers, tangle};
use std::collections::BTreeSet;

/// A rectangle of roof somewhere, turned as told.
fn placed(numbers: &mut Numbers, [length, width]: [f64; 2], turn: f64) -> BodyShape {
    let (sine, cosine) = turn.to_radians().sin_cos();
    let (x, y) = (numbers.between(-20.0, 20.0), numbers.between(-20.0, 20.0));
    let mut shape = body(&rectangle(length, width), &[6.0; 4]);
    for corner in &mut shape.corners {
        *corner = Point {
            x: x + corner.x * cosine - corner.y * sine,
            y: y + corner.x * sine + corner.y * cosine,
        };
    }
    shape
}

/// Up to four bodies that meet: on a grid of whole feet (legs and corners fall on each other) or
/// turned anyhow, at equal or unequal eaves and pitches, some with overhangs.
fn house(seed: u64) -> Vec<BodyShape> {
    let mut numbers = Numbers::new(seed);
    let on_grid = numbers.even() < 0.5;
    let equal = numbers.even() < 0.5;
    (0..2 + numbers.below(3))
        .map(|number| {
            let size = [numbers.between(10.0, 50.0), numbers.between(8.0, 30.0)];
            let turn = if on_grid {
                0.0
            } else {
                numbers.between(0.0, 360.0)
            };
            let mut shape = placed(
                &mut numbers,
                size.map(|side| if on_grid { side.round() } else { side }),
                turn,
            );
            if on_grid {
                for corner in &mut shape.corners {
                    *corner = Point {
                        x: corner.x.round(),
                        y: corner.y.round(),
                    };
                }
            }
            shape.id = format!("body {number}");
            let pitch = if equal {
                6.0
            } else {
                [3.0, 5.0, 8.0, 12.0][numbers.below(4)]
            };
            for leg in &mut shape.legs {
                leg.rise = Rise::slope(eavebook_core::units::Pitch::rise_in_12(pitch));
            }
            if !equal {
                shape.eave_height = Length::feet([9.0, 9.0, 14.0, 18.0][numbers.below(4)]);
                let overhang = Length::feet([0.0, 0.0, 1.0, 2.0][numbers.below(4)]);
                for leg in &mut shape.legs {
                    leg.overhang = overhang;
                }
            }
            match numbers.below(4) {
                0 => with_ends(shape, &[1, 3], &Rise::Gable),
                1 => with_ends(shape, &[3], &Rise::Gable),
                2 => with_ends(shape, &[0, 1, 3], &Rise::Wall),
                _ => shape,
            }
        })
        .collect()
}

/// Distance from a place to a leg's line, into the body.
fn within(shape: &BodyShape, leg: usize, [x, y]: [f64; 2]) -> f64 {
    let (a, b) = (
        shape.corners[leg],
        shape.corners[(leg + 1) % shape.corners.len()],
    );
    ((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / (b.x - a.x).hypot(b.y - a.y)
}

/// Faces seen at a place, by body and leg, from each body's roof alone.
fn seen_by_definition(
    house: &[BodyShape],
    alone: &[Roof],
    place: [f64; 2],
) -> BTreeSet<(usize, usize)> {
    let tops: Vec<Option<(usize, f64)>> = house
        .iter()
        .zip(alone)
        .map(|(shape, roof)| {
            let face = roof.faces.iter().find(|face| holds(face, place))?;
            Some((face.leg, height_from_leg(shape, face.leg, place)))
        })
        .collect();
    (0..house.len())
        .filter_map(|this| {
            let (leg, height) = tops[this]?;
            let hidden = (0..house.len()).any(|other| {
                let Some((_, top)) = tops[other].filter(|_| other != this) else {
                    return false;
                };
                let higher = top > height + 1e-9 || (other < this && top > height - 1e-9);
                let indoors = (0..4).all(|leg| {
                    within(&house[other], leg, place) > house[other].legs[leg].overhang.in_feet()
                });
                higher && (indoors || height >= house[other].eave_height.in_feet())
            });
            (!hidden).then_some((this, leg))
        })
        .collect()
}

#[test]
fn what_is_seen_is_what_no_other_body_holds() {
    let (mut asked, mut wrong, mut refused) = (0, Vec::new(), Vec::new());
    for seed in 0..600 {
        let house = house(80_000 + seed);
        let alone: Vec<Roof> = house.iter().map(roof).collect();
        let told = match raise(&house, &[]) {
            Ok(told) => told,
            Err(refusal) => {
                refused.push(format!("{seed}: {refusal}"));
                continue;
            }
        };
        let mut numbers = Numbers::new(90_000 + seed);
        for _ in 0..150 {
            let place = [numbers.between(-50.0, 70.0), numbers.between(-50.0, 70.0)];
            let ours: BTreeSet<(usize, usize)> = told
                .faces
                .iter()
                .filter(|face| {
                    let in_hole = face.holes.iter().any(|hole| {
                        let mut hole_face = (*face).clone();
                        hole_face.polygon.clone_from(hole);
                        holds(&hole_face, place)
                    });
                    holds(face, place) && !in_hole
                })
                .map(|face| (face.body, face.leg))
                .collect();
            let known = seen_by_definition(&house, &alone, place);
            asked += usize::from(!known.is_empty());
            if ours != known {
                wrong.push(format!(
                    "{seed} at {place:?}: {ours:?}, by definition {known:?}"
                ));
            }
        }
    }
    println!(
        "600 houses of 2 to 4 bodies: {asked} places under roof, {} wrong",
        wrong.len()
    );
    assert!(refused.is_empty(), "{}", refused.join("\n"));
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(asked > 8_000, "{asked} places");
}

#[test]
fn the_rings_around_a_face_hold_its_area() {
    for seed in 0..300 {
        let told = raise(&house(80_000 + seed), &[]).expect("a roof");
        for face in &told.faces {
            let area = |ring: &Vec<Point3>| {
                (0..ring.len())
                    .map(|at| {
                        let [a, b] = [ring[at], ring[(at + 1) % ring.len()]].map(Point3::in_feet);
                        (a[0] * b[1] - a[1] * b[0]) / 2.0
                    })
                    .sum::<f64>()
            };
            let rings = area(&face.polygon) + face.holes.iter().map(area).sum::<f64>();
            assert!(
                (rings - face.plan_area.in_square_feet()).abs() < 1e-6,
                "{seed}: {rings}, {face:?}"
            );
        }
    }
}

#[test]
fn every_piece_around_a_face_is_listed_unless_one_surface_goes_on() {
    // All edges of a face together are as long as its rings, less what lies between coplanar
    // faces: here no two bodies share a plane.
    for seed in 0..300 {
        let house = house(80_000 + seed);
        let told = raise(&house, &[]).expect("a roof");
        for (number, face) in told.faces.iter().enumerate() {
            let around: f64 = face
                .rings()
                .flat_map(|ring| {
                    (0..ring.len()).map(|at| {
                        let [a, b] = [ring[at], ring[(at + 1) % ring.len()]].map(Point3::in_feet);
                        (a[0] - b[0]).hypot(a[1] - b[1]).hypot(a[2] - b[2])
                    })
                })
                .sum();
            let listed: f64 = told
                .edges
                .iter()
                .filter(|edge| edge.faces.contains(&number))
                .map(|edge| edge.length.in_feet())
                .sum();
            let one_surface = told.faces.iter().enumerate().any(|(other, one)| {
                other != number
                    && one.body != face.body
                    && (one.pitch.in_12() - face.pitch.in_12()).abs() < 1e-9
            });
            if !one_surface {
                assert!(
                    (listed - around).abs() < 1e-3,
                    "{seed}: {listed} of {around}: {face:?}"
                );
            }
        }
    }
}

#[test]
fn a_body_inside_another_leaves_a_hole() {
    let low = body(&rectangle(60.0, 40.0), &[3.0; 4]);
    let mut tall = body(&rectangle(6.0, 6.0), &[6.0; 4]);
    for corner in &mut tall.corners {
        corner.x += 27.0;
        corner.y += 4.0;
    }
    tall.id = "lantern".to_string();
    tall.eave_height = Length::feet(20.0);
    let told = raise(&[low, tall], &[]).expect("a roof");
    assert_eq!(told.faces[0].holes.len(), 1);
    // Level against the low and the high side, sloped against the two others.
    assert!((told.length_of(EdgeKind::HeadWall).in_feet() - 12.0).abs() < 1e-6);
    let side = 2.0 * 6.0 * (1.0 + (3.0_f64 / 12.0).powi(2)).sqrt();
    assert!((told.length_of(EdgeKind::SideWall).in_feet() - side).abs() < 1e-6);
    assert!((told.plan_area().in_square_feet() - 60.0 * 40.0).abs() < 1e-6);
}

#[test]
fn bodies_apart_are_each_as_they_are_alone() {
    let one = body(&rectangle(40.0, 24.0), &[6.0; 4]);
    let mut other = body(&rectangle(20.0, 20.0), &[4.0; 4]);
    for corner in &mut other.corners {
        corner.x += 100.0;
    }
    let both = raise(&[one.clone(), other.clone()], &[]).expect("a roof");
    let (one, other) = (roof(&one), roof(&other));
    assert!(
        (both.area().in_square_feet()
            - one.area().in_square_feet()
            - other.area().in_square_feet())
        .abs()
            < 1e-6
    );
    for kind in EdgeKind::ALL {
        let apart = one.length_of(kind).in_feet() + other.length_of(kind).in_feet();
        assert!(
            (both.length_of(kind).in_feet() - apart).abs() < 1e-6,
            "{kind:?}"
        );
    }
}

/// The area of a house with one corner of one body moved.
fn area_with(house: &[BodyShape], at: [usize; 2], by: [f64; 2]) -> Option<f64> {
    let mut house = house.to_vec();
    house[at[0]].corners[at[1]].x += by[0];
    house[at[0]].corners[at[1]].y += by[1];
    Some(raise(&house, &[]).ok()?.area().in_square_feet())
}

#[test]
fn the_area_of_joined_bodies_follows_their_corners_as_differences_say() {
    let step = 1e-4;
    let (mut off, mut all) = (Vec::new(), 0);
    for seed in 0..80 {
        let house = house(80_000 + seed);
        // On the grid legs of two bodies lie on each other: there the area has kinks.
        if house[0].corners[0].x.fract().abs() < 1e-12 {
            continue;
        }
        let told = spread(&house).expect("a roof");
        for this in 0..house.len() {
            for corner in 0..4 {
                for axis in 0..2 {
                    let moved = |length: f64| {
                        let mut by = [0.0; 2];
                        by[axis] = length;
                        area_with(&house, [this, corner], by)
                    };
                    let (Some(ahead), Some(back)) = (moved(step), moved(-step)) else {
                        continue;
                    };
                    let known = (ahead - back) / (2.0 * step);
                    let ours = told.area.corners[this][2 * corner + axis];
                    all += 1;
                    if (ours - known).abs() > 1e-3 * (1.0 + known.abs()) {
                        off.push(format!(
                            "{seed} body {this} corner {corner} axis {axis}: {ours}, {known}"
                        ));
                    }
                }
            }
        }
    }
    println!("{all} derivatives of joined bodies, {} off", off.len());
    assert!(off.is_empty(), "{}", off.join("\n"));
    assert!(all > 500, "{all}");
}

#[test]
fn many_cut_up_bodies_over_each_other_come_to_an_end() {
    let mut numbers = Numbers::new(95_000);
    let house: Vec<BodyShape> = (0..8)
        .map(|number| {
            let corners = tangle(&mut numbers, 24);
            let mut shape = body(&corners, &[6.0; 24]);
            shape.id = format!("body {number}");
            shape.eave_height = Length::feet(9.0 + number as f64);
            shape
        })
        .collect();
    let told = raise(&house, &[]).expect("a roof");
    let under_roof: f64 = house
        .iter()
        .map(|shape| roof(shape).plan_area().in_square_feet())
        .sum();
    assert!(told.plan_area().in_square_feet() < under_roof);
    let tallest = told.faces.iter().any(|face| face.body == 7);
    assert!(tallest, "the body with the highest eave is not seen");
}
