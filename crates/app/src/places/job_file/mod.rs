//! The job file: packets, sending them, and changes found during the work.

pub mod changes;
pub mod found;
pub mod handle;
pub mod make;
pub mod packet_files;
pub mod reply;
pub mod request;
pub mod send;
pub mod view;
