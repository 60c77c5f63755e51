//! Counts since the hub began, in the text format that Prometheus reads.

use std::fmt::Write;
use std::sync::atomic::{AtomicU64, Ordering};

/// What is counted. No name of a company or device is in it.
#[derive(Debug, Default)]
pub(crate) struct Metrics {
    pub(crate) answered_well: AtomicU64,
    pub(crate) refused: AtomicU64,
    pub(crate) failed: AtomicU64,
    pub(crate) entries_new: AtomicU64,
    pub(crate) entries_known: AtomicU64,
    pub(crate) entries_conflict: AtomicU64,
    pub(crate) entries_rejected: AtomicU64,
    pub(crate) photos: AtomicU64,
    pub(crate) photo_bytes: AtomicU64,
    pub(crate) paired: AtomicU64,
    pub(crate) connections: AtomicU64,
}

/// Adds to a count.
pub(crate) fn add(count: &AtomicU64, more: u64) {
    count.fetch_add(more, Ordering::Relaxed);
}

impl Metrics {
    pub(crate) fn text(&self) -> String {
        let rows = [
            ("responses_total{class=\"well\"}", &self.answered_well),
            ("responses_total{class=\"refused\"}", &self.refused),
            ("responses_total{class=\"failed\"}", &self.failed),
            ("entries_total{status=\"new\"}", &self.entries_new),
            ("entries_total{status=\"known\"}", &self.entries_known),
            (
                "entries_total{status=\"id_conflict\"}",
                &self.entries_conflict,
            ),
            ("entries_total{status=\"rejected\"}", &self.entries_rejected),
            ("photos_total", &self.photos),
            ("photo_bytes_total", &self.photo_bytes),
            ("pairings_total", &self.paired),
            ("connections_total", &self.connections),
        ];
        let mut text = String::new();
        let mut last = "";
        for (row, count) in rows {
            let name = row.split('{').next().unwrap_or(row);
            if name != last {
                let _ = writeln!(text, "# TYPE eavebook_hub_{name} counter");
                last = name;
            }
            let _ = writeln!(text, "eavebook_hub_{row} {}", count.load(Ordering::Relaxed));
        }
        text
    }
}
