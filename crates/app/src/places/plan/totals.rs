//! Areas and lengths of the whole roof, each with what made it.

use crate::names;
use crate::parts::reply::Figure;
use crate::parts::roof::{self, Raised};
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::plan::reply::TotalView;
use crate::places::plan::sketch;
use eavebook_core::book::kinds::{EndKind, Thing};
use eavebook_core::roof::EdgeKind;
use eavebook_core::solve::Solved;
use eavebook_core::units::{self, Area};

/// Totals in the order in which they are asked for; none while there is no outline.
#[must_use]
pub fn view(seen: &SolvedJob, solved: Option<&Solved>, raised: Option<&Raised>) -> Vec<TotalView> {
    let Some(solved) = solved else {
        return Vec::new();
    };
    let because = because(seen);
    let spread = raised.and_then(Raised::spread);
    let give_or_take_of_plan = |value: Area| {
        let of_roof = spread.map(|spread| spread.plan_area);
        let sigma = of_roof.or(solved.totals.outline_sigma)?;
        Some(units::Figure { value, sigma }.give_or_take())
    };
    let mut totals = Vec::new();
    if let Some(area) = &solved.totals.area {
        totals.push(TotalView {
            name: "Roof area".to_owned(),
            value: Figure {
                words: area.words(),
                give_or_take: Some(area.give_or_take()),
            },
            because: because.clone(),
        });
        let in_squares = |area: Area| format!("{:.1} squares", area.in_squares());
        let up = Area::square_feet((area.sigma.in_square_feet() / 10.0).ceil() * 10.0);
        totals.push(TotalView {
            name: "Squares".to_owned(),
            value: Figure {
                words: in_squares(area.value),
                give_or_take: Some(format!("± {}", in_squares(up))),
            },
            because: because.clone(),
        });
    }
    if let Some(area) = solved.totals.plan_area {
        totals.push(TotalView {
            name: "Area in plan".to_owned(),
            value: Figure {
                words: area.words(),
                give_or_take: give_or_take_of_plan(area),
            },
            because: legs(seen),
        });
    }
    for (kind, length) in &solved.totals.edges {
        let sigma = spread.and_then(|spread| spread.by_kind.get(kind).copied());
        let because = match kind {
            EdgeKind::Eave => ends(seen, EndKind::Sloped),
            EdgeKind::Rake => ends(seen, EndKind::Gable),
            EdgeKind::Ridge
            | EdgeKind::Hip
            | EdgeKind::Valley
            | EdgeKind::SideWall
            | EdgeKind::HeadWall
            | EdgeKind::PitchBreak => inner(raised, *kind),
        };
        totals.push(TotalView {
            name: name_of(*kind).to_owned(),
            value: roof::length(*length, sigma, seen.round_to()),
            because,
        });
    }
    totals
}

/// What all edges of a kind are called.
#[must_use]
pub fn name_of(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::Eave => "Eave",
        EdgeKind::Rake => "Rake",
        EdgeKind::Ridge => "Ridge",
        EdgeKind::Hip => "Hip",
        EdgeKind::Valley => "Valley",
        EdgeKind::SideWall => "Side wall",
        EdgeKind::HeadWall => "Head wall",
        EdgeKind::PitchBreak => "Pitch break",
    }
}

/// Every leg with its value, then every pitch.
fn because(seen: &SolvedJob) -> Vec<String> {
    let mut because = legs(seen);
    let slopes = seen
        .book
        .pitches
        .iter()
        .filter(|pitch| pitch.struck.is_none());
    let mut pitched: Vec<u32> = slopes.map(|pitch| pitch.leg).collect();
    pitched.sort_unstable();
    pitched.dedup();
    because.extend(pitched.iter().map(|leg| format!("pitch at leg {leg}")));
    because
}

fn legs(seen: &SolvedJob) -> Vec<String> {
    things::all(seen)
        .iter()
        .map(|thing| with_value(seen, thing))
        .collect()
}

fn ends(seen: &SolvedJob, end: EndKind) -> Vec<String> {
    let legs = (1..=seen.laid.legs).filter_map(|leg| u32::try_from(leg).ok());
    let there = legs.filter(|leg| sketch::end_of(seen, *leg) == end);
    there
        .map(|leg| with_value(seen, &Thing::Leg { leg }))
        .collect()
}

fn with_value(seen: &SolvedJob, thing: &Thing) -> String {
    let name = names::name(thing);
    match things::value(seen, thing).filter(|_| !seen.hides(thing)) {
        Some(value) => format!("{name}, {}", value.words),
        None => name,
    }
}

fn inner(raised: Option<&Raised>, kind: EdgeKind) -> Vec<String> {
    let edges = raised.into_iter().flat_map(Raised::inner_edges);
    edges
        .filter(|edge| edge.kind == kind)
        .map(|edge| edge.title.to_lowercase())
        .collect()
}
