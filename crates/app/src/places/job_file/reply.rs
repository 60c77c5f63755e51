//! Packets, as they stand on the screen.

use crate::parts::reply::ThingView;
use crate::sentence::Sentence;
use eavebook_core::book::edition::Edition;
use eavebook_core::book::kinds::SendStage;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// The packets of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PacketsView {
    /// Which job.
    pub job: Uuid,
    /// For whom one can be made; the first is taken unless another is chosen.
    pub readers: Vec<ReaderView>,
    /// Those made, the newest first.
    pub packets: Vec<PacketView>,
    /// The one that was just made, by its id; made again, it is the same.
    pub made: Option<String>,
    /// To whom packets were to go, the newest first.
    pub sends: Vec<SendView>,
    /// "Waiting to send: 2", "Nothing sent yet."
    pub sending: Sentence,
}

/// A packet on its way to somebody.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SendView {
    /// The entry that began it.
    pub send: Uuid,
    /// The packet's id, 64 hex digits.
    pub packet: String,
    /// "Owner, version 2".
    pub title: String,
    /// Who is to get it, as written.
    pub to: String,
    /// How far it came.
    pub stage: SendStage,
    /// "Waits here since 2:41 pm.", "Handed on 2:50 pm."
    pub words: Sentence,
}

/// Somebody for whom a packet can be made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReaderView {
    /// Which.
    pub edition: Edition,
    /// "Owner".
    pub name: String,
    /// "Proposal, photo sheets and the story of every figure."
    pub holds: Sentence,
    /// "Never cost or margin."
    pub never: Sentence,
}

/// One packet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PacketView {
    /// Its id, 64 hex digits.
    pub packet: String,
    /// For whom.
    pub edition: Edition,
    /// Counts from 1, per job and edition.
    pub version: u32,
    /// "Owner, version 2".
    pub title: String,
    /// "2 May 2026, 2:41 pm".
    pub moment: String,
    /// "7 MB".
    pub size: Option<String>,
    /// "6 open": how many things are not known.
    pub open: Option<String>,
    /// "Follows version 1; what changed stands in its table of differences."
    pub follows: Option<Sentence>,
    /// What nobody knows, word for word as in the packet.
    pub not_known: Vec<String>,
    /// What should be in it and is not, each with why and the remedy.
    pub lacks: Vec<Sentence>,
    /// Who must not get it.
    pub keep_in_house: Option<Sentence>,
    /// The name of its file; none: it is not on this device, and can be made again.
    pub file: Option<String>,
    /// What lies in it, in the order in which one looks.
    pub papers: Vec<PaperGroup>,
}

/// Papers of one sort.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PaperGroup {
    /// "Papers", "Plan", "Tables".
    pub title: String,
    /// One or more.
    pub papers: Vec<PaperView>,
}

/// One file in a packet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PaperView {
    /// From the folder of the bag: `data/papers/crew.es.pdf`.
    pub path: String,
    /// "Crew sheet, in Spanish".
    pub title: String,
    /// "PDF".
    pub sort: String,
}

/// What turned up once the old roof was off, and what the next one needs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ChangesView {
    /// Those booked, the newest first: `change 2`, with all that was said of it as story.
    pub changes: Vec<ThingView>,
    /// The number of the next one.
    pub next: u32,
    /// `change 3`: what a photo for the next one is taken of.
    pub next_thing: String,
    /// Photos that were taken for it already, by their names in the photo folder.
    pub next_photos: Vec<String>,
    /// "A sheet, laid: $58.00.", or that it is not priced.
    pub price: Sentence,
    /// Under which it can be: (leg, name).
    pub faces: Vec<(u32, String)>,
}
