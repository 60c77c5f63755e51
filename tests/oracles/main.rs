//! oracles
mod outline;
mod roof;
