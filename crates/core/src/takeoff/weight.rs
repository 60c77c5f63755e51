//! Means and variances of what is torn off, and the quantiles of a mixture.

use crate::settings::Triangle;
use crate::units::Measure;

/// A quantity known by its mean and variance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spread {
    pub mean: f64,
    pub variance: f64,
}

impl Spread {
    pub const fn exact(mean: f64) -> Spread {
        Spread {
            mean,
            variance: 0.0,
        }
    }

    /// Of a triangular distribution: mean `(a+b+c)/3`, variance `(a2+b2+c2-ab-ac-bc)/18`.
    pub fn triangle<U>(triangle: Triangle<U>) -> Spread {
        Spread::of_corners(triangle.map(Measure::value))
    }

    /// Of the three corners of a triangular distribution.
    pub fn of_corners([a, b, c]: [f64; 3]) -> Spread {
        Spread {
            mean: (a + b + c) / 3.0,
            variance: (a * a + b * b + c * c - a * b - a * c - b * c) / 18.0,
        }
    }

    /// The sum of so many independent ones.
    pub fn times_over(self, count: f64) -> Spread {
        Spread {
            mean: count * self.mean,
            variance: count * self.variance,
        }
    }

    /// The sum of two independent ones.
    pub fn plus(self, other: Spread) -> Spread {
        Spread {
            mean: self.mean + other.mean,
            variance: self.variance + other.variance,
        }
    }

    /// One less this.
    pub fn rest_of_one(self) -> Spread {
        Spread {
            mean: 1.0 - self.mean,
            variance: self.variance,
        }
    }

    /// The product of two independent ones: variance `va vb + va mb2 + vb ma2` (Goodman 1960).
    pub fn times(self, other: Spread) -> Spread {
        Spread {
            mean: self.mean * other.mean,
            variance: self.variance * other.variance
                + self.variance * other.mean * other.mean
                + other.variance * self.mean * self.mean,
        }
    }
}

/// Lognormals, each with its chance: the weight with one layer, with two, with three.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Mixture {
    parts: Vec<(f64, Spread)>,
}

impl Mixture {
    /// Of parts with a chance and a mean above 0; the others never happen.
    pub fn new(parts: impl IntoIterator<Item = (f64, Spread)>) -> Mixture {
        Mixture {
            parts: parts
                .into_iter()
                .filter(|(chance, part)| *chance > 0.0 && part.mean > 0.0)
                .collect(),
        }
    }

    /// Its exact mean and variance.
    pub fn spread(&self) -> Spread {
        let mean: f64 = self
            .parts
            .iter()
            .map(|(chance, part)| chance * part.mean)
            .sum();
        let variance = self
            .parts
            .iter()
            .map(|(chance, part)| chance * (part.variance + (part.mean - mean).powi(2)))
            .sum();
        Spread { mean, variance }
    }

    /// What it is at most with a chance: a root of the mixture's distribution function. One
    /// lognormal of the whole mean and variance would be a fifth too low at 10 %.
    pub fn quantile(&self, chance: f64) -> f64 {
        let means = || self.parts.iter().map(|(_, part)| part.mean);
        let (mut low, mut high) = (
            means().fold(f64::INFINITY, f64::min) / 100.0,
            means().fold(0.0, f64::max) * 100.0,
        );
        if self.parts.is_empty() {
            return 0.0;
        }
        loop {
            let middle = (low * high).sqrt();
            // No number lies between any more: halved so often, within some sixty rounds.
            if middle <= low || middle >= high {
                return high;
            }
            if self.below(middle) < chance {
                low = middle;
            } else {
                high = middle;
            }
        }
    }

    /// The chance that it is at most so much.
    fn below(&self, much: f64) -> f64 {
        let part_below = |part: &Spread| {
            let variance_of_log = (part.variance / (part.mean * part.mean)).ln_1p();
            if variance_of_log < 1e-18 {
                return f64::from(u8::from(much >= part.mean));
            }
            let mean_of_log = part.mean.ln() - variance_of_log / 2.0;
            0.5 * libm::erfc((mean_of_log - much.ln()) / (2.0 * variance_of_log).sqrt())
        };
        self.parts
            .iter()
            .map(|(chance, part)| chance * part_below(part))
            .sum()
    }
}
