//! What turned up once the old roof was off, and what was agreed about it.

use super::thing::Thing;
use crate::units::Money;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Body of `change`: sheets of the deck under one face that must be replaced.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChangeFound {
    /// Its number in the job, from 1.
    pub number: u32,
    /// The leg from which its face rises, from 1.
    pub leg: u32,
    /// How many sheets.
    pub sheets: u32,
    /// What a sheet costs, laid, as a decimal: the price to which consent was given. None: it was
    /// not priced.
    #[serde(default)]
    pub each: Option<String>,
    /// Somebody who may say yes agreed to it.
    pub consent: bool,
    /// Who, where it was said who may say yes.
    #[serde(default)]
    pub by: Option<String>,
}

impl ChangeFound {
    /// What it is, as a thing.
    #[must_use]
    pub fn thing(&self) -> Thing {
        Thing::Change {
            number: self.number,
        }
    }

    /// What all of it costs, laid; none where it was not priced.
    #[must_use]
    pub fn amount(&self) -> Option<Money> {
        Some(self.a_sheet()? * Decimal::from(self.sheets))
    }

    /// What a sheet costs, laid.
    #[must_use]
    pub fn a_sheet(&self) -> Option<Money> {
        Money::read(self.each.as_deref()?).ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_agreed_costs_the_price_of_then_times_the_sheets() {
        let found = ChangeFound {
            number: 1,
            leg: 3,
            sheets: 3,
            each: Some("58.00".to_owned()),
            consent: true,
            by: None,
        };
        assert_eq!(found.amount().map(Money::words).as_deref(), Some("$174.00"));
        let unpriced = ChangeFound {
            each: None,
            ..found
        };
        assert_eq!(unpriced.amount(), None);
    }
}
