//! How much and how often: sizes are part of the protocol, rates are settings.

use crate::problem::{Code, Problem};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// Entries of one call.
pub(crate) const ENTRIES: usize = 500;
/// Bytes of one call's entries, decoded.
pub(crate) const ENTRIES_BYTES: usize = 1 << 20;
/// Bytes of one entry.
pub(crate) const ENTRY_BYTES: usize = 256 << 10;
/// Bytes of any other body but a photo's, decoded.
pub(crate) const BODY_BYTES: usize = 8 << 20;
/// Bytes of a part of a photo, and of a photo sent whole.
pub(crate) const PART_BYTES: usize = 1 << 20;
/// Parts of a photo.
pub(crate) const PARTS: u64 = 64;
/// Bytes of a photo.
pub(crate) const BLOB_BYTES: u64 = PARTS * PART_BYTES as u64;
/// Photos asked for in one call.
pub(crate) const MISSING: usize = 1000;
/// Entries of one page of the feed.
pub(crate) const PAGE: u64 = 500;
/// Bytes after which a page of the feed ends.
pub(crate) const PAGE_BYTES: usize = 1 << 20;
/// Longest wait of the feed.
pub(crate) const WAIT: Duration = Duration::from_secs(25);
/// A body of which no byte comes for so long is given up; so are headers that are not complete.
pub(crate) const STALL: Duration = Duration::from_secs(30);

/// Requests that may come at once after a quiet time, in seconds of the rate.
const BURST: f64 = 2.0;

/// What each device may do now. Keyed by device, not by address: a yard shares one.
#[derive(Debug)]
pub(crate) struct Rates {
    per_second: f64,
    uploads: u32,
    devices: Mutex<BTreeMap<String, Allowance>>,
}

#[derive(Clone, Copy, Debug)]
struct Allowance {
    requests: f64,
    since: Instant,
    uploads: u32,
}

/// One upload under way; dropped, it is over.
#[derive(Debug)]
pub(crate) struct Upload {
    rates: Arc<Rates>,
    who: String,
}

impl Rates {
    /// `per_second` requests and `uploads` at once for each device.
    pub(crate) fn new(per_second: u32, uploads: u32) -> Arc<Rates> {
        Arc::new(Rates {
            per_second: f64::from(per_second.max(1)),
            uploads: uploads.max(1),
            devices: Mutex::default(),
        })
    }

    /// Counts a request of a device.
    pub(crate) fn request(&self, who: &str, now: Instant) -> Result<(), Problem> {
        let most = self.per_second * BURST;
        let mut devices = self.devices();
        let left = self.left(&mut devices, who, now);
        let passed = now.saturating_duration_since(left.since).as_secs_f64();
        left.requests = (left.requests + passed * self.per_second).min(most);
        left.since = now;
        if left.requests < 1.0 {
            return Err(Problem::new(
                Code::Rate,
                format!(
                    "more than {} requests a second from one device: wait a second, then go on",
                    self.per_second
                ),
            ));
        }
        left.requests -= 1.0;
        Ok(())
    }

    /// Begins an upload of a device.
    pub(crate) fn upload(self: &Arc<Self>, who: &str, now: Instant) -> Result<Upload, Problem> {
        let mut devices = self.devices();
        let left = self.left(&mut devices, who, now);
        if left.uploads >= self.uploads {
            return Err(Problem::new(
                Code::Rate,
                format!(
                    "more than {} uploads at once from one device: let one end, then go on",
                    self.uploads
                ),
            ));
        }
        left.uploads += 1;
        Ok(Upload {
            rates: Arc::clone(self),
            who: who.to_owned(),
        })
    }

    fn devices(&self) -> MutexGuard<'_, BTreeMap<String, Allowance>> {
        self.devices.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn left<'a>(
        &self,
        devices: &'a mut BTreeMap<String, Allowance>,
        who: &str,
        now: Instant,
    ) -> &'a mut Allowance {
        devices.entry(who.to_owned()).or_insert(Allowance {
            requests: self.per_second * BURST,
            since: now,
            uploads: 0,
        })
    }
}

impl Drop for Upload {
    fn drop(&mut self) {
        if let Some(left) = self.rates.devices().get_mut(&self.who) {
            left.uploads -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_device_is_slowed_and_another_is_not() {
        let (rates, now) = (Rates::new(20, 4), Instant::now());
        let taken = (0..100).filter(|_| rates.request("a", now).is_ok()).count();
        assert_eq!(taken, 40);
        rates.request("b", now).unwrap();
        let later = now + Duration::from_millis(500);
        let taken = (0..100)
            .filter(|_| rates.request("a", later).is_ok())
            .count();
        assert_eq!(taken, 10);
    }

    #[test]
    fn an_upload_that_ends_makes_room_for_the_next() {
        let (rates, now) = (Rates::new(20, 2), Instant::now());
        let first = rates.upload("a", now).unwrap();
        let _second = rates.upload("a", now).unwrap();
        assert!(rates.upload("a", now).is_err());
        drop(first);
        rates.upload("a", now).unwrap();
    }
}
