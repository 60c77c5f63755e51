//! What to buy, in whole packs.

use super::lying::Lying;
use super::measured::Measured;
use super::mils::{count, mil, mil_of_feet, up};
use super::{Cause, IceBarrier, OrderItem, OrderLine, Pack, Unit};
use crate::roof::EdgeKind;
use crate::settings::{Code, Rates, ValleyKind};

/// Needs less than this are none.
const NOTHING: f64 = 1e-9;

/// What is needed of one item and how it is bought.
struct Need {
    item: OrderItem,
    needed: f64,
    unit: Unit,
    pack_size: f64,
    pack: Pack,
    margin_percent: f64,
    because: Vec<Cause>,
}

/// The order list of a roof whose areas are `scale` times what they are: lengths go with its root,
/// pieces with it, pieces of flashing with its root, boots and kick-outs stay.
pub(super) struct Ordering<'a> {
    pub measured: &'a Measured<'a>,
    pub rates: &'a Rates,
    pub code: &'a Code,
    pub lying: &'a Lying,
    pub ice_barrier: &'a [IceBarrier],
    pub scale: f64,
}

impl Ordering<'_> {
    /// Every line that is needed, in the order of [`OrderItem`].
    pub fn lines(&self) -> Vec<OrderLine> {
        let mut needs = vec![
            self.field(),
            self.starter(),
            self.cap(),
            self.ridge_vent(),
            self.valley_metal(),
            self.ice_barrier(),
            self.underlayment(),
            self.edge_metal(OrderItem::EaveEdgeMetal, EdgeKind::Eave),
            self.edge_metal(OrderItem::RakeEdgeMetal, EdgeKind::Rake),
            self.step_flashing(),
            self.apron_flashing(),
            self.kick_out(),
            self.nails(),
        ];
        needs.extend(self.boots());
        needs.push(self.deck_sheet());
        needs.into_iter().filter_map(line).collect()
    }

    fn root(&self) -> f64 {
        self.scale.sqrt()
    }

    /// Field pieces, valleys with them.
    fn pieces(&self) -> u64 {
        let laid: u64 = self
            .measured
            .laid
            .iter()
            .map(|(_, laid)| laid.new_pieces)
            .sum();
        up((laid + self.measured.valley_pieces) as f64 * self.scale)
    }

    /// Pieces over hips and ridges, each edge to its next whole piece.
    fn cap_pieces(&self) -> u64 {
        let exposure = mil(self.rates.cap.exposure_in);
        let edges = &self.measured.roof.edges;
        edges
            .iter()
            .filter(|edge| matches!(edge.kind, EdgeKind::Hip | EdgeKind::Ridge))
            .map(|edge| count(mil_of_feet(edge.length * self.root()), exposure))
            .sum()
    }

    fn length(&self, kind: EdgeKind) -> f64 {
        self.measured.length_of(kind) * self.root()
    }

    fn edges(&self, kinds: &[EdgeKind]) -> Vec<Cause> {
        let edges = self.measured.roof.edges.iter().enumerate();
        edges
            .filter(|(_, edge)| kinds.contains(&edge.kind))
            .map(|(index, _)| Cause::Edge(index))
            .collect()
    }

    fn field(&self) -> Need {
        let field = &self.rates.field;
        let mut because: Vec<Cause> = self
            .measured
            .laid
            .iter()
            .map(|it| Cause::Face(it.0))
            .collect();
        because.extend(
            self.measured
                .openings
                .iter()
                .map(|it| Cause::Penetration(it.penetration)),
        );
        if self.measured.valley_pieces > 0 {
            because.extend(self.edges(&[EdgeKind::Valley]));
            because.extend(Cause::rates(&["valley.kind", "valley.past_in"]));
        }
        because.extend(Cause::rates(&[
            "field.piece_in",
            "field.height_in",
            "field.exposure_in",
            "field.stagger_in",
            "field.steps",
            "field.anchor",
            "field.pool",
            "field.least_off_cut_in",
            "field.deduct_from_sqft",
            "field.per_pack",
            "field.margin_percent",
        ]));
        because.extend(Cause::codes(&["underlayment.least_pitch"]));
        Need {
            item: OrderItem::Field,
            needed: self.pieces() as f64,
            unit: Unit::Piece,
            pack_size: field.per_pack,
            pack: Pack::Pack,
            margin_percent: field.margin_percent,
            because,
        }
    }

    fn starter(&self) -> Need {
        let starter = &self.rates.starter;
        let kinds: &[EdgeKind] = if starter.rakes {
            &[EdgeKind::Eave, EdgeKind::Rake]
        } else {
            &[EdgeKind::Eave]
        };
        let mut because = self.edges(kinds);
        because.extend(Cause::rates(&[
            "starter.rakes",
            "starter.pack_ft",
            "starter.margin_percent",
        ]));
        Need {
            item: OrderItem::Starter,
            needed: kinds
                .iter()
                .map(|kind| self.measured.length_of(*kind))
                .sum::<f64>()
                * self.root(),
            unit: Unit::Feet,
            pack_size: starter.pack_ft,
            pack: Pack::Pack,
            margin_percent: starter.margin_percent,
            because,
        }
    }

    fn cap(&self) -> Need {
        let cap = &self.rates.cap;
        let mut because = self.edges(&[EdgeKind::Hip, EdgeKind::Ridge]);
        because.extend(Cause::rates(&[
            "cap.exposure_in",
            "cap.per_pack",
            "cap.margin_percent",
        ]));
        Need {
            item: OrderItem::Cap,
            needed: self.cap_pieces() as f64,
            unit: Unit::Piece,
            pack_size: cap.per_pack,
            pack: Pack::Pack,
            margin_percent: cap.margin_percent,
            because,
        }
    }

    /// Length of ridge that is vented, feet.
    pub fn vented_ridge(&self) -> f64 {
        let vent = &self.rates.ridge_vent;
        if !vent.used {
            return 0.0;
        }
        let ridges = self.measured.edges(EdgeKind::Ridge);
        ridges
            .map(|(_, ridge)| (ridge.length - 2.0 * vent.set_back_ft).max(0.0))
            .sum::<f64>()
            * self.root()
    }

    fn ridge_vent(&self) -> Need {
        let vent = &self.rates.ridge_vent;
        let mut because = self.edges(&[EdgeKind::Ridge]);
        because.extend(Cause::rates(&[
            "ridge_vent.use",
            "ridge_vent.set_back_ft",
            "ridge_vent.stick_ft",
            "ridge_vent.margin_percent",
        ]));
        Need {
            item: OrderItem::RidgeVent,
            needed: self.vented_ridge(),
            unit: Unit::Feet,
            pack_size: vent.stick_ft,
            pack: Pack::Stick,
            margin_percent: vent.margin_percent,
            because,
        }
    }

    fn valley_metal(&self) -> Need {
        let valley = &self.rates.valley;
        let needed = match valley.kind {
            ValleyKind::Closed => 0.0,
            ValleyKind::OpenMetal => self
                .measured
                .edges(EdgeKind::Valley)
                .map(|(_, edge)| edge.length + valley.extra_ft)
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
            pack_size: valley.roll_ft,
            pack: Pack::Roll,
            margin_percent: valley.margin_percent,
            because,
        }
    }

    fn ice_barrier(&self) -> Need {
        let ice = &self.rates.ice_barrier;
        let mut needed: f64 = self.ice_barrier.iter().map(|row| row.length_ft).sum();
        let mut because: Vec<Cause> = self
            .ice_barrier
            .iter()
            .map(|row| Cause::Face(row.face))
            .collect();
        because.extend(self.edges(&[EdgeKind::Eave]));
        if self.code.ice_barrier.required && ice.valleys {
            needed += self.measured.length_of(EdgeKind::Valley);
            because.extend(self.edges(&[EdgeKind::Valley]));
        }
        because.extend(Cause::rates(&[
            "ice_barrier.width_in",
            "ice_barrier.lap_in",
            "ice_barrier.roll_ft",
            "ice_barrier.end_lap_in",
            "ice_barrier.valleys",
            "ice_barrier.margin_percent",
        ]));
        because.extend(Cause::codes(&[
            "ice_barrier.required",
            "ice_barrier.inside_in",
            "ice_barrier.wall_in",
            "ice_barrier.steep_from_pitch",
            "ice_barrier.steep_in",
        ]));
        Need {
            item: OrderItem::IceBarrier,
            needed: needed * self.root(),
            unit: Unit::Feet,
            pack_size: ice.roll_ft - ice.end_lap_in / 12.0,
            pack: Pack::Roll,
            margin_percent: ice.margin_percent,
            because,
        }
    }

    fn underlayment(&self) -> Need {
        let (sheet, asked) = (&self.rates.underlayment, &self.code.underlayment);
        let needed: f64 = self
            .measured
            .roof
            .faces
            .iter()
            .map(|face| {
                if face.pitch.in_12() < asked.half_lap_below_pitch - 1e-6 {
                    face.area * sheet.roll_sqft / sheet.half_lap_sqft
                } else {
                    face.area
                }
            })
            .sum();
        let mut because = self.all_faces();
        because.extend(Cause::rates(&[
            "underlayment.roll_sqft",
            "underlayment.half_lap_sqft",
            "underlayment.margin_percent",
        ]));
        because.extend(Cause::codes(&["underlayment.half_lap_below_pitch"]));
        Need {
            item: OrderItem::Underlayment,
            needed: needed * self.scale,
            unit: Unit::SquareFeet,
            pack_size: sheet.roll_sqft,
            pack: Pack::Roll,
            margin_percent: sheet.margin_percent,
            because,
        }
    }

    fn all_faces(&self) -> Vec<Cause> {
        self.measured
            .order
            .iter()
            .copied()
            .map(Cause::Face)
            .collect()
    }

    fn edge_metal(&self, item: OrderItem, kind: EdgeKind) -> Need {
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
            pack_size: metal.stick_ft - metal.lap_in / 12.0,
            pack: Pack::Stick,
            margin_percent: metal.margin_percent,
            because,
        }
    }

    fn openings(&self) -> impl Iterator<Item = Cause> {
        let openings = self.measured.openings.iter();
        openings.map(|it| Cause::Penetration(it.penetration))
    }

    fn step_flashing(&self) -> Need {
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
            pack_size: step.per_pack,
            pack: Pack::Pack,
            margin_percent: step.margin_percent,
            because,
        }
    }

    fn apron_flashing(&self) -> Need {
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
            pack_size: apron.stick_ft - apron.lap_in / 12.0,
            pack: Pack::Stick,
            margin_percent: apron.margin_percent,
            because,
        }
    }

    fn kick_out(&self) -> Need {
        let walls = self.measured.kick_outs();
        let needed = walls.len() as f64;
        let because = walls.into_iter().map(Cause::Edge).collect();
        by_piece(OrderItem::KickOut, needed, because)
    }

    /// Pounds of nails, without the margin of the field.
    fn nails(&self) -> Need {
        let rates = self.rates;
        let field = self.pieces() as f64 * rates.field.nails;
        let cap = self.cap_pieces() as f64 * rates.cap.nails;
        let mut because: Vec<Cause> = self
            .measured
            .laid
            .iter()
            .map(|it| Cause::Face(it.0))
            .collect();
        because.extend(self.edges(&[EdgeKind::Hip, EdgeKind::Ridge]));
        because.extend(Cause::rates(&[
            "field.nails",
            "cap.nails",
            "nails.per_lb",
            "nails.box_lb",
        ]));
        Need {
            item: OrderItem::Nails,
            needed: (field + cap) / rates.nails.per_lb,
            unit: Unit::Pounds,
            pack_size: rates.nails.box_lb,
            pack: Pack::Box,
            margin_percent: 0.0,
            because,
        }
    }

    fn boots(&self) -> impl Iterator<Item = Need> {
        self.measured.boots.iter().map(|((kind, size), takes)| {
            let item = OrderItem::Boot {
                kind: *kind,
                size: size.clone(),
            };
            let because = takes.iter().copied().map(Cause::Penetration).collect();
            by_piece(item, takes.len() as f64, because)
        })
    }

    /// The whole deck where nails would miss it, else a share of it for what nobody could see.
    fn deck_sheet(&self) -> Need {
        let deck = &self.rates.deck;
        let mut because = self.all_faces();
        because.push(Cause::Deck);
        let share = if overlay(self.lying, self.rates) {
            because.extend(Cause::rates(&["deck.overlay_over_gap_in"]));
            1.0
        } else {
            because.extend(Cause::rates(&["deck.allowance_percent"]));
            deck.allowance_percent / 100.0
        };
        because.extend(Cause::rates(&["deck.sheet_sqft", "deck.margin_percent"]));
        Need {
            item: OrderItem::DeckSheet,
            needed: self.measured.roof.area() * self.scale * share,
            unit: Unit::SquareFeet,
            pack_size: deck.sheet_sqft,
            pack: Pack::Sheet,
            margin_percent: deck.margin_percent,
            because,
        }
    }
}

/// Whether planks stand so far apart that nails would miss them.
pub(super) fn overlay(lying: &Lying, rates: &Rates) -> bool {
    lying.deck.as_deref() == Some("plank") && lying.gap_in > rates.deck.overlay_over_gap_in + 1e-9
}

fn by_piece(item: OrderItem, needed: f64, because: Vec<Cause>) -> Need {
    Need {
        item,
        needed,
        unit: Unit::Piece,
        pack_size: 1.0,
        pack: Pack::Piece,
        margin_percent: 0.0,
        because,
    }
}

/// The line of a need; none where nothing is needed.
fn line(need: Need) -> Option<OrderLine> {
    if need.needed <= NOTHING {
        return None;
    }
    let packs = up(need.needed * (1.0 + need.margin_percent / 100.0) / need.pack_size);
    Some(OrderLine {
        item: need.item,
        needed: need.needed,
        unit: need.unit,
        margin_percent: need.margin_percent,
        pack_size: need.pack_size,
        pack: need.pack,
        packs,
        left_over: packs as f64 * need.pack_size - need.needed,
        because: need.because,
    })
}
