//! The kernels beside what other programs and other people make of the same houses.
#![allow(clippy::panic, reason = "a test fails by panicking")]

mod houses;
mod outline;
mod roof;
mod takeoff;
