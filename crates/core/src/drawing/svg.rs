//! A plan as SVG: text stays text, and nothing is said by colour.

use super::house::Hand;
use super::lay::{Drawing, MARK, Mark, North, Slope, Text, TextRole};
use super::lines::{Line, Piece, Sight};
use super::room::{length, way};
use crate::roof::EdgeKind;
use std::fmt::Write;

const WORDS: &str = "'Atkinson Hyperlegible Next', 'Words', 'DejaVu Sans', sans-serif";
const FIGURES: &str = "'Atkinson Hyperlegible Mono', 'Figures', 'DejaVu Sans', monospace";

/// What a plan is drawn on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// White paper, in ink.
    Paper,
    /// A leaf of the screen, in whatever its ink is there.
    Leaf,
}

impl Ground {
    fn ink(self) -> &'static str {
        match self {
            Ground::Paper => "#16212B",
            Ground::Leaf => "currentColor",
        }
    }

    /// What lies under the ink.
    fn sheet(self) -> &'static str {
        match self {
            Ground::Paper => "#FFFFFF",
            Ground::Leaf => "var(--paper)",
        }
    }
}

/// A plan as the text of an SVG file; `title` and `description` say in words what is drawn.
#[must_use]
pub fn svg(drawing: &Drawing, title: &str, description: &str, ground: Ground) -> String {
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w} {h}\" width=\"{w}\" height=\"{h}\" role=\"img\">\n\
         <title>{title}</title>\n<desc>{desc}</desc>\n",
        w = short(drawing.width),
        h = short(drawing.height),
        title = escaped(title),
        desc = escaped(description),
    );
    if ground == Ground::Paper {
        let _ = writeln!(
            text,
            "<rect width=\"{}\" height=\"{}\" fill=\"#FFFFFF\"/>",
            short(drawing.width),
            short(drawing.height)
        );
    }
    let mut pen = Pen {
        text,
        ink: ground.ink(),
        sheet: ground.sheet(),
    };
    for ends in drawing.walls.iter().chain(&drawing.key_under) {
        pen.under(*ends);
    }
    // The rim lies over what ends at it.
    let on_rim = |line: &&Line| super::lines::on_rim(line.kind);
    let inner = drawing.lines.iter().filter(|line| !on_rim(line));
    for line in inner
        .chain(drawing.lines.iter().filter(on_rim))
        .chain(&drawing.key)
    {
        pen.line(line);
    }
    for slope in &drawing.slopes {
        pen.slope(slope);
    }
    for mark in &drawing.marks {
        pen.mark(mark);
    }
    if let Some(north) = &drawing.north {
        pen.north(north);
    }
    for written in &drawing.texts {
        pen.written(written);
    }
    pen.text.push_str("</svg>\n");
    pen.text
}

/// XML's five signs, and none that XML does not have.
#[must_use]
pub fn escaped(text: &str) -> String {
    text.chars().filter(|sign| !sign.is_control()).fold(
        String::with_capacity(text.len()),
        |mut out, sign| {
            match sign {
                '&' => out.push_str("&amp;"),
                '<' => out.push_str("&lt;"),
                '>' => out.push_str("&gt;"),
                '"' => out.push_str("&quot;"),
                '\'' => out.push_str("&#39;"),
                other => out.push(other),
            }
            out
        },
    )
}

/// Two decimals at most, the same everywhere.
fn short(number: f64) -> String {
    let hundredths = (number * 100.0).round() / 100.0 + 0.0;
    hundredths.to_string()
}

fn at([x, y]: [f64; 2]) -> String {
    format!("{} {}", short(x), short(y))
}

fn moved(ends: [[f64; 2]; 2], by: [f64; 2], times: f64) -> [[f64; 2]; 2] {
    ends.map(|[x, y]| [x + by[0] * times, y + by[1] * times])
}

fn straight(ends: [[f64; 2]; 2]) -> String {
    format!("M{}L{}", at(ends[0]), at(ends[1]))
}

/// What has been written so far, and in which ink.
struct Pen {
    text: String,
    ink: &'static str,
    sheet: &'static str,
}

