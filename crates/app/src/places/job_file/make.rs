//! Packets: made beside the book, booked once they are whole on the disk.
//!
//! Three steps, so that a key press never waits for a typesetting run: what is to be made is read
//! under the book's lock, made without it, booked under it again.

use crate::open_job::entries;
use crate::open_store::{OpenStore, unbroken};
use crate::parts::job_rates::JobRates;
use crate::parts::solved_job;
use crate::places::job_file::packet_files::{NAMED_BY, there};
use crate::refusal::{Refusal, RequestRefusal};
use crate::stamp;
use chrono::NaiveDate;
use eavebook_core::book::edition::Edition;
use eavebook_core::book::entry::Entry;
use eavebook_core::book::fold::{FieldBook, fold};
use eavebook_core::book::freeze::{self, Next};
use eavebook_core::book::kinds::{FrozenEntries, Kind, PacketFrozen, Side};
use eavebook_core::book::lay_out::{LaidOut, lay_out};
use eavebook_core::settings::Terms;
use eavebook_core::solve::{Priced, Solved, take_off_and_price};
use eavebook_packet::{Freeze, Job};
use eavebook_store::{DraftAfter, Packets, Photos, Store, StoreError};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// This program, as papers name it.
const MADE_WITH: &str = concat!("eavebook ", env!("CARGO_PKG_VERSION"));

/// Which version is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// The last one where nothing was booked since, else a new one.
    Newest,
    /// An old one, as it was.
    Version(u32),
}

/// A packet that is to be made.
#[derive(Clone, Debug)]
pub struct ToMake {
    job: Uuid,
    edition: Edition,
    wanted: Wanted,
    /// The entries of the house, without earlier freezes.
    entries: Vec<Entry>,
    /// The entries of the version before, where there is one and they can be told from the rest.
    before: Option<Vec<Entry>>,
    /// What they come to.
    made_of: FrozenEntries,
    freeze: Freeze,
    /// Its id, where it was made before.
    known: Option<String>,
}

/// A packet whole on the disk.
#[derive(Clone, Debug)]
pub struct Made {
    /// Which job.
    pub job: Uuid,
    /// Its id.
    pub id: String,
    /// Where it lies.
    pub path: PathBuf,
    /// What is to be booked of it; none: it was booked before.
    new: Option<PacketFrozen>,
}

/// Makes a packet, or finds it if it was made before. Three steps: the middle one takes seconds and
/// needs no store.
///
/// # Errors
/// Why none was made; nothing was recorded.
pub fn make(
    open: &OpenStore,
    job: Uuid,
    edition: Edition,
    wanted: Wanted,
) -> Result<Made, Refusal> {
    let _making = open.making();
    let to_make = open.ask(|store| to_make(store, job, edition, wanted))?;
    let made = unbroken(|| to_make.make(&open.photos, &open.packets))?;
    open.ask(|store| made.book(store))?;
    Ok(made)
}

/// Reads what a packet is to be made of.
///
/// # Errors
/// `NoJob`; `NoVersion`, `VersionLost` for an old version that was not made or whose entries
/// cannot be told from those that came since.
pub fn to_make(
    book: &Store,
    job: Uuid,
    edition: Edition,
    wanted: Wanted,
) -> Result<ToMake, Refusal> {
    let entries = entries(book, job)?;
    let frozen = fold(&entries).frozen;
    let of_before = |before: Option<&str>| {
        let (_, freeze) = frozen
            .iter()
            .find(|(_, freeze)| Some(freeze.packet.as_str()) == before)?;
        freeze::thawed(&entries, &freeze.entries)
    };
    let old = |freeze: &PacketFrozen, entries: Vec<Entry>| ToMake {
        job,
        edition,
        wanted,
        entries,
        before: of_before(freeze.before.as_deref()),
        made_of: freeze.entries.clone(),
        freeze: Freeze {
            version: freeze.version,
            moment: freeze.moment.clone(),
            before: freeze.before.clone(),
            made_with: freeze.made_with.clone(),
        },
        known: Some(freeze.packet.clone()),
    };
    if let Wanted::Version(version) = wanted {
        let asked = |(_, freeze): &&(Uuid, PacketFrozen)| {
            freeze.edition == edition && freeze.version == version
        };
        let (_, freeze) = frozen
            .iter()
            .rfind(asked)
            .ok_or(RequestRefusal::NoVersion { edition, version })?;
        let then = freeze::thawed(&entries, &freeze.entries)
            .ok_or(RequestRefusal::VersionLost { edition, version })?;
        return Ok(old(freeze, then));
    }
    let made_of = freeze::frozen(&entries);
    let house = freeze::house_entries(&entries).cloned().collect();
    Ok(match freeze::next(&frozen, edition, &made_of) {
        Next::Same(freeze) => old(freeze, house),
        Next::Version { number, before } => ToMake {
            job,
            edition,
            wanted,
            entries: house,
            before: of_before(before),
            made_of,
            freeze: Freeze {
                version: number,
                moment: stamp::moment(),
                before: before.map(str::to_owned),
                made_with: MADE_WITH.to_owned(),
            },
            known: None,
        },
    })
}

impl ToMake {
    /// Makes the packet, whole on the disk or not at all. Needs no book: takes seconds.
    ///
    /// # Errors
    /// `NotMade` where the disk will not take it; `MadeOtherwise` for an old version that this
    /// program sets otherwise.
    pub fn make(self, photos: &Photos, packets: &Packets) -> Result<Made, Refusal> {
        if let Some(id) = &self.known
            && let Some(path) = there(packets, id)
        {
            return Ok(Made {
                job: self.job,
                id: id.clone(),
                path,
                new: None,
            });
        }
        let (id, path) = self.set(photos, packets)?;
        match self.known.clone() {
            None => Ok(Made {
                job: self.job,
                new: Some(self.frozen(&id)),
                id,
                path,
            }),
            Some(known) if known == id => Ok(Made {
                job: self.job,
                id,
                path,
                new: None,
            }),
            Some(_) => {
                throw_away(&path);
                self.made_otherwise(photos, packets)
            }
        }
    }

