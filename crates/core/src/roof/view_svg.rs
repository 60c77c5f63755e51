//! The solid as SVG: ink on white, shaded by how each piece stands to the light, every face named.
//! Nothing is said by colour, and the description says in words what is drawn.

use super::Roof;
use super::view::{Part, Piece, SolidView};
use super::view_order::holds;
use crate::survey::Point;
use std::fmt::Write;

const INK: &str = "#16212B";
const FONT: &str = "'Atkinson Hyperlegible Next', 'DejaVu Sans', sans-serif";
/// Width of the picture, points of its own; as wide as a small phone, so that nothing shrinks.
const WIDTH: f64 = 320.0;
const MARGIN: f64 = 12.0;
/// Greatest height of what is drawn.
const TALLEST: f64 = 300.0;
/// Size of letters.
const SIZE: f64 = 12.0;

/// The solid laid out on a sheet as wide as a small phone: x to the right, y down, points.
#[derive(Clone, Debug, PartialEq)]
pub struct SolidPicture {
    /// Its width.
    pub width: f64,
    /// Its height.
    pub height: f64,
    /// Pieces in the order in which they are painted.
    pub painted: Vec<Painted>,
    /// The middle of the name of each face that is seen and has room for it, by the face's place.
    pub names: Vec<(usize, [f64; 2])>,
}

/// One piece as it is painted, by paths as SVG writes them.
#[derive(Clone, Debug, PartialEq)]
pub struct Painted {
    /// What it covers.
    pub fill: String,
    /// Its lines, where they are not all of its rim.
    pub lines: Option<String>,
    /// How dark, from 0, which is a wall and white, to 4.
    pub shade: u8,
}

/// Greys of a sheet of white paper, by shade.
const GRAYS: [&str; 5] = ["#FFFFFF", "#E6EAED", "#CFD5DA", "#B4BCC3", "#9AA3AB"];

/// The view laid out; `letters` says how long the name of each of the roof's faces is.
#[must_use]
pub fn solid_picture(view: &SolidView, letters: &[usize]) -> SolidPicture {
    let places = || {
        view.pieces
            .iter()
            .flat_map(|piece| piece.rings.iter().flatten())
    };
    let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
        places()
            .map(|place| [place.x, place.y][axis])
            .fold(start, pick)
    };
    let low = [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY));
    let high = [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY));
    let [wide, tall] = [0, 1].map(|axis| (high[axis] - low[axis]).max(1.0));
    let scale = ((WIDTH - 2.0 * MARGIN) / wide).min(TALLEST / tall);
    let (scale, low, tall) = if scale.is_finite() && low[0].is_finite() {
        (scale, low, tall)
    } else {
        (1.0, [0.0, 0.0], 1.0)
    };
    let left = (WIDTH - wide.min(WIDTH) * scale) / 2.0;
    let place = |Point { x, y }: Point| {
        [
            left + (x - low[0]) * scale,
            MARGIN + (tall - (y - low[1])) * scale,
        ]
    };
    let drawn: Vec<Vec<Vec<[f64; 2]>>> = view
        .pieces
        .iter()
        .map(|piece| {
            let ring = |ring: &Vec<Point>| ring.iter().map(|at| place(*at)).collect();
            piece.rings.iter().map(ring).collect()
        })
        .collect();
    let pieces = view.pieces.iter().zip(&drawn);
    SolidPicture {
        width: WIDTH,
        height: tall * scale + 2.0 * MARGIN,
        painted: pieces.map(|(piece, rings)| paint(piece, rings)).collect(),
        names: name_faces(view, &drawn, letters),
    }
}

/// The view as the text of an SVG file; `names` are those of the roof's faces, in their order.
#[must_use]
pub fn solid_svg(view: &SolidView, roof: &Roof, names: &[String]) -> String {
    let letters: Vec<usize> = names.iter().map(|name| name.chars().count()).collect();
    let picture = solid_picture(view, &letters);
    let height = picture.height + 1.5 * SIZE;
    let words = view.from.words();
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {height:.1}\" role=\"img\">\n\
         <title>The house {words}</title>\n<desc>{}</desc>\n\
         <rect width=\"{WIDTH}\" height=\"{height:.1}\" fill=\"#FFFFFF\"/>\n",
        escaped(&described(view, roof, names)),
    );
    let stroke = format!("stroke=\"{INK}\" stroke-width=\"1.2\" stroke-linejoin=\"round\"");
    for Painted { fill, lines, shade } in &picture.painted {
        let gray = GRAYS[usize::from(*shade).min(GRAYS.len() - 1)];
        let _ = match lines {
            None => writeln!(
                text,
                "<path d=\"{fill}\" fill=\"{gray}\" fill-rule=\"evenodd\" {stroke}/>"
            ),
            // A hair of its own white closes the seam.
            Some(lines) => writeln!(
                text,
                "<path d=\"{fill}\" fill=\"{gray}\" stroke=\"{gray}\" stroke-width=\"0.6\"/>\n\
                 <path d=\"{lines}\" fill=\"none\" {stroke} stroke-linecap=\"round\"/>"
            ),
        };
    }
    let named = picture
        .names
        .iter()
        .filter_map(|(face, at)| Some((names.get(*face)?, at)));
    for (name, [x, y]) in named {
        let _ = writeln!(
            text,
            "<text x=\"{x:.1}\" y=\"{:.1}\" text-anchor=\"middle\" font-family=\"{FONT}\" \
             font-size=\"{SIZE}\" fill=\"{INK}\">{}</text>",
            y + SIZE * 0.35,
            escaped(name),
        );
    }
    let _ = writeln!(
        text,
        "<text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"middle\" font-family=\"{FONT}\" \
         font-size=\"{SIZE}\" fill=\"{INK}\">{words}</text>\n</svg>",
        WIDTH / 2.0,
        height - MARGIN / 2.0,
    );
    text
}

