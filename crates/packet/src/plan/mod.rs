//! The plan: every edge in the hand of its kind, told apart in black and white, with its name.
//!
//! [`draw`] lays it out once; `svg` writes it for a screen and the papers, `dxf` for a drawing
//! board in feet.

mod dxf;
mod fit;
mod svg;

pub use dxf::dxf;
pub use svg::{escaped, svg};

use crate::edition::Lang;
use crate::named::{NamedEdge, Parts};
use crate::words;
use eavebook_core::roof::{EdgeKind, Face};
use eavebook_core::survey::{Place, Point, Survey};
use eavebook_core::units::Length;
use fit::{Box, Fit};

/// Width of the drawing, points of its own.
const WIDTH: f64 = 720.0;
/// Its greatest height.
const TALLEST: f64 = 560.0;
/// Room around the house for what is written outside it.
const MARGIN: f64 = 46.0;

/// A plan laid out on paper: x to the right, y down.
pub struct Plan {
    pub width: f64,
    pub height: f64,
    pub title: String,
    pub description: String,
    pub lines: Vec<Line>,
    pub texts: Vec<Text>,
    pub slopes: Vec<Slope>,
    pub marks: Vec<Mark>,
}

/// One edge.
pub struct Line {
    pub kind: Option<EdgeKind>,
    pub ends: [[f64; 2]; 2],
    /// Away from the house, one unit long.
    pub out: [f64; 2],
    pub worked_out: bool,
    pub suspect: bool,
}

/// Something written, about its middle.
pub struct Text {
    pub words: String,
    pub at: [f64; 2],
    /// Clockwise, degrees.
    pub turned: f64,
    pub look: Look,
}

/// How a text is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// Name and length of an edge.
    Edge,
    /// Name of a face.
    Face,
    /// A side of the house.
    Side,
}

/// The slope of a face: a right triangle with its rise in 12, and an arrow the way the water runs.
pub struct Slope {
    pub at: [f64; 2],
    pub rise: String,
    pub falls: [f64; 2],
}

/// Something that stands out of the roof, with its number in the list.
pub struct Mark {
    pub at: [f64; 2],
    pub number: usize,
}

/// Lays the plan out; `survey` holds what stands out of the roof.
pub fn draw(parts: &Parts, survey: Option<&Survey>, address: &str, lang: Lang) -> Plan {
    let paper = Paper::around(parts);
    let mut plan = Plan {
        width: WIDTH,
        height: paper.height,
        title: format!(
            "{}: {address}",
            words::either(lang, "Plan of the roof", "Plano del techo")
        ),
        description: described(parts, lang),
        lines: Vec::new(),
        texts: Vec::new(),
        slopes: Vec::new(),
        marks: Vec::new(),
    };
    let mut fit = Fit::new(WIDTH, paper.height);
    for edge in &parts.edges {
        let ends = edge.ends.map(|at| paper.place(at));
        let line = Line {
            kind: edge.kind,
            ends,
            out: paper.outward(ends),
            worked_out: edge.worked_out,
            suspect: edge.suspect,
        };
        fit.take(Box::along(ends, if on_rim(edge) { 3.0 } else { 1.0 }));
        plan.lines.push(line);
    }
    let survey = survey
        .map(|survey| survey.penetrations.as_slice())
        .unwrap_or_default();
    for (thing, number) in survey.iter().zip(1..) {
        // Where on its face a thing stands, nobody measured: the list names the face.
        let Place::Plan(at) = thing.at else { continue };
        let at = paper.place(parts.shown(at));
        fit.take(Box::upright(at, 20.0, 20.0));
        plan.marks.push(Mark { at, number });
    }
    write_edges(parts, &mut plan, &mut fit, on_rim);
    write_faces(parts, &paper, &mut plan, &mut fit, lang);
    write_edges(parts, &mut plan, &mut fit, |edge| !on_rim(edge));
    let front = words::capital(words::either(lang, "front", "frente"));
    plan.texts.push(Text {
        words: front,
        at: [WIDTH / 2.0, paper.height - 10.0],
        turned: 0.0,
        look: Look::Side,
    });
    plan
}

/// The plan in words, for who cannot see it.
fn described(parts: &Parts, lang: Lang) -> String {
    let edges: Vec<String> = parts
        .edges
        .iter()
        .map(|edge| {
            let kind = words::edge_kind(edge.kind, lang).to_lowercase();
            let length = edge.length.map(|length| words::length(length, lang));
            let length =
                length.unwrap_or_else(|| words::either(lang, "not known", "no se sabe").to_owned());
            format!("{} {kind} {length}", edge.name)
        })
        .collect();
    let faces: Vec<String> = parts
        .faces
        .iter()
        .map(|face| words::face(face, lang))
        .collect();
    match lang {
        Lang::En => format!(
            "Plan with the front at the foot. {}: {}. {}: {}.",
            words::counted(faces.len(), "face", "faces"),
            faces.join(", "),
            words::counted(edges.len(), "edge", "edges"),
            edges.join(", ")
        ),
        Lang::Es => format!(
            "Plano con el frente abajo. {}: {}. {}: {}.",
            words::counted(faces.len(), "cara", "caras"),
            faces.join(", "),
            words::counted(edges.len(), "orilla", "orillas"),
            edges.join(", ")
        ),
    }
}

fn on_rim(edge: &NamedEdge) -> bool {
    matches!(edge.kind, None | Some(EdgeKind::Eave | EdgeKind::Rake))
}

/// From feet to the paper.
struct Paper {
    scale: f64,
    least: [f64; 2],
    height: f64,
    left: f64,
    /// The rim as it lies on the paper.
    ring: Vec<[f64; 2]>,
}

