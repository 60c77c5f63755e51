//! One job, opened: folded, with the draft of its keypad; and what is booked in it.

use crate::draft::{self, Draft};
use crate::refusal::{Refusal, RequestRefusal};
use crate::settings::kept::Settings;
use crate::{names, stamp};
use eavebook_core::book::entry::Entry;
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::kinds::{Kind, Thing};
use eavebook_core::book::lay_out::{LaidOut, lay_out};
use eavebook_store::{Copies, DraftAfter, Store};
use std::sync::Arc;
use uuid::Uuid;

/// A job as it stands.
pub struct OpenJob {
    /// Which.
    pub job: Uuid,
    /// What was booked.
    pub book: Arc<FieldBook>,
    /// What is half typed, read back and not yet answered.
    pub draft: Draft,
    /// Settings of this device.
    pub settings: Settings,
    /// This device.
    pub device: Uuid,
    /// Entries that cannot be read any more, each with what is wrong.
    pub damaged: Vec<String>,
    /// Where copies are.
    pub copies: Copies,
    /// What a person must know of the exchange with the hub.
    pub hub_message: Option<String>,
}

impl OpenJob {
    /// Opens a job.
    ///
    /// # Errors
    /// `NoJob` where nothing was booked in it.
    pub fn read(book: &Store, job: Uuid) -> Result<OpenJob, Refusal> {
        let folded = book.folded(job)?;
        if folded.entries == 0 {
            return Err(RequestRefusal::NoJob.into());
        }
        Ok(OpenJob {
            job,
            book: folded.book,
            draft: draft::read(book, job)?,
            settings: settings(book),
            device: book.device().map_or(Uuid::nil(), |device| device.id),
            damaged: folded.damaged,
            copies: book.copies(job)?,
            hub_message: book.hub_message().map(str::to_owned),
        })
    }

    /// The walk, laid out.
    #[must_use]
    pub fn laid_out(&self) -> LaidOut {
        lay_out(&self.book, self.settings.building_on())
    }

    /// Books one thing, and leaves the draft as it is now, in one transaction.
    ///
    /// # Errors
    /// Says why nothing was booked.
    pub fn book(
        &self,
        book: &mut Store,
        kind: &Kind,
        supersedes: Vec<Uuid>,
    ) -> Result<(), Refusal> {
        self.book_all(book, vec![(kind.clone(), supersedes)])
    }

    /// Books a reading, and in the same transaction keeps that it is read back.
    ///
    /// # Errors
    /// Says why nothing was booked.
    pub fn book_with_read_back(
        &mut self,
        book: &mut Store,
        reading: &Kind,
        supersedes: Vec<Uuid>,
    ) -> Result<(), Refusal> {
        let entry = stamp::entry(book, self.job, reading, supersedes)?;
        self.draft.read_back = Some(entry.id);
        self.append(book, &[entry])
    }

    /// Books several things at once, all or none.
    ///
    /// # Errors
    /// Says why nothing was booked.
    pub fn book_all(&self, book: &mut Store, acts: Vec<(Kind, Vec<Uuid>)>) -> Result<(), Refusal> {
        let mut entries = Vec::with_capacity(acts.len());
        for (kind, supersedes) in acts {
            entries.push(stamp::entry(book, self.job, &kind, supersedes)?);
        }
        self.append(book, &entries)
    }

    /// The job as it will stand once an entry is booked, so that what follows from it can be kept
    /// with it.
    ///
    /// # Errors
    /// When the book cannot be read.
    pub fn with(mut self, book: &Store, entry: &Entry) -> Result<OpenJob, Refusal> {
        self.book = Arc::new(book.folded_with(self.job, entry)?);
        Ok(self)
    }

    /// Puts entries on the disk, and leaves the draft as it is now, in one transaction.
    ///
    /// # Errors
    /// Says why nothing was booked.
    pub fn append(&self, book: &mut Store, entries: &[Entry]) -> Result<(), Refusal> {
        let text = self.draft.text();
        let after = DraftAfter::Becomes {
            book: self.job,
            name: draft::NAME,
            text: &text,
        };
        book.append(entries, after)?;
        Ok(())
    }

