//! The roof as a solid from a fixed place: the faces of the plan, and walls under its rim.

use crate::open_job::OpenJob;
use crate::parts::roof::Raised;
use crate::parts::solved_job::{self, SolvedJob};
use crate::places::plan::request::SeenFrom;
use crate::places::plan::solid_reply::{PaintedView, SolidName, SolidView};
use eavebook_core::book::kinds::Side;
use eavebook_core::roof::{Part, Roof, Viewpoint, Walls, ground_under, solid_picture, solid_view};

/// Letters by which a name in another language may be longer.
const LONGER_ELSEWHERE: usize = 5;

/// The solid of a job as it is shown; without pieces while it has no roof.
#[must_use]
pub fn view(opened: &OpenJob, from: SeenFrom) -> SolidView {
    let laid = opened.laid_out();
    let solved = solved_job::solve(&laid);
    let hidden = opened.draft.hidden();
    let seen = SolvedJob::new(opened, &laid, solved.as_ref(), hidden.as_ref());
    let raised = solved
        .as_ref()
        .and_then(|solved| Raised::new(&seen, solved));
    let roof = raised.as_ref().map(|raised| match seen.building_on {
        Side::Left => raised.roof().clone(),
        Side::Right => raised.roof().turned_half(),
    });
    let names: Vec<String> = raised.map_or_else(Vec::new, |raised| {
        let legs = raised.roof().faces.iter().map(|face| face.leg + 1);
        let names = legs.map(|leg| raised.name_of(u32::try_from(leg).unwrap_or(u32::MAX)));
        names.collect()
    });
    drawn(opened, from, &roof.unwrap_or_default(), &names)
}

fn drawn(opened: &OpenJob, from: SeenFrom, roof: &Roof, names: &[String]) -> SolidView {
    let (ground, walls) = ground_under(roof);
    let solid = solid_view(roof, ground, viewpoint(from));
    let letters: Vec<usize> = names
        .iter()
        .map(|name| name.chars().count() + LONGER_ELSEWHERE)
        .collect();
    let picture = solid_picture(&solid, &letters);
    let mut turned: Vec<usize> = solid
        .pieces
        .iter()
        .filter_map(|piece| match piece.part {
            Part::Face(face) => Some(face),
            Part::Wall(_) => None,
        })
        .collect();
    turned.sort_unstable();
    let name = |face: usize| names.get(face).cloned();
    let mut faces: Vec<String> = turned.into_iter().filter_map(name).collect();
    faces.dedup();
    let painted = picture.painted.into_iter().map(|piece| PaintedView {
        fill: piece.fill,
        lines: piece.lines,
        shade: piece.shade,
    });
    let written = picture.names.into_iter();
    SolidView {
        job: opened.job,
        from,
        width: picture.width,
        height: picture.height,
        painted: painted.collect(),
        names: written
            .filter_map(|(face, at)| {
                Some(SolidName {
                    name: name(face)?,
                    at,
                })
            })
            .collect(),
        faces,
        walls_supposed: walls == Walls::Supposed && !roof.faces.is_empty(),
    }
}

fn viewpoint(from: SeenFrom) -> Viewpoint {
    match from {
        SeenFrom::Front => Viewpoint::Front,
        SeenFrom::Right => Viewpoint::Right,
        SeenFrom::Back => Viewpoint::Back,
        SeenFrom::Left => Viewpoint::Left,
        SeenFrom::StreetCorner => Viewpoint::FrontRight,
    }
}
