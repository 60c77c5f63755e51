//! The one boundary: requests in, replies out; used by the shell and by localhost.

pub mod reply;
pub mod request;
pub mod typescript;
