//! What is written along the edges and in the faces: where there is room, the most needed first.

use super::hidden::{Above, is_under, within};
use super::house::{FaceToDraw, Hand, House, falls};
use super::lay::{Drawing, Paper, Slope, Text, TextRole};
use super::lines::{Line, on_rim};
use super::room::{Room, Sheet, Taken, length, turn, unit, way};
use crate::units::Point3;

/// Between a line and what is written beside it.
const CLEAR: f64 = 2.5;
/// Width of a letter by its size, of the two fonts.
pub(super) const FIGURES: f64 = 0.62;
/// Of bold words.
pub(super) const BOLD: f64 = 0.54;
/// Of words that are not.
pub(super) const WORDS: f64 = 0.48;

pub(super) fn width_of(words: &str, letter: f64, size: f64) -> f64 {
    words.chars().count() as f64 * letter * size
}

/// On which side of a line its words may stand.
#[derive(Clone, Copy)]
pub(super) enum LabelSide {
    /// Outside the house alone.
    Outside,
    /// On either side, outside first.
    Either,
}

/// Names and lengths along those edges that have none yet, the longest first: where there is no room
/// for both the length gives way, then the name.
pub(super) fn write_edges(
    house: &House,
    drawing: &mut Drawing,
    taken: &mut Taken,
    sheet: Sheet,
    side: LabelSide,
) {
    let wanted = |place: &usize| match side {
        LabelSide::Outside => on_rim(house.edges[*place].kind),
        LabelSide::Either => {
            let of = TextRole::Edge(*place);
            !drawing.texts.iter().any(|text| text.look == of)
        }
    };
    let mut order: Vec<usize> = (0..house.edges.len()).filter(wanted).collect();
    order.sort_by(|a, b| {
        let long = |place: usize| length(drawing.lines[place].ends);
        long(*b).total_cmp(&long(*a))
    });
    drawing.unnamed_edges.clear();
    for place in order {
        let edge = &house.edges[place];
        let name = match edge.hand {
            Hand::Suspect => format!("{}?", edge.name),
            Hand::Read | Hand::WorkedOut => edge.name.clone(),
        };
        let whole = edge
            .length
            .as_ref()
            .map(|length| format!("{name} {length}"));
        let mut tried = whole.into_iter().chain(std::iter::once(name));
        let line = &drawing.lines[place];
        let found = tried.find_map(|words| {
            let at = along_line(taken, &words, line, sheet.letters, side)?;
            Some(Text {
                look: TextRole::Edge(place),
                words,
                ..at
            })
        });
        match found {
            Some(text) => drawing.texts.push(text),
            None => drawing.unnamed_edges.push(place),
        }
    }
    drawing.unnamed_edges.sort_unstable();
}

/// The way of the longest side of a face on the sheet, as one reads along it.
fn longest_way(face: &FaceToDraw) -> [f64; 2] {
    let ring = face.rings.first().map(Vec::as_slice).unwrap_or_default();
    let next = ring.iter().cycle().skip(1);
    let sides = ring
        .iter()
        .zip(next)
        .map(|(a, b)| [a, b].map(|end| [end.in_feet()[0], -end.in_feet()[1]]));
    let longest = sides.max_by(|a, b| length(*a).total_cmp(&length(*b)));
    longest.map_or([1.0, 0.0], |side| readable(way(side)))
}

/// A way or its opposite, so that it is read from the foot of the sheet or from its right.
fn readable(along: [f64; 2]) -> [f64; 2] {
    if along[0] < -1e-9 || (along[0].abs() <= 1e-9 && along[1] > 0.0) {
        along.map(|part| -part)
    } else {
        along
    }
}

/// Room for words along a line, taken.
fn along_line(
    taken: &mut Taken,
    words: &str,
    line: &Line,
    size: f64,
    side: LabelSide,
) -> Option<Text> {
    let [a, b] = line.ends;
    let along = readable(way(line.ends));
    let wide = width_of(words, FIGURES, size);
    let [far, near] = line.reach();
    let sides: &[(f64, f64)] = match side {
        LabelSide::Outside => &[(1.0, far)],
        LabelSide::Either => &[(1.0, far), (-1.0, near)],
    };
    for &(side, reach) in sides {
        let away = (reach + CLEAR + size / 2.0) * side;
        for share in [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9] {
            let at = [0, 1].map(|axis| {
                a[axis] + (b[axis] - a[axis]) * share + line.out[axis] * (away + 0.2 * side)
            });
            let clear = Room::turned(at, [wide + 2.0 * CLEAR, size + 2.0 * CLEAR], along);
            // Two words that follow each other in one line are told apart by the gap between them.
            let apart = Room::turned(at, [wide + 2.0 * size, size + 2.0 * CLEAR], along);
            if taken.is_free(&clear, &apart) {
                let room = Room::turned(at, [wide, size], along);
                taken.write(room);
                return Some(Text {
                    words: words.to_owned(),
                    at,
                    turned: degrees(along),
                    size,
                    look: TextRole::Foot,
                    room,
                });
            }
        }
    }
    None
}

