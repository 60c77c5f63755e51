//! Twelve invented houses, of every sort that a drawing must tell apart.

use crate::{Grid, Numbers, cells};
use eavebook_core::roof::{BodyShape, LegRise, Rise};
use eavebook_core::survey::{Band, Point, WallSegment};
use eavebook_core::units::{Length, Pitch};

/// A body with one slope a leg, but for gables.
#[must_use]
pub fn body(id: &str, eave: f64, pitch: f64, gables: &[usize], corners: &[[f64; 2]]) -> BodyShape {
    let rise = |leg: usize| {
        if gables.contains(&leg) {
            Rise::Gable
        } else {
            Rise::slope(Pitch::rise_in_12(pitch))
        }
    };
    BodyShape {
        id: id.to_owned(),
        corners: corners.iter().map(|&[x, y]| Point { x, y }).collect(),
        nominal_directions: None,
        legs: (0..corners.len())
            .map(|leg| LegRise {
                rise: rise(leg),
                overhang: Length::ZERO,
            })
            .collect(),
        eave_height: Length::feet(eave),
    }
}

/// The corners of a rectangle by its least corner and its size.
#[must_use]
pub fn box_at([x, y]: [f64; 2], [wide, deep]: [f64; 2]) -> Vec<[f64; 2]> {
    vec![[x, y], [x + wide, y], [x + wide, y + deep], [x, y + deep]]
}

fn octagon([x, y]: [f64; 2], radius: f64) -> Vec<[f64; 2]> {
    (0..8)
        .map(|corner| {
            let turn = (f64::from(corner) + 0.5) * std::f64::consts::FRAC_PI_4;
            [x + radius * turn.cos(), y + radius * turn.sin()]
        })
        .collect()
}

/// Twelve invented houses by name, with walls that rise past a roof.
#[must_use]
pub fn twelve() -> Vec<(&'static str, Vec<BodyShape>, Vec<WallSegment>)> {
    let rectangle = box_at([0.0, 0.0], [46.0, 26.0]);
    let ell = [
        [0.0, 0.0],
        [50.0, 0.0],
        [50.0, 22.0],
        [22.0, 22.0],
        [22.0, 44.0],
        [0.0, 44.0],
    ];
    let tee = [
        [16.0, 0.0],
        [38.0, 0.0],
        [38.0, 18.0],
        [54.0, 18.0],
        [54.0, 42.0],
        [0.0, 42.0],
        [0.0, 18.0],
        [16.0, 18.0],
    ];
    let u = [
        [0.0, 0.0],
        [18.0, 0.0],
        [18.0, 20.0],
        [42.0, 20.0],
        [42.0, 0.0],
        [60.0, 0.0],
        [60.0, 42.0],
        [0.0, 42.0],
    ];
    let cross = [
        [20.0, 0.0],
        [40.0, 0.0],
        [40.0, 20.0],
        [60.0, 20.0],
        [60.0, 40.0],
        [40.0, 40.0],
        [40.0, 60.0],
        [20.0, 60.0],
        [20.0, 40.0],
        [0.0, 40.0],
        [0.0, 20.0],
        [20.0, 20.0],
    ];
    let bay = [
        [0.0, 0.0],
        [12.0, 0.0],
        [16.0, -4.0],
        [24.0, -4.0],
        [28.0, 0.0],
        [46.0, 0.0],
        [46.0, 28.0],
        [0.0, 28.0],
    ];
    let mut mansard = body("main", 9.0, 4.0, &[], &box_at([0.0, 0.0], [40.0, 30.0]));
    for leg in &mut mansard.legs {
        leg.rise = Rise::Slopes(vec![
            Band {
                pitch: Pitch::rise_in_12(24.0),
                rise: Some(Length::feet(8.0)),
            },
            Band {
                pitch: Pitch::rise_in_12(4.0),
                rise: None,
            },
        ]);
    }
    let mut porch = body(
        "porch",
        9.0,
        3.0,
        &[1, 3],
        &box_at([6.0, -9.0], [22.0, 9.0]),
    );
    porch.legs[2].rise = Rise::Wall;
    let house_wall = WallSegment {
        from: Point { x: 0.0, y: 0.0 },
        to: Point { x: 46.0, y: 0.0 },
        top: Length::feet(18.0),
    };
    let forty = cells(&mut Numbers::new(40), 40, Grid::Uneven);
    let main = |eave: f64| body("main", eave, 6.0, &[1, 3], &rectangle);
    let dormer = |x: f64| body("dormer", 12.0, 6.0, &[0, 2], &box_at([x, 2.0], [8.0, 12.0]));
    let named = |id: &str, mut shape: BodyShape| {
        shape.id = id.to_owned();
        shape
    };
    vec![
        (
            "rectangle",
            vec![body("main", 9.0, 6.0, &[1], &rectangle)],
            vec![],
        ),
        ("ell", vec![body("main", 9.0, 6.0, &[], &ell)], vec![]),
        (
            "tee",
            vec![body("main", 9.0, 8.0, &[0, 3, 5], &tee)],
            vec![],
        ),
        ("u", vec![body("main", 9.0, 5.0, &[0], &u)], vec![]),
        (
            "cross",
            vec![body("main", 9.0, 7.0, &[0, 6], &cross)],
            vec![],
        ),
        ("bay", vec![body("main", 9.0, 6.0, &[], &bay)], vec![]),
        (
            "turret",
            vec![
                main(9.0),
                body("turret", 15.0, 14.0, &[], &octagon([4.0, 3.0], 6.0)),
            ],
            vec![],
        ),
        (
            "two heights",
            vec![
                body("main", 18.0, 6.0, &[], &box_at([0.0, 0.0], [30.0, 28.0])),
                body("wing", 9.0, 5.0, &[1], &box_at([20.0, 4.0], [34.0, 20.0])),
            ],
            vec![],
        ),
        ("porch", vec![main(18.0), porch], vec![house_wall]),
        (
            "dormers",
            vec![
                main(9.0),
                named("dormer 1", dormer(7.0)),
                named("dormer 2", dormer(30.0)),
            ],
            vec![],
        ),
        ("pitch break", vec![mansard], vec![]),
        (
            "forty legs",
            vec![body("main", 9.0, 6.0, &[], &forty)],
            vec![],
        ),
    ]
}
