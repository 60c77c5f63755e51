//! What the Leave-site check is asked.

use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of the Leave-site check.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum CheckRequest {
    /// The card of the Leave-site check from which somebody goes to mend something. Reply: `Job`.
    HoldPlace {
        /// Which job.
        job: Uuid,
        /// The card; none: one came back.
        at: Option<String>,
    },
}
