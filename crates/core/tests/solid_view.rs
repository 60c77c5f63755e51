//! Twelve houses as solids from every viewpoint: what is painted last is what lies nearest.
//!
//! With `EAVEBOOK_PICTURES` naming a folder, each is written there as SVG to be looked at.

use eavebook_core::roof::{
    EdgeKind, Part, Piece, Roof, SolidView, Viewpoint, raise, solid_svg, solid_view,
};
use eavebook_core::survey::Point;
use eavebook_core::units::Length;
use eavebook_houses::{body, box_at, twelve};

fn roofs() -> Vec<(&'static str, Roof)> {
    twelve()
        .into_iter()
        .map(|(name, bodies, walls)| {
            let roof = raise(&bodies, &walls);
            (
                name,
                roof.unwrap_or_else(|refusal| unreachable!("{name}: {refusal}")),
            )
        })
        .collect()
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn within(rings: &[Vec<Point>], [x, y]: [f64; 2]) -> bool {
    let sides = rings
        .iter()
        .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
    let crossed = sides
        .filter(|(a, b)| (a.y > y) != (b.y > y) && x < a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
    crossed.count() % 2 == 1
}

/// How near the viewer the plane through three places is met under a place on the picture.
fn nearness(from: Viewpoint, plane: [[f64; 3]; 3], [x, y]: [f64; 2]) -> f64 {
    let [right, up, toward] = from.axes();
    let less = |a: [f64; 3], b: [f64; 3]| [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
    let (u, v) = (less(plane[1], plane[0]), less(plane[2], plane[0]));
    let normal = [
        u[1] * v[2] - u[2] * v[1],
        u[2] * v[0] - u[0] * v[2],
        u[0] * v[1] - u[1] * v[0],
    ];
    let level = dot(normal, plane[0]);
    let on_picture = [0, 1, 2].map(|axis| x * right[axis] + y * up[axis]);
    (level - dot(normal, on_picture)) / dot(normal, toward)
}

fn plane_of(part: Part, roof: &Roof) -> [[f64; 3]; 3] {
    match part {
        Part::Face(face) => {
            let ring: Vec<[f64; 3]> = roof.faces[face]
                .polygon
                .iter()
                .map(|corner| corner.in_feet())
                .collect();
            // The corner farthest from the first side: no three in one line.
            let far = |place: &[f64; 3]| {
                let (dx, dy) = (ring[1][0] - ring[0][0], ring[1][1] - ring[0][1]);
                ((place[0] - ring[0][0]) * dy - (place[1] - ring[0][1]) * dx).abs()
            };
            let third = ring
                .iter()
                .copied()
                .max_by(|a, b| far(a).total_cmp(&far(b)));
            [ring[0], ring[1], third.unwrap_or(ring[2])]
        }
        Part::Wall(edge) => {
            let edge = &roof.edges[edge];
            let [x, y, height] = edge.from.in_feet();
            [[x, y, height], edge.to.in_feet(), [x, y, height - 1.0]]
        }
    }
}

#[test]
fn what_is_painted_last_lies_nearest_the_viewer() {
    let mut asked = 0;
    for (name, roof) in roofs() {
        for from in Viewpoint::ALL {
            let view = solid_view(&roof, Length::ZERO, from);
            let all = || view.pieces.iter().flat_map(|piece| piece.rings[0].iter());
            let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
                all().map(|at| [at.x, at.y][axis]).fold(start, pick)
            };
            let low = [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY));
            let high = [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY));
            for step in 0..900 {
                let share = [f64::from(step % 30), f64::from(step / 30)];
                let at = [0, 1]
                    .map(|axis| low[axis] + (high[axis] - low[axis]) * (share[axis] + 0.37) / 30.0);
                let there: Vec<&Piece> = view
                    .pieces
                    .iter()
                    .filter(|piece| within(&piece.rings, at))
                    .collect();
                let Some(last) = there.last() else { continue };
                let near = |piece: &Piece| nearness(from, plane_of(piece.part, &roof), at);
                let nearest = there
                    .iter()
                    .map(|piece| near(piece))
                    .fold(f64::MIN, f64::max);
                assert!(
                    near(last) > nearest - 1e-3,
                    "{name} {}: {:?} covers what lies {} ft nearer",
                    from.words(),
                    last.part,
                    nearest - near(last)
                );
                asked += 1;
            }
        }
    }
    assert!(asked > 20_000, "{asked}");
}

