//! An act: one entry of a known kind in a field book, with whether it is in force.

use super::kinds::Kind;
use uuid::Uuid;

/// One entry of a known kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Act {
    /// Its entry.
    pub entry: Uuid,
    /// The device that recorded it.
    pub device: Uuid,
    /// The person who recorded it.
    pub author: String,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// Entries that it takes out of force while it is in force itself.
    pub supersedes: Vec<Uuid>,
    /// No entry in force supersedes it.
    pub in_force: bool,
    /// What was recorded.
    pub kind: Kind,
}
