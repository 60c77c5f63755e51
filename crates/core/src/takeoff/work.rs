//! Hours of work, air under the roof, and squares by the three ways of billing.

use super::existing_roof::ExistingRoof;
use super::measured::Measured;
use super::tear_off::mean_layers;
use super::{Billing, Cause, LaborHours, OrderItem, OrderLine, Ventilation};
use crate::roof::EdgeKind;
use crate::settings::{Code, Rates};
use crate::units::{Area, Length};

/// Width of roof that a foot of hip or ridge is billed as, feet (estimating texts).
const BILLED_WIDTH: f64 = 1.0;

/// The factor of the last row whose first number is reached; of the first row below it.
fn factor(rows: &[[f64; 2]], at: f64) -> f64 {
    let reached = rows.iter().rev().find(|[from, _]| at >= from - 1e-6);
    reached.or(rows.first()).map_or(1.0, |[_, factor]| *factor)
}

/// Hours of a roof whose areas are `scale` times what they are.
pub(super) fn labor(
    measured: &Measured<'_>,
    lying: &ExistingRoof,
    rates: &Rates,
    scale: f64,
) -> LaborHours {
    let labor = &rates.labor;
    let squares: f64 = measured
        .roof
        .faces
        .iter()
        .map(|face| {
            let body = measured.survey.bodies.get(face.body);
            let eave = body.map_or(0.0, |body| body.eave_height.in_feet());
            face.area * scale / 100.0
                * factor(&labor.steepness, face.pitch.in_12())
                * factor(&labor.height, eave)
        })
        .sum();
    let deck = lying.deck.as_deref().unwrap_or("other");
    let key = if labor.strip_deck.contains_key(deck) {
        deck
    } else {
        "other"
    };
    let strip_factor = labor.strip_deck.get(key).copied().unwrap_or(1.0);
    let layers = mean_layers(lying, &rates.tear_off);
    let faces: Vec<Cause> = measured.order.iter().copied().map(Cause::Face).collect();
    let mut lay_because = faces;
    lay_because.extend(Cause::rates(&["labour.steepness", "labour.height"]));
    let mut strip_because = lay_because.clone();
    lay_because.extend(Cause::rates(&["labour.lay_hours"]));
    strip_because.extend(Cause::rates(&["labour.strip_hours"]));
    strip_because.extend([
        Cause::Covering,
        Cause::Deck,
        Cause::Rate(format!("labour.strip_deck.{key}")),
    ]);
    if lying.layers.is_none() {
        strip_because.extend(Cause::rates(&["tear_off.layer_chance"]));
    }
    LaborHours {
        lay_hours: squares * labor.lay_hours,
        strip_hours: squares * labor.strip_hours * layers * strip_factor,
        lay_because,
        strip_because,
    }
}

/// Openings that the code profile asks for, and what ridge vents give of them.
///
/// `vented`: length of ridge that is vented.
pub(super) fn ventilation(
    measured: &Measured<'_>,
    rates: &Rates,
    code: &Code,
    scale: f64,
    vented: Length,
) -> Ventilation {
    let asked = &code.ventilation;
    let plan = measured.roof.plan_area() * scale;
    let required = plan * 144.0 / asked.ratio;
    let upper = required * asked.upper_percent / 100.0;
    let ridge_vent = vented.in_feet() * rates.ridge_vent.nfa_sqin_per_ft;
    let mut because: Vec<Cause> = measured.order.iter().copied().map(Cause::Face).collect();
    because.extend(
        measured
            .edges(EdgeKind::Ridge)
            .map(|(index, _)| Cause::Edge(index)),
    );
    because.extend(Cause::rates(&[
        "ridge_vent.use",
        "ridge_vent.set_back_ft",
        "ridge_vent.nfa_sqin_per_ft",
    ]));
    because.extend(Cause::codes(&[
        "ventilation.ratio",
        "ventilation.upper_percent",
    ]));
    Ventilation {
        plan_area: Area::square_feet(plan),
        ratio: asked.ratio,
        required_sqin: required,
        upper_sqin: upper,
        lower_sqin: required - upper,
        ridge_vent_sqin: ridge_vent,
        upper_short_sqin: (upper - ridge_vent).max(0.0),
        because,
    }
}

/// Squares by the three ways of billing.
pub(super) fn billing(
    measured: &Measured<'_>,
    order: &[OrderLine],
    rates: &Rates,
    scale: f64,
) -> Billing {
    let net = measured.net_area() * scale;
    let length = |kind| measured.length_of(kind) * scale.sqrt();
    let strips = (length(EdgeKind::Hip) + length(EdgeKind::Ridge)) * BILLED_WIDTH;
    let course = length(EdgeKind::Eave) * rates.field.exposure_in / 12.0;
    let packs = order
        .iter()
        .find(|line| line.item == OrderItem::Field)
        .map_or(0, |line| line.packs);
    let mut because: Vec<Cause> = measured.laid.iter().map(|it| Cause::Face(it.0)).collect();
    let edges = measured.roof.edges.iter().enumerate();
    because.extend(
        edges
            .filter(|(_, edge)| {
                matches!(edge.kind, EdgeKind::Hip | EdgeKind::Ridge | EdgeKind::Eave)
            })
            .map(|(index, _)| Cause::Edge(index)),
    );
    because.extend(Cause::rates(&[
        "field.piece_in",
        "field.exposure_in",
        "field.per_pack",
    ]));
    Billing {
        net_squares: net / 100.0,
        accessory_squares: (net + strips + course) / 100.0,
        ordered_squares: packs as f64 * rates.field.per_pack * piece_area(rates) / 100.0,
        because,
    }
}

/// What one piece covers at its exposure, sq ft.
pub(super) fn piece_area(rates: &Rates) -> f64 {
    rates.field.piece_in * rates.field.exposure_in / 144.0
}
