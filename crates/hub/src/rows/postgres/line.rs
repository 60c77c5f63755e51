//! Pushes of one company wait in a line. Who stands first writes for all that wait, in one
//! transaction: the company's row is held once for them, and the disk is waited for once.

use crate::entries::{Status, ValidEntry};
use crate::problem::{Problem, stopping};
use std::collections::{BTreeMap, VecDeque};
use std::sync::mpsc::{Sender, channel};
use std::sync::{Mutex, MutexGuard, PoisonError};

/// Entries of one transaction, beyond which those behind wait for the next.
const TOGETHER: usize = 1000;

/// The company's last number, and what became of each entry.
type Kept = Result<(u64, Vec<Status>), Problem>;

#[derive(Debug)]
struct Waiter {
    entries: Vec<ValidEntry>,
    hears: Sender<Word>,
}

#[derive(Debug)]
enum Word {
    Result(Kept),
    /// It stands first now.
    First,
}

/// The lines, by company. One is there as long as somebody stands first in it.
#[derive(Debug, Default)]
pub(super) struct Lines(Mutex<BTreeMap<i64, VecDeque<Waiter>>>);

impl Lines {
    /// Waits in the line of a company until these entries are written, by `write` or by that of who
    /// stands before.
    pub(super) fn join(
        &self,
        company: i64,
        entries: Vec<ValidEntry>,
        write: impl Fn(&[ValidEntry]) -> Kept,
    ) -> Kept {
        let (hears, words) = channel();
        let waits = Waiter { entries, hears };
        let mut first = {
            let mut lines = self.all();
            let first = !lines.contains_key(&company);
            lines.entry(company).or_default().push_back(waits);
            first
        };
        loop {
            if first {
                // Handed on however the writing ends.
                let _next = Handover {
                    lines: self,
                    company,
                };
                self.lead(company, &write);
            }
            match words.recv() {
                Ok(Word::Result(kept)) => return kept,
                Ok(Word::First) => first = true,
                Err(_) => return Err(stopping()),
            }
        }
    }

    /// Writes for those who wait, as many as go together.
    fn lead(&self, company: i64, write: &impl Fn(&[ValidEntry]) -> Kept) {
        let (mut all, mut parts) = (Vec::new(), Vec::new());
        {
            let mut lines = self.all();
            let line = lines.entry(company).or_default();
            while let Some(next) = line.front()
                && (all.is_empty() || all.len() + next.entries.len() <= TOGETHER)
                && let Some(next) = line.pop_front()
            {
                parts.push((next.entries.len(), next.hears));
                all.extend(next.entries);
            }
        }
        let kept = write(&all);
        let mut from = 0;
        for (count, hears) in parts {
            let part = kept.clone().map(|(head, fates)| {
                let part = fates.into_iter().skip(from).take(count).collect();
                (head, part)
            });
            from += count;
            // Whoever asked may have gone: what was written stays, and is known when said again.
            let _ = hears.send(Word::Result(part));
        }
    }

    fn all(&self) -> MutexGuard<'_, BTreeMap<i64, VecDeque<Waiter>>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Hands a line on to who stands first now, or ends it.
struct Handover<'a> {
    lines: &'a Lines,
    company: i64,
}

impl Drop for Handover<'_> {
    fn drop(&mut self) {
        let mut lines = self.lines.all();
        let Some(line) = lines.get_mut(&self.company) else {
            return;
        };
        // One who has gone is passed over.
        while let Some(next) = line.front() {
            if next.hears.send(Word::First).is_ok() {
                return;
            }
            line.pop_front();
        }
        lines.remove(&self.company);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use eavebook_core::book::entry::Entry;
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::thread;
    use std::time::Duration;

    fn fit(dseq: u64) -> ValidEntry {
        let body = "{}";
        let text = serde_json::json!({
            "id": uuid::Uuid::now_v7(), "book": uuid::Uuid::nil(), "device": uuid::Uuid::nil(),
            "incarnation": uuid::Uuid::nil(), "dseq": dseq, "author": "Ada", "hlc": "1.0",
            "kind": "note", "kind_version": 1, "local_time": "2026-05-02T14:41:07-05:00",
            "supersedes": [], "refs": [],
            "sha256": eavebook_core::book::entry::sha256_hex(body.as_bytes()), "body": body,
        })
        .to_string();
        let entry = Entry::from_json(&text).unwrap();
        ValidEntry { entry, text }
    }

    #[test]
    fn who_waits_is_written_for_together_and_each_hears_of_its_own() {
        let (lines, writes) = (Lines::default(), AtomicUsize::new(0));
        // A number says what becomes of an entry: the odd ones are known.
        let write = |entries: &[ValidEntry]| {
            writes.fetch_add(1, Ordering::SeqCst);
            thread::sleep(Duration::from_millis(20));
            let fate = |one: &ValidEntry| {
                if one.entry.dseq.is_multiple_of(2) {
                    Status::New
                } else {
                    Status::Known
                }
            };
            Ok((7, entries.iter().map(fate).collect()))
        };
        thread::scope(|all| {
            for count in 0..40_u64 {
                let (lines, write) = (&lines, &write);
                all.spawn(move || {
                    let mine = (0..count % 4).map(|_| fit(count)).collect();
                    let (head, fates) = lines.join(1, mine, write).unwrap();
                    let fate = if count.is_multiple_of(2) {
                        Status::New
                    } else {
                        Status::Known
                    };
                    assert_eq!(head, 7);
                    assert_eq!(fates, vec![fate; (count % 4) as usize]);
                });
            }
        });
        let writes = writes.load(Ordering::SeqCst);
        assert!(writes < 20, "{writes} writes for 40");
        assert!(lines.all().is_empty());
    }

    #[test]
    fn a_writing_that_fails_fails_for_all_it_held_and_not_for_the_next() {
        let lines = Lines::default();
        let result = lines.join(1, vec![fit(1)], |_| Err(stopping()));
        assert_eq!(result, Err(stopping()));
        let result = lines.join(1, vec![fit(1)], |_| Ok((1, vec![Status::New])));
        assert_eq!(result, Ok((1, vec![Status::New])));
    }

    #[test]
    fn a_writing_that_breaks_off_does_not_leave_a_line_that_nobody_leads() {
        let lines = Lines::default();
        let broken = thread::scope(|all| {
            all.spawn(|| lines.join(1, vec![fit(1)], |_| panic!("as by a bug")))
                .join()
        });
        assert!(broken.is_err());
        let result = lines.join(1, vec![fit(1)], |_| Ok((1, vec![Status::New])));
        assert_eq!(result, Ok((1, vec![Status::New])));
    }
}
