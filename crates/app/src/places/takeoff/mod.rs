//! The takeoff: order list, work and price, each line with what made it.

pub mod because;
pub mod handle;
pub mod lacks;
pub mod order;
pub mod reply;
pub mod request;
pub mod steps;
pub mod view;
pub mod work;
