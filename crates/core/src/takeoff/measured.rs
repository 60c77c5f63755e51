//! Everything that is counted on the roof once, whatever its area comes to in the end.

use super::courses::{Laid, courses_up, lay};
use super::mils::{count, mil, mil_of_feet, up};
use super::off_cuts::OffCuts;
use super::openings::{Opening, boot, openings};
use super::refusal::NoTakeoff;
use super::shadow::Region;
use super::slope::{Slope, Uv};
use crate::roof::{Edge, EdgeKind, Face, Roof};
use crate::settings::{BootKind, Code, Pool, Rates, ValleyKind};
use crate::survey::Survey;
use crate::units::Point3;
use std::collections::BTreeMap;

/// Ends of a side wall and of an eave that are one place, feet.
const ONE_PLACE: f64 = 1e-3;
/// A roof of more is none that is taken off, sq ft.
const LARGEST: f64 = 1e9;
/// Courses of all faces, and corners squared of each face by its courses: beyond, counting would
/// keep a person waiting.
const MOST_COURSES: u64 = 200_000;
const MOST_STEPS: u64 = 60_000_000;

/// What is counted on a roof.
#[derive(Clone, Debug)]
pub(super) struct Measured<'a> {
    pub survey: &'a Survey,
    pub roof: &'a Roof,
    /// Faces in the order in which they are laid.
    pub order: Vec<usize>,
    /// One a face, in the order of the roof.
    pub faces: Vec<OnFace>,
    /// Shingled faces with what is laid on them, in the order in which they are laid.
    pub laid: Vec<(usize, Laid)>,
    /// Pieces that run past closed valleys.
    pub valley_pieces: u64,
    /// Chimneys and skylights.
    pub openings: Vec<Opening>,
    /// Boots by kind and size, with the penetrations that take them.
    pub boots: BTreeMap<(BootKind, String), Vec<usize>>,
}

/// One face of a roof.
#[derive(Clone, Debug)]
pub(super) struct OnFace {
    pub slope: Slope,
    pub region: Region,
    /// Area of the openings that are cut out, sq ft.
    pub cut_area: f64,
    pub shingled: bool,
}

impl<'a> Measured<'a> {
    pub fn new(
        survey: &'a Survey,
        roof: &'a Roof,
        rates: &Rates,
        code: &Code,
    ) -> Result<Measured<'a>, NoTakeoff> {
        if roof.area().in_square_feet() > LARGEST {
            return Err(NoTakeoff::TooLarge);
        }
        let mut order: Vec<usize> = (0..roof.faces.len()).collect();
        order.sort_by_key(|&at| (roof.faces[at].body, roof.faces[at].leg, at));
        let rings: Vec<Vec<Uv>> = roof.faces.iter().map(outer_ring).collect();
        let openings = openings(&survey.penetrations, &roof.faces, &order, &rings);
        let mut faces: Vec<OnFace> = roof
            .faces
            .iter()
            .map(|face| OnFace::new(face, code))
            .collect();
        for opening in &openings {
            if opening.area() >= rates.field.deduct_from_sqft.in_square_feet() - 1e-6 {
                faces[opening.face].cut_area += opening.area();
                faces[opening.face].region.cuts.push(opening.cut);
            }
        }
        let laid = lay_all(roof, &order, &faces, rates)?;
        Ok(Measured {
            valley_pieces: valley_pieces(roof, rates),
            boots: boots(survey),
            survey,
            roof,
            order,
            faces,
            laid,
            openings,
        })
    }

    /// The name of the body of a face.
    pub fn body_name(&self, face: usize) -> String {
        let body = self.survey.bodies.get(self.roof.faces[face].body);
        body.map_or_else(String::new, |body| body.id.clone())
    }

    /// Area of a face that is shingled, sq ft.
    pub fn net_area_of(&self, face: usize) -> f64 {
        (self.roof.faces[face].area.in_square_feet() - self.faces[face].cut_area).max(0.0)
    }

    /// Area that is shingled, sq ft.
    pub fn net_area(&self) -> f64 {
        self.laid
            .iter()
            .map(|(face, _)| self.net_area_of(*face))
            .sum()
    }

    /// Edges of one kind, each with its index.
    pub fn edges(&self, kind: EdgeKind) -> impl Iterator<Item = (usize, &'a Edge)> {
        let edges = self.roof.edges.iter().enumerate();
        edges.filter(move |(_, edge)| edge.kind == kind)
    }

    /// Length of all edges of one kind, feet.
    pub fn length_of(&self, kind: EdgeKind) -> f64 {
        self.roof.length_of(kind).in_feet()
    }

    /// Side walls that end on an eave.
    pub fn kick_outs(&self) -> Vec<usize> {
        let on_an_eave = |foot: Point3| {
            self.edges(EdgeKind::Eave)
                .any(|(_, eave)| distance(foot, eave.from, eave.to) < ONE_PLACE)
        };
        self.edges(EdgeKind::SideWall)
            .filter(|(_, wall)| on_an_eave(wall.from))
            .map(|(index, _)| index)
            .collect()
    }

    /// Pieces of step flashing: one a course beside walls and on both sides of openings.
    pub fn step_flashing(&self, rates: &Rates) -> u64 {
        let exposure = mil(rates.field.exposure_in.value());
        let walls: u64 = self
            .edges(EdgeKind::SideWall)
            .map(|(_, wall)| count(mil_of_feet(wall.length.in_feet()), exposure))
            .sum();
        let openings: u64 = self
            .openings
            .iter()
            .map(|it| 2 * count(mil_of_feet(it.up_slope), exposure))
            .sum();
        walls + openings
    }
}

