//! Money and per cents as the files write them: text, never a binary fraction.

use crate::units::{Money, quotable};
use rust_decimal::Decimal;
use serde::de::{self, Deserialize, Deserializer, Visitor};
use serde::ser::{Serialize, Serializer};
use std::fmt;

/// A price as text, or blank.
#[derive(Clone, Copy)]
struct Price(Option<Money>);

struct PriceText;

impl Visitor<'_> for PriceText {
    type Value = Price;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("money as text, such as \"34.50\"")
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Price, E> {
        if text.trim().is_empty() {
            return Ok(Price(None));
        }
        Money::read(text)
            .map(|money| Price(Some(money)))
            .map_err(E::custom)
    }

    fn visit_unit<E: de::Error>(self) -> Result<Price, E> {
        Ok(Price(None))
    }
}

impl<'de> Deserialize<'de> for Price {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Price, D::Error> {
        from.deserialize_any(PriceText)
    }
}

impl Serialize for Price {
    fn serialize<S: Serializer>(&self, into: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(into)
    }
}

pub(super) mod price {
    use super::{Deserialize, Deserializer, Money, Price, Serialize, Serializer};

    pub fn serialize<S: Serializer>(price: &Option<Money>, into: S) -> Result<S::Ok, S::Error> {
        Price(*price).serialize(into)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Money>, D::Error> {
        Price::deserialize(from).map(|price| price.0)
    }
}

/// Prices by a free key.
pub(super) mod prices {
    use super::{Deserialize, Deserializer, Money, Price, Serializer};
    use std::collections::BTreeMap;

    pub fn serialize<S: Serializer>(
        prices: &BTreeMap<String, Option<Money>>,
        into: S,
    ) -> Result<S::Ok, S::Error> {
        into.collect_map(prices)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<BTreeMap<String, Option<Money>>, D::Error> {
        let prices = BTreeMap::<String, Price>::deserialize(from)?;
        Ok(prices.into_iter().map(|(key, it)| (key, it.0)).collect())
    }
}

/// Names with amounts, `[["permit", "150.00"]]`.
pub(super) mod fixed {
    use super::{Deserialize, Deserializer, Money, Price, Serialize, Serializer};

    pub fn serialize<S: Serializer>(
        fixed: &[(String, Option<Money>)],
        into: S,
    ) -> Result<S::Ok, S::Error> {
        fixed.serialize(into)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Vec<(String, Option<Money>)>, D::Error> {
        let fixed = Vec::<(String, Price)>::deserialize(from)?;
        Ok(fixed.into_iter().map(|(name, it)| (name, it.0)).collect())
    }
}

struct PercentText;

impl Visitor<'_> for PercentText {
    type Value = Decimal;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("per cent as text, such as \"6.25\"")
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Decimal, E> {
        Money::read(text).map(Money::as_decimal).map_err(|_| {
            E::custom(format!(
                "\"{}\" is no number of per cent: write digits with a point, such as 6.25",
                quotable(text)
            ))
        })
    }
}

/// Per cents as text.
pub(super) mod percent {
    use super::{Decimal, Deserializer, PercentText, Serializer};

    pub fn serialize<S: Serializer>(percent: &Decimal, into: S) -> Result<S::Ok, S::Error> {
        into.collect_str(percent)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Decimal, D::Error> {
        from.deserialize_str(PercentText)
    }
}
