//! Every computation of the trade, and nothing else: no I/O, no clock, no randomness.
//!
//! Lengths are feet, areas square feet, slopes a rise in 12 of run, unless a name says otherwise.
//! Plan coordinates turn left positive (counter-clockwise).

pub mod book;
pub mod check;
pub mod drawing;
pub mod job;
pub mod naming;
pub mod outline;
pub mod path;
pub mod photo;
pub mod pitch;
pub mod price;
pub mod result;
pub mod roof;
pub mod settings;
pub mod settled;
pub mod sight;
pub mod solve;
pub mod survey;
pub mod survey_file;
pub mod takeoff;
pub mod uncertainty;
pub mod units;
