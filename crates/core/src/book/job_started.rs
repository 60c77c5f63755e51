//! Body of the entry that starts a job.

use serde::{Deserialize, Serialize};

/// Body of `job_started`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct JobStarted {
    /// Street address as entered.
    pub address: String,
    /// The job is the practice house, which can be deleted.
    #[serde(default)]
    pub pretend: bool,
}
