//! The plan laid out on a sheet.

use super::hidden::Above;
use super::house::{House, Words};
use super::lines::{Line, lines};
use super::room::{Room, Sheet, Taken};
use super::words::LabelSide;
use super::{foot, words};
use crate::survey::Point;

/// A plan on its sheet: x to the right, y down, points.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Its width.
    pub width: f64,
    /// Its height, the foot with it.
    pub height: f64,
    /// Every edge once, in the order given.
    pub lines: Vec<Line>,
    /// Walls under the roof.
    pub walls: Vec<[[f64; 2]; 2]>,
    /// Everything written.
    pub texts: Vec<Text>,
    /// The slope of each face that has room for it.
    pub slopes: Vec<Slope>,
    /// What stands out of the roof.
    pub marks: Vec<Mark>,
    /// Where north is.
    pub north: Option<North>,
    /// A sample of each kind of line on it.
    pub key: Vec<Line>,
    /// A sample of what lies under the roof, where something does.
    pub key_under: Option<[[f64; 2]; 2]>,
    /// Edges without a name on the drawing, by their place.
    pub unnamed_edges: Vec<usize>,
    /// Faces without a name on the drawing, by their place.
    pub unnamed_faces: Vec<usize>,
}

/// Something written.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// The words.
    pub words: String,
    /// Their middle; where they begin, in the foot.
    pub at: [f64; 2],
    /// Clockwise, degrees.
    pub turned: f64,
    /// Size of the letters.
    pub size: f64,
    /// How they are written.
    pub look: TextRole,
    /// What they take of the sheet.
    pub room: Room,
}

/// How something is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextRole {
    /// Name and length of an edge, by its place.
    Edge(usize),
    /// Name of a face, by its place.
    Face(usize),
    /// In the foot, from its left end.
    Foot,
    /// The side of the house that lies at the foot.
    Side,
}

/// The slope of a face: a right triangle with its rise in 12, and an arrow the way the water runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Slope {
    /// The face, by its place.
    pub face: usize,
    /// Its middle.
    pub at: [f64; 2],
    /// Clockwise, degrees.
    pub turned: f64,
    /// Its rise in 12.
    pub rise: String,
    /// A unit step the way the water runs.
    pub falls: [f64; 2],
    /// What it is made of, in its own place: see [`super::words::SlopeParts`].
    pub(super) parts: words::SlopeParts,
    /// What it takes of the sheet.
    pub room: Room,
}

/// Something that stands out of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its middle.
    pub at: [f64; 2],
    /// Its number in the list.
    pub number: usize,
    /// What it takes of the sheet.
    pub room: Room,
}

/// An arrow to the north with its letter.
#[derive(Clone, Debug, PartialEq)]
pub struct North {
    /// Its middle.
    pub at: [f64; 2],
    /// Clockwise from up, degrees.
    pub turned: f64,
    /// Its letter.
    pub letter: &'static str,
    /// Size of the letter.
    pub size: f64,
}

/// Size of a number by the side of its mark.
pub(super) const MARK: f64 = 0.65;

/// Room around the house for what is written outside it, in sizes of the letters.
const MARGIN: f64 = 2.4;
/// It needs no more than its letters and this, points.
const BESIDE_LETTERS: f64 = 18.5;

fn margin(sheet: Sheet) -> f64 {
    (sheet.letters * MARGIN).min(sheet.letters + BESIDE_LETTERS)
}

/// Lays a plan out: in smaller letters where that leaves fewer parts without a name.
#[must_use]
pub fn draw(house: &House, words: &Words, sheet: Sheet) -> Drawing {
    let drawing = draw_at(house, words, sheet);
    let unnamed = |one: &Drawing| one.unnamed_edges.len() + one.unnamed_faces.len();
    if unnamed(&drawing) == 0 || sheet.smallest >= sheet.letters {
        return drawing;
    }
    let letters = sheet.smallest;
    let smaller = draw_at(house, words, Sheet { letters, ..sheet });
    if unnamed(&smaller) < unnamed(&drawing) {
        smaller
    } else {
        drawing
    }
}

fn draw_at(house: &House, words: &Words, sheet: Sheet) -> Drawing {
    let paper = Paper::around(house, sheet);
    let above: Vec<Above> = house.faces.iter().filter_map(Above::new).collect();
    let mut drawing = Drawing {
        width: sheet.width,
        height: paper.height,
        lines: lines(house, &above, |at| paper.place(at)),
        walls: house
            .walls
            .iter()
            .map(|ends| ends.map(|at| paper.place([at.x, at.y])))
            .collect(),
        texts: Vec::new(),
        slopes: Vec::new(),
        marks: Vec::new(),
        north: None,
        key: Vec::new(),
        key_under: None,
        unnamed_edges: Vec::new(),
        unnamed_faces: Vec::new(),
    };
    let mut taken = Taken::new([sheet.width, paper.height]);
    for line in &drawing.lines {
        taken.draw(line.room());
    }
    for wall in &drawing.walls {
        taken.draw(Room::beside(*wall, [0.0, 1.0], [0.5, 0.5]));
    }
    for (at, number) in house.marks.iter().zip(1..) {
        // Where on its face a thing stands, nobody measured: the list names the face.
        let Some(at) = at.map(|at| paper.place([at.x, at.y])) else {
            continue;
        };
        let side = sheet.small(0.91) / MARK;
        let room = Room::level(at, [side, side]);
        taken.write(room);
        drawing.marks.push(Mark { at, number, room });
    }
    words::write_edges(house, &mut drawing, &mut taken, sheet, LabelSide::Outside);
    words::write_faces(house, &above, &paper, &mut drawing, &mut taken);
    words::write_edges(house, &mut drawing, &mut taken, sheet, LabelSide::Either);
    foot::write(house, words, sheet, &mut drawing);
    drawing
}

/// From feet to the sheet.
pub(super) struct Paper {
    pub sheet: Sheet,
    scale: f64,
    least: [f64; 2],
    height: f64,
    left: f64,
}

impl Paper {
    fn around(house: &House, sheet: Sheet) -> Paper {
        let ends = house.edges.iter().flat_map(|edge| edge.ends);
        let all: Vec<[f64; 2]> = ends
            .map(|end| {
                let [x, y, _] = end.in_feet();
                [x, y]
            })
            .chain(house.outline.iter().map(|&Point { x, y }| [x, y]))
            .collect();
        let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
            all.iter().map(|at| at[axis]).fold(start, pick)
        };
        let least = [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY));
        let most = [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY));
        let span = [0, 1].map(|axis| (most[axis] - least[axis]).max(1.0));
        let margin = margin(sheet);
        let room = [sheet.width, sheet.tallest].map(|room| room - 2.0 * margin);
        let scale = (room[0] / span[0]).min(room[1] / span[1]);
        // A house without a place is drawn as a small empty sheet.
        let known = least[0].is_finite() && scale.is_finite();
        let (scale, least, [wide, tall]) = if known {
            (scale, least, span)
        } else {
            (1.0, [0.0, 0.0], [1.0, 1.0])
        };
        Paper {
            sheet,
            scale,
            least,
            height: tall * scale + 2.0 * margin,
            left: (sheet.width - wide * scale) / 2.0,
        }
    }

    /// Points a foot.
    pub fn scale(&self) -> f64 {
        self.scale
    }

    pub fn place(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let margin = margin(self.sheet);
        [
            self.left + (x - self.least[0]) * self.scale,
            self.height - margin - (y - self.least[1]) * self.scale,
        ]
    }
}
