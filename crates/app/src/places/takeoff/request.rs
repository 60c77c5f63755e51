//! What the takeoff is asked.

use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of the takeoff.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum TakeoffRequest {
    /// The takeoff and the price of one job. Reply: `Takeoff`.
    Takeoff {
        /// Which job.
        job: Uuid,
    },
    /// Change one rate of the firm for this job alone. Reply: `Job`.
    SetRate {
        /// Which job.
        job: Uuid,
        /// The path of its key: `field.price`.
        key: String,
        /// Its value as typed; empty: blank, so that what it prices is not priced.
        value: String,
    },
}