    /// The papers come out other than they were: another program made them. Who wants the newest
    /// gets a new version; who wants that very one is told.
    fn made_otherwise(mut self, photos: &Photos, packets: &Packets) -> Result<Made, Refusal> {
        if let Wanted::Version(version) = self.wanted {
            let made_with = self.freeze.made_with;
            return Err(RequestRefusal::MadeOtherwise { version, made_with }.into());
        }
        self.before = Some(self.entries.clone());
        self.freeze = Freeze {
            version: self.freeze.version.saturating_add(1),
            moment: stamp::moment(),
            before: self.known.take(),
            made_with: MADE_WITH.to_owned(),
        };
        self.make(photos, packets)
    }

    /// Sets the papers and puts the packet on the disk: its id, and where it lies.
    fn set(&self, photos: &Photos, packets: &Packets) -> Result<(String, PathBuf), Refusal> {
        // The day of the freeze, not of today: the same packet must come out another day.
        let moment = chrono::DateTime::parse_from_rfc3339(&self.freeze.moment);
        let on = moment.ok().map(|moment| moment.date_naive());
        let before = self.before.as_deref().map(|then| WorkedOut::new(then, on));
        let before = before.as_ref().map(|then| then.job(self.job, None));
        let now = WorkedOut::new(&self.entries, on);
        let job = now.job(self.job, before.as_ref());
        let folder = packets.folder()?;
        let made = eavebook_packet::make(&job, self.edition, &self.freeze, &Kept(photos), folder)?;
        Ok((made.id, made.path))
    }

    fn frozen(self, id: &str) -> PacketFrozen {
        PacketFrozen {
            packet: id.to_owned(),
            edition: self.edition,
            version: self.freeze.version,
            before: self.freeze.before,
            moment: self.freeze.moment,
            reader: None,
            entries: self.made_of,
            made_with: self.freeze.made_with,
        }
    }
}

/// A job folded, laid out, solved and priced.
struct WorkedOut<'a> {
    entries: &'a [Entry],
    book: FieldBook,
    laid: LaidOut,
    solved: Option<Solved>,
    priced: Option<Priced>,
    terms: Terms,
}

impl<'a> WorkedOut<'a> {
    /// Of these entries, priced for a day.
    fn new(entries: &'a [Entry], on: Option<NaiveDate>) -> WorkedOut<'a> {
        let book = fold(entries);
        // The side is a setting of a device and no entry: a corner says it, and before there is a
        // corner there is no plan for it to turn.
        let laid = lay_out(&book, Side::default());
        let solved = solved_job::solve(&laid);
        let terms = Terms::new(JobRates::new(&book).rates, None, on);
        let survey = laid.survey.as_ref();
        let priced = survey
            .zip(solved.as_ref())
            .and_then(|(survey, solved)| take_off_and_price(survey, solved, &terms).ok());
        WorkedOut {
            entries,
            book,
            laid,
            solved,
            priced,
            terms,
        }
    }

    fn job<'b>(&'b self, id: Uuid, before: Option<&'b Job<'b>>) -> Job<'b> {
        Job {
            id,
            entries: self.entries,
            book: &self.book,
            laid: &self.laid,
            solved: self.solved.as_ref(),
            takeoff: self.priced.as_ref().map(|priced| &priced.takeoff),
            price: self.priced.as_ref().map(|priced| &priced.price),
            code: Some(self.terms.code.get()),
            rates_from: self.terms.rates.origin(),
            before,
        }
    }
}

impl Made {
    /// Books that it was made, unless that stands in the book. The file is on the disk before.
    ///
    /// # Errors
    /// When the book cannot be written: the packet is thrown away.
    pub fn book(&self, book: &mut Store) -> Result<(), Refusal> {
        let Some(freeze) = &self.new else {
            return Ok(());
        };
        let kind = Kind::PacketFrozen(freeze.clone());
        let booked = stamp::entry(book, self.job, &kind, Vec::new())
            .and_then(|entry| book.append(&[entry], DraftAfter::AsItIs));
        if let Err(why) = booked {
            throw_away(&self.path);
            return Err(why.into());
        }
        Ok(())
    }
}

/// A packet that nothing will ever name. What stays is swept when the book is opened.
fn throw_away(path: &Path) {
    let _ = std::fs::remove_file(path);
}

/// Throws away what was only begun, and whole packets that no entry names: a kill came between
/// the file and its entry, and nobody was told of it.
///
/// # Errors
/// When the book or the folder cannot be read.
pub fn sweep(book: &Store) -> Result<(), StoreError> {
    let packets = book.packets();
    if packets.is_empty() {
        return Ok(());
    }
    let mut named = BTreeSet::new();
    for job in book.books()? {
        let folded = book.folded(job)?.book;
        let begins =
            |(_, freeze): &(Uuid, PacketFrozen)| freeze.packet.get(..NAMED_BY).map(str::to_owned);
        named.extend(folded.frozen.iter().filter_map(begins));
    }
    packets.keep_only(&named)
}

/// The photos of the book, as a packet asks for them.
struct Kept<'a>(&'a Photos);

impl eavebook_packet::Photos for Kept<'_> {
    fn bytes(&self, sha256: &str) -> std::io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        let mut file = self.0.open(sha256).map_err(std::io::Error::other)?;
        std::io::Read::read_to_end(&mut file, &mut bytes)?;
        Ok(bytes)
    }
}
