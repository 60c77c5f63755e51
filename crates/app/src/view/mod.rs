//! A job as it stands to figures and words: worked out and rounded here, drawn by the screens.

pub mod captured;
pub mod cautions;
pub mod changes;
pub mod check;
pub mod clips;
pub mod closure;
pub mod copies;
pub mod faces;
pub mod here;
pub mod items;
pub mod job;
pub mod job_file;
pub mod left;
pub mod names;
pub mod pad;
pub mod plan;
pub mod roof;
pub mod seen;
pub mod seen_over;
pub mod solid;
pub mod takeoff;
pub mod things;
pub mod today;
pub mod totals;
pub mod visit;
pub mod walk;
