//! The plan of a roof as it is drawn: on a page and on a small phone, of twelve houses and of many
//! more. With `EAVEBOOK_PICTURES` naming a folder, the twelve are written there to be looked at.

use eavebook_core::drawing::{
    Drawing, Ground, House, Line, Sheet, Sight, Text, TextRole, Words, draw, listed, svg,
    wall_lines,
};
use eavebook_core::roof::{BodyShape, EdgeKind, Roof, raise};
use eavebook_core::survey::Point;
use eavebook_core::units::{Angle, Length};
use eavebook_houses::{Grid, Numbers, body, box_at, cells, tangle, twelve};

const SHEETS: [(&str, Sheet); 4] = [
    ("page", Sheet::PAPER),
    ("phone", Sheet::PHONE),
    ("screen", on_screen(288.0, 18.0)),
    ("large text", on_screen(358.0, 36.0)),
];

/// A leaf of the screen, with the letters of its reader.
const fn on_screen(width: f64, letters: f64) -> Sheet {
    Sheet {
        width,
        tallest: 420.0,
        letters,
        smallest: letters,
        least: letters,
    }
}

fn house(bodies: &[BodyShape], roof: &Roof) -> House {
    let ids: Vec<&str> = bodies.iter().map(|body| body.id.as_str()).collect();
    House::from_roof(roof, &ids)
}

/// The twelve, with overhangs at some, something on a roof, and north.
fn drawn_houses() -> Vec<(&'static str, House)> {
    let houses = twelve().into_iter().map(|(name, bodies, walls)| {
        let roof = raise(&bodies, &walls);
        let roof = roof.unwrap_or_else(|refusal| unreachable!("{name}: {refusal}"));
        let mut house = house(&bodies, &roof);
        if ["rectangle", "ell", "two heights"].contains(&name) {
            let overhangs = vec![Some(Length::feet(1.5)); bodies[0].corners.len()];
            house.walls = wall_lines(&bodies[0].corners, &overhangs);
            let at = |x, y| Some(Point { x, y });
            house.marks = vec![at(12.0, 8.0), None, at(20.0, 17.0)];
        }
        house.north = Some(Angle::degrees(-35.0));
        (name, house)
    });
    houses.collect()
}

fn area(bodies: &[BodyShape]) -> Option<House> {
    raise(bodies, &[]).ok().map(|roof| house(bodies, &roof))
}

/// Whether a segment comes into a rectangle given by its corners in order (the segment clipped by
/// each side in turn: Cyrus and Beck 1978).
fn enters([a, b]: [[f64; 2]; 2], corners: [[f64; 2]; 4]) -> bool {
    let middle = [0, 1].map(|axis| corners.iter().map(|at| at[axis]).sum::<f64>() / 4.0);
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for side in 0..4 {
        let (p, q) = (corners[side], corners[(side + 1) % 4]);
        let mut across = [-(q[1] - p[1]), q[0] - p[0]];
        let toward = |at: [f64; 2]| (at[0] - p[0]) * across[0] + (at[1] - p[1]) * across[1];
        if toward(middle) < 0.0 {
            across = across.map(|part| -part);
        }
        let toward = |at: [f64; 2]| (at[0] - p[0]) * across[0] + (at[1] - p[1]) * across[1];
        let (s, t) = (toward(a), toward(b));
        if s < 0.0 && t < 0.0 {
            return false;
        }
        if s < 0.0 {
            from = from.max(s / (s - t));
        }
        if t < 0.0 {
            to = to.min(s / (s - t));
        }
    }
    from < to
}

