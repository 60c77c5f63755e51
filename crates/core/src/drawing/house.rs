//! What a plan is drawn from: edges and faces with what they are called, the front at the foot.

use crate::roof::{Edge, EdgeKind, Face, Roof};
use crate::survey::Point;
use crate::units::{Angle, Length, Point3, RoundTo};
use std::collections::BTreeMap;

/// A house to draw, turned so that the street lies at the foot.
#[derive(Clone, Debug, Default)]
pub struct House {
    /// Every edge once.
    pub edges: Vec<EdgeToDraw>,
    /// Every face.
    pub faces: Vec<FaceToDraw>,
    /// Where walls stand under the roof, as far as overhangs are known: see [`wall_lines`].
    pub walls: Vec<[Point; 2]>,
    /// What stands out of the roof, numbered from 1 in this order; none where its place is not known.
    pub marks: Vec<Option<Point>>,
    /// The outline of a house that has no roof yet: by it the outside of its legs is known.
    pub outline: Vec<Point>,
    /// Where north is, clockwise from up; `None` if nobody noted it.
    pub north: Option<Angle>,
}

/// One edge.
#[derive(Clone, Debug)]
pub struct EdgeToDraw {
    /// `e4`, `r2`, `h1`.
    pub name: String,
    /// What it is; none for a leg of an outline that has no roof yet.
    pub kind: Option<EdgeKind>,
    /// Its ends.
    pub ends: [Point3; 2],
    /// Its length, short: `42' 6"`.
    pub length: Option<String>,
    /// The faces along it, by their place.
    pub faces: Vec<usize>,
    /// How its length came about.
    pub hand: Hand,
}

/// How a line stands in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// Read, or between lines that were.
    Read,
    /// Not read: worked out from the other legs.
    WorkedOut,
    /// The readings speak against it.
    Suspect,
}

/// One face.
#[derive(Clone, Debug)]
pub struct FaceToDraw {
    /// `Back 2`.
    pub name: String,
    /// Its rise in 12: `6.5`.
    pub rise: String,
    /// Its outer ring, then its holes.
    pub rings: Vec<Vec<Point3>>,
}

/// What is written on a plan in one language.
#[derive(Clone, Copy)]
pub struct Words {
    /// Along the side of the house that leg 1 runs along.
    pub front: &'static str,
    /// The letter of north.
    pub north: &'static str,
    /// What an edge of a kind is called; a leg where it has none.
    pub kind: fn(Option<EdgeKind>) -> &'static str,
    /// What lies under a roof that is drawn: walls, and parts of a lower roof.
    pub under: &'static str,
    /// A length that nobody read.
    pub worked_out: &'static str,
    /// A line against which the readings speak.
    pub suspect: &'static str,
    /// That all faces rise alike, by their rise in 12.
    pub every_face: fn(&str) -> String,
    /// How many edges and faces have no room for their names.
    pub left_off: fn(usize, usize) -> String,
}

impl Words {
    /// In English.
    pub const EN: Words = Words {
        front: "Front, the street side",
        north: "N",
        kind: |kind| kind.map_or("Leg", EdgeKind::title),
        under: "Under the roof: a wall, a lower roof",
        worked_out: "Worked out, not read",
        suspect: "The readings speak against it",
        every_face: |rise| format!("Every face: {rise} / 12"),
        left_off: |edges, faces| {
            let count = |count: usize, word: &str| match count {
                1 => format!("1 {word}"),
                more => format!("{more} {word}s"),
            };
            let said = match (edges, faces) {
                (0, faces) => count(faces, "face"),
                (edges, 0) => count(edges, "edge"),
                (edges, faces) => format!("{} and {}", count(edges, "edge"), count(faces, "face")),
            };
            format!("No room to name {said}: the list has all.")
        },
    };
}

impl House {
    /// The house under a roof of any number of bodies: `bodies` are what they are called, in the
    /// roof's order. A body's name stands before its faces where there are several; edges are
    /// counted by kind.
    #[must_use]
    pub fn from_roof(roof: &Roof, bodies: &[&str]) -> House {
        let named = face_names(&roof.faces, bodies);
        let faces = roof.faces.iter().zip(named).map(|(face, name)| FaceToDraw {
            name,
            rise: rise(face),
            rings: face.rings().cloned().collect(),
        });
        let mut counts: BTreeMap<EdgeKind, usize> = BTreeMap::new();
        let edges = roof.edges.iter().map(|edge| {
            let count = counts.entry(edge.kind).or_default();
            *count += 1;
            EdgeToDraw {
                name: format!("{}{count}", edge.kind.letter()),
                kind: Some(edge.kind),
                ends: [edge.from, edge.to],
                length: Some(marks(edge)),
                faces: edge.faces.clone(),
                hand: Hand::Read,
            }
        });
        House {
            edges: edges.collect(),
            faces: faces.collect(),
            ..House::default()
        }
    }
}

