//! Settings of this device.

pub mod handle;
pub mod kept;
pub mod reply;
pub mod request;