impl OnFace {
    fn new(face: &Face, code: &Code) -> OnFace {
        let slope = Slope::from_face(face);
        let ring = |ring: &Vec<Point3>| ring.iter().map(|at| slope.place(at.in_feet())).collect();
        OnFace {
            region: Region {
                rings: face.rings().map(ring).collect(),
                cuts: Vec::new(),
            },
            slope,
            cut_area: 0.0,
            shingled: face.pitch.in_12() >= code.underlayment.least_pitch.in_12() - 1e-6,
        }
    }
}

fn outer_ring(face: &Face) -> Vec<Uv> {
    let slope = Slope::from_face(face);
    face.polygon
        .iter()
        .map(|at| slope.place(at.in_feet()))
        .collect()
}

fn lay_all(
    roof: &Roof,
    order: &[usize],
    faces: &[OnFace],
    rates: &Rates,
) -> Result<Vec<(usize, Laid)>, NoTakeoff> {
    let shingled = || order.iter().copied().filter(|&at| faces[at].shingled);
    let (mut courses, mut steps) = (0_u64, 0_u64);
    for face in shingled() {
        let here = courses_up(&faces[face].region, &rates.field);
        courses = courses.saturating_add(here);
        steps =
            steps.saturating_add(here.saturating_mul((faces[face].region.corners() as u64).pow(2)));
        if courses > MOST_COURSES || steps > MOST_STEPS {
            let Face { body, leg, .. } = roof.faces[face];
            return Err(NoTakeoff::TooManyCourses { body, leg });
        }
    }
    let mut off_cuts = OffCuts::default();
    Ok(shingled()
        .map(|face| {
            if rates.field.pool == Pool::Face {
                off_cuts.clear();
            }
            (face, lay(&faces[face].region, &rates.field, &mut off_cuts))
        })
        .collect())
}

/// Pieces that the face of lower slope runs past each closed valley, by as many courses as the
/// valley climbs on that face (common practice).
fn valley_pieces(roof: &Roof, rates: &Rates) -> u64 {
    match rates.valley.kind {
        ValleyKind::OpenMetal => 0,
        ValleyKind::Closed => roof
            .edges
            .iter()
            .filter(|edge| edge.kind == EdgeKind::Valley)
            .map(|edge| past_valley(roof, edge, rates))
            .sum(),
    }
}

fn past_valley(roof: &Roof, edge: &Edge, rates: &Rates) -> u64 {
    let millionths = |face: usize| (roof.faces[face].pitch.in_12() * 1e6).round() as i64;
    let lower = edge
        .faces
        .iter()
        .copied()
        .min_by_key(|&face| (millionths(face), face));
    let Some(pitch) = lower.map(|face| roof.faces[face].pitch) else {
        return 0;
    };
    if pitch.in_12() < 1e-9 {
        return 0;
    }
    let rise = (edge.to.height() - edge.from.height()).abs().in_feet();
    let up_slope = rise * pitch.slope_factor() / (pitch.in_12() / 12.0);
    let courses = count(mil_of_feet(up_slope), mil(rates.field.exposure_in.value()));
    up(courses as f64 * rates.valley.past_in.value() / rates.field.piece_in.value())
}

fn boots(survey: &Survey) -> BTreeMap<(BootKind, String), Vec<usize>> {
    let mut boots: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    for (index, it) in survey.penetrations.iter().enumerate() {
        if let Some(boot) = boot(it.kind) {
            boots.entry(boot).or_default().push(index);
        }
    }
    boots
}

/// From a place to the line between two others, feet.
fn distance(place: Point3, from: Point3, to: Point3) -> f64 {
    let [place, from, to] = [place, from, to].map(Point3::in_feet);
    let less = |a: [f64; 3], b: [f64; 3]| [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
    let dot = |a: [f64; 3], b: [f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let (run, off) = (less(to, from), less(place, from));
    let length = dot(run, run);
    let share = if length > 0.0 {
        (dot(off, run) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let off = less(off, run.map(|it| it * share));
    dot(off, off).sqrt()
}
