//! Takeoffs and prices: laws, another way of counting, hostile figures, what made a figure.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod because;
mod by_hand;
mod hostile;
mod laws;
mod said;
mod shapes;
