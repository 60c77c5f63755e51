//! What the figures of rates and of a code profile may be.

use super::Code;
use super::fault::{SettingFault, SettingLack};
use super::{ProfitMethod, Rates, Triangle};
use crate::path::Path;
use crate::units::{Measure, Money};
use rust_decimal::Decimal;
use serde_json::Value;

/// No figure of rates or of a code profile is greater.
const MOST: f64 = 1_000_000.0;
/// No amount of money is greater.
const MOST_MONEY: Decimal = Decimal::from_parts(100_000_000, 0, 0, false, 0);
/// No tax or profit is greater, per cent.
const MOST_PERCENT: Decimal = Decimal::from_parts(10_000, 0, 0, false, 0);
/// No margin is greater, per cent: what is divided by must be left.
const MOST_MARGIN: Decimal = Decimal::from_parts(9_999, 0, 0, false, 2);
/// Rows of a table in a table.
const MOST_ROWS: usize = 200;

/// Beginnings of keys whose figures all have a least and a most.
const RANGES_BELOW: &[(&str, f64, f64)] = &[
    ("rates.labour.", 0.0, 100.0),
    ("rates.tear_off.", 0.0, 1_000.0),
];

/// Ends of keys whose figures all have a least and a most.
const RANGES_OF_ALL: &[(&str, f64, f64)] = &[(".margin_percent", 0.0, 1_000.0)];

/// Keys whose figure has a least and a most of its own. Of those that must be above 0 the least is
/// the finest that could be laid or sold, so that counting ends soon.
const RANGES: &[(&str, f64, f64)] = &[
    ("rates.field.piece_in", 1.0, 12_000.0),
    ("rates.field.height_in", 0.1, 12_000.0),
    ("rates.field.exposure_in", 0.1, 12_000.0),
    ("rates.field.per_pack", 0.1, MOST),
    ("rates.field.stagger_in", 0.0, 12_000.0),
    ("rates.field.steps", 1.0, 1_000.0),
    ("rates.starter.pack_ft", 0.1, MOST),
    ("rates.cap.exposure_in", 0.1, 12_000.0),
    ("rates.cap.per_pack", 0.1, MOST),
    ("rates.ridge_vent.stick_ft", 0.1, MOST),
    ("rates.valley.roll_ft", 0.1, MOST),
    ("rates.ice_barrier.width_in", 0.1, 12_000.0),
    ("rates.ice_barrier.roll_ft", 0.1, MOST),
    ("rates.ice_barrier.overhang_in", 0.0, 12_000.0),
    ("rates.underlayment.roll_sqft", 0.1, MOST),
    ("rates.underlayment.half_lap_sqft", 0.1, MOST),
    ("rates.edge_metal.stick_ft", 0.1, MOST),
    ("rates.step_flashing.per_pack", 0.1, MOST),
    ("rates.apron_flashing.stick_ft", 0.1, MOST),
    ("rates.nails.per_lb", 0.1, MOST),
    ("rates.nails.box_lb", 0.1, MOST),
    ("rates.deck.sheet_sqft", 0.1, MOST),
    ("rates.deck.allowance_percent", 0.0, 100.0),
    ("rates.tear_off.granule_ceiling_percent", 0.0, 100.0),
    ("rates.trailer.payload_lb", 0.1, MOST),
    ("rates.trailer.volume_cuyd", 0.1, MOST),
    ("rates.trailer.density_lb_per_cuyd", 0.1, MOST),
    ("code.ventilation.ratio", 0.1, MOST),
    ("code.ventilation.upper_percent", 0.0, 100.0),
];

/// Every number and every amount within its range.
pub(super) fn figures(at: &Path, value: &Value) -> Result<(), SettingFault> {
    match value {
        Value::Object(table) => table
            .iter()
            .try_for_each(|(key, value)| figures(&at.key(key), value)),
        Value::Array(values) => values
            .iter()
            .enumerate()
            .try_for_each(|(place, value)| figures(&at.place(place), value)),
        Value::Number(number) => figure(at, number.as_f64().unwrap_or(f64::INFINITY)),
        Value::Null | Value::Bool(_) | Value::String(_) => Ok(()),
    }
}

