//! The roof in space as binary glTF 2.0: metres, y up, each face a mesh of its own name.

use crate::edition::Lang;
use crate::named::Parts;
use crate::words;
use eavebook_core::units::{Length, Point3};
use serde_json::{Value, json};

/// The roof as a GLB file; none where there is no roof.
pub fn glb(parts: &Parts) -> Option<Vec<u8>> {
    if parts.faces.is_empty() {
        return None;
    }
    let mut binary: Vec<u8> = Vec::new();
    let (mut views, mut accessors) = (Vec::new(), Vec::new());
    let (mut meshes, mut nodes) = (Vec::new(), Vec::new());
    for named in &parts.faces {
        let mut rings = named.face.rings().map(|ring| feet(ring));
        let outer = rings.next().unwrap_or_default();
        let ring = with_holes(&outer, &rings.collect::<Vec<_>>());
        let triangles = ears(&ring);
        let points: Vec<[f32; 3]> = ring.iter().map(|at| in_space(*at)).collect();
        let name = words::face(named, Lang::En);
        let bound = |pick: fn(f32, f32) -> f32, start: f32| {
            [0, 1, 2].map(|axis| points.iter().map(|at| at[axis]).fold(start, pick))
        };
        let (least, most) = (
            bound(f32::min, f32::INFINITY),
            bound(f32::max, f32::NEG_INFINITY),
        );
        views.push(json!({ "buffer": 0, "byteOffset": binary.len(), "byteLength": points.len() * 12, "target": 34962 }));
        binary.extend(points.iter().flatten().flat_map(|part| part.to_le_bytes()));
        accessors.push(json!({
            "bufferView": views.len() - 1, "componentType": 5126, "count": points.len(),
            "type": "VEC3", "min": least, "max": most
        }));
        let indices: Vec<u32> = triangles
            .iter()
            .flatten()
            .filter_map(|place| u32::try_from(*place).ok())
            .collect();
        views.push(json!({ "buffer": 0, "byteOffset": binary.len(), "byteLength": indices.len() * 4, "target": 34963 }));
        binary.extend(indices.iter().flat_map(|index| index.to_le_bytes()));
        accessors.push(json!({
            "bufferView": views.len() - 1, "componentType": 5125, "count": indices.len(), "type": "SCALAR"
        }));
        meshes.push(json!({
            "name": name,
            "primitives": [{ "attributes": { "POSITION": accessors.len() - 2 }, "indices": accessors.len() - 1, "mode": 4 }]
        }));
        nodes.push(json!({ "name": name, "mesh": meshes.len() - 1 }));
    }
    let scene: Vec<usize> = (0..nodes.len()).collect();
    let text = json!({
        "asset": { "version": "2.0", "generator": "eavebook" },
        "scene": 0,
        "scenes": [{ "nodes": scene }],
        "nodes": nodes,
        "meshes": meshes,
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{ "byteLength": binary.len() }]
    });
    Some(container(&text, binary))
}

/// Header and two chunks, each filled up to four bytes (glTF 2.0, 4.4).
fn container(text: &Value, mut binary: Vec<u8>) -> Vec<u8> {
    let mut text = text.to_string().into_bytes();
    text.resize(text.len().next_multiple_of(4), b' ');
    binary.resize(binary.len().next_multiple_of(4), 0);
    let size = |bytes: usize| u32::try_from(bytes).unwrap_or(u32::MAX).to_le_bytes();
    let mut file = b"glTF\x02\0\0\0".to_vec();
    file.extend(size(12 + 8 + text.len() + 8 + binary.len()));
    file.extend(size(text.len()));
    file.extend(b"JSON");
    file.extend(text);
    file.extend(size(binary.len()));
    file.extend(b"BIN\0");
    file.extend(binary);
    file
}

fn feet(ring: &[Point3]) -> Vec<[f64; 3]> {
    ring.iter().map(|corner| corner.in_feet()).collect()
}

/// Feet, z up, to metres, y up: the turn keeps the hand of the axes.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a drawing in single precision"
)]
fn in_space([x, y, z]: [f64; 3]) -> [f32; 3] {
    let meters = |feet: f64| (Length::feet(feet).in_meters() + 0.0) as f32;
    [meters(x), meters(z), meters(-y)]
}

