//! The `eavebook` program.
fn main() {}
