//! The price of a result: money and quantities are decimal text.

use super::caution::CautionResult;
use crate::price::{NotPriced, Part, Price, PriceItem, PriceLine, PriceUnit, Unknown};
use crate::units::Money;
use serde::Serialize;

#[derive(Clone, Debug, Serialize)]
pub(super) struct PriceResult<'a> {
    lines: Vec<LineResult<'a>>,
    materials: String,
    #[serde(rename = "labour")]
    labor: String,
    disposal: String,
    allowances: String,
    fixed: String,
    tax: String,
    cost: String,
    profit: String,
    total: String,
    low: String,
    high: String,
    not_priced: Vec<CautionResult>,
    unknowns: Vec<UnknownResult>,
}

#[derive(Clone, Debug, Serialize)]
struct LineResult<'a> {
    part: Part,
    item: &'a PriceItem,
    quantity: String,
    unit: PriceUnit,
    unit_price: Option<String>,
    amount: Option<String>,
}

#[derive(Clone, Debug, Serialize)]
struct UnknownResult {
    name: &'static str,
    low: String,
    high: String,
    words: &'static str,
}

impl<'a> PriceResult<'a> {
    pub fn new(price: &'a Price) -> PriceResult<'a> {
        PriceResult {
            lines: price.lines.iter().map(line).collect(),
            materials: cents(price.materials),
            labor: cents(price.labor),
            disposal: cents(price.disposal),
            allowances: cents(price.allowances),
            fixed: cents(price.fixed),
            tax: cents(price.tax),
            cost: cents(price.cost),
            profit: cents(price.profit),
            total: cents(price.total),
            low: cents(price.low),
            high: cents(price.high),
            not_priced: price.not_priced.iter().map(not_priced).collect(),
            unknowns: price.unknowns.iter().map(unknown).collect(),
        }
    }
}

fn line(line: &PriceLine) -> LineResult<'_> {
    LineResult {
        part: line.part,
        item: &line.item,
        quantity: line.quantity.to_string(),
        unit: line.unit,
        unit_price: line.unit_price.map(|price| price.as_decimal().to_string()),
        amount: line.amount.map(cents),
    }
}

fn not_priced(lack: &NotPriced) -> CautionResult {
    CautionResult {
        code: lack.code(),
        words: lack.to_string(),
    }
}

fn unknown(unknown: &Unknown) -> UnknownResult {
    UnknownResult {
        name: unknown.name(),
        low: cents(unknown.low),
        high: cents(unknown.high),
        words: unknown.words(),
    }
}

/// Decimal text with two decimals.
pub(super) fn cents(money: Money) -> String {
    format!("{:.2}", money.to_cent().as_decimal())
}
