//! What covers a roof: pieces, caps, vents, felt, nails, sheets.

use super::because::Cause;
use super::item::{OrderItem, Pack};
use super::order::{Need, Ordering, overlay};
use super::quantity::Unit;
use crate::roof::EdgeKind;
use crate::units::Measure;

impl Ordering<'_> {
    pub(super) fn field(&self) -> Need {
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
            pack_size: field.per_pack.value(),
            pack: Pack::Pack,
            margin: field.margin_percent,
            because,
        }
    }

    pub(super) fn starter(&self) -> Need {
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
            pack_size: starter.pack_ft.in_feet(),
            pack: Pack::Pack,
            margin: starter.margin_percent,
            because,
        }
    }

    pub(super) fn cap(&self) -> Need {
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
            pack_size: cap.per_pack.value(),
            pack: Pack::Pack,
            margin: cap.margin_percent,
            because,
        }
    }

    /// Length of ridge that is vented, feet.
    pub(super) fn vented_ridge(&self) -> f64 {
        let vent = &self.rates.ridge_vent;
        if !vent.used {
            return 0.0;
        }
        let ridges = self.measured.edges(EdgeKind::Ridge);
        ridges
            .map(|(_, ridge)| (ridge.length.in_feet() - 2.0 * vent.set_back_ft.in_feet()).max(0.0))
            .sum::<f64>()
            * self.root()
    }

    pub(super) fn ridge_vent(&self) -> Need {
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
            pack_size: vent.stick_ft.in_feet(),
            pack: Pack::Stick,
            margin: vent.margin_percent,
            because,
        }
    }

    pub(super) fn ice_barrier(&self) -> Need {
        let ice = &self.rates.ice_barrier;
        let mut needed: f64 = self
            .ice_barrier
            .iter()
            .map(|row| row.length.in_feet())
            .sum();
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
            pack_size: ice.roll_ft.in_feet() - ice.end_lap_in.value() / 12.0,
            pack: Pack::Roll,
            margin: ice.margin_percent,
            because,
        }
    }

    pub(super) fn underlayment(&self) -> Need {
        let (sheet, asked) = (&self.rates.underlayment, &self.code.underlayment);
        let needed: f64 = self
            .measured
            .roof
            .faces
            .iter()
            .map(|face| {
                if face.pitch.in_12() < asked.half_lap_below_pitch.in_12() - 1e-6 {
                    face.area.in_square_feet() * sheet.roll_sqft.in_square_feet()
                        / sheet.half_lap_sqft.in_square_feet()
                } else {
                    face.area.in_square_feet()
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
            pack_size: sheet.roll_sqft.in_square_feet(),
            pack: Pack::Roll,
            margin: sheet.margin_percent,
            because,
        }
    }

    /// Pounds of nails, without the margin of the field.
    pub(super) fn nails(&self) -> Need {
        let rates = self.rates;
        let field = self.pieces() as f64 * rates.field.nails.value();
        let cap = self.cap_pieces() as f64 * rates.cap.nails.value();
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
            needed: (field + cap) / rates.nails.per_lb.value(),
            unit: Unit::Pounds,
            pack_size: rates.nails.box_lb.in_pounds(),
            pack: Pack::Box,
            margin: Measure::new(0.0),
            because,
        }
    }

    /// The whole deck where nails would miss it, else a share of it for what nobody could see.
    pub(super) fn deck_sheet(&self) -> Need {
        let deck = &self.rates.deck;
        let mut because = self.all_faces();
        because.push(Cause::Deck);
        let share = if overlay(self.lying, self.rates) {
            because.extend(Cause::rates(&["deck.overlay_over_gap_in"]));
            1.0
        } else {
            because.extend(Cause::rates(&["deck.allowance_percent"]));
            deck.allowance_percent.value() / 100.0
        };
        because.extend(Cause::rates(&["deck.sheet_sqft", "deck.margin_percent"]));
        Need {
            item: OrderItem::DeckSheet,
            needed: self.measured.roof.area().in_square_feet() * self.scale * share,
            unit: Unit::SquareFeet,
            pack_size: deck.sheet_sqft.in_square_feet(),
            pack: Pack::Sheet,
            margin: deck.margin_percent,
            because,
        }
    }
}
