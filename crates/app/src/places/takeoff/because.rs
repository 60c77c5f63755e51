//! What made a figure, as things whose leaf a button opens, as rates, and as notes of the code
//! profile.

use crate::names;
use crate::parts::job_rates::JobRates;
use crate::parts::roof::Raised;
use crate::parts::solved_job::SolvedJob;
use crate::parts::things;
use crate::places::takeoff::reply::{RateView, ThingLink};
use eavebook_core::book::kinds::Thing;
use eavebook_core::book::on_roof;
use eavebook_core::roof::EdgeKind;
use eavebook_core::settings::Code;
use eavebook_core::takeoff::{Cause, OrderLine};
use serde_json::Value;

/// What a figure can be traced through.
pub struct Traces<'a> {
    /// The job.
    pub seen: &'a SolvedJob<'a>,
    /// Its roof.
    pub raised: &'a Raised<'a>,
    /// Its rates.
    pub rates: &'a JobRates<'a>,
    /// What the permit office asks for.
    pub code: &'a Code,
    /// Its order list.
    pub order: &'a [OrderLine],
}

/// What made a figure.
#[derive(Default)]
pub struct Made {
    /// Things, each once: items and faces, then inner edges, then legs.
    pub things: Vec<ThingLink>,
    /// Rates, each once.
    pub rates: Vec<RateView>,
    /// Notes of the code profile, each once.
    pub notes: Vec<String>,
}

impl Traces<'_> {
    /// What the causes of a figure are.
    #[must_use]
    pub fn made(&self, causes: &[Cause]) -> Made {
        let mut made = Found::default();
        self.follow(causes, &mut made);
        made.legs.sort_unstable();
        made.legs.dedup();
        for leg in made.legs {
            let thing = Thing::Leg { leg };
            push(
                &mut made.things,
                ThingLink {
                    title: things::title(self.seen, &thing),
                    thing: names::name(&thing),
                },
            );
        }
        made.rates.dedup();
        Made {
            things: made.things,
            rates: made.rates.iter().map(|key| self.rates.view(key)).collect(),
            notes: made.notes,
        }
    }

    fn follow(&self, causes: &[Cause], made: &mut Found) {
        for cause in causes {
            match cause {
                Cause::Face(face) => self.face(*face, made),
                Cause::Edge(edge) => self.edge(*edge, made),
                Cause::Penetration(place) => {
                    let items = on_roof::penetrations(self.seen.book);
                    let thing = items.get(*place).map(|(thing, _)| thing.clone());
                    made.things_of(thing);
                }
                Cause::Covering => made.things_of(Some(Thing::Layers)),
                Cause::Deck => made.things_of(Some(Thing::Deck)),
                Cause::OrderLine(line) => {
                    let line = self.order.get(*line);
                    self.follow(line.map_or(&[], |line| &line.because), made);
                }
                // A sum shows its lines below it, each with its own causes.
                Cause::PriceLine(_) => {}
                // A row of a list is changed with its list.
                Cause::Rate(key) => {
                    let table = key.split('[').next().unwrap_or(key);
                    push(&mut made.rates, table.to_owned());
                }
                Cause::Code(key) => push(&mut made.notes, self.note(key)),
            }
        }
    }

    fn face(&self, face: usize, made: &mut Found) {
        let Some(leg) = self.leg_of_face(face) else {
            return;
        };
        push(
            &mut made.things,
            ThingLink {
                thing: format!("face {leg}"),
                title: self.raised.name_of(leg),
            },
        );
        made.legs.push(leg);
    }

    fn leg_of_face(&self, face: usize) -> Option<u32> {
        u32::try_from(self.raised.roof().faces.get(face)?.leg + 1).ok()
    }

    fn edge(&self, place: usize, made: &mut Found) {
        if let Some(inner) = self.raised.inner_edges().find(|edge| edge.place == place) {
            push(
                &mut made.things,
                ThingLink {
                    thing: inner.name.clone(),
                    title: inner.title.clone(),
                },
            );
        }
        let Some(edge) = self.raised.roof().edges.get(place) else {
            return;
        };
        let of_faces = edge.faces.iter().filter_map(|face| self.leg_of_face(*face));
        match edge.kind {
            // A rake lies over the leg of its gable, between the legs of the faces beside it.
            EdgeKind::Rake => made
                .legs
                .extend(self.gable_under(place).into_iter().chain(of_faces)),
            EdgeKind::Eave
            | EdgeKind::Ridge
            | EdgeKind::Hip
            | EdgeKind::Valley
            | EdgeKind::SideWall
            | EdgeKind::HeadWall
            | EdgeKind::PitchBreak => made.legs.extend(of_faces),
        }
    }

    /// The leg over which a rake runs: the one that both its ends lie on in plan.
    fn gable_under(&self, place: usize) -> Option<u32> {
        let edge = self.raised.roof().edges.get(place)?;
        let corners: Vec<[f64; 2]> = self
            .seen
            .outline()?
            .corners
            .iter()
            .map(|corner| corner.map(|corner| [corner.at.x, corner.at.y]))
            .collect::<Option<_>>()?;
        let (from, to) = (edge.from.in_feet(), edge.to.in_feet());
        let middle = [0, 1].map(|axis| f64::midpoint(from[axis], to[axis]));
        let off = |leg: &usize| {
            let (from, to) = (corners[*leg], corners[(leg + 1) % corners.len()]);
            let along = [to[0] - from[0], to[1] - from[1]];
            let length = along[0].hypot(along[1]);
            let beside = [middle[0] - from[0], middle[1] - from[1]];
            (along[0] * beside[1] - along[1] * beside[0]).abs() / length
                + (beside[0].hypot(beside[1]) - length).max(0.0)
        };
        let nearest = (0..corners.len()).min_by(|a, b| off(a).total_cmp(&off(b)))?;
        u32::try_from(nearest + 1).ok()
    }

    /// A note of the code profile: "ice barrier, inside in: 24".
    fn note(&self, key: &str) -> String {
        let tables = self.code.to_value();
        let value = tables.pointer(&format!("/{}", key.replace('.', "/")));
        let said = match value {
            Some(Value::Bool(true)) => "yes".to_owned(),
            Some(Value::Bool(false)) => "no".to_owned(),
            Some(Value::String(text)) => text.clone(),
            Some(Value::Number(number)) => number
                .as_f64()
                .map_or_else(|| number.to_string(), |number| number.to_string()),
            Some(value @ (Value::Array(_) | Value::Object(_))) => value.to_string(),
            Some(Value::Null) | None => "not noted".to_owned(),
        };
        format!("{}: {said}", key.replace('.', ", ").replace('_', " "))
    }
}

#[derive(Default)]
struct Found {
    things: Vec<ThingLink>,
    rates: Vec<String>,
    notes: Vec<String>,
    legs: Vec<u32>,
}

impl Found {
    fn things_of(&mut self, thing: Option<Thing>) {
        if let Some(thing) = thing {
            let name = names::name(&thing);
            push(
                &mut self.things,
                ThingLink {
                    title: names::capital(&name),
                    thing: name,
                },
            );
        }
    }
}

fn push<T: PartialEq>(to: &mut Vec<T>, what: T) {
    if !to.contains(&what) {
        to.push(what);
    }
}
