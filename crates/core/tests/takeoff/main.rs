//! Takeoffs and prices: laws, another way of counting, hostile figures, what made a figure.

mod because;
mod by_hand;
mod hostile;
mod laws;
mod said;
mod shapes;