/// Sizes in the sign of a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct SlopeParts {
    pub size: [f64; 2],
    /// Length of the triangle's foot and of the arrow.
    pub triangle: f64,
    pub arrow: f64,
    /// Width of the figure between them, and its size.
    pub figure: [f64; 2],
}

impl SlopeParts {
    fn new(rise: &str, sheet: Sheet) -> SlopeParts {
        let letters = sheet.letters;
        let size = sheet.small(0.9);
        let figure = [width_of(rise, FIGURES, size), size];
        let (triangle, arrow) = (letters * 1.7, letters * 1.4);
        SlopeParts {
            size: [triangle + 3.0 + figure[0] + 6.0 + arrow, letters * 1.4],
            triangle,
            arrow,
            figure,
        }
    }
}

/// What is tried in a face: its name or its number, with its slope below or without.
#[derive(Clone, Copy)]
enum With {
    Slope,
    NameAlone,
}

/// The name of each face in it with its slope below; a narrow one turned upright; one without room
/// for its name has its number, which the foot explains.
pub(super) fn write_faces(
    house: &House,
    above: &[Above],
    paper: &Paper,
    drawing: &mut Drawing,
    taken: &mut Taken,
) {
    let letters = paper.sheet.letters;
    let area = |face: &FaceToDraw| {
        let ring = face.rings.first().map(Vec::as_slice).unwrap_or_default();
        centroid(ring).map_or(0.0, |(area, _)| area.abs())
    };
    let mut order: Vec<usize> = (0..house.faces.len()).collect();
    order.sort_by(|a, b| area(&house.faces[*b]).total_cmp(&area(&house.faces[*a])));
    for place in order {
        let face = &house.faces[place];
        let spots = spots(face, above, paper);
        let number = number_of(place);
        let ways = [[1.0, 0.0], [0.0, -1.0], longest_way(face)];
        let tried = [
            (&face.name, With::Slope, ways[0]),
            (&face.name, With::Slope, ways[1]),
            (&face.name, With::NameAlone, ways[0]),
            (&face.name, With::NameAlone, ways[1]),
            (&face.name, With::NameAlone, ways[2]),
            (&number, With::Slope, ways[0]),
            (&number, With::Slope, ways[1]),
            (&number, With::NameAlone, ways[0]),
            (&number, With::NameAlone, ways[1]),
            (&number, With::NameAlone, ways[2]),
        ];
        let parts = SlopeParts::new(&face.rise, paper.sheet);
        let mut named = false;
        for (name, with, along) in tried {
            let size = letters * 1.08;
            let name_size = [width_of(name, BOLD, size), size];
            let gap = letters * 0.3;
            let whole = match with {
                With::NameAlone => name_size,
                With::Slope => [
                    name_size[0].max(parts.size[0]),
                    name_size[1] + gap + parts.size[1],
                ],
            };
            let Some(at) = free(taken, &spots, whole, along) else {
                continue;
            };
            let down = turn(along);
            let from_top = |below: f64, height: f64| {
                let step = below + height / 2.0 - whole[1] / 2.0;
                [0, 1].map(|axis| at[axis] + down[axis] * step)
            };
            let middle = from_top(0.0, name_size[1]);
            let text = Text {
                words: name.clone(),
                at: middle,
                turned: degrees(along),
                size,
                look: TextRole::Face(place),
                room: Room::turned(middle, name_size, along),
            };
            taken.write(text.room);
            drawing.texts.push(text);
            match with {
                With::Slope => {
                    let at = from_top(name_size[1] + gap, parts.size[1]);
                    put_slope(drawing, taken, (place, face, parts), at, along);
                }
                With::NameAlone => {
                    let at = free(taken, &spots, parts.size, along);
                    if let Some(at) = at {
                        put_slope(drawing, taken, (place, face, parts), at, along);
                    }
                }
            }
            named = true;
            break;
        }
        if !named {
            drawing.unnamed_faces.push(place);
        }
    }
    drawing.unnamed_faces.sort_unstable();
}