impl Paper {
    fn around(parts: &Parts) -> Paper {
        let ends = parts.edges.iter().flat_map(|edge| edge.ends);
        let all: Vec<[f64; 2]> = ends.chain(parts.corners.iter().copied()).collect();
        let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
            all.iter().map(|at| at[axis]).fold(start, pick)
        };
        let least = [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY));
        let most = [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY));
        let [wide, tall] = [0, 1].map(|axis| (most[axis] - least[axis]).max(1.0));
        let scale = ((WIDTH - 2.0 * MARGIN) / wide).min((TALLEST - 2.0 * MARGIN) / tall);
        // A house without a place is drawn as a small empty sheet.
        let known = least[0].is_finite() && scale.is_finite();
        let (scale, least) = if known {
            (scale, least)
        } else {
            (1.0, [0.0, 0.0])
        };
        let tall = if known { tall } else { 1.0 };
        let mut paper = Paper {
            scale,
            least,
            height: tall * scale + 2.0 * MARGIN,
            left: (WIDTH - if known { wide } else { 1.0 } * scale) / 2.0,
            ring: Vec::new(),
        };
        paper.ring = parts.corners.iter().map(|at| paper.place(*at)).collect();
        paper
    }

    fn place(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [
            self.left + (x - self.least[0]) * self.scale,
            self.height - MARGIN - (y - self.least[1]) * self.scale,
        ]
    }

    /// Away from the house, as a unit step across a line of its rim.
    fn outward(&self, [a, b]: [[f64; 2]; 2]) -> [f64; 2] {
        let [x, y] = fit::unit([b[0] - a[0], b[1] - a[1]]);
        let across = [y, -x];
        let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
        let beside = [middle[0] + across[0] * 2.0, middle[1] + across[1] * 2.0];
        if fit::is_inside(beside, &self.ring) {
            across.map(|part| -part)
        } else {
            across
        }
    }
}

/// Names and lengths along their edges, the longest first: where there is no room for both the
/// length gives way, then the name. The list beside the plan has them all.
fn write_edges(parts: &Parts, plan: &mut Plan, fit: &mut Fit, which: impl Fn(&NamedEdge) -> bool) {
    let mut order: Vec<usize> = (0..parts.edges.len())
        .filter(|place| which(&parts.edges[*place]))
        .collect();
    order.sort_by(|a, b| {
        let long = |place: usize| fit::length(plan.lines[place].ends);
        long(*b).total_cmp(&long(*a))
    });
    for place in order {
        let edge = &parts.edges[place];
        let line = &plan.lines[place];
        let whole = edge
            .length
            .filter(|length| *length > Length::feet(0.5))
            .map(|length| format!("{} {}", edge.name, words::marks(length)));
        let candidates = [whole, Some(edge.name.clone())];
        for words in candidates.into_iter().flatten() {
            if let Some((at, turned)) = fit.beside(&words, line.ends, line.out) {
                plan.texts.push(Text {
                    words,
                    at,
                    turned,
                    look: Look::Edge,
                });
                break;
            }
        }
    }
}

/// The name of each face at its middle with its slope under it; a small face keeps what has room.
fn write_faces(parts: &Parts, paper: &Paper, plan: &mut Plan, fit: &mut Fit, lang: Lang) {
    let mut order: Vec<&crate::named::NamedFace> = parts.faces.iter().collect();
    order.sort_by(|a, b| b.face.plan_area.total_cmp(&a.face.plan_area));
    for named in order {
        let middle = paper.place(parts.shown(middle(named.face)));
        let falls = falls(named.face, parts);
        let words = words::face(named, lang);
        let at = fit.near(fit::width_of(&words, Look::Face), 18.0, middle);
        if let Some(at) = at {
            plan.texts.push(Text {
                words,
                at,
                turned: 0.0,
                look: Look::Face,
            });
        }
        let below = [middle[0], middle[1] + 24.0];
        if let Some(at) = fit.near(64.0, 26.0, below) {
            let tenths = (named.face.pitch.in_12() * 10.0).round() / 10.0;
            plan.slopes.push(Slope {
                at,
                rise: tenths.to_string(),
                falls,
            });
        }
    }
}

/// Centroid of a face in plan (the area formula of a polygon, from memory).
fn middle(face: &Face) -> Point {
    let ring = &face.polygon;
    let next = ring.iter().cycle().skip(1);
    let (mut double_area, mut x, mut y) = (0.0, 0.0, 0.0);
    for (a, b) in ring.iter().zip(next) {
        let cross = a[0] * b[1] - b[0] * a[1];
        double_area += cross;
        x += cross * (a[0] + b[0]);
        y += cross * (a[1] + b[1]);
    }
    let thrice = 3.0 * double_area;
    let (x, y) = if thrice.abs() < 1e-9 {
        ring.first().map_or((0.0, 0.0), |at| (at[0], at[1]))
    } else {
        (x / thrice, y / thrice)
    };
    Point { x, y }
}

/// Which way water runs off a face on the paper: down its plane.
fn falls(face: &Face, parts: &Parts) -> [f64; 2] {
    let next = face.polygon.iter().cycle().skip(1);
    // Newell's normal of the ring: its plan part points where the face falls.
    let (mut x, mut y) = (0.0, 0.0);
    for (a, b) in face.polygon.iter().zip(next) {
        x += (a[1] - b[1]) * (a[2] + b[2]);
        y += (a[2] - b[2]) * (a[0] + b[0]);
    }
    let [x, y] = parts.shown(Point { x, y });
    let [x, y] = fit::unit([x, y]);
    [x, -y]
}
