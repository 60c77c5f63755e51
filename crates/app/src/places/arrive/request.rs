//! What Arrive is asked.

use eavebook_core::book::kinds::VisitNote;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of Arrive.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum ArriveRequest {
    /// Something said or seen on a visit that no tape reads. Reply: `Job`.
    Visit {
        /// Which job.
        job: Uuid,
        /// What.
        note: VisitNote,
    },
}
