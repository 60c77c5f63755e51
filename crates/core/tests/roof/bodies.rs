//! Bodies and measures that several tests use.

use eavebook_core::roof::{BodyShape, Face, LegRise, Rise, Roof, raise};
use eavebook_core::survey::{Band, Point};
use eavebook_core::units::{Length, Pitch};

/// A body over corners, one slope a leg.
pub fn body(corners: &[[f64; 2]], pitches: &[f64]) -> BodyShape {
    BodyShape {
        id: "main".to_string(),
        corners: corners.iter().map(|&[x, y]| Point { x, y }).collect(),
        nominal_directions: None,
        legs: pitches
            .iter()
            .map(|&pitch| LegRise {
                rise: Rise::slope(Pitch::rise_in_12(pitch)),
                overhang: Length::ZERO,
            })
            .collect(),
        eave_height: Length::feet(9.0),
    }
}

/// A body over corners, every leg at one pitch.
pub fn hipped(corners: &[[f64; 2]], pitch: f64) -> BodyShape {
    body(corners, &vec![pitch; corners.len()])
}

/// The same with some legs made ends.
pub fn with_ends(mut shape: BodyShape, legs: &[usize], end: &Rise) -> BodyShape {
    for &leg in legs {
        shape.legs[leg].rise = end.clone();
    }
    shape
}

/// Its roof alone.
pub fn roof(shape: &BodyShape) -> Roof {
    raise(std::slice::from_ref(shape), &[])
        .unwrap_or_else(|refusal| unreachable!("{refusal}: {shape:?}"))
}

/// A rectangle.
pub fn rectangle(length: f64, width: f64) -> Vec<[f64; 2]> {
    vec![[0.0, 0.0], [length, 0.0], [length, width], [0.0, width]]
}

/// Slopes from the eave up: pitch in 12, and the height in feet that each rises.
pub fn bands(slopes: &[(f64, Option<f64>)]) -> Rise {
    let band = |&(pitch, rise): &(f64, Option<f64>)| Band {
        pitch: Pitch::rise_in_12(pitch),
        rise: rise.map(Length::feet),
    };
    Rise::Slopes(slopes.iter().map(band).collect())
}

/// Area within corners, sq ft, whichever way round they run.
pub fn area_within(corners: &[Point]) -> f64 {
    let count = corners.len();
    let twice: f64 = (0..count)
        .map(|corner| {
            let (a, b) = (corners[corner], corners[(corner + 1) % count]);
            a.x * b.y - a.y * b.x
        })
        .sum();
    twice.abs() / 2.0
}

/// Whether a place in plan lies in a face.
pub fn holds(face: &Face, [x, y]: [f64; 2]) -> bool {
    let ring = &face.polygon;
    (0..ring.len())
        .filter(|&corner| {
            let [a, b] = [ring[corner], ring[(corner + 1) % ring.len()]];
            let ([ax, ay, _], [bx, by, _]) = (a.in_feet(), b.in_feet());
            (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)
        })
        .count()
        % 2
        == 1
}

/// Height of a leg's plane over a place: eave + distance from the leg x pitch / 12.
pub fn height_from_leg(shape: &BodyShape, leg: usize, [x, y]: [f64; 2]) -> f64 {
    let count = shape.corners.len();
    let (a, b) = (shape.corners[leg], shape.corners[(leg + 1) % count]);
    let length = (b.x - a.x).hypot(b.y - a.y);
    let across = ((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / length;
    let Rise::Slopes(bands) = &shape.legs[leg].rise else {
        return f64::INFINITY;
    };
    shape.eave_height.in_feet() + across.abs() * bands[0].pitch.in_12() / 12.0
}
