//! oracles
mod houses;
mod outline;
mod roof;
mod takeoff;
