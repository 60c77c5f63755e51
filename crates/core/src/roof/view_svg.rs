//! The solid as SVG: ink on white, shaded by how each piece stands to the light, every face named.
//! Nothing is said by colour, and the description says in words what is drawn.

use super::Roof;
use super::view::{Part, Piece, SolidView};
use super::view_order::holds;
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

/// The view as the text of an SVG file; `names` are those of the roof's faces, in their order.
#[must_use]
pub fn solid_svg(view: &SolidView, roof: &Roof, names: &[String]) -> String {
    let places = || {
        view.pieces
            .iter()
            .flat_map(|piece| piece.rings.iter().flatten())
    };
    let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
        places().map(|place| place[axis]).fold(start, pick)
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
    let height = tall * scale + 2.0 * MARGIN + 1.5 * SIZE;
    let left = (WIDTH - wide.min(WIDTH) * scale) / 2.0;
    let place = |[x, y]: [f64; 2]| {
        [
            left + (x - low[0]) * scale,
            MARGIN + (tall - (y - low[1])) * scale,
        ]
    };
    let drawn: Vec<Vec<Vec<[f64; 2]>>> = view
        .pieces
        .iter()
        .map(|piece| {
            let ring = |ring: &Vec<[f64; 2]>| ring.iter().map(|at| place(*at)).collect();
            piece.rings.iter().map(ring).collect()
        })
        .collect();
    let words = view.from.words();
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {height:.1}\" role=\"img\">\n\
         <title>The house {words}</title>\n<desc>{}</desc>\n\
         <rect width=\"{WIDTH}\" height=\"{height:.1}\" fill=\"#FFFFFF\"/>\n",
        escaped(&described(view, roof, names)),
    );
    for (piece, rings) in view.pieces.iter().zip(&drawn) {
        paint(&mut text, piece, rings);
    }
    name_faces(&mut text, view, &drawn, names);
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

/// Roof faces in four greys by the light, walls white; holes are left open.
fn paint(text: &mut String, piece: &Piece, rings: &[Vec<[f64; 2]>]) {
    let fill = match piece.part {
        Part::Wall(_) => "#FFFFFF",
        Part::Face(_) => match (piece.light * 4.0).floor() as u8 {
            0 => "#9AA3AB",
            1 => "#B4BCC3",
            2 => "#CFD5DA",
            3.. => "#E6EAED",
        },
    };
    let d: String = rings.iter().map(|ring| path(ring)).collect();
    let stroke = format!("stroke=\"{INK}\" stroke-width=\"1.2\" stroke-linejoin=\"round\"");
    if piece.seams.is_empty() {
        let _ = writeln!(
            text,
            "<path d=\"{d}\" fill=\"{fill}\" fill-rule=\"evenodd\" {stroke}/>"
        );
        return;
    }
    let ring = &rings[0];
    let sides = (0..ring.len()).filter(|side| !piece.seams.contains(side));
    let lines: String = sides
        .map(|side| {
            let [[ax, ay], [bx, by]] = [ring[side], ring[(side + 1) % ring.len()]];
            format!("M{ax:.1} {ay:.1}L{bx:.1} {by:.1}")
        })
        .collect();
    // A hair of its own white closes the seam.
    let _ = writeln!(
        text,
        "<path d=\"{d}\" fill=\"{fill}\" stroke=\"{fill}\" stroke-width=\"0.6\"/>\n\
         <path d=\"{lines}\" fill=\"none\" {stroke} stroke-linecap=\"round\"/>"
    );
}

fn path(ring: &[[f64; 2]]) -> String {
    let steps = ring.iter().enumerate().map(|(step, [x, y])| {
        let sign = if step == 0 { 'M' } else { 'L' };
        format!("{sign}{x:.1} {y:.1}")
    });
    steps.collect::<String>() + "Z"
}

/// The name of each face where it is seen and has room; the largest first.
fn name_faces(text: &mut String, view: &SolidView, drawn: &[Vec<Vec<[f64; 2]>>], names: &[String]) {
    let mut order: Vec<usize> = (0..drawn.len()).collect();
    let area = |piece: usize| signed_area(&drawn[piece][0]).abs();
    order.sort_by(|a, b| area(*b).total_cmp(&area(*a)));
    let mut taken: Vec<[f64; 4]> = Vec::new();
    for piece in order {
        let Part::Face(face) = view.pieces[piece].part else {
            continue;
        };
        let Some(name) = names.get(face) else {
            continue;
        };
        let half = [name.chars().count() as f64 * 0.31 * SIZE + 1.0, SIZE / 2.0];
        let Some([x, y]) = room(&drawn[piece], &drawn[piece + 1..], half, &taken) else {
            continue;
        };
        taken.push([x - half[0], y - half[1], x + half[0], y + half[1]]);
        let _ = writeln!(
            text,
            "<text x=\"{x:.1}\" y=\"{:.1}\" text-anchor=\"middle\" font-family=\"{FONT}\" \
             font-size=\"{SIZE}\" fill=\"{INK}\">{}</text>",
            y + SIZE * 0.35,
            escaped(name),
        );
    }
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