fn figure(at: &Path, number: f64) -> Result<(), SettingFault> {
    let refuse = |lack| Err(SettingFault::new(at.clone(), lack));
    let path = at.to_string();
    let own = RANGES.iter().find(|(key, ..)| *key == path);
    let below = || {
        RANGES_BELOW
            .iter()
            .find(|(start, ..)| path.starts_with(start))
    };
    let of_all = || RANGES_OF_ALL.iter().find(|(end, ..)| path.ends_with(end));
    let range = own.or_else(below).or_else(of_all);
    let (least, most) = range.map_or((0.0, MOST), |(_, least, most)| (*least, *most));
    if number < 0.0 {
        let number = number.to_string();
        return refuse(SettingLack::BelowZero { number });
    }
    if number == 0.0 && least > 0.0 {
        return refuse(SettingLack::Zero);
    }
    if !(least..=most).contains(&number) {
        return refuse(SettingLack::Range {
            number,
            least,
            most,
        });
    }
    Ok(())
}

/// What figures of rates say of each other, money, and tables that want a row for all else.
pub(super) fn rates(rates: &Rates) -> Result<(), SettingFault> {
    amounts(rates)?;
    let field = &rates.field;
    if field.exposure_in > field.height_in {
        return refuse(
            &["field", "exposure_in"],
            SettingLack::Over {
                number: field.exposure_in.value(),
                other: "height_in",
                limit: field.height_in.value(),
            },
        );
    }
    laps(rates)?;
    weights(rates)?;
    row_count(&["labour", "steepness"], rates.labor.steepness.len())?;
    row_count(&["labour", "height"], rates.labor.height.len())?;
    has_other(&["labour", "strip_deck"], &rates.labor.strip_deck)?;
    has_other(&["boots", "pipe"], &rates.boots.pipe)?;
    has_other(&["boots", "mast"], &rates.boots.mast)?;
    has_other(&["boots", "flue"], &rates.boots.flue)?;
    if rates.price.fixed.len() > MOST_ROWS {
        let rows = rates.price.fixed.len();
        return refuse(
            &["price", "fixed"],
            SettingLack::Rows {
                rows,
                most: MOST_ROWS,
            },
        );
    }
    Ok(())
}

/// A lap shorter than what it laps.
fn laps(rates: &Rates) -> Result<(), SettingFault> {
    let ice = &rates.ice_barrier;
    let (edge, apron) = (&rates.edge_metal, &rates.apron_flashing);
    let laps = [
        (
            ["ice_barrier", "lap_in"],
            ice.lap_in,
            "width_in",
            ice.width_in.value(),
            1.0,
        ),
        (
            ["ice_barrier", "end_lap_in"],
            ice.end_lap_in,
            "roll_ft",
            ice.roll_ft.in_feet(),
            12.0,
        ),
        (
            ["edge_metal", "lap_in"],
            edge.lap_in,
            "stick_ft",
            edge.stick_ft.in_feet(),
            12.0,
        ),
        (
            ["apron_flashing", "lap_in"],
            apron.lap_in,
            "stick_ft",
            apron.stick_ft.in_feet(),
            12.0,
        ),
    ];
    for (keys, lap, other, length, inches) in laps {
        let lap = lap.value();
        // A tenth of an inch must be left, so that counting ends soon.
        if lap > length * inches - 0.1 {
            return refuse(
                &keys,
                SettingLack::NothingLeft {
                    number: lap,
                    other,
                    limit: length,
                },
            );
        }
    }
    Ok(())
}

fn weights(rates: &Rates) -> Result<(), SettingFault> {
    let tear_off = &rates.tear_off;
    let percents = [
        ("granule_loss_percent", tear_off.granule_loss_percent),
        ("wet_percent", tear_off.wet_percent),
    ];
    for (key, triangle) in percents {
        rising(&["tear_off", key], triangle)?;
    }
    let weights = [
        ("felt_psf", tear_off.felt_psf),
        ("deck_psf", tear_off.deck_psf),
    ];
    for (key, triangle) in weights {
        rising(&["tear_off", key], triangle)?;
    }
    for (kind, triangle) in &tear_off.covering_psf {
        rising(&["tear_off", "covering_psf", kind], *triangle)?;
    }
    has_other(&["tear_off", "covering_psf"], &tear_off.covering_psf)?;
    row_count(&["tear_off", "layer_chance"], tear_off.layer_chance.len())?;
    let sum: f64 = tear_off
        .layer_chance
        .iter()
        .map(|chance| chance.value())
        .sum();
    if (sum - 1.0).abs() > 1e-6 {
        return refuse(&["tear_off", "layer_chance"], SettingLack::Chances { sum });
    }
    Ok(())
}

