//! Sums, tax, profit and total.

use super::lines::{hundredths, lines};
use super::priced::{NotPriced, Part, Price, PriceLine, Unknown};
use crate::settings::{BillingBy, ProfitMethod, Rates};
use crate::takeoff::{Cause, Range, Ranged, Takeoff};
use crate::units::Money;
use rust_decimal::Decimal;

/// The price of a takeoff. A line whose price is blank is kept, left out of every sum and named in
/// `not_priced`.
#[must_use]
pub fn price(takeoff: &Takeoff, rates: &Rates) -> Price {
    let lines = lines(takeoff, rates);
    let sums = Sums::new(&lines, takeoff, rates);
    let ends = |range: &Range| [&range.low, &range.high].map(|end| total(end, rates));
    let area = takeoff.ranges.iter().find(|range| range.of == Ranged::Area);
    let [low, high] = area.map_or([sums.total; 2], ends);
    let unknowns = takeoff
        .ranges
        .iter()
        .filter(|range| range.of != Ranged::Area);
    let unknowns = unknowns.map(|range| {
        let [low, high] = ends(range);
        Unknown {
            of: range.of,
            low,
            high,
        }
    });
    Price {
        materials: sums.materials,
        labor: sums.labor,
        disposal: sums.disposal,
        allowances: sums.allowances,
        fixed: sums.fixed,
        tax: sums.tax,
        cost: sums.cost,
        profit: sums.total - sums.cost,
        total: sums.total,
        low,
        high,
        not_priced: not_priced(&lines, takeoff, rates),
        unknowns: unknowns.collect(),
        because: because(&lines, rates),
        lines,
    }
}

/// The total alone.
fn total(takeoff: &Takeoff, rates: &Rates) -> Money {
    Sums::new(&lines(takeoff, rates), takeoff, rates).total
}

struct Sums {
    materials: Money,
    labor: Money,
    disposal: Money,
    allowances: Money,
    fixed: Money,
    tax: Money,
    cost: Money,
    total: Money,
}

impl Sums {
    fn new(lines: &[PriceLine], takeoff: &Takeoff, rates: &Rates) -> Sums {
        let sum = |part: Part| -> Money {
            let of_part = lines.iter().filter(|line| line.part == part);
            of_part.filter_map(|line| line.amount).sum()
        };
        let [materials, labor, disposal, allowances, fixed] = [
            Part::Materials,
            Part::Labor,
            Part::Disposal,
            Part::Allowances,
            Part::Fixed,
        ]
        .map(sum);
        let price = &rates.price;
        let tax = (materials * (price.tax_percent / Decimal::ONE_HUNDRED)).to_cent();
        let cost = materials + labor + disposal + allowances + fixed + tax;
        let squares = match price.billing {
            BillingBy::NetArea => Some(takeoff.billing.net),
            BillingBy::NetAndAccessories => Some(takeoff.billing.net_and_accessories),
            BillingBy::OrderedPacks => None,
        };
        let total = match squares {
            None => with_profit(cost, price.method, price.profit_percent),
            Some(squares) => {
                let square = price.square_price.unwrap_or(Money::ZERO);
                (square * hundredths(squares.in_squares())).to_cent() + allowances + fixed
            }
        };
        Sums {
            materials,
            labor,
            disposal,
            allowances,
            fixed,
            tax,
            cost,
            total,
        }
    }
}

/// A cost with its profit: a margin is a share of the price, a markup one of the cost.
fn with_profit(cost: Money, method: ProfitMethod, percent: Decimal) -> Money {
    let share = percent / Decimal::ONE_HUNDRED;
    let total = match method {
        ProfitMethod::Margin => Money::new(cost.as_decimal() / (Decimal::ONE - share)),
        ProfitMethod::Markup => cost * (Decimal::ONE + share),
    };
    total.to_cent()
}

fn not_priced(lines: &[PriceLine], takeoff: &Takeoff, rates: &Rates) -> Vec<NotPriced> {
    let blank = lines.iter().enumerate();
    let blank = blank.filter(|(_, line)| line.amount.is_none());
    let mut all: Vec<NotPriced> = blank
        .map(|(index, line)| NotPriced::Line {
            line: index,
            item: line.item.clone(),
        })
        .collect();
    if rates.price.billing != BillingBy::OrderedPacks && rates.price.square_price.is_none() {
        all.push(NotPriced::Square);
    }
    all.extend(takeoff.not_shingled.iter().map(|face| NotPriced::TooFlat {
        body: face.body.clone(),
        leg: face.leg,
        area: face.area,
    }));
    // Less than half a square inch is a rounding.
    let short = takeoff.ventilation.upper_short;
    if short.value() >= 0.5 {
        all.push(NotPriced::VentShort { area: short });
    }
    all.extend(takeoff.unlisted.iter().cloned().map(NotPriced::Unlisted));
    all
}

fn because(lines: &[PriceLine], rates: &Rates) -> Vec<Cause> {
    let mut because: Vec<Cause> = (0..lines.len()).map(Cause::PriceLine).collect();
    because.extend(Cause::rates(match rates.price.billing {
        BillingBy::OrderedPacks => &[
            "price.billing",
            "price.tax_percent",
            "price.method",
            "price.profit_percent",
        ],
        BillingBy::NetArea | BillingBy::NetAndAccessories => {
            &["price.billing", "price.square_price"]
        }
    }));
    because
}
