//! oracles
mod roof;
