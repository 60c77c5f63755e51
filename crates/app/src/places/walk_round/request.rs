//! What the walk-round is asked.

use eavebook_core::book::kinds::PhotoWord;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of the walk-round. A photo itself comes as bytes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum WalkRoundRequest {
    /// A word about photos: what they show, from how far, who may see them. Reply: `Job`.
    #[serde(rename = "photo_said")]
    PhotoFacts {
        /// Which job.
        job: Uuid,
        /// Entries of the photos.
        photos: Vec<Uuid>,
        /// What is said of them.
        word: PhotoWord,
    },
}