#[test]
fn from_above_every_face_is_seen_as_large_as_in_plan() {
    for (name, roof) in roofs() {
        let view = solid_view(&roof, Length::ZERO, Viewpoint::Above);
        for piece in &view.pieces {
            let Part::Face(face) = piece.part else {
                unreachable!("{name}: a wall seen from above");
            };
            let area: f64 = piece.rings.iter().map(|ring| signed_area(ring)).sum();
            let plan = roof.faces[face].plan_area.in_square_feet();
            assert!(
                (area - plan).abs() < 1e-6 * (1.0 + plan),
                "{name}: {area} of {plan}"
            );
        }
        assert_eq!(view.pieces.len(), roof.faces.len(), "{name}");
    }
}

fn signed_area(ring: &[Point]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let pairs = ring.iter().zip(next);
    pairs.map(|(a, b)| (a.x * b.y - a.y * b.x) / 2.0).sum()
}

#[test]
fn every_eave_and_rake_has_its_wall_from_one_side_or_the_other() {
    for (name, roof) in roofs() {
        let views: Vec<SolidView> = Viewpoint::ALL
            .iter()
            .map(|from| solid_view(&roof, Length::ZERO, *from))
            .collect();
        for (place, edge) in roof.edges.iter().enumerate() {
            let rim = matches!(edge.kind, EdgeKind::Eave | EdgeKind::Rake);
            let seen = views.iter().any(|view| {
                let mut parts = view.pieces.iter().map(|piece| piece.part);
                parts.any(|part| part == Part::Wall(place))
            });
            assert_eq!(seen, rim, "{name}: {edge:?}");
        }
    }
}

#[test]
#[expect(
    clippy::disallowed_methods,
    reason = "pictures are written where somebody asked for them, to be looked at"
)]
fn twelve_houses_are_drawn_with_their_faces_named() {
    let folder = std::env::var_os("EAVEBOOK_PICTURES").map(std::path::PathBuf::from);
    for (name, roof) in roofs() {
        let names: Vec<String> = (1..=roof.faces.len())
            .map(|face| format!("f{face}"))
            .collect();
        for from in Viewpoint::ALL {
            let svg = solid_svg(&solid_view(&roof, Length::ZERO, from), &roof, &names);
            assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
            assert!(svg.contains(&format!("<title>The house {}</title>", from.words())));
            assert!(
                !svg.contains("NaN") && !svg.contains("inf"),
                "{name}: {svg}"
            );
            // Its list names each face that is turned to the viewer with its slope.
            let turned = svg.matches(" in 12").count();
            assert!(turned >= roof.faces.len() / 3, "{name}: {turned}");
            if let Some(folder) = &folder {
                let file = format!("{name} {}.svg", from.words()).replace(' ', "-");
                assert!(std::fs::write(folder.join(file), svg).is_ok());
            }
        }
    }
}

#[test]
fn a_gable_is_one_wall_without_a_line_under_its_ridge() {
    let shape = body("main", 9.0, 6.0, &[1, 3], &box_at([0.0, 0.0], [46.0, 26.0]));
    let roof = raise(&[shape], &[]).unwrap_or_default();
    let view = solid_view(&roof, Length::ZERO, Viewpoint::FrontLeft);
    let rakes: Vec<&Piece> = view
        .pieces
        .iter()
        .filter(|piece| matches!(piece.part, Part::Wall(edge) if roof.edges[edge].kind == EdgeKind::Rake))
        .collect();
    assert_eq!(rakes.len(), 2);
    assert!(rakes.iter().all(|wall| wall.seams.len() == 1), "{rakes:?}");
    // The front turns a corner at both its ends.
    let front = view.pieces.iter().find(
        |piece| matches!(piece.part, Part::Wall(edge) if roof.edges[edge].kind == EdgeKind::Eave),
    );
    assert!(front.is_some_and(|wall| wall.seams.is_empty()), "{front:?}");
}

#[test]
fn a_roof_without_faces_is_an_empty_sheet() {
    let view = solid_view(&Roof::default(), Length::ZERO, Viewpoint::FrontLeft);
    assert!(view.pieces.is_empty());
    let svg = solid_svg(&view, &Roof::default(), &[]);
    assert!(!svg.contains("inf") && !svg.contains("NaN"), "{svg}");
}
