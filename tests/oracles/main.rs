//! oracles
