//! Jobs as they were read: opening one again reads and proves what came since, and no more.
//!
//! Nothing of this is stored. It rests on a row being written once and never changed.

use crate::Store;
use crate::entries::{Entries, read_past};
use crate::error::StoreError;
use eavebook_core::book::entry::Entry;
use eavebook_core::book::fold::{FieldBook, fold};
use rusqlite::Connection;
use std::cell::RefCell;
use std::sync::Arc;
use uuid::Uuid;

/// Entries that are held of jobs read before, besides those of the one read last.
const HELD: usize = 20_000;

/// One job, folded.
#[derive(Clone, Debug)]
pub struct FoldedJob {
    /// What its entries tell.
    pub book: Arc<FieldBook>,
    /// How many entries that is.
    pub entries: usize,
    /// Rows that no longer are what was booked, each with what is wrong.
    pub damaged: Vec<String>,
}

/// Jobs that were read, the last one first.
#[derive(Debug, Default)]
pub(crate) struct JobCache(RefCell<Vec<CachedJob>>);

/// One job as far as it was read.
#[derive(Debug)]
struct CachedJob {
    job: Uuid,
    rows: Rows,
    entries: Entries,
    folded: Arc<FieldBook>,
}

/// How many rows there are of a job, and the last of them: in the book and in quarantine.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Rows {
    count: u64,
    pub(crate) last: i64,
    quarantined: u64,
    pub(crate) last_quarantined: i64,
}

impl Store {
    /// One job, folded.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn folded(&self, job: Uuid) -> Result<FoldedJob, StoreError> {
        self.read_on(job, |read| FoldedJob {
            book: Arc::clone(&read.folded),
            entries: read.entries.whole.len(),
            damaged: read.entries.damaged.clone(),
        })
    }

    /// One job as it will tell once an entry more is in it.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn folded_with(&self, job: Uuid, next: &Entry) -> Result<FieldBook, StoreError> {
        self.read_on(job, |read| fold(read.entries.whole.iter().chain([next])))
    }

    /// Hands on a job as it stands on the disk.
    fn read_on<T>(&self, job: Uuid, view: impl FnOnce(&CachedJob) -> T) -> Result<T, StoreError> {
        let before = self.read.take(job);
        let now = || {
            // The count and the rows are of one moment, whoever writes beside.
            let look = self.entries.unchecked_transaction()?;
            let rows = rows(&look, job)?;
            let read = match before {
                Some(read) if read.rows == rows => read,
                Some(mut read) => {
                    let came = read_past(&look, job, read.rows)?;
                    let (whole, damaged) = (came.whole.len(), came.damaged.len());
                    let count = read.rows.count + read.rows.quarantined + (whole + damaged) as u64;
                    if count == rows.count + rows.quarantined {
                        read.entries.whole.extend(came.whole);
                        read.entries.damaged.extend(came.damaged);
                        CachedJob::new(job, rows, read.entries)
                    } else {
                        // Not what was written by a field book: nothing of before is relied on.
                        let all = read_past(&look, job, Rows::default())?;
                        CachedJob::new(job, rows, all)
                    }
                }
                None => {
                    let all = read_past(&look, job, Rows::default())?;
                    CachedJob::new(job, rows, all)
                }
            };
            look.finish()?;
            Ok(read)
        };
        let read = now().map_err(|why| self.sqlite(why))?;
        let result = view(&read);
        self.read.put(read);
        Ok(result)
    }
}

impl CachedJob {
    fn new(job: Uuid, rows: Rows, entries: Entries) -> CachedJob {
        CachedJob {
            job,
            rows,
            folded: Arc::new(fold(&entries.whole)),
            entries,
        }
    }
}

impl JobCache {
    fn take(&self, job: Uuid) -> Option<CachedJob> {
        let mut held = self.0.borrow_mut();
        let place = held.iter().position(|read| read.job == job)?;
        Some(held.remove(place))
    }

    fn put(&self, read: CachedJob) {
        let mut held = self.0.borrow_mut();
        held.insert(0, read);
        let mut entries = 0;
        let room = held.iter().skip(1).take_while(|read| {
            entries += read.entries.whole.len();
            entries <= HELD
        });
        let keep = 1 + room.count();
        held.truncate(keep);
    }
}

fn rows(conn: &Connection, job: Uuid) -> rusqlite::Result<Rows> {
    let sql = "SELECT count(*), coalesce(max(rowid), 0) FROM entries WHERE book = ?1";
    let numbers = |row: &rusqlite::Row<'_>| Ok((row.get(0)?, row.get(1)?));
    let mut query = conn.prepare_cached(sql)?;
    let (count, last) = query.query_row([job.to_string()], numbers)?;
    let sql = "SELECT count(*), coalesce(max(q.rowid), 0)
               FROM quarantine q JOIN entries e ON e.id = q.id WHERE e.book = ?1";
    let mut query = conn.prepare_cached(sql)?;
    let (quarantined, last_quarantined) = query.query_row([job.to_string()], numbers)?;
    Ok(Rows {
        count,
        last,
        quarantined,
        last_quarantined,
    })
}

