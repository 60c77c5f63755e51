//! Rates of the firm in words, with what was changed of them for a job.

use crate::names;
use crate::places::takeoff::reply::RateView;
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::on_roof;
use eavebook_core::settings::{Chosen, Rates, choose_rates};
use serde_json::Value;
use std::sync::LazyLock;

/// The firm's own rates are not kept yet: the invented ones stand for them.
static FIRM: LazyLock<Chosen<Rates>> = LazyLock::new(|| choose_rates(None, []));

/// Kinds of covering that the firm's rates weigh.
pub fn coverings() -> impl Iterator<Item = &'static str> {
    FIRM.get().tear_off.covering_psf.keys().map(String::as_str)
}

/// The firm's rates and those of one job.
pub struct JobRates<'a> {
    book: &'a FieldBook,
    firm: Value,
    now: Value,
    /// The rates by which this job is priced.
    pub rates: Chosen<Rates>,
}

impl<'a> JobRates<'a> {
    /// The rates of a job: the firm's, with each key as it was last said. What this version refuses
    /// is left as the firm has it.
    #[must_use]
    pub fn new(book: &'a FieldBook) -> JobRates<'a> {
        let rates = choose_rates(Some(FIRM.clone()), on_roof::rates(book));
        JobRates {
            book,
            firm: FIRM.get().to_value(),
            now: rates.get().to_value(),
            rates,
        }
    }

    /// One rate.
    #[must_use]
    pub fn view(&self, key: &str) -> RateView {
        let value = at(&self.now, key).unwrap_or_default();
        let firm = at(&self.firm, key);
        let noted = self.book.rates.iter().rev();
        let mut set = noted.filter(|set| set.struck.is_none() && set.what.key == key);
        RateView {
            key: key.to_owned(),
            name: name(key),
            was: firm.filter(|firm| *firm != value),
            value,
            entry: set.next().map(|set| set.entry),
            choices: choices(key).iter().map(|&word| word.to_owned()).collect(),
        }
    }

    /// Rates changed for this job, by their keys.
    #[must_use]
    pub fn changed(&self) -> Vec<RateView> {
        let mut keys: Vec<&str> = on_roof::rates(self.book).map(|(key, _)| key).collect();
        keys.sort_unstable();
        keys.dedup();
        keys.into_iter().map(|key| self.view(key)).collect()
    }

    /// Whether any price is still the invented one that came with the program.
    #[must_use]
    pub fn any_invented(&self) -> bool {
        prices(&self.firm, "")
            .iter()
            .any(|key| at(&self.now, key) == at(&self.firm, key))
    }
}

/// Paths of all amounts of money.
fn prices(tables: &Value, above: &str) -> Vec<String> {
    let Value::Object(rows) = tables else {
        return Vec::new();
    };
    let mut keys = Vec::new();
    for (key, value) in rows {
        let path = if above.is_empty() {
            key.clone()
        } else {
            format!("{above}.{key}")
        };
        let is_price = path.starts_with("boots.")
            || key.ends_with("price")
            || matches!(key.as_str(), "trip" | "tip_per_ton");
        if value.is_object() {
            keys.extend(prices(value, &path));
        } else if is_price {
            keys.push(path);
        }
    }
    keys
}

/// A rate as a person writes it, by the path of its key; none where there is no such key. A size of
/// boot has a point of its own: the whole rest is a key where no table is.
fn at(tables: &Value, key: &str) -> Option<String> {
    let mut here = tables;
    let mut rest = key;
    loop {
        let below = rest
            .split_once('.')
            .and_then(|(first, more)| Some((here.get(first).filter(|row| row.is_object())?, more)));
        match below {
            Some((row, more)) => (here, rest) = (row, more),
            None => break,
        }
    }
    Some(match here.get(rest).or_else(|| here.get("other"))? {
        Value::String(text) => text.clone(),
        Value::Null => String::new(),
        Value::Number(number) => number
            .as_f64()
            .map_or_else(|| number.to_string(), |number| number.to_string()),
        value @ (Value::Bool(_) | Value::Array(_) | Value::Object(_)) => value.to_string(),
    })
}

/// `field.exposure_in` as "Field, exposure in inches".
fn name(key: &str) -> String {
    const UNITS: [(&str, &str); 9] = [
        ("_sqin_per_ft", ", sq in a foot"),
        ("_lb_per_cuyd", ", lb a cubic yard"),
        ("_percent", ", per cent"),
        ("_sqft", ", sq ft"),
        ("_psf", ", lb a sq ft"),
        ("_cuyd", ", cubic yards"),
        ("_in", ", inches"),
        ("_ft", ", feet"),
        ("_lb", ", pounds"),
    ];
    let (table, row) = key.split_once('.').unwrap_or(("", key));
    let unit = UNITS.iter().find(|(ending, _)| row.ends_with(ending));
    let (row, unit) = match unit {
        Some((ending, unit)) => (row.strip_suffix(ending).unwrap_or(row), *unit),
        None => (row, ""),
    };
    let words = format!("{table}: {row}{unit}").replace('_', " ");
    names::capital(words.trim_start_matches(": "))
}

/// The words that a rate may be, where it is one of a few.
fn choices(key: &str) -> &'static [&'static str] {
    match key {
        "field.anchor" => &["left", "right"],
        "field.pool" => &["none", "face", "roof"],
        "valley.kind" => &["open metal", "closed"],
        "price.method" => &["margin", "markup"],
        "price.billing" => &["net area", "net and accessories", "ordered packs"],
        "starter.rakes" | "ridge_vent.use" | "ice_barrier.valleys" | "tear_off.remove_deck" => {
            &["true", "false"]
        }
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rate_is_read_by_the_path_of_its_key() {
        let rates = Rates::demo().to_value();
        assert_eq!(at(&rates, "field.price").as_deref(), Some("34.50"));
        assert_eq!(at(&rates, "boots.pipe.1.5").as_deref(), Some("8.50"));
        assert_eq!(at(&rates, "boots.pipe.2.5").as_deref(), Some("20.00"));
        assert_eq!(at(&rates, "field.exposure_in").as_deref(), Some("5"));
        assert_eq!(at(&rates, "no.such"), None);
    }

    #[test]
    fn a_rate_is_named_in_words_with_its_unit() {
        assert_eq!(name("field.exposure_in"), "Field: exposure, inches");
        assert_eq!(name("price.tip_per_ton"), "Price: tip per ton");
        assert_eq!(name("boots.pipe.1.5"), "Boots: pipe.1.5");
        assert_eq!(
            name("ridge_vent.nfa_sqin_per_ft"),
            "Ridge vent: nfa, sq in a foot"
        );
    }

    #[test]
    fn every_word_that_is_offered_is_taken() {
        let rates = Rates::demo();
        for key in [
            "field.pool",
            "field.anchor",
            "valley.kind",
            "price.method",
            "price.billing",
        ] {
            for word in choices(key) {
                assert!(rates.with(key, word).is_ok(), "{key} {word}");
            }
        }
    }

    #[test]
    fn prices_are_found_wherever_they_stand() {
        let keys = prices(&Rates::demo().to_value(), "");
        for key in [
            "field.price",
            "boots.flue.other",
            "price.trip",
            "deck.labour_price",
        ] {
            assert!(keys.iter().any(|there| there == key), "{key}");
        }
    }
}
