//! Scope of work, price and what the price leaves out.

mod en;
mod es;
mod message;

pub use message::{BootCount, ProposalMessage};