    /// That a thing is one of this job's.
    ///
    /// # Errors
    /// `NoLeg`, `NoTie`, `NoItem`.
    pub fn check_thing(&self, thing: &Thing) -> Result<(), Refusal> {
        let legs = u32::try_from(self.laid_out().legs).unwrap_or(u32::MAX);
        match *thing {
            Thing::Leg { leg } if leg == 0 || leg > legs.saturating_add(1) => {
                Err(RequestRefusal::NoLeg { leg }.into())
            }
            Thing::Tie { from, to }
                if from == to || from.min(to) == 0 || from.max(to) > legs.saturating_add(1) =>
            {
                Err(RequestRefusal::NoTie { from, to }.into())
            }
            Thing::Overhang { leg } | Thing::Slope { leg } if leg == 0 || leg > legs => {
                Err(RequestRefusal::NoLeg { leg }.into())
            }
            Thing::Item { .. } | Thing::Size { .. } => {
                let noted = self
                    .book
                    .penetrations
                    .iter()
                    .map(|noted| noted.what.thing());
                if noted.into_iter().any(|there| there == thing.whole()) {
                    Ok(())
                } else {
                    let name = names::name(&thing.whole());
                    Err(RequestRefusal::NoItem { name }.into())
                }
            }
            Thing::Leg { .. }
            | Thing::Tie { .. }
            | Thing::Overhang { .. }
            | Thing::Slope { .. }
            | Thing::EaveHeight
            | Thing::RidgeHeight
            | Thing::Deck
            | Thing::DeckSize { .. }
            | Thing::Layers => Ok(()),
            // The one being booked too: its photo comes before it.
            Thing::Change { number } if (1..=self.next_change()).contains(&number) => Ok(()),
            Thing::Change { .. } => Err(RequestRefusal::NoItem {
                name: names::name(thing),
            }
            .into()),
        }
    }

    /// That a thing can be read with a tape in this job.
    ///
    /// # Errors
    /// `NoLeg`, `NoTie`, `NoItem`, `NotTaped`.
    pub fn check_taped(&self, thing: &Thing) -> Result<(), Refusal> {
        self.check_thing(thing)?;
        match thing {
            Thing::Item { .. }
            | Thing::Slope { .. }
            | Thing::Deck
            | Thing::Layers
            | Thing::Change { .. } => {
                let title = names::capital(&names::name(thing));
                Err(RequestRefusal::NotTaped { title }.into())
            }
            Thing::Leg { .. }
            | Thing::Tie { .. }
            | Thing::Size { .. }
            | Thing::Overhang { .. }
            | Thing::EaveHeight
            | Thing::RidgeHeight
            | Thing::DeckSize { .. } => Ok(()),
        }
    }

    /// The number of the next thing that turns up.
    pub fn next_change(&self) -> u32 {
        let numbers = self.book.changes.iter().map(|noted| noted.what.number);
        numbers.max().unwrap_or(0).saturating_add(1)
    }

    /// That a leg is one of this job's.
    ///
    /// # Errors
    /// `NoLeg`.
    pub fn check_leg(&self, leg: u32) -> Result<(), Refusal> {
        let legs = u32::try_from(self.laid_out().legs).unwrap_or(u32::MAX);
        if leg == 0 || leg > legs {
            Err(RequestRefusal::NoLeg { leg }.into())
        } else {
            Ok(())
        }
    }
}

/// Settings of this device as they are kept in the book.
#[must_use]
pub fn settings(book: &Store) -> Settings {
    book.device()
        .map(|device| Settings::read(&device.settings))
        .unwrap_or_default()
}

/// All entries of a job.
///
/// # Errors
/// `NoJob`.
pub fn entries(book: &Store, job: Uuid) -> Result<Vec<Entry>, Refusal> {
    let entries = book.entries(job)?.whole;
    if entries.is_empty() {
        return Err(RequestRefusal::NoJob.into());
    }
    Ok(entries)
}