/// What is wrong with a drawing: labels over each other, over a line, past the sheet.
fn faults(house: &House, drawing: &Drawing) -> Vec<String> {
    let mut faults = Vec::new();
    let mut rooms: Vec<(String, [[f64; 2]; 4])> = drawing
        .texts
        .iter()
        .map(|text| (text.words.clone(), text.room.corners()))
        .collect();
    let slopes = drawing.slopes.iter();
    rooms.extend(slopes.map(|slope| {
        (
            format!("slope of f{}", slope.face + 1),
            slope.room.corners(),
        )
    }));
    let marks = drawing.marks.iter();
    let marks: Vec<_> = marks
        .map(|mark| (format!("mark {}", mark.number), mark.room.corners()))
        .collect();
    let sides =
        |corners: [[f64; 2]; 4]| [0, 1, 2, 3].map(|side| [corners[side], corners[(side + 1) % 4]]);
    let within = |corners: [[f64; 2]; 4], other: [[f64; 2]; 4]| {
        sides(corners).into_iter().any(|side| enters(side, other))
    };
    for (place, (words, corners)) in rooms.iter().enumerate() {
        for (other, taken) in rooms[place + 1..].iter().chain(&marks) {
            if within(*corners, *taken) || within(*taken, *corners) {
                faults.push(format!("{words} lies over {other}"));
            }
        }
        let lines = drawing.lines.iter().chain(&drawing.key);
        let lines = lines.flat_map(|line| line.pieces.iter().map(|piece| piece.ends));
        let under = drawing.walls.iter().chain(&drawing.key_under).copied();
        for ends in lines.chain(under) {
            if enters(ends, *corners) {
                faults.push(format!("{words} crosses a line from {:?}", ends[0]));
            }
        }
        let past = corners.iter().any(|[x, y]| {
            !(0.0..=drawing.width).contains(x) || !(0.0..=drawing.height).contains(y)
        });
        if past {
            faults.push(format!("{words} stands past the sheet"));
        }
    }
    for line in &drawing.lines {
        if let Some(fault) = drawn_once(line) {
            faults.push(fault);
        }
    }
    if drawing.lines.len() != house.edges.len() {
        faults.push("an edge is missing".to_owned());
    }
    for place in 0..house.edges.len() {
        let labels = labels(drawing, TextRole::Edge(place)).count();
        let unnamed = usize::from(drawing.unnamed_edges.contains(&place));
        if labels + unnamed != 1 {
            faults.push(format!(
                "{} is named {labels} times",
                house.edges[place].name
            ));
        }
    }
    for place in 0..house.faces.len() {
        let labels = labels(drawing, TextRole::Face(place)).count();
        let unnamed = usize::from(drawing.unnamed_faces.contains(&place));
        if labels + unnamed != 1 {
            faults.push(format!(
                "{} is named {labels} times",
                house.faces[place].name
            ));
        }
        if !says_pitch(house, drawing, place) {
            faults.push(format!("{} has no pitch", house.faces[place].name));
        }
    }
    faults
}

/// Whether the pitch of a face that has a name stands on it, or in the foot.
fn says_pitch(house: &House, drawing: &Drawing, place: usize) -> bool {
    let Some(name) = labels(drawing, TextRole::Face(place)).next() else {
        return true;
    };
    let foot: Vec<&str> = labels(drawing, TextRole::Foot)
        .map(|text| text.words.as_str())
        .collect();
    let foot = foot.join(" ");
    let rise = &house.faces[place].rise;
    let of_rise = foot.split(&format!(" {rise} / 12: ")).nth(1);
    let of_rise = of_rise.map(|rest| rest.split(" / 12").next().unwrap_or(rest));
    drawing.slopes.iter().any(|slope| slope.face == place)
        || foot.contains(&(Words::EN.every_face)(rise))
        || of_rise.is_some_and(|names| {
            names.split(", ").any(|one| {
                one.split(" No room").next() == Some(name.words.as_str())
                    || one.starts_with(&format!("{} ", name.words))
            })
        })
}

fn labels(drawing: &Drawing, look: TextRole) -> impl Iterator<Item = &Text> {
    drawing.texts.iter().filter(move |text| text.look == look)
}

/// The pieces of a line follow each other from end to end.
fn drawn_once(line: &Line) -> Option<String> {
    let gap = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]);
    let mut at = line.ends[0];
    for piece in &line.pieces {
        if gap(piece.ends[0], at) > 1e-6 {
            return Some(format!("{:?} has a gap at {at:?}", line.name));
        }
        at = piece.ends[1];
    }
    (gap(at, line.ends[1]) > 1e-6).then(|| format!("{:?} ends at {at:?}", line.name))
}

#[test]
fn no_label_of_twelve_houses_lies_over_another_or_a_line() {
    for (name, house) in drawn_houses() {
        for (sheet, size) in SHEETS {
            let drawing = draw(&house, &Words::EN, size);
            assert_eq!(
                faults(&house, &drawing),
                Vec::<String>::new(),
                "{name}, {sheet}"
            );
        }
    }
}

#[test]
fn no_label_of_many_random_houses_lies_over_another_or_a_line() {
    let mut drawn = 0;
    for seed in 0..60 {
        let mut numbers = Numbers::new(seed);
        let legs = 4 + numbers.below(30);
        let outline = match seed % 3 {
            0 => cells(&mut numbers, legs, Grid::Even),
            1 => cells(&mut numbers, legs, Grid::Uneven),
            _ => tangle(&mut numbers, legs),
        };
        let main = body("main", 9.0, numbers.between(2.0, 12.0), &[], &outline);
        let at = outline[0];
        let second = box_at([at[0] + 3.0, at[1] - 6.0], [14.0, 22.0]);
        let second = body("wing", numbers.between(6.0, 16.0), 6.0, &[0], &second);
        let bodies = if seed % 2 == 0 {
            vec![main, second]
        } else {
            vec![main]
        };
        let Some(house) = area(&bodies) else { continue };
        for (sheet, size) in SHEETS {
            let drawing = draw(&house, &Words::EN, size);
            assert_eq!(
                faults(&house, &drawing),
                Vec::<String>::new(),
                "{seed}, {sheet}"
            );
            drawn += 1;
        }
    }
    assert!(drawn > 100, "{drawn}");
}

