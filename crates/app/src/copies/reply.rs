//! Copies on other machines, and how one more device joins.

use crate::sentence::Sentence;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A reply about copies on other machines.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "reply", rename_all = "snake_case")]
pub enum CopiesReply {
    /// Where copies are.
    Copies(CopiesView),
    /// What lets one more device join.
    Invite(InviteView),
    /// What a photo of a hub's square says.
    Square(SquareView),
    /// A file that is carried in by hand.
    Carried(CarriedView),
    /// A copy of the whole book.
    BookCopy(BookCopyView),
}

/// Where copies are.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CopiesView {
    /// Of the job that was asked about; `None` without one.
    pub copies: Option<Sentence>,
    /// Entries of it that other devices booked: where this grows, the job is to be fetched anew.
    #[serde(rename = "of_others")]
    pub entries_of_others: u32,
    /// The hub that this book keeps in step with.
    pub hub: Option<HubView>,
    /// What this device is called on the others: `device 3f9a`.
    pub called: String,
    /// Whether this machine is itself a hub that other devices can join.
    pub shares: bool,
    /// "Room for about 900 photos.", where the disk says; under 50 it warns.
    pub room: Option<Sentence>,
}

/// What a photo of a hub's square says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SquareView {
    /// The link, to be looked at before it is used.
    pub link: String,
}

/// How a file is, that is carried in by hand.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CarriedView {
    /// What it brought; none while more of it is to come.
    pub said: Option<Sentence>,
}

/// A copy of the whole book as one file, to be fetched once.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct BookCopyView {
    /// Where it is fetched.
    pub file: Uuid,
    /// What it is to be called.
    pub name: String,
    /// What it holds.
    pub said: Sentence,
}

/// A hub in words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct HubView {
    /// Whose.
    pub company: String,
    /// Where.
    pub address: String,
}

/// What lets one more device join, once, within ten minutes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct InviteView {
    /// The link.
    pub link: String,
    /// Address, code and key, to be typed.
    pub typed: String,
    /// The link as a QR code (ISO/IEC 18004): dark fields of one unit as the path of an SVG.
    pub fields: String,
    /// Its width and height in units, with the quiet zone of four.
    pub side: u32,
}