/// What is drawn, for who cannot see it.
fn described(view: &SolidView, roof: &Roof, names: &[String]) -> String {
    let faces = view.pieces.iter().filter_map(|piece| match piece.part {
        Part::Face(face) => Some(face),
        Part::Wall(_) => None,
    });
    let mut faces: Vec<usize> = faces.collect();
    faces.sort_unstable();
    let said: Vec<String> = faces
        .iter()
        .map(|face| {
            let pitch = roof.faces[*face].pitch.in_12();
            let name = names.get(*face).map_or("a face", String::as_str);
            format!("{name} at {} in 12", (pitch * 10.0).round() / 10.0)
        })
        .collect();
    format!(
        "The roof {}, walls straight under its edge. Turned to the viewer: {}.",
        view.from.words(),
        said.join(", ")
    )
}

/// Roof faces in four shades by the light, walls without; holes are left open.
fn paint(piece: &Piece, rings: &[Vec<[f64; 2]>]) -> Painted {
    let shade = match piece.part {
        Part::Wall(_) => 0,
        Part::Face(_) => 4 - (piece.light * 4.0).floor().clamp(0.0, 3.0) as u8,
    };
    let ring = rings.first().map(Vec::as_slice).unwrap_or_default();
    let sides = (0..ring.len()).filter(|side| !piece.seams.contains(side));
    let lines = sides.map(|side| {
        let [[ax, ay], [bx, by]] = [ring[side], ring[(side + 1) % ring.len()]];
        format!("M{ax:.1} {ay:.1}L{bx:.1} {by:.1}")
    });
    Painted {
        fill: rings.iter().map(|ring| path(ring)).collect(),
        lines: (!piece.seams.is_empty()).then(|| lines.collect()),
        shade,
    }
}

fn path(ring: &[[f64; 2]]) -> String {
    let steps = ring.iter().enumerate().map(|(step, [x, y])| {
        let sign = if step == 0 { 'M' } else { 'L' };
        format!("{sign}{x:.1} {y:.1}")
    });
    steps.collect::<String>() + "Z"
}

/// Where the name of each face that is seen has room; the largest first.
fn name_faces(
    view: &SolidView,
    drawn: &[Vec<Vec<[f64; 2]>>],
    letters: &[usize],
) -> Vec<(usize, [f64; 2])> {
    let mut order: Vec<usize> = (0..drawn.len()).collect();
    let area = |piece: usize| signed_area(&drawn[piece][0]).abs();
    order.sort_by(|a, b| area(*b).total_cmp(&area(*a)));
    let mut taken: Vec<[f64; 4]> = Vec::new();
    let mut named = Vec::new();
    for piece in order {
        let Part::Face(face) = view.pieces[piece].part else {
            continue;
        };
        let Some(letters) = letters.get(face) else {
            continue;
        };
        let half = [*letters as f64 * 0.31 * SIZE + 1.0, SIZE / 2.0];
        let Some([x, y]) = room(&drawn[piece], &drawn[piece + 1..], half, &taken) else {
            continue;
        };
        taken.push([x - half[0], y - half[1], x + half[0], y + half[1]]);
        named.push((face, [x, y]));
    }
    named
}

/// The place in a piece, nearest its middle, about which a box lies in it whole, under nothing that
/// is painted later and over no other name.
fn room(
    rings: &[Vec<[f64; 2]>],
    later: &[Vec<Vec<[f64; 2]>>],
    half: [f64; 2],
    taken: &[[f64; 4]],
) -> Option<[f64; 2]> {
    const GRID: u32 = 24;
    let outer = rings.first()?;
    let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
        outer.iter().map(|place| place[axis]).fold(start, pick)
    };
    let low = [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY));
    let high = [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY));
    let middle = [0, 1].map(|axis| (low[axis] + high[axis]) / 2.0);
    let free = |[x, y]: [f64; 2]| {
        let marks = [-1.0, -0.5, 0.0, 0.5, 1.0];
        let inside = marks.iter().all(|s| {
            marks.iter().all(|t| {
                let at = [x + s * half[0], y + t * half[1]];
                holds(rings, at) && !later.iter().any(|piece| holds(piece, at))
            })
        });
        let [left, top, right, foot] = [x - half[0], y - half[1], x + half[0], y + half[1]];
        inside
            && !taken
                .iter()
                .any(|box_| left < box_[2] && box_[0] < right && top < box_[3] && box_[1] < foot)
    };
    let step = |axis: usize, k: u32| {
        low[axis] + (high[axis] - low[axis]) * (f64::from(k) + 0.5) / f64::from(GRID)
    };
    let far = |at: &[f64; 2]| (at[0] - middle[0]).hypot(at[1] - middle[1]);
    (0..GRID)
        .flat_map(|row| (0..GRID).map(move |k| (k, row)))
        .map(|(k, row)| [step(0, k), step(1, row)])
        .filter(|at| free(*at))
        .min_by(|a, b| far(a).total_cmp(&far(b)))
}

fn signed_area(ring: &[[f64; 2]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let pairs = ring.iter().zip(next);
    pairs.map(|(a, b)| (a[0] * b[1] - a[1] * b[0]) / 2.0).sum()
}

/// XML's signs, and none that XML does not have.
fn escaped(text: &str) -> String {
    text.chars()
        .filter(|sign| !sign.is_control())
        .map(|sign| match sign {
            '&' => "&amp;".to_owned(),
            '<' => "&lt;".to_owned(),
            '>' => "&gt;".to_owned(),
            other => other.to_string(),
        })
        .collect()
}
