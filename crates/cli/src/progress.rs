//! Work that takes over a second says so, to a person.

use std::io::{IsTerminal, Write, stderr};
use std::sync::mpsc::{self, RecvTimeoutError, Sender};
use std::thread::{self, JoinHandle};
use std::time::{Duration, Instant};

/// Says once a second how long the work has taken, until it is dropped. A script's stderr stays
/// for refusals.
pub struct Progress {
    watch: Option<(Sender<()>, JoinHandle<()>)>,
}

impl Progress {
    /// Begins to watch work that is called `what`: "solving the survey".
    pub fn of(what: &'static str) -> Progress {
        Progress {
            watch: stderr().is_terminal().then(|| {
                let (done, wait) = mpsc::channel();
                let began = Instant::now();
                let clock = thread::spawn(move || {
                    let second = Duration::from_secs(1);
                    while wait.recv_timeout(second) == Err(RecvTimeoutError::Timeout) {
                        // Nobody is the worse for a line that cannot be shown.
                        let _ = write!(stderr(), "\r{what}, {} s ", began.elapsed().as_secs());
                    }
                    if began.elapsed() >= second {
                        let _ = write!(stderr(), "\r\u{1b}[2K");
                    }
                });
                (done, clock)
            }),
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some((done, clock)) = self.watch.take() {
            drop(done);
            let _ = clock.join();
        }
    }
}
