//! Published figures of the trade, each asked of the kernel that computes it and never of a formula
//! typed here. `checks.json` holds them with their sources; a kind of `trap` is a figure that was
//! printed wrong, its right value expected.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod advice;
mod checks;
mod factors;
mod outlines;
mod packs;
mod reach;
mod roofs;

/// One test for each line: `name = "ID", what the kernel makes of its inputs;`.
macro_rules! published {
    ($($name:ident = $id:literal, $kernel:expr;)*) => {
        /// The entries that are tested here.
        pub const TOUCHED: &[&str] = &[$($id),*];
        $(#[test] fn $name() { $crate::checks::holds($id, $kernel); })*
    };
}
pub(crate) use published;
