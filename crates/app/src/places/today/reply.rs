//! What Today answers.

use crate::sentence::Sentence;
use crate::settings::reply::SettingsView;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// Today.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TodayView {
    /// Jobs, the newest first but for the pretend house, which stands first.
    pub stops: Vec<StopView>,
    /// What a search found.
    pub found: Vec<FoundView>,
    /// Settings of this device.
    pub settings: SettingsView,
}

/// One job in the list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StopView {
    /// Which.
    pub job: Uuid,
    /// Street address as said.
    pub address: String,
    /// The pretend house.
    pub pretend: bool,
    /// What there is: "6 legs read, closes within 2 in".
    pub standing: Sentence,
    /// Where copies are.
    pub copies: Sentence,
}

/// One thing that a search found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct FoundView {
    /// In which job.
    pub job: Uuid,
    /// Street address of the job.
    pub address: String,
    /// The thing, `leg 4`; none: the job itself.
    pub thing: Option<String>,
    /// What it says.
    pub words: String,
}
