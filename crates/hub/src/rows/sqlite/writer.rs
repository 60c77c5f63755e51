//! The one thread that writes. What waits is written together and committed once; each request is
//! answered after the commit that holds it.

use crate::error::HubError;
use crate::problem::{Problem, stopping};
use rusqlite::Connection;
use std::sync::mpsc::{self, Receiver, Sender};
use std::sync::{Mutex, PoisonError};
use std::thread::{self, JoinHandle};

/// Requests in one commit.
const GROUP: usize = 64;

/// A request that waits to be written.
trait Job: Send {
    /// Writes, inside a transaction.
    fn run(&mut self, conn: &Connection);
    /// Answers, once it is on the disk or is not.
    fn end(self: Box<Self>, committed: Result<(), Problem>);
}

struct Work<T, F> {
    work: Option<F>,
    result: Option<Result<T, Problem>>,
    reply: Sender<Result<T, Problem>>,
}

impl<T, F> Job for Work<T, F>
where
    T: Send,
    F: FnOnce(&Connection) -> Result<T, Problem> + Send,
{
    fn run(&mut self, conn: &Connection) {
        if let Some(work) = self.work.take() {
            self.result = Some(apart(conn, work));
        }
    }

    fn end(self: Box<Self>, committed: Result<(), Problem>) {
        let Work { result, reply, .. } = *self;
        let result = committed.and_then(|()| result.unwrap_or_else(|| Err(stopping())));
        // Whoever asked may have gone: what was written stays, and is known when said again.
        let _ = reply.send(result);
    }
}

/// One request that fails takes back its own writing alone.
fn apart<T>(
    conn: &Connection,
    work: impl FnOnce(&Connection) -> Result<T, Problem>,
) -> Result<T, Problem> {
    say(conn, "SAVEPOINT one")?;
    let result = work(conn);
    if result.is_err() {
        say(conn, "ROLLBACK TO one")?;
    }
    say(conn, "RELEASE one")?;
    result
}

/// Parsed once, not for each request.
fn say(conn: &Connection, sql: &str) -> Result<(), Problem> {
    conn.prepare_cached(sql)?.execute([])?;
    Ok(())
}

/// What the thread does at its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shutdown {
    /// Folds the log into the database.
    Folds,
    /// Leaves that to the hub that serves.
    Leaves,
}

/// The way to the thread that writes.
#[derive(Debug)]
pub(super) struct Writer {
    jobs: Mutex<Option<Sender<Box<dyn Job>>>>,
    thread: Mutex<Option<JoinHandle<()>>>,
}

impl Writer {
    /// Begins the thread, which owns the connection.
    ///
    /// # Errors
    /// `System`.
    pub(super) fn begin(conn: Connection, shutdown: Shutdown) -> Result<Writer, HubError> {
        let (send, wait) = mpsc::channel();
        let thread = thread::Builder::new()
            .name("hub-writer".to_owned())
            .spawn(move || write(&conn, &wait, shutdown))
            .map_err(|why| HubError::System(why.to_string()))?;
        Ok(Writer {
            jobs: Mutex::new(Some(send)),
            thread: Mutex::new(Some(thread)),
        })
    }

    /// Writes; answers when it is on the disk.
    pub(super) fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Connection) -> Result<T, Problem> + Send + 'static,
    ) -> Result<T, Problem> {
        let (reply, result) = mpsc::channel();
        let job = Box::new(Work {
            work: Some(work),
            result: None,
            reply,
        });
        let sent = match &*self.jobs.lock().unwrap_or_else(PoisonError::into_inner) {
            Some(jobs) => jobs.send(job).is_ok(),
            None => false,
        };
        if !sent {
            return Err(stopping());
        }
        result.recv().unwrap_or_else(|_| Err(stopping()))
    }

    /// Writes what waits and ends the thread.
    pub(super) fn end(&self) {
        let close = |slot: &Mutex<Option<JoinHandle<()>>>| {
            slot.lock().unwrap_or_else(PoisonError::into_inner).take()
        };
        drop(
            self.jobs
                .lock()
                .unwrap_or_else(PoisonError::into_inner)
                .take(),
        );
        if let Some(thread) = close(&self.thread) {
            // It ends by itself: its jobs are closed.
            let _ = thread.join();
        }
    }
}

fn write(conn: &Connection, jobs: &Receiver<Box<dyn Job>>, shutdown: Shutdown) {
    while let Ok(first) = jobs.recv() {
        let mut group = vec![first];
        while group.len() < GROUP
            && let Ok(next) = jobs.try_recv()
        {
            group.push(next);
        }
        let committed = together(conn, &mut group);
        for job in group {
            job.end(committed.clone());
        }
    }
    if shutdown == Shutdown::Leaves {
        return;
    }
    // What is not folded in now is folded in at the next opening.
    let _ = conn.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()));
}

fn together(conn: &Connection, group: &mut [Box<dyn Job>]) -> Result<(), Problem> {
    conn.execute_batch("BEGIN IMMEDIATE")?;
    for job in group {
        job.run(conn);
        // A full or failing disk ends the whole transaction by itself: nothing of the group stands.
        if conn.is_autocommit() {
            return Err(stopping_short());
        }
    }
    conn.execute_batch("COMMIT").map_err(|why| {
        let _ = conn.execute_batch("ROLLBACK");
        Problem::from(why)
    })
}

fn stopping_short() -> Problem {
    Problem::new(
        crate::problem::Code::Full,
        "the hub's disk is full or fails and nothing of this was kept: free some space there, then \
         send it again",
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::Code;

    fn table() -> Connection {
        let conn = Connection::open_in_memory().unwrap();
        conn.execute_batch("CREATE TABLE said (word TEXT UNIQUE)")
            .unwrap();
        conn
    }

    fn say(word: &'static str) -> impl FnOnce(&Connection) -> Result<usize, Problem> {
        move |conn| Ok(conn.execute("INSERT INTO said VALUES (?1)", [word])?)
    }

    #[test]
    fn one_that_fails_takes_back_its_own_writing_alone() {
        let writer = Writer::begin(table(), Shutdown::Folds).unwrap();
        let (first, second, third) = thread::scope(|all| {
            let one = all.spawn(|| writer.write(say("one")));
            let half = all.spawn(|| {
                writer.write(|conn| {
                    conn.execute("INSERT INTO said VALUES ('half')", [])?;
                    Err::<(), _>(Problem::malformed("no"))
                })
            });
            let two = all.spawn(|| writer.write(say("two")));
            (
                one.join().unwrap(),
                half.join().unwrap(),
                two.join().unwrap(),
            )
        });
        assert_eq!((first, third), (Ok(1), Ok(1)));
        assert_eq!(second, Err(Problem::new(Code::Malformed, "no")));
        let words = writer
            .write(|conn| Ok(conn.query_row("SELECT count(*) FROM said", [], |row| row.get(0))?));
        assert_eq!(words, Ok(2_i64));
    }

    #[test]
    fn after_the_end_nothing_is_taken_and_it_is_said_so() {
        let writer = Writer::begin(table(), Shutdown::Folds).unwrap();
        writer.end();
        assert_eq!(writer.write(say("late")), Err(stopping()));
    }
}
