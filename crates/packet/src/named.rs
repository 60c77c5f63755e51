//! The roof of a job with what its parts are called, the same on every paper, table and drawing.

use eavebook_core::book::house_side::HouseSide;
use eavebook_core::book::kinds::{EndKind, Side, Thing};
use eavebook_core::book::names::end_of;
use eavebook_core::check::Standing;
use eavebook_core::naming::{EdgeName, FaceName, edge_names, face_names, leg_face_names};
use eavebook_core::pitch::SettledRise;
use eavebook_core::roof::{EdgeKind, Face};
use eavebook_core::solve::{Solved, length_spread};
use eavebook_core::survey::Point;
use eavebook_core::units::{Area, Figure, Length, Point3};
use std::collections::BTreeMap;

/// The parts of one house, named.
pub struct Parts<'a> {
    /// One a face of the roof, in its order.
    pub faces: Vec<NamedFace<'a>>,
    /// One an edge of the roof, in its order; the legs of the outline while there is no roof.
    pub edges: Vec<NamedEdge>,
    /// The face of each leg, in the order of the walk.
    pub places: Vec<FaceName>,
    /// Corners of the outline as far as they are known, feet, the front at the foot.
    pub corners: Vec<[f64; 2]>,
    /// One standard deviation of the length of all edges of a kind together.
    pub sigma_by_kind: BTreeMap<EdgeKind, Length>,
    turned: Turned,
}

/// One face.
pub struct NamedFace<'a> {
    /// Its name.
    pub place: FaceName,
    /// What was worked out of it.
    pub face: &'a Face,
    /// Its area with one standard deviation.
    pub area: Figure<Area>,
    /// One standard deviation of its pitch in rise on 12; none where the pitch was given as a number.
    pub pitch_sigma: Option<f64>,
}

/// One edge.
pub struct NamedEdge {
    /// `e4`, `r2`, `h1`, `v1`.
    pub name: String,
    /// What it is; none for a leg of an outline without a roof.
    pub kind: Option<EdgeKind>,
    /// Its length in space.
    pub length: Option<Length>,
    /// One standard deviation of it, where known.
    pub sigma: Option<Length>,
    /// Its ends in plan, feet, the front at the foot.
    pub ends: [[f64; 2]; 2],
    /// Heights of its ends, feet; none of a leg without a roof.
    pub heights: Option<[f64; 2]>,
    /// The faces along it: places in [`Parts::faces`].
    pub faces: Vec<usize>,
    /// The leg, from 1, of an eave or a rake.
    pub leg: Option<u32>,
    /// Not read, but worked out from the other legs.
    pub worked_out: bool,
    /// The readings speak against it.
    pub suspect: bool,
}

/// Turns the plan so that leg 1, the front, lies at the foot.
#[derive(Clone, Copy)]
struct Turned {
    sin: f64,
    cos: f64,
}

impl Turned {
    fn place(self, [x, y]: [f64; 2]) -> [f64; 2] {
        [x * self.cos - y * self.sin, x * self.sin + y * self.cos]
    }
}

/// Legs and ties against which the readings speak.
pub fn suspects(job: &Standing) -> Vec<Thing> {
    let named = job.suspects().into_iter();
    let mut things: Vec<Thing> = named.map(|(thing, _)| thing).collect();
    things.sort();
    things
}

/// The body that the field book describes, once its line has come round.
pub fn body<'a>(job: &Standing<'a>) -> Option<&'a eavebook_core::survey::Body> {
    job.laid.survey.as_ref()?.bodies.first()
}

