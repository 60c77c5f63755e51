//! The Leave-site check: what is open, what is unproved, what to read again first, what to be
//! careful of.

mod cautions;
mod hearsay;
mod missing;
mod proof;
mod read_first;
mod slope_standing;
mod standing;

pub use cautions::{Caution, Slope, Where, cautions};
pub use hearsay::{Compared, Reason, compare};
pub use missing::{MissingReading, Unread, missing_readings};
pub use proof::{Proof, proofs};
pub use read_first::{ReadFirst, Why, read_first};
pub use slope_standing::{degrees, positions};
pub use standing::{Standing, State, spanned};
