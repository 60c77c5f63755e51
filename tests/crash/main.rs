//! crash
