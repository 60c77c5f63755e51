//! What the job file is asked.

use eavebook_core::book::edition::Edition;
use eavebook_core::book::kinds::SendStage;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of the job file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum JobFileRequest {
    /// The packets of a job. Reply: `Packets`.
    Packets {
        /// Which job.
        job: Uuid,
    },
    /// Make a packet for a reader; with nothing booked since the last one it is that one. Takes
    /// seconds, and holds no other request up. Reply: `Packets`, with `made`.
    MakePacket {
        /// Which job.
        job: Uuid,
        /// For whom.
        edition: Edition,
    },
    /// A packet is to go to somebody: it waits until it is handed over. Reply: `Packets`.
    Send {
        /// Which job.
        job: Uuid,
        /// The packet's id; none: the newest.
        packet: Option<String>,
        /// Who is to get it, as written.
        to: String,
        /// Sendings booked before it: the same request said twice books once.
        after: u32,
    },
    /// What became of a sending. Reply: `Packets`.
    SendCame {
        /// Which job.
        job: Uuid,
        /// The sending.
        send: Uuid,
        /// How far.
        stage: SendStage,
    },
    /// Sheets of the deck that turned out bad once the old roof was off. Reply: `Job`.
    AddChange {
        /// Which job.
        job: Uuid,
        /// The number it is to have, as the job says: the same request said twice books once.
        number: u32,
        /// The leg from which the face rises, from 1; `None` if no face was chosen.
        leg: Option<u32>,
        /// How many sheets.
        sheets: u32,
        /// Somebody who may say yes agreed to it.
        consent: bool,
    },
}