/// No amount below nothing or past counting, no profit that leaves nothing for the cost.
fn amounts(rates: &Rates) -> Result<(), SettingFault> {
    for (keys, price) in rates.prices() {
        let keys: Vec<&str> = keys.iter().map(String::as_str).collect();
        if let Some(price) = price {
            amount(&keys, price.as_decimal(), MOST_MONEY)?;
        }
    }
    let price = &rates.price;
    amount(&["price", "tax_percent"], price.tax_percent, MOST_PERCENT)?;
    amount(
        &["price", "profit_percent"],
        price.profit_percent,
        MOST_PERCENT,
    )?;
    if price.method == ProfitMethod::Margin && price.profit_percent > MOST_MARGIN {
        let percent = price.profit_percent.to_string();
        return refuse(
            &["price", "profit_percent"],
            SettingLack::WholeMargin { percent },
        );
    }
    Ok(())
}

fn amount(keys: &[&str], amount: Decimal, most: Decimal) -> Result<(), SettingFault> {
    if amount < Decimal::ZERO {
        let number = amount.to_string();
        return refuse(keys, SettingLack::BelowZero { number });
    }
    if amount > most {
        let (amount, most) = (amount.to_string(), most.to_string());
        return refuse(keys, SettingLack::TooDear { amount, most });
    }
    Ok(())
}

fn rising<U>(keys: &[&str], triangle: Triangle<U>) -> Result<(), SettingFault> {
    let figures = triangle.map(Measure::value);
    if figures.is_sorted() {
        return Ok(());
    }
    refuse(keys, SettingLack::NotRising { figures })
}

fn row_count(keys: &[&str], rows: usize) -> Result<(), SettingFault> {
    if (1..=MOST_ROWS).contains(&rows) {
        return Ok(());
    }
    let most = MOST_ROWS;
    refuse(keys, SettingLack::Rows { rows, most })
}

fn has_other<T>(
    keys: &[&str],
    table: &std::collections::BTreeMap<String, T>,
) -> Result<(), SettingFault> {
    row_count(keys, table.len().max(1))?;
    if table.contains_key("other") {
        return Ok(());
    }
    refuse(&[keys, &["other"]].concat(), SettingLack::OtherMissing)
}

fn refuse(keys: &[&str], lack: SettingLack) -> Result<(), SettingFault> {
    let path = keys
        .iter()
        .fold(Path::default().key("rates"), |path, key| path.key(key));
    Err(SettingFault::new(path, lack))
}

/// The day of a code profile.
pub(super) fn code(code: &Code) -> Result<(), SettingFault> {
    if code.day().is_some() {
        return Ok(());
    }
    let day = crate::units::quotable(&code.date);
    let path = Path::default().key("code").key("date");
    Err(SettingFault::new(path, SettingLack::NoDay { day }))
}

impl Rates {
    /// Every price by the keys that lead to it, blank or not.
    #[must_use]
    pub fn prices(&self) -> Vec<(Vec<String>, Option<Money>)> {
        let metal = &self.edge_metal;
        let named = [
            ("field", "price", self.field.price),
            ("starter", "price", self.starter.price),
            ("cap", "price", self.cap.price),
            ("ridge_vent", "price", self.ridge_vent.price),
            ("valley", "price", self.valley.price),
            ("ice_barrier", "price", self.ice_barrier.price),
            ("underlayment", "price", self.underlayment.price),
            ("edge_metal", "eave_price", metal.eave_price),
            ("edge_metal", "rake_price", metal.rake_price),
            ("step_flashing", "price", self.step_flashing.price),
            ("apron_flashing", "price", self.apron_flashing.price),
            ("kick_out", "price", self.kick_out.price),
            ("nails", "price", self.nails.price),
            ("deck", "price", self.deck.price),
            ("deck", "labour_price", self.deck.labor_price),
            ("labour", "hour_price", self.labor.hour_price),
            ("price", "tip_per_ton", self.price.tip_per_ton),
            ("price", "trip", self.price.trip),
            ("price", "square_price", self.price.square_price),
        ];
        let mut prices: Vec<(Vec<String>, Option<Money>)> = named
            .into_iter()
            .map(|(table, key, price)| (vec![table.to_owned(), key.to_owned()], price))
            .collect();
        let boots = [
            ("pipe", &self.boots.pipe),
            ("mast", &self.boots.mast),
            ("flue", &self.boots.flue),
        ];
        for (kind, table) in boots {
            for (size, price) in table {
                prices.push((vec!["boots".into(), kind.into(), size.clone()], *price));
            }
        }
        for (place, (_, price)) in self.price.fixed.iter().enumerate() {
            prices.push((vec!["price".into(), format!("fixed[{place}]")], *price));
        }
        prices
    }
}
