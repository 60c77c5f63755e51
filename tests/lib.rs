//! Shared ground of the tests across crates.
