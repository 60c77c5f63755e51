use serde::{Deserialize, Serialize};

/// A weight, built and read by a named unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Weight {
    pounds: f64,
}

/// Pounds in one short ton.
const POUNDS_IN_TON: f64 = 2000.0;

impl Weight {
    /// From pounds.
    #[must_use]
    pub const fn pounds(pounds: f64) -> Weight {
        Weight { pounds }
    }

    /// In pounds.
    #[must_use]
    pub const fn in_pounds(self) -> f64 {
        self.pounds
    }

    /// In short tons of 2,000 lb.
    #[must_use]
    pub fn in_tons(self) -> f64 {
        self.pounds / POUNDS_IN_TON
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_ton_is_2000_pounds() {
        assert!((Weight::pounds(5_000.0).in_tons() - 2.5).abs() < 1e-12);
    }
}
