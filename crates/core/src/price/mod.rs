//! From quantities and rates to lines, sums and a price; decimal, never a binary fraction.

mod lines;
mod priced;
mod total;

pub use priced::{NotPriced, Part, Price, PriceItem, PriceLine, PriceUnit, Unknown};
pub use total::price;