/// One ring from an outer ring and its holes, each hole joined to the corner nearest to it.
fn with_holes(outer: &[[f64; 3]], holes: &[Vec<[f64; 3]>]) -> Vec<[f64; 3]> {
    let mut ring = outer.to_vec();
    for hole in holes {
        let apart = |a: &[f64; 3], b: &[f64; 3]| (a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2);
        let pairs = ring.iter().enumerate().flat_map(|(i, a)| {
            hole.iter()
                .enumerate()
                .map(move |(j, b)| (apart(a, b), i, j))
        });
        let Some((_, at, from)) = pairs.min_by(|a, b| a.0.total_cmp(&b.0)) else {
            continue;
        };
        let mut joined = ring[..=at].to_vec();
        joined.extend(hole[from..].iter().chain(&hole[..=from]));
        joined.extend(&ring[at..]);
        ring = joined;
    }
    ring
}

/// Triangles of a ring by cutting ears (Meisters 1975): a fan over a face with an inside corner
/// would count area twice. Places in the ring, counter-clockwise in plan.
fn ears(ring: &[[f64; 3]]) -> Vec<[usize; 3]> {
    let mut left: Vec<usize> = (0..ring.len()).collect();
    let mut triangles = Vec::new();
    let twice = |a: usize, b: usize, c: usize| {
        let [a, b, c] = [ring[a], ring[b], ring[c]];
        (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
    };
    while left.len() > 3 {
        let n = left.len();
        let ear = (0..n).find(|&k| {
            let [a, b, c] = [left[(k + n - 1) % n], left[k], left[(k + 1) % n]];
            // A ring may touch itself: the very same corner, to the last bit, lies in no ear.
            let bits = |x: f64| (x + 0.0).to_bits();
            let same = |p: usize, q: usize| ring[p].map(bits) == ring[q].map(bits);
            let inside = |p: &usize| {
                ![a, b, c].contains(p)
                    && twice(a, b, *p) >= 0.0
                    && twice(b, c, *p) >= 0.0
                    && twice(c, a, *p) >= 0.0
                    && [a, b, c].iter().all(|corner| !same(*corner, *p))
            };
            twice(a, b, c) > 0.0 && !left.iter().any(inside)
        });
        // Corners in one line leave none: the flattest is dropped, which loses no area.
        let k = ear.unwrap_or_else(|| {
            let flat = |k: &usize| twice(left[(k + n - 1) % n], left[*k], left[(k + 1) % n]).abs();
            (0..n)
                .min_by(|a, b| flat(a).total_cmp(&flat(b)))
                .unwrap_or(0)
        });
        if ear.is_some() {
            triangles.push([left[(k + n - 1) % n], left[k], left[(k + 1) % n]]);
        }
        left.remove(k);
    }
    if let [a, b, c] = left[..] {
        triangles.push([a, b, c]);
    }
    triangles
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(ring: &[[f64; 3]]) -> f64 {
        let twice = |[a, b, c]: [usize; 3]| {
            let [a, b, c] = [ring[a], ring[b], ring[c]];
            (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
        };
        ears(ring).into_iter().map(twice).sum::<f64>() / 2.0
    }

    #[test]
    fn an_l_is_cut_into_triangles_that_cover_it_once() {
        let l = [[0, 0], [4, 0], [4, 1], [1, 1], [1, 3], [0, 3]]
            .map(|[x, y]| [f64::from(x), f64::from(y), 0.0]);
        assert!((area(&l) - 6.0).abs() < 1e-12);
        assert_eq!(ears(&l).len(), 4);
    }

    #[test]
    fn a_hole_is_left_out() {
        let square = |from: f64, to: f64| {
            vec![
                [from, from, 0.0],
                [to, from, 0.0],
                [to, to, 0.0],
                [from, to, 0.0],
            ]
        };
        let mut hole = square(4.0, 6.0);
        hole.reverse();
        assert!((area(&with_holes(&square(0.0, 10.0), &[hole])) - 96.0).abs() < 1e-9);
    }
}
