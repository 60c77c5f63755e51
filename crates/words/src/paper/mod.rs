//! Sentences of more than one paper.

mod en;
mod es;
mod message;

pub use message::{PaperMessage, PlanEdge};
