//! Roofs: closed forms, laws, outlines by the thousand, and how unsure the areas are.

mod bodies;
mod closed_forms;
mod laws;
mod outlines;
mod refusals;
mod thin;
mod unions;
mod unsure;
