//! The lines of a price.

use super::priced::{Part, PriceItem, PriceLine, PriceUnit};
use crate::settings::Rates;
use crate::takeoff::{Cause, OrderItem, OrderLine, Takeoff};
use crate::units::measure::Hour;
use crate::units::{Measure, Money};
use rust_decimal::{Decimal, RoundingStrategy};

/// What a line is made from, before it is multiplied.
struct Draft {
    part: Part,
    item: PriceItem,
    quantity: Decimal,
    unit: PriceUnit,
    /// Key of its price in the rates.
    key: String,
    price: Option<Money>,
    because: Vec<Cause>,
}

/// Every line: the order list, hours, disposal, fixed amounts.
pub(super) fn lines(takeoff: &Takeoff, rates: &Rates) -> Vec<PriceLine> {
    let ordered = takeoff
        .order
        .iter()
        .enumerate()
        .flat_map(|(index, line)| ordered(index, line, takeoff, rates));
    ordered
        .chain(hours(takeoff, rates))
        .chain(disposal(takeoff, rates))
        .chain(fixed(rates))
        .map(multiplied)
        .collect()
}

fn multiplied(draft: Draft) -> PriceLine {
    let mut because = draft.because;
    because.push(Cause::Rate(draft.key));
    PriceLine {
        part: draft.part,
        item: draft.item,
        quantity: draft.quantity,
        unit: draft.unit,
        unit_price: draft.price,
        amount: draft.price.map(|price| (price * draft.quantity).to_cent()),
        because,
    }
}

/// One line of goods; a sheet of deck is bought and laid.
fn ordered(index: usize, line: &OrderLine, takeoff: &Takeoff, rates: &Rates) -> Vec<Draft> {
    let draft = |part: Part, item: PriceItem, (key, price): (String, Option<Money>)| Draft {
        part,
        item,
        quantity: Decimal::from(line.packs),
        unit: PriceUnit::Bought(line.pack),
        key,
        price,
        because: vec![Cause::OrderLine(index)],
    };
    let item = PriceItem::Ordered(line.item.clone());
    if line.item != OrderItem::DeckSheet {
        return vec![draft(Part::Materials, item, price_of(&line.item, rates))];
    }
    // What nobody could see is an allowance; a deck that is laid over was seen.
    let [goods, work] = if takeoff.deck_overlay {
        [Part::Materials, Part::Labor]
    } else {
        [Part::Allowances, Part::Allowances]
    };
    let laying = ("deck.labour_price".to_owned(), rates.deck.labor_price);
    vec![
        draft(goods, item, price_of(&line.item, rates)),
        draft(work, PriceItem::DeckSheetLabor, laying),
    ]
}

/// The key and the price of what is bought.
fn price_of(item: &OrderItem, rates: &Rates) -> (String, Option<Money>) {
    let (key, price) = match item {
        OrderItem::Field => ("field.price", rates.field.price),
        OrderItem::Starter => ("starter.price", rates.starter.price),
        OrderItem::Cap => ("cap.price", rates.cap.price),
        OrderItem::RidgeVent => ("ridge_vent.price", rates.ridge_vent.price),
        OrderItem::ValleyMetal => ("valley.price", rates.valley.price),
        OrderItem::IceBarrier => ("ice_barrier.price", rates.ice_barrier.price),
        OrderItem::Underlayment => ("underlayment.price", rates.underlayment.price),
        OrderItem::EaveEdgeMetal => ("edge_metal.eave_price", rates.edge_metal.eave_price),
        OrderItem::RakeEdgeMetal => ("edge_metal.rake_price", rates.edge_metal.rake_price),
        OrderItem::StepFlashing => ("step_flashing.price", rates.step_flashing.price),
        OrderItem::ApronFlashing => ("apron_flashing.price", rates.apron_flashing.price),
        OrderItem::KickOut => ("kick_out.price", rates.kick_out.price),
        OrderItem::Nails => ("nails.price", rates.nails.price),
        OrderItem::DeckSheet => ("deck.price", rates.deck.price),
        OrderItem::Boot { kind, size } => {
            let table = rates.boots.table(*kind);
            let size = if table.contains_key(size) {
                size
            } else {
                "other"
            };
            let price = table.get(size).copied().flatten();
            return (format!("boots.{}.{size}", kind.name()), price);
        }
    };
    (key.to_owned(), price)
}

fn hours(takeoff: &Takeoff, rates: &Rates) -> [Draft; 2] {
    let labor = &takeoff.labor;
    let hours = |item: PriceItem, hours: Measure<Hour>, because: &[Cause]| Draft {
        part: Part::Labor,
        item,
        quantity: hundredths(hours.value()),
        unit: PriceUnit::Hour,
        key: "labour.hour_price".to_owned(),
        price: rates.labor.hour_price,
        because: because.to_vec(),
    };
    [
        hours(PriceItem::Lay, labor.lay_hours, &labor.lay_because),
        hours(PriceItem::Strip, labor.strip_hours, &labor.strip_because),
    ]
}

/// Tons of the mean weight, and loads.
fn disposal(takeoff: &Takeoff, rates: &Rates) -> [Draft; 2] {
    let tear_off = &takeoff.tear_off;
    let tip = Draft {
        part: Part::Disposal,
        item: PriceItem::Tip,
        quantity: hundredths(tear_off.mean.in_tons()),
        unit: PriceUnit::Ton,
        key: "price.tip_per_ton".to_owned(),
        price: rates.price.tip_per_ton,
        because: tear_off.because.clone(),
    };
    let trip = Draft {
        part: Part::Disposal,
        item: PriceItem::Trip,
        quantity: Decimal::from(tear_off.loads),
        unit: PriceUnit::Load,
        key: "price.trip".to_owned(),
        price: rates.price.trip,
        because: tear_off.because.clone(),
    };
    [tip, trip]
}

fn fixed(rates: &Rates) -> impl Iterator<Item = Draft> {
    let fixed = rates.price.fixed.iter().enumerate();
    fixed.map(|(place, (name, price))| Draft {
        part: Part::Fixed,
        item: PriceItem::Fixed(name.clone()),
        quantity: Decimal::ONE,
        unit: PriceUnit::Each,
        key: format!("price.fixed[{place}]"),
        price: *price,
        because: Vec::new(),
    })
}

/// A quantity to two decimals, half a hundredth up, from the shortest decimal that names it.
pub(super) fn hundredths(quantity: f64) -> Decimal {
    // Limits of rates and of a roof keep it far below what a decimal holds.
    let quantity: Decimal = format!("{quantity}").parse().unwrap_or_default();
    let mut rounded = quantity.round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero);
    rounded.rescale(2);
    rounded
}
