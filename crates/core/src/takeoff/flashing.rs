//! What keeps water out at edges, walls and openings.

use super::because::Cause;
use super::item::{OrderItem, Pack};
use super::mils::up;
use super::order::{Need, Ordering, by_piece};
use super::quantity::Unit;
use crate::roof::EdgeKind;
use crate::settings::ValleyKind;

impl Ordering<'_> {
    pub(super) fn valley_metal(&self) -> Need {
        let valley = &self.rates.valley;
        let needed = match valley.kind {
            ValleyKind::Closed => 0.0,
            ValleyKind::OpenMetal => self
                .measured
                .edges(EdgeKind::Valley)
                .map(|(_, edge)| edge.length.in_feet() + valley.extra_ft.in_feet())
                .sum(),
        };
        let mut because = self.edges(&[EdgeKind::Valley]);
        because.extend(Cause::rates(&[
            "valley.kind",
            "valley.extra_ft",
            "valley.roll_ft",
            "valley.margin_percent",
        ]));
        Need {
            item: OrderItem::ValleyMetal,
            needed: needed * self.root(),
            unit: Unit::Feet,
            pack_size: valley.roll_ft.in_feet(),
            pack: Pack::Roll,
            margin: valley.margin_percent,
            because,
        }
    }

    pub(super) fn edge_metal(&self, item: OrderItem, kind: EdgeKind) -> Need {
        let metal = &self.rates.edge_metal;
        let mut because = self.edges(&[kind]);
        because.extend(Cause::rates(&[
            "edge_metal.stick_ft",
            "edge_metal.lap_in",
            "edge_metal.margin_percent",
        ]));
        Need {
            item,
            needed: self.length(kind),
            unit: Unit::Feet,
            pack_size: metal.stick_ft.in_feet() - metal.lap_in.value() / 12.0,
            pack: Pack::Stick,
            margin: metal.margin_percent,
            because,
        }
    }

    fn openings(&self) -> impl Iterator<Item = Cause> {
        let openings = self.measured.openings.iter();
        openings.map(|it| Cause::Penetration(it.penetration))
    }

    pub(super) fn step_flashing(&self) -> Need {
        let step = &self.rates.step_flashing;
        let mut because = self.edges(&[EdgeKind::SideWall]);
        because.extend(self.openings());
        because.extend(Cause::rates(&[
            "field.exposure_in",
            "step_flashing.per_pack",
            "step_flashing.margin_percent",
        ]));
        Need {
            item: OrderItem::StepFlashing,
            needed: up(self.measured.step_flashing(self.rates) as f64 * self.root()) as f64,
            unit: Unit::Piece,
            pack_size: step.per_pack.value(),
            pack: Pack::Pack,
            margin: step.margin_percent,
            because,
        }
    }

    pub(super) fn apron_flashing(&self) -> Need {
        let apron = &self.rates.apron_flashing;
        let openings: f64 = self.measured.openings.iter().map(|it| 2.0 * it.width).sum();
        let mut because = self.edges(&[EdgeKind::HeadWall]);
        because.extend(self.openings());
        because.extend(Cause::rates(&[
            "apron_flashing.stick_ft",
            "apron_flashing.lap_in",
            "apron_flashing.margin_percent",
        ]));
        Need {
            item: OrderItem::ApronFlashing,
            needed: (openings + self.measured.length_of(EdgeKind::HeadWall)) * self.root(),
            unit: Unit::Feet,
            pack_size: apron.stick_ft.in_feet() - apron.lap_in.value() / 12.0,
            pack: Pack::Stick,
            margin: apron.margin_percent,
            because,
        }
    }

    pub(super) fn kick_out(&self) -> Need {
        let walls = self.measured.kick_outs();
        let needed = walls.len() as f64;
        let because = walls.into_iter().map(Cause::Edge).collect();
        by_piece(OrderItem::KickOut, needed, because)
    }

    pub(super) fn boots(&self) -> impl Iterator<Item = Need> {
        self.measured.boots.iter().map(|((kind, size), takes)| {
            let item = OrderItem::Boot {
                kind: *kind,
                size: size.clone(),
            };
            let because = takes.iter().copied().map(Cause::Penetration).collect();
            by_piece(item, takes.len() as f64, because)
        })
    }
}
