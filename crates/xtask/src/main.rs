//! Set-up, tests, benchmarks.
fn main() {}
