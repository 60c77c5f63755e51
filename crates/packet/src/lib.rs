//! The job packet: all papers of a job in one file, made for one reader, that proves itself.
//!
//! A packet is a zip that holds one bag (BagIt 1.0, RFC 8493). [`make()`] gathers what its reader
//! is to have, sets the papers, writes the tables and the drawings, and puts the file whole under
//! its name or not at all; [`check()`] proves one. The same entries under the same freeze make the
//! same bytes: nothing here asks a clock or throws a die.
//!
//! What goes to whom stands as one table in [`edition`].

mod bag;
mod carried;
mod cautions;
mod check;
mod contents;
#[cfg(test)]
mod demo_house;
pub mod differences;
mod edition;
mod exports;
mod job;
mod lack;
#[cfg(test)]
mod laws;
mod leaf;
mod make;
mod named;
mod not_known;
mod papers;
pub mod picture;
mod plan;
mod said;
mod sheet;
mod start_here;
mod summary;
mod typeset;
mod words;
mod write;

pub use carried::{Carried, carried};
pub use check::{Proved, VerifyError, check, check_reader};
pub use contents::{FileRow, Role};
pub use edition::{Edition, Lang, PaperKind};
pub use job::{Freeze, Job, Photos};
pub use lack::Lack;
pub use make::{Made, make};
pub use plan::{Lengths, OnScreen, ScreenPlan, on_screen};
pub use summary::{PacketSummary, file_in, summarize};
pub use write::NotMade;
