//! `eavebook-survey/1`: a survey as JSON text, written by hand or by another program.
//!
//! The text is read once from front to back and judged as it comes, so that a file of any size is
//! answered soon and in little memory. A key that is unknown or given twice is refused by name.
//! What can be decided from the file alone is refused here; what needs the corners adjusted or the
//! roof raised is left to those who do it.
//!
//! `REFERENCE.md` beside this file says every key, with a file that works for each.

mod bodies;
mod edges;
mod extras;
mod json;
mod known_outline;
mod measures;
mod read;
mod readings;
mod refusal;
mod seen;
mod slopes;
mod terms;
mod write;

pub use crate::path::Path;
pub use read::{FORMAT, SurveyFile, read};
pub use refusal::{
    BodyFault, EdgeFault, ExtraFault, Fault, MeasureFault, OutlineFault, ReadingFault, Refusal,
    SeenFault, ShapeFault, SlopeFault, SyntaxFault, TermsFault,
};
pub use write::write;
