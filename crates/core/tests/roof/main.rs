//! Roofs: closed forms, laws, outlines by the thousand, and how unsure the areas are.

mod bodies;
mod closed_forms;
#[path = "../laws/mod.rs"]
#[allow(
    dead_code,
    unused_imports,
    reason = "the law of roofs alone is asked here"
)]
mod inputs;
mod laws;
mod outlines;
mod refusals;
mod thin;
mod unions;
mod unsure;
mod wrong_on_purpose;
