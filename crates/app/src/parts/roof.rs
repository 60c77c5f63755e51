//! The raised roof by leg: names of faces, their pitches and areas, and the edges between them.

use crate::parts::solved_job::SolvedJob;
use crate::reply;
use eavebook_core::naming::{FaceName, edge_names, leg_face_names};
use eavebook_core::roof::{Edge, EdgeKind, Roof};
use eavebook_core::solve::{Solved, length_spread};
use eavebook_core::uncertainty::LengthSpread;
use eavebook_core::units::{Area, Figure, Length, RoundTo};

/// A roof with what its parts are called.
pub struct Raised<'a> {
    roof: &'a Roof,
    sigmas: &'a [Area],
    names: Vec<String>,
    edges: Vec<InnerEdge>,
    spread: Option<LengthSpread>,
}

/// An edge between faces, or against a wall: one that is no side of the outline.
#[derive(Clone, Debug, PartialEq)]
pub struct InnerEdge {
    /// Its place among the edges of the roof.
    pub place: usize,
    /// `h1`.
    pub name: String,
    /// `Hip 1`.
    pub title: String,
    /// What it is.
    pub kind: EdgeKind,
    /// Its length on the slope.
    pub length: Length,
    /// One standard deviation of it, where it is known.
    pub sigma: Option<Length>,
    /// The legs from which the faces that meet there rise, from 1.
    pub legs: Vec<u32>,
}

impl<'a> Raised<'a> {
    /// The roof of a solved job, where there is one.
    #[must_use]
    pub fn new(seen: &SolvedJob, solved: &'a Solved) -> Option<Raised<'a>> {
        let roof = solved.roof.as_ref().ok()?;
        let survey = seen.laid.survey.as_ref();
        let spread = survey.and_then(|survey| length_spread(survey, solved));
        Some(Raised {
            roof,
            sigmas: &solved.face_sigmas,
            names: face_names(seen),
            edges: inner_edges(roof, spread.as_ref()),
            spread,
        })
    }

    /// One standard deviation of lengths and of the area in plan.
    #[must_use]
    pub fn spread(&self) -> Option<&LengthSpread> {
        self.spread.as_ref()
    }

    /// The raised roof itself.
    #[must_use]
    pub fn roof(&self) -> &'a Roof {
        self.roof
    }

    /// Edges that are no side of the outline.
    pub fn inner_edges(&self) -> impl Iterator<Item = &InnerEdge> {
        self.edges.iter()
    }

    /// What the face of a leg, from 1, is called: `Back 2`.
    #[must_use]
    pub fn name_of(&self, leg: u32) -> String {
        let index = (leg as usize).saturating_sub(1);
        self.names
            .get(index)
            .cloned()
            .unwrap_or_else(|| format!("Leg {leg}"))
    }

    /// Area on the slope of all faces that rise from a leg; none where none does. Faces of one leg
    /// grow and shrink together, so their standard deviations are added.
    #[must_use]
    pub fn area_of(&self, leg: u32) -> Option<Figure<Area>> {
        let numbered = self.roof.faces.iter().zip(self.sigmas);
        let faces = numbered.filter(|(face, _)| face.leg + 1 == leg as usize);
        faces.fold(None, |sum: Option<Figure<Area>>, (face, sigma)| {
            let sum = sum.unwrap_or(Figure {
                value: Area::ZERO,
                sigma: Area::ZERO,
            });
            Some(Figure {
                value: sum.value + face.area,
                sigma: sum.sigma + *sigma,
            })
        })
    }
}

/// What the face of each leg is called.
#[must_use]
pub fn face_names(seen: &SolvedJob) -> Vec<String> {
    let names = leg_face_names(seen.book, seen.laid);
    names.iter().map(FaceName::name).collect()
}

/// A length in words with its ±, where that is known.
#[must_use]
pub fn length(value: Length, sigma: Option<Length>, to: RoundTo) -> reply::Figure {
    reply::Figure {
        words: value.words(to),
        give_or_take: sigma.map(|sigma| Figure { value, sigma }.give_or_take(to)),
    }
}

/// A slope in words: `6 in 12`, `6.5 in 12`.
#[must_use]
pub fn in_12(rise: f64) -> String {
    let tenths = (rise * 10.0).round() / 10.0;
    format!("{tenths} in 12")
}

fn inner_edges(roof: &Roof, spread: Option<&LengthSpread>) -> Vec<InnerEdge> {
    let inner: Vec<(usize, &Edge)> = roof
        .edges
        .iter()
        .enumerate()
        .filter(|(_, edge)| !matches!(edge.kind, EdgeKind::Eave | EdgeKind::Rake))
        .collect();
    let kinds: Vec<_> = inner.iter().map(|(_, edge)| (edge.kind, None)).collect();
    let inner = inner.into_iter().zip(edge_names(&kinds));
    let inner = inner.map(|((place, edge), name)| {
        let legs = edge.faces.iter().filter_map(|face| roof.faces.get(*face));
        InnerEdge {
            place,
            name: name.code(),
            title: format!("{} {}", edge.kind.title(), name.number),
            kind: edge.kind,
            length: edge.length,
            sigma: spread.and_then(|spread| spread.edges.get(place).copied().flatten()),
            legs: legs
                .filter_map(|face| u32::try_from(face.leg + 1).ok())
                .collect(),
        }
    });
    inner.collect()
}