impl<'a> Parts<'a> {
    /// Names the parts of a job.
    pub fn new(job: &Standing<'a>, solved: Option<&'a Solved>) -> Parts<'a> {
        let turned = turned(job);
        let places = leg_face_names(job.book, job.laid);
        let corners = corners(job);
        let shown = corners.iter().map(|at| turned.place([at.x, at.y]));
        let mut parts = Parts {
            faces: Vec::new(),
            edges: Vec::new(),
            places,
            corners: shown.collect(),
            sigma_by_kind: BTreeMap::new(),
            turned,
        };
        match solved.and_then(|solved| Some((solved, solved.roof.as_ref().ok()?))) {
            Some((solved, roof)) => {
                let spread = job
                    .laid
                    .survey
                    .as_ref()
                    .and_then(|survey| length_spread(survey, solved));
                parts.faces = faces(&roof.faces, solved, &parts.places);
                let sigmas = spread.as_ref().map(|spread| spread.edges.as_slice());
                parts.edges = parts.roof_edges(job, &roof.edges, sigmas.unwrap_or_default());
                parts.sigma_by_kind = spread.map(|spread| spread.by_kind).unwrap_or_default();
            }
            None => parts.edges = parts.legs(job),
        }
        parts
    }

    /// A place of the survey on the drawing.
    pub fn shown(&self, at: Point) -> [f64; 2] {
        self.turned.place([at.x, at.y])
    }

    /// The side of a leg, from 1.
    pub fn side(&self, leg: u32) -> Option<HouseSide> {
        let place = self.places.get((leg as usize).checked_sub(1)?)?;
        Some(place.side)
    }

    fn roof_edges(
        &self,
        job: &Standing,
        edges: &[eavebook_core::roof::Edge],
        sigmas: &[Option<Length>],
    ) -> Vec<NamedEdge> {
        let suspects = suspects(job);
        let mut named: Vec<NamedEdge> = edges
            .iter()
            .enumerate()
            .map(|(place, edge)| {
                let ends = [edge.from, edge.to].map(Point3::in_feet);
                let [from, to] = ends.map(|[x, y, _]| self.turned.place([x, y]));
                let on_rim = matches!(edge.kind, EdgeKind::Eave | EdgeKind::Rake);
                let leg = on_rim.then(|| self.nearest_leg(job, edge.kind, [from, to]));
                let leg = leg.flatten();
                NamedEdge {
                    name: String::new(),
                    kind: Some(edge.kind),
                    length: Some(edge.length),
                    sigma: sigmas.get(place).copied().flatten(),
                    ends: [from, to],
                    heights: Some(ends.map(|[_, _, height]| height)),
                    faces: edge.faces.clone(),
                    leg,
                    worked_out: leg.is_some_and(|leg| is_worked_out(job, leg)),
                    suspect: leg.is_some_and(|leg| suspects.contains(&Thing::Leg { leg })),
                }
            })
            .collect();
        give_names(&mut named);
        named
    }

    /// The leg whose line an edge of the rim follows in plan.
    fn nearest_leg(
        &self,
        job: &Standing,
        kind: EdgeKind,
        [from, to]: [[f64; 2]; 2],
    ) -> Option<u32> {
        let middle = [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0];
        let wanted = match kind {
            EdgeKind::Rake => EndKind::Gable,
            EdgeKind::Eave
            | EdgeKind::Ridge
            | EdgeKind::Hip
            | EdgeKind::Valley
            | EdgeKind::SideWall
            | EdgeKind::HeadWall
            | EdgeKind::PitchBreak => EndKind::Sloped,
        };
        let next = self.corners.iter().cycle().skip(1);
        let legs = self.corners.iter().zip(next).zip(1_u32..);
        legs.filter(|(_, leg)| end_of(job.book, *leg) == wanted)
            .map(|((a, b), leg)| (off_segment(middle, *a, *b), leg))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, leg)| leg)
    }

    /// The legs of an outline that has no roof yet.
    fn legs(&self, job: &Standing) -> Vec<NamedEdge> {
        let suspects = suspects(job);
        let count = self.corners.len();
        let shut = job.laid.is_round();
        let legs = (0..if shut { count } else { count.saturating_sub(1) }).filter_map(|index| {
            let leg = u32::try_from(index + 1).ok()?;
            let figure = job.outline().and_then(|outline| outline.legs.get(index));
            let walked = job.laid.lengths.get(index).copied().flatten();
            let adjusted = figure.and_then(|figure| figure.length);
            let length = adjusted
                .map(|length| length.value)
                .or(walked.map(Length::feet));
            Some(NamedEdge {
                name: EdgeName::leg(leg).code(),
                kind: None,
                length,
                sigma: adjusted.map(|length| length.sigma),
                ends: [self.corners[index], self.corners[(index + 1) % count]],
                heights: None,
                faces: Vec::new(),
                leg: Some(leg),
                worked_out: is_worked_out(job, leg),
                suspect: suspects.contains(&Thing::Leg { leg }),
            })
        });
        legs.collect()
    }
}

