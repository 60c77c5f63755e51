//! Hours of work, air under the roof, and squares by the three ways of billing.

use super::because::Cause;
use super::existing_roof::ExistingRoof;
use super::item::OrderItem;
use super::measured::Measured;
use super::quantities::{Billing, LaborHours, OrderLine, Ventilation};
use super::tear_off::mean_layers;
use crate::roof::EdgeKind;
use crate::settings::{Code, Rates};
use crate::units::measure::Factor;
use crate::units::{Area, Length, Measure, Pitch};

/// Width of roof that a foot of hip or ridge is billed as, feet (estimating texts).
const BILLED_WIDTH: f64 = 1.0;

/// The factor of the last row whose first number is reached; of the first row below it.
///
/// `in_unit`: turns the first column into the unit of `at`.
fn factor<T: Copy>(rows: &[(T, Measure<Factor>)], in_unit: fn(T) -> f64, at: f64) -> f64 {
    let reached = |row: &&(T, Measure<Factor>)| at >= in_unit(row.0) - 1e-6;
    let row = rows.iter().rev().find(reached).or(rows.first());
    row.map_or(1.0, |(_, factor)| factor.value())
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
            face.area.in_square_feet() * scale / 100.0
                * factor(&labor.steepness, Pitch::in_12, face.pitch.in_12())
                * factor(&labor.height, Length::in_feet, eave)
        })
        .sum();
    let deck = lying.deck.as_deref().unwrap_or("other");
    let key = if labor.strip_deck.contains_key(deck) {
        deck
    } else {
        "other"
    };
    let strip_factor = labor
        .strip_deck
        .get(key)
        .map_or(1.0, |factor| factor.value());
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
        lay_hours: Measure::new(squares * labor.lay_hours.value()),
        strip_hours: Measure::new(squares * labor.strip_hours.value() * layers * strip_factor),
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
    let plan = measured.roof.plan_area().in_square_feet() * scale;
    let required = plan * 144.0 / asked.ratio.value();
    let upper = required * asked.upper_percent.value() / 100.0;
    let ridge_vent = vented.in_feet() * rates.ridge_vent.nfa_sqin_per_ft.value();
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
        required: Measure::new(required),
        upper: Measure::new(upper),
        lower: Measure::new(required - upper),
        ridge_vent: Measure::new(ridge_vent),
        upper_short: Measure::new((upper - ridge_vent).max(0.0)),
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
    let course = length(EdgeKind::Eave) * rates.field.exposure_in.value() / 12.0;
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
        net: Area::square_feet(net),
        net_and_accessories: Area::square_feet(net + strips + course),
        ordered: Area::square_feet(packs as f64 * rates.field.per_pack.value() * piece_area(rates)),
        because,
    }
}

/// What one piece covers at its exposure, sq ft.
pub(super) fn piece_area(rates: &Rates) -> f64 {
    rates.field.piece_in.value() * rates.field.exposure_in.value() / 144.0
}
