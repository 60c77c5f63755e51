//! Copies on other machines: joining a hub, and files carried by hand.

pub mod backup;
pub mod handle;
pub mod import;
pub mod pairing;
pub mod reply;
pub mod request;
pub mod square;
pub mod view;