#[test]
fn every_face_and_edge_of_a_house_without_narrow_parts_is_named_on_a_small_phone() {
    let outline = box_at([0.0, 0.0], [46.0, 26.0]);
    let house = area(&[body("main", 9.0, 6.0, &[1], &outline)]).expect("a roof");
    let drawing = draw(&house, &Words::EN, Sheet::PHONE);
    assert_eq!(drawing.unnamed_edges, Vec::<usize>::new());
    assert_eq!(drawing.unnamed_faces, Vec::<usize>::new());
    assert_eq!(drawing.slopes.len(), house.faces.len());
}

#[test]
fn a_wing_that_runs_under_a_higher_roof_is_drawn_as_hidden_there() {
    let mut main = body("main", 18.0, 6.0, &[], &box_at([0.0, 0.0], [30.0, 28.0]));
    for leg in &mut main.legs {
        leg.overhang = Length::feet(2.0);
    }
    let wing = body(
        "wing",
        9.0,
        5.0,
        &[1, 3],
        &box_at([24.0, 4.0], [34.0, 20.0]),
    );
    let house = area(&[main, wing]).expect("a roof");
    let drawing = draw(&house, &Words::EN, Sheet::PAPER);
    let hidden = drawing
        .lines
        .iter()
        .filter(|line| line.pieces.iter().any(|piece| piece.sight == Sight::Hidden));
    let kinds: Vec<Option<EdgeKind>> = hidden.map(|line| line.kind).collect();
    // Its eaves and ridge run two feet under the eave of the main roof, up to the wall.
    assert_eq!(
        kinds
            .iter()
            .filter(|kind| **kind == Some(EdgeKind::Eave))
            .count(),
        2
    );
    assert!(kinds.contains(&Some(EdgeKind::Ridge)), "{kinds:?}");
    let main_is_seen = drawing.lines.iter().zip(&house.edges).all(|(line, edge)| {
        edge.ends
            .iter()
            .any(|end| end.height() < Length::feet(17.9))
            || line
                .pieces
                .iter()
                .all(|piece| piece.sight == Sight::Visible)
    });
    assert!(main_is_seen);
    let key = drawing
        .texts
        .iter()
        .any(|text| text.words == Words::EN.under);
    assert!(key, "the key says what a hidden line is");
}

#[test]
fn a_wall_line_stands_in_by_the_overhang_that_was_given_and_not_where_none_was() {
    let corners = box_at([0.0, 0.0], [40.0, 20.0]);
    let corners: Vec<Point> = corners.iter().map(|&[x, y]| Point { x, y }).collect();
    let walls = wall_lines(
        &corners,
        &[Some(1.0), None, Some(2.0), Some(0.0)].map(|feet| feet.map(Length::feet)),
    );
    let ends: Vec<[[f64; 2]; 2]> = walls
        .iter()
        .map(|ends| ends.map(|at| [at.x, at.y]))
        .collect();
    assert_eq!(
        ends,
        [[[0.0, 1.0], [40.0, 1.0]], [[40.0, 18.0], [0.0, 18.0]]]
    );
}

#[test]
fn the_list_beside_a_plan_names_every_face_and_edge_on_it() {
    for (name, house) in drawn_houses() {
        let list = listed(&house, &Words::EN);
        assert_eq!(list.len(), house.faces.len() + house.edges.len(), "{name}");
        for edge in &house.edges {
            let said = format!("{}: ", edge.name);
            assert_eq!(
                list.iter().filter(|line| line.starts_with(&said)).count(),
                1
            );
        }
    }
}

#[test]
fn a_house_of_which_nothing_is_known_is_a_small_empty_sheet() {
    let drawing = draw(&House::default(), &Words::EN, Sheet::PHONE);
    let text = svg(&drawing, "Plan", "Nothing yet", Ground::Paper);
    assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    assert!(drawing.height < 120.0);
}

#[test]
#[expect(
    clippy::disallowed_methods,
    reason = "pictures are written where somebody asked for them, to be looked at"
)]
fn twelve_houses_are_drawn_as_they_were_when_somebody_looked_at_them() {
    let folder = std::env::var_os("EAVEBOOK_PICTURES").map(std::path::PathBuf::from);
    for (name, house) in drawn_houses() {
        for (sheet, size) in SHEETS {
            let drawing = draw(&house, &Words::EN, size);
            let list = listed(&house, &Words::EN).join("; ");
            let text = svg(&drawing, &format!("Plan: {name}"), &list, Ground::Paper);
            assert_eq!(
                text.matches("data-edge=").count(),
                house.edges.len(),
                "{name}"
            );
            if let Some(folder) = &folder {
                let file = format!("{name} {sheet}.svg").replace(' ', "-");
                assert!(std::fs::write(folder.join(file), &text).is_ok());
            }
            if size == Sheet::PAPER {
                insta::assert_snapshot!(name.replace(' ', "_"), text);
            }
        }
    }
}
