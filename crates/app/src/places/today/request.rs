//! What Today is asked.

use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of Today.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum TodayRequest {
    /// The list of jobs. Reply: `Today`.
    Today,
    /// Jobs and things that hold these words. Reply: `Today`, with `found`.
    Search {
        /// What to look for.
        words: String,
    },
    /// Begin a job. Reply: `Job`.
    StartJob {
        /// Street address as said.
        address: String,
    },
    /// One job, whole. Reply: `Job`.
    Job {
        /// Which.
        job: Uuid,
    },
}