/// By what a face without room for its name is called: `f3`.
pub(super) fn number_of(place: usize) -> String {
    format!("f{}", place + 1)
}

fn put_slope(
    drawing: &mut Drawing,
    taken: &mut Taken,
    (place, face, parts): (usize, &FaceToDraw, SlopeParts),
    at: [f64; 2],
    along: [f64; 2],
) {
    let ring = face.rings.first().map(Vec::as_slice).unwrap_or_default();
    let [x, y] = unit(falls(ring));
    let room = Room::turned(at, parts.size, along);
    taken.write(room);
    drawing.slopes.push(Slope {
        face: place,
        at,
        turned: degrees(along),
        rise: face.rise.clone(),
        falls: [x, -y],
        parts,
        room,
    });
}

fn degrees([x, y]: [f64; 2]) -> f64 {
    y.atan2(x).to_degrees()
}

/// The first spot about which there is free room, well clear of every line.
fn free(taken: &Taken, spots: &[[f64; 2]], size: [f64; 2], along: [f64; 2]) -> Option<[f64; 2]> {
    let clear = size.map(|side| side + 2.0 * CLEAR);
    let room = |at: &[f64; 2]| Room::turned(*at, clear, along);
    spots.iter().copied().find(|at| {
        let room = room(at);
        taken.is_free(&room, &room)
    })
}

/// Places on the sheet in a face where it is seen, the nearest to its middle first.
fn spots(face: &FaceToDraw, above: &[Above], paper: &Paper) -> Vec<[f64; 2]> {
    /// Most places to either side.
    const GRID: f64 = 32.0;
    /// Nearest two places, points.
    const STEP: f64 = 3.0;
    let Some(ring) = face.rings.first() else {
        return Vec::new();
    };
    let Some((_, middle)) = centroid(ring) else {
        return Vec::new();
    };
    let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
        ring.iter().map(|at| at.in_feet()[axis]).fold(start, pick)
    };
    let low = [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY));
    let high = [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY));
    let steps = |axis: usize| {
        let points = (high[axis] - low[axis]) * paper.scale();
        (points / STEP).clamp(1.0, GRID).ceil()
    };
    let grid = |axis: usize| {
        let steps = steps(axis);
        (0..steps as u32)
            .map(move |step| low[axis] + (high[axis] - low[axis]) * (f64::from(step) + 0.5) / steps)
    };
    let all = grid(0).flat_map(|x| grid(1).map(move |y| [x, y]));
    let [slope_x, slope_y, level] = plane(ring);
    let mut inside: Vec<[f64; 2]> = std::iter::once(middle)
        .chain(all)
        .filter(|at| within(&face.rings, *at))
        .filter(|[x, y]| !is_under(above, [*x, *y, level + slope_x * x + slope_y * y]))
        .collect();
    let far = |at: &[f64; 2]| length([*at, middle]);
    inside.sort_by(|a, b| far(a).total_cmp(&far(b)));
    inside.into_iter().map(|at| paper.place(at)).collect()
}

/// Slope along x, along y, and height at the origin of a ring's plane.
fn plane(ring: &[Point3]) -> [f64; 3] {
    let [x, y] = falls(ring);
    let up = centroid(ring).map_or(1.0, |(area, _)| 2.0 * area);
    let (x, y) = (-x / up, -y / up);
    let level = ring.first().map_or(0.0, |at| {
        let at = at.in_feet();
        at[2] - x * at[0] - y * at[1]
    });
    [x, y, level]
}

/// Area in plan, left positive, and centroid (the area formula of a polygon, from memory); none of
/// a ring without area.
fn centroid(ring: &[Point3]) -> Option<(f64, [f64; 2])> {
    let next = ring.iter().cycle().skip(1);
    let first = ring.first()?.in_feet();
    let (mut double, mut x, mut y) = (0.0, 0.0, 0.0);
    for (a, b) in ring.iter().zip(next) {
        let [a, b] = [a, b]
            .map(|at| at.in_feet())
            .map(|at| [at[0] - first[0], at[1] - first[1]]);
        let cross = a[0] * b[1] - b[0] * a[1];
        double += cross;
        x += cross * (a[0] + b[0]);
        y += cross * (a[1] + b[1]);
    }
    let thrice = 3.0 * double;
    (double.abs() > 1e-9).then(|| (double / 2.0, [first[0] + x / thrice, first[1] + y / thrice]))
}
