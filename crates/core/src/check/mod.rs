//! The Leave-site check: what is open, what is unproved, what to read again first, what to be
//! careful of.

pub mod at_house;
mod cautions;
mod hearsay;
mod proof;
mod read_first;
mod slope_standing;
mod standing;
mod would_help;

pub use cautions::{Caution, Slope, Where, cautions};
pub use hearsay::{Compared, Reason, compare};
pub use proof::{Proof, proofs};
pub use read_first::{ReadAgain, ReadFirst, Why, read_first};
pub use slope_standing::{degrees, positions};
pub use standing::{Standing, State, spanned};
pub use would_help::{Unread, WouldHelp, would_help};
