//! Who waits for the next entry of a company is woken by it, and by no other company's.

use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};
use tokio::sync::watch;

/// Those who wait, by company.
#[derive(Debug, Default)]
pub(super) struct Wakes(Mutex<BTreeMap<i64, watch::Sender<u64>>>);

impl Wakes {
    /// Changes when the company has something new.
    pub(super) fn subscribe(&self, company: i64) -> watch::Receiver<u64> {
        let mut wakes = self.all();
        wakes
            .entry(company)
            .or_insert_with(|| watch::channel(0).0)
            .subscribe()
    }

    /// Wakes those who wait for a company.
    pub(super) fn wake(&self, company: i64) {
        let mut wakes = self.all();
        if let Some(waiting) = wakes.get(&company) {
            waiting.send_modify(|times| *times += 1);
            if waiting.receiver_count() == 0 {
                wakes.remove(&company);
            }
        }
    }

    /// Wakes all: something may have been missed.
    pub(super) fn wake_all(&self) {
        for waiting in self.all().values() {
            waiting.send_modify(|times| *times += 1);
        }
    }

    fn all(&self) -> MutexGuard<'_, BTreeMap<i64, watch::Sender<u64>>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_company_wakes_its_own_alone() {
        let wakes = Wakes::default();
        let (mine, other) = (wakes.subscribe(1), wakes.subscribe(2));
        wakes.wake(1);
        assert!(mine.has_changed().unwrap());
        assert!(!other.has_changed().unwrap());
        wakes.wake_all();
        assert!(other.has_changed().unwrap());
        drop((mine, other));
        wakes.wake(1);
        assert_eq!(wakes.all().len(), 1);
    }
}
