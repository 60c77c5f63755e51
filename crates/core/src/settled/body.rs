//! One body after the adjustment.

use crate::outline::Outline;
use crate::pitch::SettledRise;

/// One body after the adjustment, its pitches settled.
#[derive(Clone, Debug)]
pub struct SolvedBody {
    /// Corners in place, legs, suspects, closure.
    pub outline: Outline,
    /// What rises at each leg.
    pub rises: Vec<SettledRise>,
}
