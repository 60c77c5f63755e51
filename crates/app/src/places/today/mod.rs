//! Today: the list of jobs, search, a new job.

pub mod handle;
pub mod reply;
pub mod request;
pub mod view;
