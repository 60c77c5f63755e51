use super::words::group;
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, Mul, Sub};

/// An amount of money, exact to the last decimal; written as text, never as a binary fraction.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Money {
    amount: Decimal,
}

/// Why a text is no amount of money.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("\"{text}\" is no amount of money: write digits with a point, such as 1234.50")]
pub struct MoneyRefusal {
    text: String,
}

impl Money {
    /// Nothing.
    pub const ZERO: Money = Money {
        amount: Decimal::ZERO,
    };

    /// From a decimal.
    #[must_use]
    pub const fn new(amount: Decimal) -> Money {
        Money { amount }
    }

    /// From text: digits, at most one point with digits on both sides, `-` before it or not.
    ///
    /// # Errors
    /// Any other sign, and more digits than a decimal of 28 places holds.
    pub fn read(text: &str) -> Result<Money, MoneyRefusal> {
        let digits = text.strip_prefix('-').unwrap_or(text);
        let plain = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
        let amount = match digits.split_once('.') {
            Some((whole, cents)) if plain(whole) && plain(cents) => {
                Decimal::from_str_exact(text).ok()
            }
            None if plain(digits) => Decimal::from_str_exact(text).ok(),
            Some(_) | None => None,
        };
        amount.map(Money::new).ok_or_else(|| MoneyRefusal {
            text: super::quotable(text),
        })
    }

    /// As a decimal.
    #[must_use]
    pub const fn as_decimal(self) -> Decimal {
        self.amount
    }

    /// To the cent, half a cent up (away from zero).
    #[must_use]
    pub fn to_cent(self) -> Money {
        Money::new(
            self.amount
                .round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero),
        )
    }

    /// In words, to the cent: `$1,234.50`.
    #[must_use]
    pub fn words(self) -> String {
        let cents = self.to_cent().amount;
        let text = format!("{:.2}", cents.abs());
        let (whole, part) = text.split_once('.').unwrap_or((&text, "00"));
        let sign = if cents < Decimal::ZERO { "-" } else { "" };
        format!("{sign}${}.{part}", group(whole))
    }

    /// In words, to the dollar, half a dollar up (away from zero): `$1,235`.
    #[must_use]
    pub fn words_to_dollar(self) -> String {
        let dollars = self
            .amount
            .round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
        let sign = if dollars < Decimal::ZERO { "-" } else { "" };
        format!("{sign}${}", group(&format!("{:.0}", dollars.abs())))
    }
}

impl Add for Money {
    type Output = Money;
    fn add(self, other: Money) -> Money {
        Money::new(self.amount + other.amount)
    }
}

impl Sub for Money {
    type Output = Money;
    fn sub(self, other: Money) -> Money {
        Money::new(self.amount - other.amount)
    }
}

impl Mul<Decimal> for Money {
    type Output = Money;
    fn mul(self, quantity: Decimal) -> Money {
        Money::new(self.amount * quantity)
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Money>>(amounts: I) -> Money {
        amounts.fold(Money::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn money(text: &str) -> Money {
        Money::read(text).unwrap()
    }

    #[test]
    fn a_tenth_added_ten_times_is_one_dollar() {
        let sum: Money = std::iter::repeat_n(money("0.10"), 10).sum();
        assert_eq!(sum, money("1"));
    }

    #[test]
    fn half_a_cent_goes_up() {
        assert_eq!((money("0.335") * Decimal::ONE).to_cent(), money("0.34"));
        assert_eq!(money("1.005").to_cent(), money("1.01"));
        assert_eq!(
            (money("0") - money("1.005")).to_cent(),
            money("0") - money("1.01")
        );
    }

    #[test]
    fn an_amount_is_said_with_thousands_grouped_and_two_cents() {
        assert_eq!(money("12345.5").words(), "$12,345.50");
        assert_eq!(money("-1234.005").words(), "-$1,234.01");
        assert_eq!(money("0").words(), "$0.00");
    }

    #[test]
    fn what_is_no_amount_is_refused_by_its_text() {
        for text in [
            "",
            "1,000",
            "1e3",
            "$5",
            ".5",
            "5.",
            "+5",
            "--5",
            "1_0",
            "99999999999999999999999999999999",
        ] {
            assert_eq!(
                Money::read(text).unwrap_err().to_string(),
                format!(
                    "\"{text}\" is no amount of money: write digits with a point, such as 1234.50"
                )
            );
        }
    }

    #[test]
    fn money_travels_as_text() {
        assert_eq!(serde_json::to_string(&money("12.30")).unwrap(), "\"12.30\"");
        assert_eq!(
            serde_json::from_str::<Money>("\"12.30\"").unwrap(),
            money("12.3")
        );
    }
}