/// `14' 3"`: short, and read in every language.
fn marks(edge: &Edge) -> String {
    let said = edge.length.words(RoundTo::Inch);
    said.replace(" ft", "'").replace(" in", "\"")
}

fn rise(face: &Face) -> String {
    ((face.pitch.in_12() * 10.0).round() / 10.0).to_string()
}

/// Faces by body, side and height: `Back 2`, `porch front`, `Left lower`.
fn face_names(faces: &[Face], bodies: &[&str]) -> Vec<String> {
    let sides: Vec<String> = faces
        .iter()
        .map(|face| {
            let side = match face.band {
                None => side(face).to_owned(),
                Some(0) => format!("{} lower", side(face)),
                Some(_) => format!("{} upper", side(face)),
            };
            match bodies.get(face.body) {
                Some(body) if bodies.len() > 1 => {
                    capital(&format!("{body} {}", side.to_lowercase()))
                }
                Some(_) | None => side,
            }
        })
        .collect();
    let numbered = sides.iter().enumerate().map(|(place, name)| {
        if sides.iter().filter(|other| *other == name).count() == 1 {
            return name.clone();
        }
        let nth = sides[..=place]
            .iter()
            .filter(|other| *other == name)
            .count();
        format!("{name} {nth}")
    });
    numbered.collect()
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

/// The side of the house to which a face falls.
fn side(face: &Face) -> &'static str {
    let [x, y] = falls(&face.polygon);
    match (x.abs() > y.abs(), x > 0.0, y > 0.0) {
        (true, true, _) => "Right",
        (true, false, _) => "Left",
        (false, _, true) => "Back",
        (false, _, false) => "Front",
    }
}

/// Which way water runs off a ring: the plan part of its normal, not of unit length (Newell's
/// normal).
pub(super) fn falls(ring: &[Point3]) -> [f64; 2] {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).fold([0.0, 0.0], |[x, y], (a, b)| {
        let (a, b) = (a.in_feet(), b.in_feet());
        [
            x + (a[1] - b[1]) * (a[2] + b[2]),
            y + (a[2] - b[2]) * (a[0] + b[0]),
        ]
    })
}

/// The walls under legs whose overhang is known and more than nothing: each leg moved in by it, to
/// where the lines of its neighbours are, moved in by theirs. `corners` either way round.
#[must_use]
pub fn wall_lines(corners: &[Point], overhangs: &[Option<Length>]) -> Vec<[Point; 2]> {
    let count = corners.len().min(overhangs.len());
    if count < 3 {
        return Vec::new();
    }
    let next = corners.iter().cycle().skip(1);
    let twice: f64 = corners
        .iter()
        .zip(next)
        .map(|(a, b)| a.x * b.y - b.x * a.y)
        .sum();
    let inward = twice.signum();
    let leg = |leg: usize| {
        let (a, b) = (corners[leg % count], corners[(leg + 1) % count]);
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let long = dx.hypot(dy).max(1e-9);
        let over = inward * overhangs[leg % count].unwrap_or(Length::ZERO).in_feet();
        let in_by = [-dy / long * over, dx / long * over];
        ([a.x + in_by[0], a.y + in_by[1]], [dx / long, dy / long])
    };
    let known = (0..count).filter(|leg| overhangs[*leg].is_some_and(|over| over > Length::ZERO));
    let line = |at: usize| {
        let (from, along) = leg(at);
        let meets = |(other, way): ([f64; 2], [f64; 2]), fallback: Point| {
            let turn = along[0] * way[1] - along[1] * way[0];
            if turn.abs() < 1e-6 {
                let share = (fallback.x - from[0]) * along[0] + (fallback.y - from[1]) * along[1];
                return share;
            }
            ((other[0] - from[0]) * way[1] - (other[1] - from[1]) * way[0]) / turn
        };
        let begin = meets(leg(at + count - 1), corners[at]);
        let end = meets(leg(at + 1), corners[(at + 1) % count]);
        [begin, end].map(|share| Point {
            x: from[0] + along[0] * share,
            y: from[1] + along[1] * share,
        })
    };
    known.map(line).collect()
}

/// Everything on a plan in words, a line each: the equal of the drawing.
#[must_use]
pub fn listed(house: &House, words: &Words) -> Vec<String> {
    let faces = house
        .faces
        .iter()
        .map(|face| format!("{}: {} / 12", face.name, face.rise));
    let edges = house.edges.iter().map(|edge| {
        let length = edge.length.as_deref().unwrap_or("–");
        let along = edge.faces.iter().filter_map(|face| house.faces.get(*face));
        let along: Vec<&str> = along.map(|face| face.name.as_str()).collect();
        let kind = (words.kind)(edge.kind);
        format!("{}: {kind}, {length}, {}", edge.name, along.join(" / "))
    });
    faces.chain(edges).collect()
}
