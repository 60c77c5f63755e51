//! Parts of replies that two places or more show, and how they are worked out.

pub mod cautions;
pub mod closure;
pub mod comparison;
pub mod copies;
pub mod job_rates;
pub mod next;
pub mod noted;
pub mod photos;
pub mod reply;
pub mod roof;
pub mod solved_job;
pub mod things;
pub mod visit;
