//! Arrive: who is here, what they allow, what to beware of.

pub mod handle;
pub mod reply;
pub mod request;
pub mod view;
