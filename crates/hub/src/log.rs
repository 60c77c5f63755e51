//! A line of JSON for each thing that happens, on stderr. Lines hold no token, no code, no body and
//! no address of a house.

use serde_json::{Value, json};
use std::io::Write;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{SyncSender, TrySendError, sync_channel};

/// Lines that wait to be written.
const WAITING: usize = 1024;

/// The way to the thread that writes lines.
#[derive(Debug)]
pub(crate) struct Log {
    lines: Option<SyncSender<String>>,
    lost: AtomicU64,
}

impl Log {
    /// Begins to write to stderr. A reader of it who is slow costs lines, never a request: the next
    /// line tells how many were lost.
    pub(crate) fn begin() -> Log {
        let (lines, wait) = sync_channel::<String>(WAITING);
        let begun = std::thread::Builder::new()
            .name("hub-log".to_owned())
            .spawn(move || {
                while let Ok(line) = wait.recv() {
                    if writeln!(std::io::stderr(), "{line}").is_err() {
                        return;
                    }
                }
            });
        Log {
            lines: begun.is_ok().then_some(lines),
            lost: AtomicU64::new(0),
        }
    }

    /// Writes nothing.
    pub(crate) fn none() -> Log {
        Log {
            lines: None,
            lost: AtomicU64::new(0),
        }
    }

    /// Tells of one event with its fields, an object.
    pub(crate) fn tell(&self, event: &str, mut fields: Value) {
        let Some(lines) = &self.lines else {
            return;
        };
        if let Some(fields) = fields.as_object_mut() {
            fields.insert("event".to_owned(), json!(event));
            fields.insert("time".to_owned(), json!(crate::now()));
            let lost = self.lost.swap(0, Ordering::Relaxed);
            if lost > 0 {
                fields.insert("lines_lost".to_owned(), json!(lost));
            }
        }
        match lines.try_send(fields.to_string()) {
            Err(TrySendError::Full(_)) => {
                self.lost.fetch_add(1, Ordering::Relaxed);
            }
            Ok(()) | Err(TrySendError::Disconnected(_)) => {}
        }
    }
}
