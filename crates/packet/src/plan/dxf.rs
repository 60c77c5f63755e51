//! The plan as DXF release 12 (AC1009), in feet: one layer an edge kind, lines and their names.
//! Written by hand since the format is a list of numbered lines, and a library's clock and fresh
//! handles would make other bytes each time.

use crate::named::Parts;
use eavebook_core::roof::EdgeKind;
use std::fmt::Write;

/// Height of letters, feet.
const LETTERS: f64 = 0.8;

/// The plan as the text of a DXF file.
pub fn dxf(parts: &Parts) -> String {
    let layers = EdgeKind::ALL.map(|kind| layer(Some(kind)));
    let names = ["LEG", "NAMES"];
    let mut text = String::new();
    let mut put = |code: u32, value: &str| {
        let _ = write!(text, "{code:>3}\r\n{value}\r\n");
    };
    for (code, value) in [
        (0, "SECTION"),
        (2, "HEADER"),
        (9, "$ACADVER"),
        (1, "AC1009"),
    ] {
        put(code, value);
    }
    for (code, value) in [
        (0, "ENDSEC"),
        (0, "SECTION"),
        (2, "TABLES"),
        (0, "TABLE"),
        (2, "LAYER"),
    ] {
        put(code, value);
    }
    put(70, &(layers.len() + names.len()).to_string());
    for layer in layers.iter().copied().chain(names) {
        for (code, value) in [
            (0, "LAYER"),
            (2, layer),
            (70, "0"),
            (62, "7"),
            (6, "CONTINUOUS"),
        ] {
            put(code, value);
        }
    }
    for (code, value) in [
        (0, "ENDTAB"),
        (0, "ENDSEC"),
        (0, "SECTION"),
        (2, "ENTITIES"),
    ] {
        put(code, value);
    }
    for edge in &parts.edges {
        let [[x0, y0], [x1, y1]] = edge.ends;
        put(0, "LINE");
        put(8, layer(edge.kind));
        for (code, at) in [(10, x0), (20, y0), (30, 0.0), (11, x1), (21, y1), (31, 0.0)] {
            put(code, &feet(at));
        }
        put(0, "TEXT");
        put(8, "NAMES");
        let middle = [(x0 + x1) / 2.0, (y0 + y1) / 2.0];
        for (code, at) in [(10, middle[0]), (20, middle[1]), (30, 0.0), (40, LETTERS)] {
            put(code, &feet(at));
        }
        put(1, &edge.name);
    }
    put(0, "ENDSEC");
    put(0, "EOF");
    text
}

fn layer(kind: Option<EdgeKind>) -> &'static str {
    match kind {
        None => "LEG",
        Some(EdgeKind::Eave) => "EAVE",
        Some(EdgeKind::Rake) => "RAKE",
        Some(EdgeKind::Ridge) => "RIDGE",
        Some(EdgeKind::Hip) => "HIP",
        Some(EdgeKind::Valley) => "VALLEY",
        Some(EdgeKind::SideWall) => "SIDE_WALL",
        Some(EdgeKind::HeadWall) => "HEAD_WALL",
        Some(EdgeKind::PitchBreak) => "PITCH_BREAK",
    }
}

/// Six decimals, no negative zero.
fn feet(feet: f64) -> String {
    format!("{:.6}", (feet * 1e6).round() / 1e6 + 0.0)
}
