//! What holds of any roof whatever over one body or two.

use super::assert_one_line;
use eavebook_core::roof::{BodyShape, Face, LegRise, RaiseError, Rise, Roof, raise};
use eavebook_core::survey::{Band, Point};
use eavebook_core::units::{Length, Pitch, Point3};

/// Most corners that are made of one input: what is beyond says nothing new and takes longer.
const MOST_CORNERS: usize = 48;
/// Bytes to a corner and the leg that starts there.
const CORNER: usize = 4;
/// Places along each axis at which it is asked which faces lie there.
const GRID: u32 = 9;

/// The roof that bytes stand for is raised whole, or refused in one short line that names a body.
///
/// The first byte says whether all slopes are one (bit 0) and after how many corners a second body
/// starts (the rest, 0 for none); then four bytes a corner: x and y in half feet, what both lie
/// off that in hundredths, and what rises at the leg.
///
/// # Panics
/// Where a roof does not hold what it must.
pub fn of_roof(bytes: &[u8]) -> Option<Roof> {
    of_bodies(&bodies(bytes))
}

/// The roof over bodies named by their ids is raised whole, or refused in one short line that
/// names one of them.
///
/// # Panics
/// Where a roof does not hold what it must.
pub fn of_bodies(bodies: &[BodyShape]) -> Option<Roof> {
    for body in bodies {
        match raise(std::slice::from_ref(body), &[]) {
            Err(refusal) => assert_refused(&refusal, bodies),
            Ok(roof) => {
                let told = whole(body, &roof);
                assert_eq!(told, Ok(()), "{body:?}");
            }
        }
    }
    let roof = match raise(bodies, &[]) {
        Err(refusal) => {
            assert_refused(&refusal, bodies);
            return None;
        }
        Ok(roof) => roof,
    };
    let told = no_more_than_alone(bodies, &roof);
    assert_eq!(told, Ok(()), "{bodies:?}");
    Some(roof)
}

fn bodies(bytes: &[u8]) -> Vec<BodyShape> {
    let Some((&head, rest)) = bytes.split_first() else {
        return Vec::new();
    };
    let corners: Vec<&[u8]> = rest.chunks_exact(CORNER).take(MOST_CORNERS).collect();
    let split = usize::from(head >> 1);
    let (main, wing) = if split == 0 || split >= corners.len() {
        (corners.as_slice(), None)
    } else {
        let (main, wing) = corners.split_at(split);
        (main, Some(wing))
    };
    let rises = if head & 1 == 1 { alike } else { mixed };
    let main = body("main", main, rises, 9.0);
    let wing = wing.map(|wing| body("wing", wing, rises, 8.0));
    std::iter::once(main).chain(wing).collect()
}

/// What rises at a leg: an end or one slope that all share.
fn alike(byte: u8) -> Rise {
    match byte {
        0..24 => Rise::Gable,
        24..32 => Rise::Wall,
        _ => Rise::slope(Pitch::rise_in_12(6.0)),
    }
}

/// What rises at a leg: an end, two bands, or any slope.
fn mixed(byte: u8) -> Rise {
    match byte {
        0..32 => alike(byte),
        32..48 => Rise::Slopes(vec![
            Band {
                pitch: Pitch::rise_in_12(20.0),
                rise: Some(Length::feet(8.0)),
            },
            Band {
                pitch: Pitch::rise_in_12(4.0),
                rise: None,
            },
        ]),
        // From 0 in 12, which is no slope, past 48, which is none either.
        _ => Rise::slope(Pitch::rise_in_12(f64::from(byte - 48) / 4.0)),
    }
}

fn body(id: &str, corners: &[&[u8]], rises: fn(u8) -> Rise, eave_height: f64) -> BodyShape {
    let place = |corner: &&[u8]| Point {
        x: f64::from(corner[0]) / 2.0 + f64::from(corner[2] & 15) / 100.0,
        y: f64::from(corner[1]) / 2.0 + f64::from(corner[2] >> 4) / 100.0,
    };
    BodyShape {
        id: id.to_string(),
        corners: corners.iter().map(place).collect(),
        nominal_directions: None,
        legs: corners
            .iter()
            .map(|corner| LegRise {
                rise: rises(corner[3]),
                overhang: Length::ZERO,
            })
            .collect(),
        eave_height: Length::feet(eave_height),
    }
}

fn assert_refused(refusal: &RaiseError, bodies: &[BodyShape]) {
    let said = refusal.to_string();
    assert_one_line(&said);
    assert!(
        bodies.is_empty() || bodies.iter().any(|body| said.contains(&body.id)),
        "{said} names no body"
    );
}

/// What is seen of bodies together is no more in plan than what each has alone.
///
/// # Errors
/// By how much it is more, in words.
pub fn no_more_than_alone(bodies: &[BodyShape], roof: &Roof) -> Result<(), String> {
    let alone: f64 = bodies.iter().map(outline_area).sum();
    let around: f64 = bodies.iter().map(perimeter).sum();
    let together = roof.plan_area().in_square_feet();
    if together > alone + slack(around) {
        return Err(format!(
            "{together} sq ft of roof in plan over {alone} of outlines"
        ));
    }
    Ok(())
}

