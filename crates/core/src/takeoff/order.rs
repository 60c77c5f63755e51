//! What to buy, in whole packs.

use super::because::Cause;
use super::existing_roof::ExistingRoof;
use super::item::{OrderItem, Pack};
use super::measured::Measured;
use super::mils::{count, mil, mil_of_feet, up};
use super::quantities::{IceBarrier, OrderLine};
use super::quantity::Unit;
use crate::roof::EdgeKind;
use crate::settings::{Code, Rates};
use crate::units::Measure;
use crate::units::measure::Percent;

/// Needs less than this are none.
const NOTHING: f64 = 1e-9;

/// What is needed of one item and how it is bought.
pub(super) struct Need {
    pub item: OrderItem,
    pub needed: f64,
    pub unit: Unit,
    pub pack_size: f64,
    pub pack: Pack,
    pub margin: Measure<Percent>,
    pub because: Vec<Cause>,
}

/// The order list of a roof whose areas are `scale` times what they are: lengths go with its root,
/// pieces with it, pieces of flashing with its root, boots and kick-outs stay.
pub(super) struct Ordering<'a> {
    pub measured: &'a Measured<'a>,
    pub rates: &'a Rates,
    pub code: &'a Code,
    pub lying: &'a ExistingRoof,
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

    pub(super) fn root(&self) -> f64 {
        self.scale.sqrt()
    }

    /// Field pieces, valleys with them.
    pub(super) fn pieces(&self) -> u64 {
        let laid: u64 = self
            .measured
            .laid
            .iter()
            .map(|(_, laid)| laid.new_pieces)
            .sum();
        up((laid + self.measured.valley_pieces) as f64 * self.scale)
    }

    /// Pieces over hips and ridges, each edge to its next whole piece.
    pub(super) fn cap_pieces(&self) -> u64 {
        let exposure = mil(self.rates.cap.exposure_in.value());
        let edges = &self.measured.roof.edges;
        edges
            .iter()
            .filter(|edge| matches!(edge.kind, EdgeKind::Hip | EdgeKind::Ridge))
            .map(|edge| count(mil_of_feet(edge.length.in_feet() * self.root()), exposure))
            .sum()
    }

    pub(super) fn length(&self, kind: EdgeKind) -> f64 {
        self.measured.length_of(kind) * self.root()
    }

    pub(super) fn edges(&self, kinds: &[EdgeKind]) -> Vec<Cause> {
        let edges = self.measured.roof.edges.iter().enumerate();
        edges
            .filter(|(_, edge)| kinds.contains(&edge.kind))
            .map(|(index, _)| Cause::Edge(index))
            .collect()
    }

    pub(super) fn all_faces(&self) -> Vec<Cause> {
        self.measured
            .order
            .iter()
            .copied()
            .map(Cause::Face)
            .collect()
    }
}

/// Whether planks stand so far apart that nails would miss them.
pub(super) fn overlay(lying: &ExistingRoof, rates: &Rates) -> bool {
    lying.deck.as_deref() == Some("plank")
        && lying.gap_in > rates.deck.overlay_over_gap_in.value() + 1e-9
}

pub(super) fn by_piece(item: OrderItem, needed: f64, because: Vec<Cause>) -> Need {
    Need {
        item,
        needed,
        unit: Unit::Piece,
        pack_size: 1.0,
        pack: Pack::Piece,
        margin: Measure::new(0.0),
        because,
    }
}

/// The line of a need; none where nothing is needed.
fn line(need: Need) -> Option<OrderLine> {
    if need.needed <= NOTHING {
        return None;
    }
    let packs = up(need.needed * (1.0 + need.margin.value() / 100.0) / need.pack_size);
    Some(OrderLine {
        item: need.item,
        needed: need.unit.quantity(need.needed),
        margin: need.margin,
        pack_size: need.unit.quantity(need.pack_size),
        pack: need.pack,
        packs,
        spare: need
            .unit
            .quantity(packs as f64 * need.pack_size - need.needed),
        because: need.because,
    })
}
