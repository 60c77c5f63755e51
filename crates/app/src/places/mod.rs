//! The places of the page, a folder each: what is asked, what is answered and how it is worked out.

pub mod arrive;
pub mod check;
pub mod field_book;
pub mod job_file;
pub mod plan;
pub mod takeoff;
pub mod today;
pub mod walk_round;
