//! What a packet is made from.

use eavebook_core::book::entry::Entry;
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::lay_out::LaidOut;
use eavebook_core::check::Standing;
use eavebook_core::price::Price;
use eavebook_core::settings::{Code, Origin};
use eavebook_core::solve::Solved;
use eavebook_core::takeoff::Takeoff;
use std::io;
use uuid::Uuid;

/// One job, folded and worked out.
#[derive(Clone, Copy)]
pub struct Job<'a> {
    /// The job.
    pub id: Uuid,
    /// Its entries as they were booked. Freezes of earlier packets are passed over: they are of the
    /// packets, not of the house.
    pub entries: &'a [Entry],
    /// The same folded.
    pub book: &'a FieldBook,
    /// The same laid out.
    pub laid: &'a LaidOut,
    /// What it comes to, once its line has come round.
    pub solved: Option<&'a Solved>,
    /// Quantities, where there is a roof to take them from.
    pub takeoff: Option<&'a Takeoff>,
    /// What it costs and what is asked for it.
    pub price: Option<&'a Price>,
    /// What somebody read of the rules of the place.
    pub code: Option<&'a Code>,
    /// Origin of the rates that made the price.
    pub rates_from: Origin,
    /// The job as the version before for this reader had it; none where there is none, or its
    /// entries are not here.
    pub before: Option<&'a Job<'a>>,
}

impl<'a> Job<'a> {
    /// How well its things are known.
    #[must_use]
    pub fn standing(&self) -> Standing<'a> {
        Standing {
            book: self.book,
            laid: self.laid,
            bodies: self.solved.map_or(&[], |solved| &solved.bodies),
        }
    }
}

/// What fixes a packet besides its entries. It is booked, so that the same packet can be made again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Freeze {
    /// Which packet of this job for this reader, from 1.
    pub version: u32,
    /// Local time with offset, RFC 3339: the only time that stands in a packet besides the times of
    /// its entries.
    pub moment: String,
    /// Id of the packet before this one for this reader.
    pub before: Option<String>,
    /// The program and its version: `eavebook 0.1.0`.
    pub made_with: String,
}

/// The photos of a field book.
pub trait Photos {
    /// The bytes of a photo, as they were kept.
    ///
    /// # Errors
    /// The photo is not there or cannot be read.
    fn bytes(&self, sha256: &str) -> io::Result<Vec<u8>>;
}
