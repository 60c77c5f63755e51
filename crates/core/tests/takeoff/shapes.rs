//! Roofs of a face or two, made without a survey.

use eavebook_core::roof::{Edge, EdgeKind, Face, Roof};
use eavebook_core::settings::{Code, Rates};
use eavebook_core::survey::{Body, LegEdge, Point, Rise, Sketch, Survey};
use eavebook_core::takeoff::{Courses, Takeoff, take_off};
use eavebook_core::units::{Area, Length, Pitch, Point3};

/// A face whose corners are given in its own plane, feet along the eave and up the slope; the
/// eave's direction in plan is turned by an angle and everything moved.
pub fn face(leg: usize, pitch: f64, corners: &[[f64; 2]], turned: f64, moved: [f64; 2]) -> Face {
    let factor = Pitch::rise_in_12(pitch).slope_factor();
    let (sin, cos) = turned.to_radians().sin_cos();
    let place = |[u, v]: [f64; 2]| {
        let run = v / factor;
        [
            moved[0] + u * cos - run * sin,
            moved[1] + u * sin + run * cos,
            9.0 + run * pitch / 12.0,
        ]
    };
    let twice: f64 = corners
        .iter()
        .zip(corners.iter().cycle().skip(1))
        .map(|(a, b)| a[0] * b[1] - b[0] * a[1])
        .sum();
    Face {
        body: 0,
        leg,
        band: None,
        pitch: Pitch::rise_in_12(pitch),
        plan_area: Area::square_feet(twice.abs() / 2.0 / factor),
        area: Area::square_feet(twice.abs() / 2.0),
        polygon: corners
            .iter()
            .map(|corner| Point3::feet(place(*corner)))
            .collect(),
        holes: Vec::new(),
    }
}

/// An edge between two heights above the eave, on some faces.
pub fn edge(kind: EdgeKind, length: f64, rise: f64, faces: &[usize]) -> Edge {
    let run = (length * length - rise * rise).max(0.0).sqrt();
    Edge {
        kind,
        length: Length::feet(length),
        from: Point3::feet([0.0, 0.0, 9.0]),
        to: Point3::feet([run, 0.0, 9.0 + rise]),
        faces: faces.to_vec(),
    }
}

/// A survey of one body with four legs, all overhangs a foot, one layer on sheets.
pub fn survey() -> Survey {
    Survey {
        bodies: vec![Body {
            id: "main".to_owned(),
            eave_height: Length::feet(9.0),
            outline: Sketch::Known(vec![Point { x: 0.0, y: 0.0 }]),
            readings: Vec::new(),
            edges: vec![
                LegEdge {
                    rise: Rise::Unknown,
                    overhang: Some(Length::feet(1.0)),
                };
                4
            ],
            placed_from: None,
        }],
        ..Survey::default()
    }
}

/// A roof of some faces and edges.
pub fn roof(faces: Vec<Face>, edges: Vec<Edge>) -> Roof {
    Roof {
        faces,
        edges,
        cautions: Vec::new(),
    }
}

/// The takeoff of faces alone, by the demo's code profile.
pub fn taken(faces: Vec<Face>, rates: &Rates) -> Takeoff {
    let roof = roof(faces, Vec::new());
    take_off(&survey(), &roof, Area::ZERO, rates, &Code::demo()).unwrap()
}

/// What is laid on one face alone.
pub fn laid(face: Face, rates: &Rates) -> Courses {
    taken(vec![face], rates).courses[0].clone()
}

/// Pieces, by what became of them.
pub fn counts(laid: &Courses) -> (u64, u64, u64, u64) {
    (laid.courses, laid.pieces_laid, laid.new_pieces, laid.reused)
}
