//! From quantities and rates to lines, sums and a price; decimal, never a binary fraction.

mod priced;

pub use priced::{NotPriced, Part, Price, PriceItem, PriceLine, PriceUnit, Unknown};
