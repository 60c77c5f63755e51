//! The plan of a job: [`drawn`] gives the one drawing of a roof what its parts are called in a
//! packet, in the words of a language; `screen` the same on a leaf of the screen; `dxf` writes it for
//! a drawing board in feet.

mod dxf;
mod screen;

pub use dxf::dxf;
pub use eavebook_core::drawing::escaped;
pub use screen::{Lengths, OnScreen, ScreenPlan, on_screen};

use crate::edition::Lang;
use crate::job::Job;
use crate::named::{self, NamedEdge, Parts};
use crate::words;
use eavebook_core::check::Standing;
use eavebook_core::drawing::{
    EdgeToDraw, FaceToDraw, Ground, Hand, House, Sheet, Words, draw, svg, wall_lines,
};
use eavebook_core::photo::front_heading;
use eavebook_core::roof::{Viewpoint, ground_under, solid_svg, solid_view};
use eavebook_core::survey::{Place, Point};
use eavebook_core::units::{Angle, Length, Point3};

/// The plan as the text of an SVG file, for a sheet.
pub fn drawn(parts: &Parts, job: &Standing, lang: Lang, sheet: Sheet) -> String {
    let called = |place: usize| words::face(&parts.faces[place], lang);
    let drawing = draw(
        &house(parts, job, &called, &words::marks),
        &words_in(lang),
        sheet,
    );
    let title = title(job, lang);
    svg(&drawing, &title, &described(parts, lang), Ground::Paper)
}

/// The roof as a solid over the front's right corner, as an SVG file; none while there is none.
pub fn solid(parts: &Parts, job: &Job) -> Option<String> {
    let roof = job.solved?.roof.as_ref().ok()?;
    let roof = match parts.shown(Point { x: 1.0, y: 0.0 }) {
        [x, _] if x < 0.0 => roof.turned_half(),
        [_, _] => roof.clone(),
    };
    let names: Vec<String> = parts
        .faces
        .iter()
        .map(|named| words::face(named, Lang::En))
        .collect();
    let (ground, _) = ground_under(&roof);
    let view = solid_view(&roof, ground, Viewpoint::FrontRight);
    (!roof.faces.is_empty()).then(|| solid_svg(&view, &roof, &names))
}

fn title(job: &Standing, lang: Lang) -> String {
    let title = words::either(lang, "Plan of the roof", "Plano del techo");
    format!("{title}: {}", job.book.address)
}

fn words_in(lang: Lang) -> Words {
    match lang {
        Lang::En => Words::EN,
        Lang::Es => Words {
            front: "Frente, el lado de la calle",
            north: "N",
            kind: |kind| words::edge_kind(kind, Lang::Es),
            under: "Debajo del techo: una pared, un techo más bajo",
            worked_out: "Calculado, no medido",
            suspect: "Las medidas no cuadran con esta",
            every_face: |rise| format!("Cada cara: {rise} / 12"),
            left_off: |edges, faces| left_off_es(edges, faces, ["cara", "caras"]),
        },
    }
}

/// In Spanish, by what one face and several are called.
fn left_off_es(edges: usize, faces: usize, [face, many_faces]: [&str; 2]) -> String {
    let named: Vec<String> = [(edges, "orilla", "orillas"), (faces, face, many_faces)]
        .into_iter()
        .filter(|(count, _, _)| *count > 0)
        .map(|(count, one, many)| words::counted(count, one, many))
        .collect();
    let named = words::listed(&named, Lang::Es);
    format!("Sin lugar para nombrar {named}: la lista tiene todo.")
}

/// The house to draw: what a face is called, by its place, and how a length is written.
fn house(
    parts: &Parts,
    job: &Standing,
    called: &dyn Fn(usize) -> String,
    length: &dyn Fn(Length) -> String,
) -> House {
    let survey = job.laid.survey.as_ref();
    let things = survey.map(|survey| survey.penetrations.as_slice());
    let marks = things
        .unwrap_or_default()
        .iter()
        .map(|thing| match thing.at {
            Place::Plan(at) => Some(point(parts.shown(at))),
            // Where on its face a thing stands, nobody measured: the list names the face.
            Place::FaceOf { .. } => None,
        });
    House {
        edges: parts.edges.iter().map(|one| edge(one, length)).collect(),
        faces: (0..parts.faces.len())
            .map(|place| face(parts, place, called(place)))
            .collect(),
        walls: walls(parts, job),
        marks: marks.collect(),
        outline: parts.corners.iter().copied().map(point).collect(),
        // Somebody stood before the front and looked at it: that way is up.
        north: front_heading(job.book).map(|heading| Angle::degrees(-heading)),
    }
}

fn edge(named: &NamedEdge, written: &dyn Fn(Length) -> String) -> EdgeToDraw {
    let heights = named.heights.unwrap_or_default();
    let [[ax, ay], [bx, by]] = named.ends;
    EdgeToDraw {
        name: named.name.clone(),
        kind: named.kind,
        ends: [[ax, ay, heights[0]], [bx, by, heights[1]]].map(Point3::feet),
        length: named
            .length
            .filter(|length| *length > Length::feet(0.5))
            .map(written),
        faces: named.faces.clone(),
        hand: match (named.suspect, named.worked_out) {
            (true, _) => Hand::Suspect,
            (false, true) => Hand::WorkedOut,
            (false, false) => Hand::Read,
        },
    }
}

fn face(parts: &Parts, place: usize, name: String) -> FaceToDraw {
    let named = &parts.faces[place];
    let tenths = (named.face.pitch.in_12() * 10.0).round() / 10.0;
    let turned = |ring: &Vec<Point3>| {
        let corners = ring.iter().map(|corner| {
            let [x, y, height] = corner.in_feet();
            let [x, y] = parts.shown(Point { x, y });
            Point3::feet([x, y, height])
        });
        corners.collect()
    };
    FaceToDraw {
        name,
        rise: tenths.to_string(),
        rings: named.face.rings().map(turned).collect(),
    }
}

/// Where walls stand under the roof, as far as somebody measured how far it stands out.
fn walls(parts: &Parts, job: &Standing) -> Vec<[Point; 2]> {
    let Some(body) = named::body(job).filter(|_| job.laid.is_round()) else {
        return Vec::new();
    };
    let corners: Vec<Point> = parts.corners.iter().copied().map(point).collect();
    let overhangs: Vec<Option<Length>> = body.edges.iter().map(|edge| edge.overhang).collect();
    wall_lines(&corners, &overhangs)
}

fn point([x, y]: [f64; 2]) -> Point {
    Point { x, y }
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
