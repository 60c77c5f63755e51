//! What is asked about copies on other machines.

use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request about copies.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum CopiesRequest {
    /// Where copies are, of one job where one is open. Reply: `Copies`.
    Copies {
        /// Which job.
        job: Option<Uuid>,
    },
    /// Join a hub. Reply: `Copies`.
    Join {
        /// Its link, or its address, code and key as typed.
        link: String,
    },
    /// Let one more device join the hub of this machine. Reply: `Invite`.
    Invite,
}