/// Faces over one body tile its outline, lie in the planes of their legs, none below the eave, and
/// drain to their own eaves.
///
/// # Errors
/// The first that does not hold, in words.
pub fn whole(body: &BodyShape, roof: &Roof) -> Result<(), String> {
    let plan = outline_area(body);
    let slack = slack(perimeter(body));
    let found = roof.plan_area().in_square_feet();
    if (found - plan).abs() > slack {
        return Err(format!("faces hold {found} sq ft in plan of {plan}"));
    }
    for face in &roof.faces {
        in_its_plane(body, face)?;
        drains(body, face)?;
    }
    if let Some(pitch) = one_pitch(body) {
        let (area, by_factor) = (roof.area().in_square_feet(), plan * pitch.slope_factor());
        if (area - by_factor).abs() > slack * pitch.slope_factor() {
            return Err(format!(
                "{area} sq ft on the slope, {by_factor} by the factor"
            ));
        }
    }
    tiled(body, roof)
}

/// Away from every crease a place within the outline lies in one face, one outside in none.
fn tiled(body: &BodyShape, roof: &Roof) -> Result<(), String> {
    let outline = outline(body);
    for at in places(&outline, roof) {
        if roof.faces.iter().any(|face| beside(face, at) < 1e-3) {
            continue;
        }
        let holding = roof.faces.iter().filter(|face| holds(face, at)).count();
        if holding != usize::from(within(&outline, at)) {
            return Err(format!("{holding} faces at {at:?}"));
        }
    }
    Ok(())
}

/// A grid over the outline, and the middles of three corners in a row of every face.
fn places(outline: &[[f64; 2]], roof: &Roof) -> Vec<[f64; 2]> {
    let reach = |axis: usize| {
        let along = outline.iter().map(|corner| corner[axis]);
        let least = along.clone().fold(f64::INFINITY, f64::min);
        (least, along.fold(f64::NEG_INFINITY, f64::max) - least)
    };
    let (x, y) = (reach(0), reach(1));
    let step =
        |(least, size): (f64, f64), k: u32| least + size * (f64::from(k) + 0.5) / f64::from(GRID);
    let grid = (0..GRID).flat_map(|row| (0..GRID).map(move |k| [step(x, k), step(y, row)]));
    let middles = roof.faces.iter().flat_map(|face| {
        let ring = feet(&face.polygon);
        (0..ring.len()).map(move |corner| {
            let three = [0, 1, 2].map(|k| ring[(corner + k) % ring.len()]);
            [0, 1].map(|axis: usize| three.iter().map(|place| place[axis]).sum::<f64>() / 3.0)
        })
    });
    grid.chain(middles).collect()
}

/// Every corner of a face lies in the plane of its leg, none below the eave.
fn in_its_plane(body: &BodyShape, face: &Face) -> Result<(), String> {
    let plan_area = face.plan_area.in_square_feet();
    if !(plan_area > 0.0 && face.area.in_square_feet().is_finite()) {
        return Err(format!("a face of {plan_area} sq ft"));
    }
    let held: f64 = rings(face).map(|ring| signed_area(&ring)).sum();
    if (held - plan_area).abs() > 1e-9 * (1.0 + held.abs()) {
        return Err(format!(
            "the face of leg {} says {plan_area} sq ft in plan and holds {held}",
            face.leg
        ));
    }
    let Some((run, rise)) = foot(body, face) else {
        return Err(format!("a face over the end {}", face.leg));
    };
    let steep = face.pitch.in_12() / 12.0;
    let eave_height = body.eave_height.in_feet();
    for [x, y, z] in feet(&face.polygon) {
        let plane = eave_height + rise + (inward(body, face.leg, [x, y]) - run) * steep;
        if (z - plane).abs() > 1e-5 * (1.0 + 12.0 * steep) {
            return Err(format!(
                "the face of leg {} stands at {z}, its plane at {plane}",
                face.leg
            ));
        }
        if z < eave_height - 1e-5 {
            return Err(format!("the face of leg {} hangs below its eave", face.leg));
        }
    }
    Ok(())
}

/// The lowest place of a face is its own eave or the break under its own band; and where all legs
/// rise alike, water that runs straight down it leaves it there or into a valley, and never comes
/// back to it.
///
/// # Errors
/// What does not hold, in words.
pub fn drains(body: &BodyShape, face: &Face) -> Result<(), String> {
    let (_, rise) = foot(body, face).unwrap_or_default();
    let lowest = face
        .polygon
        .iter()
        .map(|at| at.height().in_feet())
        .fold(f64::INFINITY, f64::min);
    let off = lowest - body.eave_height.in_feet() - rise;
    if off.abs() > 1e-5 * (1.0 + face.pitch.in_12()) {
        return Err(format!(
            "the face of leg {} begins {off} ft above its eave",
            face.leg
        ));
    }
    let alike = body
        .legs
        .iter()
        .all(|leg| leg.rise.is_one_slope() && leg.rise == body.legs[0].rise);
    if !alike {
        return Ok(());
    }
    let (a, b) = ends(body, face.leg);
    let ring = feet(&face.polygon);
    let along = |place: [f64; 3]| place[0] * (b.x - a.x) + place[1] * (b.y - a.y);
    let length = (b.x - a.x).hypot(b.y - a.y);
    let steps: Vec<f64> = (0..ring.len())
        .map(|at| (along(ring[(at + 1) % ring.len()]) - along(ring[at])) / length)
        .filter(|step| step.abs() > 1e-5)
        .collect();
    let turns = (0..steps.len())
        .filter(|&at| steps[at] * steps[(at + 1) % steps.len()] < 0.0)
        .count();
    if turns != 2 {
        return Err(format!(
            "water leaves the face of leg {} and comes back to it",
            face.leg
        ));
    }
    Ok(())
}