#[cfg(test)]
mod tests {
    use crate::{DraftAfter, Store};
    use eavebook_core::book::clock::Hlc;
    use eavebook_core::book::entry::{Entry, Stamp};
    use eavebook_core::book::fold::fold;
    use eavebook_core::book::kinds::{CannotGet, Kind, Strike, Thing};
    use proptest::prelude::*;
    use std::sync::Arc;
    use uuid::{Builder, Uuid};

    const JOBS: [Uuid; 2] = [Uuid::from_u128(1), Uuid::from_u128(2)];

    /// The entry of a number: of either job, a leg that nobody can reach or a strike of another
    /// entry, which may be there, come later or never.
    fn entry(number: u8, strikes: u8) -> Entry {
        let id = |number: u8| {
            let when = Builder::from_unix_timestamp_millis(1_750_000_000_000, &[number; 10]);
            when.into_uuid()
        };
        let stamp = Stamp {
            id: id(number),
            book: JOBS[usize::from(number % 2)],
            device: Uuid::from_u128(9),
            incarnation: Uuid::from_u128(10),
            dseq: u64::from(number),
            author: "me".to_owned(),
            // Not in the order in which they come.
            hlc: Hlc::new(1_750_000_000_000 + u64::from(number.wrapping_mul(37)), 0),
            local_time: "2026-05-02T14:41:07-05:00".to_owned(),
        };
        if strikes == 0 {
            let thing = Thing::Leg {
                leg: u32::from(number) + 1,
            };
            let lack = CannotGet {
                thing,
                reason: None,
            };
            Entry::new(stamp, &Kind::CannotGet(lack), Vec::new())
        } else {
            let strike = Kind::Strike(Strike { reason: None });
            Entry::new(stamp, &strike, vec![id(strikes)])
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]
        /// However they come, a few at a time, twice, or as another content under the same id.
        #[test]
        fn a_job_read_as_it_grows_tells_what_one_read_whole_tells(
            turns in prop::collection::vec(prop::collection::vec((0_u8..12, 0_u8..4), 0..5), 1..8),
        ) {
            let dir = tempfile::tempdir().unwrap();
            let mut book = Store::open(dir.path()).unwrap();
            for turn in turns {
                let came: Vec<Entry> =
                    turn.iter().map(|(number, strikes)| entry(*number, *strikes)).collect();
                book.append(&came, DraftAfter::AsItIs).unwrap();
                for job in JOBS {
                    let whole = book.entries(job).unwrap();
                    let grown = book.folded(job).unwrap();
                    prop_assert_eq!(&*grown.book, &fold(&whole.whole));
                    prop_assert_eq!(grown.entries, whole.whole.len());
                    let next = entry(13, 2);
                    let with = book.folded_with(job, &next).unwrap();
                    prop_assert_eq!(with, fold(whole.whole.iter().chain([&next])));
                }
            }
        }
    }

    #[test]
    fn a_job_in_which_nothing_came_is_not_read_again() {
        let dir = tempfile::tempdir().unwrap();
        let mut book = Store::open(dir.path()).unwrap();
        book.append(&[entry(0, 0)], DraftAfter::AsItIs).unwrap();
        let first = book.folded(JOBS[0]).unwrap().book;
        book.append(&[entry(1, 0)], DraftAfter::AsItIs).unwrap();
        assert!(Arc::ptr_eq(&first, &book.folded(JOBS[0]).unwrap().book));
        book.append(&[entry(2, 0)], DraftAfter::AsItIs).unwrap();
        let second = book.folded(JOBS[0]).unwrap();
        assert!(!Arc::ptr_eq(&first, &second.book) && second.entries == 2);
    }

    #[test]
    fn rows_that_another_program_took_away_are_not_told_of() {
        let dir = tempfile::tempdir().unwrap();
        let mut book = Store::open(dir.path()).unwrap();
        let three = [entry(0, 0), entry(2, 0), entry(4, 0)];
        book.append(&three, DraftAfter::AsItIs).unwrap();
        assert_eq!(book.folded(JOBS[0]).unwrap().entries, 3);
        let other = rusqlite::Connection::open(book.file()).unwrap();
        let away = "DELETE FROM entries WHERE rowid = 3";
        other.execute(away, []).unwrap();
        assert_eq!(book.folded(JOBS[0]).unwrap().entries, 2);
        book.append(&[entry(6, 0), entry(8, 0)], DraftAfter::AsItIs)
            .unwrap();
        assert_eq!(book.folded(JOBS[0]).unwrap().entries, 4);
    }
}