fn is_worked_out(job: &Standing, leg: u32) -> bool {
    let index = (leg as usize).checked_sub(1);
    index
        .and_then(|index| job.outline()?.legs.get(index))
        .is_some_and(|leg| leg.worked_out)
}

fn turned(job: &Standing) -> Turned {
    let walked_on = job
        .book
        .corners
        .first()
        .map(|(_, corner)| corner.building_on);
    let runs = match walked_on.unwrap_or_default() {
        Side::Left => 0.0,
        Side::Right => 180.0,
    };
    let (sin, cos) = f64::to_radians(runs).sin_cos();
    Turned { sin, cos }
}

/// Adjusted corners, else the walk from its start as far as turns are known.
fn corners(job: &Standing) -> Vec<Point> {
    let adjusted: Option<Vec<Point>> = job.outline().and_then(|outline| {
        let all = outline.corners.iter();
        all.map(|corner| corner.map(|corner| corner.at)).collect()
    });
    adjusted
        .filter(|corners| !corners.is_empty())
        .unwrap_or_else(|| {
            let start = Point { x: 0.0, y: 0.0 };
            let walked = job.laid.walk.legs.iter().map(|leg| leg.to);
            std::iter::once(start).chain(walked).collect()
        })
}

/// Feet from a place to a segment.
fn off_segment(at: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    let share = if square > 0.0 {
        ((at[0] - a[0]) * along[0] + (at[1] - a[1]) * along[1]) / square
    } else {
        0.0
    };
    let share = share.clamp(0.0, 1.0);
    let foot = [a[0] + share * along[0], a[1] + share * along[1]];
    (at[0] - foot[0]).hypot(at[1] - foot[1])
}

fn faces<'a>(all: &'a [Face], solved: &Solved, places: &[FaceName]) -> Vec<NamedFace<'a>> {
    let names = face_names(all, places);
    let named = all.iter().zip(names).enumerate();
    let named = named.filter_map(|(index, (face, name))| {
        Some(NamedFace {
            place: name?,
            face,
            area: Figure {
                value: face.area,
                sigma: solved
                    .face_sigmas
                    .get(index)
                    .copied()
                    .unwrap_or(Area::square_feet(0.0)),
            },
            pitch_sigma: pitch_sigma(solved, face),
        })
    });
    named.collect()
}

fn pitch_sigma(solved: &Solved, face: &Face) -> Option<f64> {
    match solved.bodies.get(face.body)?.rises.get(face.leg)? {
        SettledRise::Slope(pitch) => pitch.read.as_ref().map(|_| pitch.sigma_in_12().in_12()),
        SettledRise::Unknown | SettledRise::Bands(_) | SettledRise::Gable | SettledRise::Wall => {
            None
        }
    }
}

/// Names edges of a roof by their kind and leg.
fn give_names(edges: &mut [NamedEdge]) {
    let kinds = edges.iter().filter_map(|edge| Some((edge.kind?, edge.leg)));
    let names = edge_names(&kinds.collect::<Vec<_>>());
    for (edge, name) in edges.iter_mut().zip(names) {
        edge.name = name.code();
    }
}