/// Run from the leg and rise over its eave at which the band of a face starts; none over an end.
fn foot(body: &BodyShape, face: &Face) -> Option<(f64, f64)> {
    let Rise::Slopes(bands) = &body.legs[face.leg].rise else {
        return None;
    };
    let below = &bands[..face.band.unwrap_or(0)];
    Some(below.iter().fold((0.0, 0.0), |(run, rise), band| {
        let height = band.rise.map_or(0.0, Length::in_feet);
        (run + height * 12.0 / band.pitch.in_12(), rise + height)
    }))
}

/// Distance of a place from the line of a leg, into the body.
fn inward(body: &BodyShape, leg: usize, [x, y]: [f64; 2]) -> f64 {
    let (a, b) = ends(body, leg);
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    signed_area(&outline(body)).signum() * (dx * (y - a.y) - dy * (x - a.x)) / dx.hypot(dy)
}

fn ends(body: &BodyShape, leg: usize) -> (Point, Point) {
    let next = (leg + 1) % body.corners.len();
    (body.corners[leg], body.corners[next])
}

fn one_pitch(body: &BodyShape) -> Option<Pitch> {
    let mut slopes = body.legs.iter().filter_map(|leg| match &leg.rise {
        Rise::Slopes(bands) if bands.len() == 1 => Some(Some(bands[0].pitch)),
        Rise::Slopes(_) => Some(None),
        Rise::Gable | Rise::Wall => None,
    });
    let first = slopes.next()??;
    slopes.all(|pitch| pitch == Some(first)).then_some(first)
}

/// What areas may be off: places are joined within 1e-7 ft, so that much along every leg and the
/// creases it makes.
fn slack(around: f64) -> f64 {
    1e-6 * (1.0 + around)
}

fn perimeter(body: &BodyShape) -> f64 {
    (0..body.corners.len())
        .map(|leg| ends(body, leg))
        .map(|(a, b)| (b.x - a.x).hypot(b.y - a.y))
        .sum()
}

/// Counter-clockwise positive.
fn signed_area(ring: &[[f64; 2]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let pairs = ring.iter().zip(next);
    // From the first corner, so that a house far from the origin loses nothing.
    let Some(&[x, y]) = ring.first() else {
        return 0.0;
    };
    pairs
        .map(|(a, b)| ((a[0] - x) * (b[1] - y) - (a[1] - y) * (b[0] - x)) / 2.0)
        .sum()
}

fn outline_area(body: &BodyShape) -> f64 {
    signed_area(&outline(body)).abs()
}

fn outline(body: &BodyShape) -> Vec<[f64; 2]> {
    let corners = body.corners.iter();
    corners.map(|corner| [corner.x, corner.y]).collect()
}

fn feet(ring: &[Point3]) -> Vec<[f64; 3]> {
    ring.iter().map(|corner| corner.in_feet()).collect()
}

fn rings(face: &Face) -> impl Iterator<Item = Vec<[f64; 2]>> {
    face.rings()
        .map(|ring| feet(ring).iter().map(|&[x, y, _]| [x, y]).collect())
}

fn holds(face: &Face, at: [f64; 2]) -> bool {
    rings(face).filter(|ring| within(ring, at)).count() % 2 == 1
}

/// Even-odd rule (Shimrat, Algorithm 112, 1962).
fn within(ring: &[[f64; 2]], [x, y]: [f64; 2]) -> bool {
    let next = ring.iter().cycle().skip(1);
    let crossed = ring.iter().zip(next).filter(|&(&[ax, ay], &[bx, by])| {
        (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)
    });
    crossed.count() % 2 == 1
}

/// Distance in plan from the nearest piece around a face, feet.
fn beside(face: &Face, [x, y]: [f64; 2]) -> f64 {
    let mut nearest = f64::INFINITY;
    for ring in rings(face) {
        for (&[ax, ay], &[bx, by]) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            let (dx, dy) = (bx - ax, by - ay);
            let square = dx * dx + dy * dy;
            let along = if square > 0.0 {
                (((x - ax) * dx + (y - ay) * dy) / square).clamp(0.0, 1.0)
            } else {
                0.0
            };
            nearest = nearest.min((x - ax - along * dx).hypot(y - ay - along * dy));
        }
    }
    nearest
}