impl Pen {
    fn path(&mut self, d: &str, width: f64, dash: &str) {
        let dash = if dash.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{dash}\"")
        };
        let _ = writeln!(
            self.text,
            "<path d=\"{d}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{width}\"{dash}/>",
            self.ink
        );
    }

    /// What lies under the roof that is drawn.
    fn under(&mut self, ends: [[f64; 2]; 2]) {
        self.path(&straight(ends), 0.8, "4 3");
    }

    fn line(&mut self, line: &Line) {
        match &line.name {
            Some(name) => {
                let hand = match line.hand {
                    Hand::Read => "",
                    Hand::WorkedOut => " data-hand=\"worked out\"",
                    Hand::Suspect => " data-hand=\"suspect\"",
                };
                let name = escaped(name);
                let _ = writeln!(self.text, "<g data-edge=\"{name}\"{hand}>");
            }
            None => self.text.push_str("<g>\n"),
        }
        for piece in &line.pieces {
            match piece.sight {
                Sight::Hidden => self.under(piece.ends),
                Sight::Visible => self.seen(line, *piece),
            }
        }
        self.text.push_str("</g>\n");
    }

    fn seen(&mut self, line: &Line, piece: Piece) {
        let ends = piece.ends;
        let dash = match line.hand {
            Hand::Suspect => {
                let double =
                    straight(moved(ends, line.out, 2.5)) + &straight(moved(ends, line.out, -2.5));
                return self.path(&double, 2.0, "");
            }
            Hand::WorkedOut => "7 5",
            Hand::Read => "",
        };
        match line.kind {
            None | Some(EdgeKind::Rake) => self.path(&straight(ends), 2.5, dash),
            Some(EdgeKind::Eave) => {
                self.path(&straight(ends), 2.5, dash);
                self.path(&straight(moved(ends, line.out, 4.0)), 0.8, "");
            }
            Some(EdgeKind::Ridge) => {
                self.path(&straight(ends), 3.5, "");
                for [x, y] in ends {
                    let (x, y, ink) = (short(x), short(y), self.ink);
                    let _ = writeln!(
                        self.text,
                        "<circle cx=\"{x}\" cy=\"{y}\" r=\"4\" fill=\"{ink}\"/>"
                    );
                }
            }
            Some(EdgeKind::Hip) => self.path(&straight(ends), 1.5, ""),
            Some(EdgeKind::Valley) => {
                let two =
                    straight(moved(ends, line.out, 1.5)) + &straight(moved(ends, line.out, -1.5));
                self.path(&two, 1.0, "");
            }
            Some(EdgeKind::SideWall) => {
                self.path(&(straight(ends) + &ticks(ends, line.out, 6.0)), 1.5, "");
            }
            Some(EdgeKind::HeadWall) => {
                self.path(&(straight(ends) + &ticks(ends, line.out, 14.0)), 1.5, "");
            }
            Some(EdgeKind::PitchBreak) => self.path(&straight(ends), 1.5, "1.5 4"),
        }
    }

    fn slope(&mut self, slope: &Slope) {
        let parts = slope.parts;
        let [wide, tall] = parts.size;
        // A right triangle, its rise beside it.
        let (left, foot, top) = (-wide / 2.0, tall * 0.3, -tall * 0.3);
        let right = left + parts.triangle;
        let _ = writeln!(
            self.text,
            "<g transform=\"translate({}) rotate({})\">",
            at(slope.at),
            short(slope.turned)
        );
        let triangle = format!(
            "M{}L{}L{}Z",
            at([left, foot]),
            at([right, foot]),
            at([right, top])
        );
        self.path(&triangle, 1.0, "");
        let _ = writeln!(
            self.text,
            "<text x=\"{}\" y=\"{}\" font-family=\"{FIGURES}\" font-size=\"{}\" fill=\"{}\">{}</text>",
            short(right + 3.0),
            short(parts.figure[1] * 0.35),
            short(parts.figure[1]),
            self.ink,
            escaped(&slope.rise)
        );
        // The arrow lies as the water runs on the sheet, whichever way the sign is turned.
        let (sin, cos) = (-slope.turned).to_radians().sin_cos();
        let [fx, fy] = slope.falls;
        let (fx, fy) = (fx * cos - fy * sin, fx * sin + fy * cos);
        let middle = wide / 2.0 - parts.arrow / 2.0;
        let half = parts.arrow / 2.0;
        let from = [middle - fx * half, -fy * half];
        let to = [middle + fx * half, fy * half];
        let barb = |side: f64| {
            [
                to[0] - fx * 5.0 - fy * 3.5 * side,
                to[1] - fy * 5.0 + fx * 3.5 * side,
            ]
        };
        let arrow = straight([from, to]) + &straight([barb(1.0), to]) + &straight([barb(-1.0), to]);
        self.path(&arrow, 1.0, "");
        self.text.push_str("</g>\n");
    }

    fn mark(&mut self, mark: &Mark) {
        let [x, y] = mark.at;
        let [corner, _, opposite, _] = mark.room.corners();
        let side = (corner[0] - opposite[0]).abs();
        let ink = self.ink;
        let _ = writeln!(
            self.text,
            "<rect x=\"{}\" y=\"{}\" width=\"{side}\" height=\"{side}\" fill=\"{}\" stroke=\"{ink}\" stroke-width=\"1.5\"/>\n\
             <text x=\"{}\" y=\"{}\" text-anchor=\"middle\" font-family=\"{FIGURES}\" font-size=\"{}\" fill=\"{ink}\">{}</text>",
            short(x - side / 2.0),
            short(y - side / 2.0),
            self.sheet,
            short(x),
            short(y + side * 0.22),
            short(side * MARK),
            mark.number,
            side = short(side),
        );
    }

    fn north(&mut self, north: &North) {
        let size = north.size;
        let _ = writeln!(
            self.text,
            "<g data-north=\"{0}\" transform=\"translate({1}) rotate({0})\">",
            short(north.turned),
            at(north.at),
        );
        let (tail, head, barb) = (size, -size, size * 0.35);
        let arrow = straight([[0.0, tail], [0.0, head]])
            + &straight([[-barb, head + barb * 1.5], [0.0, head]])
            + &straight([[barb, head + barb * 1.5], [0.0, head]]);
        self.path(&arrow, 1.5, "");
        let _ = writeln!(
            self.text,
            "<text transform=\"translate({}) rotate({})\" y=\"{}\" text-anchor=\"middle\" font-family=\"{WORDS}\" font-size=\"{}\" fill=\"{}\">{}</text>\n</g>",
            at([size * 0.9, -size * 0.2]),
            short(-north.turned),
            short(size * 0.35),
            short(size),
            self.ink,
            escaped(north.letter),
        );
    }

    fn written(&mut self, text: &Text) {
        let (family, weight, anchor) = match text.look {
            TextRole::Edge(_) => (FIGURES, 400, "middle"),
            TextRole::Face(_) => (WORDS, 700, "middle"),
            TextRole::Side => (WORDS, 400, "middle"),
            TextRole::Foot => (WORDS, 400, "start"),
        };
        let [x, y] = text.at;
        let turned = if text.turned.abs() < 0.005 {
            String::new()
        } else {
            format!(
                " transform=\"rotate({} {})\"",
                short(text.turned),
                at(text.at)
            )
        };
        let _ = writeln!(
            self.text,
            "<text x=\"{}\" y=\"{}\" text-anchor=\"{anchor}\" font-family=\"{family}\" font-size=\"{}\" font-weight=\"{weight}\" fill=\"{}\"{turned}>{}</text>",
            short(x),
            short(y + text.size * 0.35),
            short(text.size),
            self.ink,
            escaped(&text.words)
        );
    }
}

/// Short slanting ticks on the wall's side, close along a side wall, wide along a head wall.
fn ticks(ends: [[f64; 2]; 2], out: [f64; 2], step: f64) -> String {
    let a = ends[0];
    let [x, y] = way(ends);
    let long = length(ends);
    let mut text = String::new();
    let mut along = step / 2.0;
    while along < long {
        let from = [a[0] + x * along, a[1] + y * along];
        let to = [
            from[0] + x * 4.0 + out[0] * 6.0,
            from[1] + y * 4.0 + out[1] * 6.0,
        ];
        text.push_str(&straight([from, to]));
        along += step;
    }
    text
}
