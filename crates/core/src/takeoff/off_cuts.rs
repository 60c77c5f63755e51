//! Off-cuts that wait to be used again.

use std::collections::BTreeMap;

/// Off-cuts by the end of a course that they fit: a piece is never turned over, so one cut at its
/// right end can only start a course and one cut at its left end can only finish one.
#[derive(Clone, Debug, Default)]
pub(super) struct OffCuts {
    start: BTreeMap<i64, u64>,
    finish: BTreeMap<i64, u64>,
}

/// Which end of a course a piece stands at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    /// The first of its course.
    Start,
    /// The last.
    Finish,
    /// Both at once.
    Both,
}

impl OffCuts {
    /// Keeps what a new piece at one end leaves, mils: the first piece of a course leaves its left
    /// part, which finishes another; a last one leaves its right part, which starts one.
    pub fn keep_from(&mut self, end: End, length: i64) {
        let kept = match end {
            End::Start => &mut self.finish,
            End::Finish | End::Both => &mut self.start,
        };
        *kept.entry(length).or_insert(0) += 1;
    }

    /// Takes the shortest off-cut of at least a length for one end; of two as short the one that
    /// starts. What is left of it is scrap. Says whether there was one.
    pub fn take(&mut self, end: End, length: i64) -> bool {
        let shortest = |kept: &BTreeMap<i64, u64>| kept.range(length..).next().map(|(it, _)| *it);
        let start = shortest(&self.start).filter(|_| end != End::Finish);
        let finish = shortest(&self.finish).filter(|_| end != End::Start);
        match (start, finish) {
            (None, None) => return false,
            (Some(start), None) => remove(&mut self.start, start),
            (None, Some(finish)) => remove(&mut self.finish, finish),
            (Some(start), Some(finish)) if start <= finish => remove(&mut self.start, start),
            (Some(_), Some(finish)) => remove(&mut self.finish, finish),
        }
        true
    }

    /// Throws everything away.
    pub fn clear(&mut self) {
        self.start.clear();
        self.finish.clear();
    }
}

fn remove(kept: &mut BTreeMap<i64, u64>, length: i64) {
    if let Some(count) = kept.get_mut(&length) {
        *count -= 1;
        if *count == 0 {
            kept.remove(&length);
        }
    }
}
