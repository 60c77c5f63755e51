//! The price as steps from materials to total, each opening to its lines.

use crate::figures::counted;
use crate::names;
use crate::places::takeoff::because::Traces;
use crate::places::takeoff::order::{formula, line};
use crate::places::takeoff::reply::{TakeoffLine, TakeoffPart};
use crate::sentence::sentence;
use eavebook_core::price::{Part, Price, PriceItem, PriceLine, PriceUnit};
use eavebook_core::settings::{BillingBy, ProfitMethod};
use eavebook_core::takeoff::{Cause, Takeoff};
use eavebook_core::units::Money;
use std::fmt::Display;

/// Where a step begins and ends along the bar: each begins where the one before it ended.
struct Stair {
    at: f64,
    whole: f64,
}

impl Stair {
    fn new(total: Money) -> Stair {
        Stair {
            at: 0.0,
            whole: dollars(total).max(0.01),
        }
    }

    fn step(&mut self, amount: Money) -> [f64; 2] {
        let from = self.at;
        self.at += dollars(amount) / self.whole;
        [from, self.at].map(|share| share.clamp(0.0, 1.0))
    }
}

/// A decimal as it is drawn or counted, never as it is charged.
fn float(decimal: impl Display) -> f64 {
    decimal.to_string().parse().unwrap_or(0.0)
}

fn dollars(money: Money) -> f64 {
    float(money.as_decimal())
}

/// The price.
#[must_use]
pub fn price(traces: &Traces, takeoff: &Takeoff, price: &Price) -> TakeoffPart {
    let mut stair = Stair::new(price.total);
    let mut lines = Vec::new();
    for (part, key, name, sum, formula) in [
        (
            Part::Materials,
            "materials",
            "Materials",
            price.materials,
            "What is bought, each line to the cent.",
        ),
        (
            Part::Labor,
            "labour",
            "Labour",
            price.labor,
            "Hours at the price of an hour.",
        ),
        (
            Part::Disposal,
            "disposal",
            "Disposal",
            price.disposal,
            "Dumping by the ton and hauling by the load.",
        ),
        (
            Part::Allowances,
            "allowances",
            "Allowances",
            price.allowances,
            "For what nobody could see. What is found is settled sheet by sheet.",
        ),
    ] {
        lines.push(sum_of(
            traces,
            takeoff,
            price,
            &Sum {
                part,
                key,
                name,
                sum,
                formula,
            },
            &mut stair,
        ));
    }
    lines.push(tax(traces, price, &mut stair));
    let fixed = Sum {
        part: Part::Fixed,
        key: "fixed",
        name: "Fixed",
        sum: price.fixed,
        formula: "In every price.",
    };
    lines.push(sum_of(traces, takeoff, price, &fixed, &mut stair));
    lines.push(profit(traces, price, &mut stair));
    lines.push(total(traces, price));
    TakeoffPart {
        name: "Price".to_owned(),
        words: Some(sentence(
            "price_range",
            format!(
                "{}, {} to {} as the roof is small or large, each end one time in ten.",
                price.total.words(),
                price.low.words(),
                price.high.words()
            ),
        )),
        loads: None,
        lines,
    }
}

struct Sum {
    part: Part,
    key: &'static str,
    name: &'static str,
    sum: Money,
    formula: &'static str,
}

fn sum_of(
    traces: &Traces,
    takeoff: &Takeoff,
    price: &Price,
    sum: &Sum,
    stair: &mut Stair,
) -> TakeoffLine {
    let made = traces.made(&[]);
    let mut shown = line(
        sum.key,
        sum.name,
        sum.sum.words(),
        sum.formula.to_owned(),
        made,
    );
    shown.step = Some(stair.step(sum.sum));
    let lines = price.lines.iter().filter(|line| line.part == sum.part);
    shown.lines = lines.map(|line| one(traces, takeoff, line)).collect();
    shown
}

/// One line of a price.
fn one(traces: &Traces, takeoff: &Takeoff, priced: &PriceLine) -> TakeoffLine {
    let name = priced.item.to_string();
    let quantity = quantity(priced);
    let times = match priced.unit_price {
        Some(unit) => format!("{quantity} at {}.", unit.words()),
        None => format!("{quantity}, whose price is blank."),
    };
    let ordered = match &priced.item {
        PriceItem::Ordered(item) => takeoff.order.iter().find(|line| line.item == *item),
        PriceItem::DeckSheetLabor
        | PriceItem::Lay
        | PriceItem::Strip
        | PriceItem::Tip
        | PriceItem::Trip
        | PriceItem::Fixed(_) => None,
    };
    let how = match ordered {
        Some(line) => format!("{times} {}", formula(line, takeoff)),
        None => times,
    };
    let words = priced.amount.map_or_else(|| quantity.clone(), Money::words);
    let mut shown = line(
        &format!("{} {name}", priced.unit.name()),
        &names::capital(&name),
        words,
        how,
        traces.made(&priced.because),
    );
    shown.spare = priced.amount.map(|_| quantity);
    shown.word = priced.amount.is_none().then(|| "not priced".to_owned());
    shown
}

fn quantity(line: &PriceLine) -> String {
    let count = float(line.quantity);
    match line.unit {
        PriceUnit::Each => "once".to_owned(),
        PriceUnit::Bought(pack) => counted(count, 0, pack.name()),
        PriceUnit::Hour | PriceUnit::Ton | PriceUnit::Load => counted(count, 2, line.unit.name()),
    }
}

fn tax(traces: &Traces, price: &Price, stair: &mut Stair) -> TakeoffLine {
    let percent = traces.rates.rates.get().price.tax_percent;
    let formula = format!(
        "{} % on materials of {}. The deck allowance is not taxed.",
        percent.normalize(),
        price.materials.words()
    );
    let made = traces.made(&Cause::rates(&["price.tax_percent"]));
    let mut shown = line("tax", "Tax", price.tax.words(), formula, made);
    shown.step = Some(stair.step(price.tax));
    shown
}

fn profit(traces: &Traces, price: &Price, stair: &mut Stair) -> TakeoffLine {
    let pricing = &traces.rates.rates.get().price;
    let percent = pricing.profit_percent.normalize();
    let cost = price.cost.words();
    let (formula, keys): (String, &[&str]) = match (pricing.billing, pricing.method) {
        (BillingBy::OrderedPacks, ProfitMethod::Margin) => (
            format!("{percent} % of the price, on a cost of {cost}."),
            &["price.profit_percent", "price.method", "price.billing"],
        ),
        (BillingBy::OrderedPacks, ProfitMethod::Markup) => (
            format!("{percent} % of the cost, which is {cost}."),
            &["price.profit_percent", "price.method", "price.billing"],
        ),
        (BillingBy::NetArea | BillingBy::NetAndAccessories, _) => (
            format!("What squares at their price leave over a cost of {cost}."),
            &["price.square_price", "price.billing"],
        ),
    };
    let made = traces.made(&Cause::rates(keys));
    let mut shown = line("profit", "Profit", price.profit.words(), formula, made);
    shown.step = Some(stair.step(price.profit));
    shown
}

fn total(traces: &Traces, price: &Price) -> TakeoffLine {
    let formula = format!(
        "All steps above. With the roof as small as it is one time in ten {}, as large {}.",
        price.low.words(),
        price.high.words()
    );
    let mut shown = line(
        "total",
        "Total",
        price.total.words(),
        formula,
        traces.made(&price.because),
    );
    shown.spare = Some(format!("{} to {}", price.low.words(), price.high.words()));
    shown.step = Some([0.0, 1.0]);
    shown
}
