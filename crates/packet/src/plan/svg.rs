//! The plan as SVG: text stays text, and nothing is said by colour.

use super::fit::SIZE;
use super::{Line, Look, Mark, Plan, Slope, Text};
use eavebook_core::roof::EdgeKind;
use std::fmt::Write;

const INK: &str = "#16212B";
const WORDS: &str = "'Atkinson Hyperlegible Next', 'DejaVu Sans', sans-serif";
const FIGURES: &str = "'Atkinson Hyperlegible Mono', 'DejaVu Sans', monospace";

/// The plan as the text of an SVG file.
pub fn svg(plan: &Plan) -> String {
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {w} {h}\" width=\"{w}\" height=\"{h}\" role=\"img\">\n\
         <title>{title}</title>\n<desc>{desc}</desc>\n\
         <rect width=\"{w}\" height=\"{h}\" fill=\"#FFFFFF\"/>\n",
        w = short(plan.width),
        h = short(plan.height),
        title = escaped(&plan.title),
        desc = escaped(&plan.description),
    );
    for line in &plan.lines {
        text.push_str(&self::line(line));
    }
    for slope in &plan.slopes {
        text.push_str(&self::slope(slope));
    }
    for mark in &plan.marks {
        text.push_str(&self::mark(mark));
    }
    for written in &plan.texts {
        text.push_str(&self::text(written));
    }
    text.push_str("</svg>\n");
    text
}

/// XML's five signs, and none that XML does not have.
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

fn path(d: &str, width: f64, dash: &str) -> String {
    let dash = if dash.is_empty() {
        String::new()
    } else {
        format!(" stroke-dasharray=\"{dash}\"")
    };
    format!("<path d=\"{d}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"{width}\"{dash}/>\n")
}

fn moved(ends: [[f64; 2]; 2], by: [f64; 2], times: f64) -> [[f64; 2]; 2] {
    ends.map(|[x, y]| [x + by[0] * times, y + by[1] * times])
}

fn straight(ends: [[f64; 2]; 2]) -> String {
    format!("M{}L{}", at(ends[0]), at(ends[1]))
}

fn line(line: &Line) -> String {
    let ends = line.ends;
    let dash = if line.worked_out { "7 5" } else { "" };
    if line.suspect {
        let double = straight(moved(ends, line.out, 2.5)) + &straight(moved(ends, line.out, -2.5));
        return path(&double, 2.0, "");
    }
    match line.kind {
        None | Some(EdgeKind::Rake) => path(&straight(ends), 2.5, dash),
        Some(EdgeKind::Eave) => {
            path(&straight(ends), 2.5, dash) + &path(&straight(moved(ends, line.out, 4.0)), 0.8, "")
        }
        Some(EdgeKind::Ridge) => {
            ends.iter()
                .fold(path(&straight(ends), 3.5, ""), |text, [x, y]| {
                    let (x, y) = (short(*x), short(*y));
                    text + &format!("<circle cx=\"{x}\" cy=\"{y}\" r=\"4\" fill=\"{INK}\"/>\n")
                })
        }
        Some(EdgeKind::Hip) => path(&straight(ends), 1.5, ""),
        Some(EdgeKind::Valley) => {
            let two = straight(moved(ends, line.out, 1.5)) + &straight(moved(ends, line.out, -1.5));
            path(&two, 1.0, "")
        }
        Some(EdgeKind::SideWall) => path(&(straight(ends) + &ticks(line, 6.0)), 1.5, ""),
        Some(EdgeKind::HeadWall) => path(&(straight(ends) + &ticks(line, 14.0)), 1.5, ""),
        Some(EdgeKind::PitchBreak) => path(&straight(ends), 1.5, "1.5 4"),
    }
}

/// Short slanting ticks on the wall's side, close along a side wall, wide along a head wall.
fn ticks(line: &Line, step: f64) -> String {
    let [a, b] = line.ends;
    let length = super::fit::length(line.ends);
    let [x, y] = super::fit::unit([b[0] - a[0], b[1] - a[1]]);
    let mut text = String::new();
    let mut along = step / 2.0;
    while along < length {
        let from = [a[0] + x * along, a[1] + y * along];
        let to = [
            from[0] + x * 4.0 + line.out[0] * 6.0,
            from[1] + y * 4.0 + line.out[1] * 6.0,
        ];
        text.push_str(&straight([from, to]));
        along += step;
    }
    text
}

fn slope(slope: &Slope) -> String {
    let [x, y] = slope.at;
    // A right triangle 12 wide for a run of 12, as tall as fits, its rise beside it.
    let (left, right, foot, top) = (x - 30.0, x - 6.0, y + 7.0, y - 5.0);
    let triangle = format!(
        "M{}L{}L{}Z",
        at([left, foot]),
        at([right, foot]),
        at([right, top])
    );
    let mut text = path(&triangle, 1.0, "");
    let _ = writeln!(
        text,
        "<text x=\"{}\" y=\"{}\" font-family=\"{FIGURES}\" font-size=\"11\" fill=\"{INK}\">{}</text>",
        short(right + 3.0),
        short(foot - 1.0),
        escaped(&slope.rise)
    );
    let [fx, fy] = slope.falls;
    let from = [x + 22.0 - fx * 9.0, y - fy * 9.0];
    let to = [x + 22.0 + fx * 9.0, y + fy * 9.0];
    let barb = |side: f64| {
        [
            to[0] - fx * 5.0 - fy * 3.5 * side,
            to[1] - fy * 5.0 + fx * 3.5 * side,
        ]
    };
    let arrow = straight([from, to]) + &straight([barb(1.0), to]) + &straight([barb(-1.0), to]);
    text + &path(&arrow, 1.0, "")
}

fn mark(mark: &Mark) -> String {
    let x = short(mark.at[0]);
    format!(
        "<rect x=\"{}\" y=\"{}\" width=\"18\" height=\"18\" fill=\"#FFFFFF\" stroke=\"{INK}\" stroke-width=\"1.5\"/>\n\
         <text x=\"{x}\" y=\"{}\" text-anchor=\"middle\" font-family=\"{FIGURES}\" font-size=\"12\" fill=\"{INK}\">{}</text>\n",
        short(mark.at[0] - 9.0),
        short(mark.at[1] - 9.0),
        short(mark.at[1] + 4.0),
        mark.number,
    )
}

fn text(text: &Text) -> String {
    let (family, size, weight) = match text.look {
        Look::Edge => (FIGURES, SIZE, 400),
        Look::Face => (WORDS, 14.0, 700),
        Look::Side => (WORDS, 14.0, 400),
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
    format!(
        "<text x=\"{}\" y=\"{}\" text-anchor=\"middle\" font-family=\"{family}\" font-size=\"{size}\" font-weight=\"{weight}\" fill=\"{INK}\"{turned}>{}</text>\n",
        short(x),
        short(y + size * 0.35),
        escaped(&text.words)
    )
}
