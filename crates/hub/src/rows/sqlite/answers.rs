//! What the file is asked, in SQL.

use super::Sqlite;
use crate::code::Way;
use crate::devices::PairedDevice;
use crate::entries::{Status, ValidEntry};
use crate::pairing::TRIES;
use crate::problem::Problem;
use crate::rows::{
    Arrival, CompanyState, Identity, KeptCode, Page, PageQuery, Pairing, Photo, Rows, gone,
    kept_digest,
};
use crate::token::{self, Caller};
use crate::{limits, now};
use eavebook_core::book::digest::SetDigest;
use rusqlite::{Connection, OptionalExtension, params};
use std::sync::PoisonError;
use tokio::sync::watch;
use uuid::Uuid;

impl Rows for Sqlite {
    fn identity(&self) -> Result<Identity, Problem> {
        self.read(|conn| {
            Ok(conn
                .prepare_cached("SELECT hub_id, epoch, url FROM hub")?
                .query_row([], |row| {
                    Ok(Identity {
                        hub_id: row.get(0)?,
                        epoch: row.get(1)?,
                        url: row.get(2)?,
                    })
                })?)
        })
    }

    fn reached_at(&self, url: &str) -> Result<(), Problem> {
        let url = url.to_owned();
        self.writer
            .write(move |conn| Ok(conn.execute("UPDATE hub SET url = ?1", [url])?))
            .map(drop)
    }

    fn ready(&self) -> Result<(), Problem> {
        self.writer
            .write(|conn| Ok(conn.query_row("SELECT count(*) FROM hub", [], |_| Ok(()))?))
    }

    fn copy_to(&self, file: &std::path::Path) -> Result<(), Problem> {
        self.read(|conn| Ok(conn.backup("main", file, rusqlite::backup::NO_PROGRESS)?))
    }

    fn committed(&self, company: i64) -> watch::Receiver<u64> {
        self.wakes.subscribe(company)
    }

    fn close(&self) {
        self.readers
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clear();
        self.writer.end();
    }

    fn device(&self, token_id: &str) -> Result<Option<(Vec<u8>, Caller)>, Problem> {
        self.read(|conn| {
            let sql = "SELECT d.token_sha256, d.token_id, d.device, d.company, c.name, d.author,
                              d.duplicate, h.epoch
                       FROM devices d JOIN companies c ON c.id = d.company, hub h
                       WHERE d.token_id = ?1 AND d.revoked IS NULL";
            let row = conn.prepare_cached(sql)?.query_row([token_id], |row| {
                let caller = Caller {
                    token_id: row.get(1)?,
                    device: row.get(2)?,
                    company: row.get(3)?,
                    company_name: row.get(4)?,
                    author: row.get(5)?,
                    duplicate: row.get(6)?,
                    epoch: row.get(7)?,
                };
                Ok((row.get(0)?, caller))
            });
            Ok(row.optional()?)
        })
    }

    fn push(&self, company: i64, entries: Vec<ValidEntry>) -> Result<(u64, Vec<Status>), Problem> {
        let (head, fates) = self
            .writer
            .write(move |conn| keep_all(conn, company, &entries))?;
        if fates.contains(&Status::New) {
            self.wakes.wake(company);
        }
        Ok((head, fates))
    }

    fn conflicts(&self, company: i64) -> Result<Vec<Vec<u8>>, Problem> {
        self.read(|conn| {
            let sql = "SELECT entry FROM conflicts WHERE company = ?1 ORDER BY row";
            let mut query = conn.prepare_cached(sql)?;
            let rows = query.query_map([company], |row| row.get(0))?;
            Ok(rows.collect::<rusqlite::Result<_>>()?)
        })
    }

    fn company_state(&self, caller: &Caller) -> Result<CompanyState, Problem> {
        self.read(|conn| {
            let snapshot = conn.unchecked_transaction()?;
            let (head, digest) = head(&snapshot, caller.company)?;
            let mut query = snapshot.prepare_cached(
                "SELECT incarnation, max(dseq) FROM entries WHERE company = ?1 AND device = ?2
                 GROUP BY incarnation ORDER BY incarnation",
            )?;
            let lives = query.query_map((caller.company, &caller.device), |row| {
                Ok((row.get(0)?, row.get(1)?))
            })?;
            Ok(CompanyState {
                head,
                digest,
                own: lives.collect::<rusqlite::Result<_>>()?,
            })
        })
    }

    fn page(&self, asked: &PageQuery) -> Result<Page, Problem> {
        self.read(|conn| {
            // One snapshot for the head and the rows.
            let snapshot = conn.unchecked_transaction()?;
            let mut page = Page {
                head: head(&snapshot, asked.company)?.0,
                next: asked.after,
                ..Page::default()
            };
            let mut bytes = 0;
            let mut query = snapshot.prepare_cached(
                "SELECT seq, book, entry FROM entries WHERE company = ?1 AND seq > ?2
                 ORDER BY seq LIMIT ?3",
            )?;
            let mut rows = query.query((asked.company, asked.after, asked.limit))?;
            while bytes < limits::PAGE_BYTES
                && let Some(row) = rows.next()?
            {
                page.next = row.get(0)?;
                let shown = match &asked.books {
                    None => true,
                    Some(books) => row
                        .get::<_, String>(1)?
                        .parse()
                        .is_ok_and(|book| books.contains(&book)),
                };
                if shown {
                    let text: Vec<u8> = row.get(2)?;
                    bytes += text.len();
                    page.entries.push((page.next, text));
                }
            }
            Ok(page)
        })
    }

    fn walk(
        &self,
        company: i64,
        book: Option<Uuid>,
        see: &mut dyn FnMut(Uuid, Uuid, &str),
    ) -> Result<(), Problem> {
        let (sql, book) = match book {
            None => (
                "SELECT id, book, sha256 FROM entries WHERE company = ?1 AND ?2 = '' ORDER BY id",
                String::new(),
            ),
            Some(book) => (
                "SELECT id, book, sha256 FROM entries WHERE company = ?1 AND book = ?2 ORDER BY id",
                book.to_string(),
            ),
        };
        self.read(|conn| {
            let mut query = conn.prepare_cached(sql)?;
            let mut rows = query.query((company, book))?;
            while let Some(row) = rows.next()? {
                let (id, book, sha256): (String, String, String) =
                    (row.get(0)?, row.get(1)?, row.get(2)?);
                if let (Ok(id), Ok(book)) = (id.parse(), book.parse()) {
                    see(id, book, &sha256);
                }
            }
            Ok(())
        })
    }

    fn photos(&self, company: i64, sha256: &[String]) -> Result<Vec<(String, u64)>, Problem> {
        self.read(|conn| {
            let sql = "SELECT size FROM blobs WHERE company = ?1 AND sha256 = ?2";
            let mut query = conn.prepare_cached(sql)?;
            let mut photos = Vec::new();
            for sha256 in sha256 {
                let size = query.query_row((company, sha256), |row| row.get(0));
                if let Some(size) = size.optional()? {
                    photos.push((sha256.clone(), size));
                }
            }
            Ok(photos)
        })
    }

    fn publish(&self, photo: &Photo) -> Result<Arrival, Problem> {
        let photo = photo.clone();
        let added = self.writer.write(move |conn| {
            Ok(conn
                .prepare_cached(
                    "INSERT INTO blobs (company, sha256, size) VALUES (?1, ?2, ?3)
                     ON CONFLICT (company, sha256) DO NOTHING",
                )?
                .execute(params![photo.company, photo.sha256, photo.size])?)
        })?;
        Ok(if added == 0 {
            Arrival::Known
        } else {
            Arrival::New
        })
    }

    fn forget(&self, company: i64, sha256: &str) -> Result<(), Problem> {
        let sha256 = sha256.to_owned();
        self.writer
            .write(move |conn| {
                let sql = "DELETE FROM blobs WHERE company = ?1 AND sha256 = ?2";
                Ok(conn.execute(sql, (company, sha256))?)
            })
            .map(drop)
    }

    fn devices(&self) -> Result<Vec<PairedDevice>, Problem> {
        self.read(|conn| {
            let sql = "SELECT d.device, d.name, c.name, d.author, d.paired, d.revoked, d.duplicate
                       FROM devices d JOIN companies c ON c.id = d.company
                       ORDER BY c.name, d.paired, d.device";
            let mut query = conn.prepare(sql)?;
            let rows = query.query_map([], |row| {
                Ok(PairedDevice {
                    device_id: row.get(0)?,
                    name: row.get(1)?,
                    company: row.get(2)?,
                    author: row.get(3)?,
                    paired: row.get(4)?,
                    revoked: row.get(5)?,
                    duplicate: row.get(6)?,
                })
            })?;
            Ok(rows.collect::<rusqlite::Result<_>>()?)
        })
    }

    fn revoke(&self, device: &str) -> Result<usize, Problem> {
        let device = device.trim().to_ascii_lowercase();
        self.writer.write(move |conn| {
            let sql = "UPDATE devices SET revoked = coalesce(revoked, ?2) WHERE device = ?1";
            Ok(conn.execute(sql, (device, now()))?)
        })
    }

    fn keep_code(&self, code: &KeptCode) -> Result<bool, Problem> {
        let code = code.clone();
        self.writer.write(move |conn| {
            let today = chrono::Utc::now().timestamp();
            conn.execute("DELETE FROM codes WHERE ends <= ?1", [today])?;
            let company = company(conn, &code.company)?;
            let added = conn.execute(
                "INSERT OR IGNORE INTO codes (name, company, author, typed_sha256, link_sha256, ends)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                params![
                    code.name,
                    company,
                    code.author,
                    &code.typed_sha256[..],
                    &code.link_sha256[..],
                    code.ends,
                ],
            )?;
            Ok(added == 1)
        })
    }

    fn pair(&self, pairing: &Pairing) -> Result<Option<(String, String)>, Problem> {
        let (code, way) = (pairing.code.clone(), pairing.way);
        let (device, name) = (pairing.device.to_string(), pairing.name.clone());
        let (token_id, token_sha256) = (pairing.drawn.id.clone(), pairing.drawn.sha256);
        self.writer.write(move |conn| {
            // A wrong try is written too, so it is no failure of the writing.
            let Some(company) = spend(conn, &code, way)? else {
                return Ok(None);
            };
            let author = company.author.unwrap_or_else(|| name.clone());
            conn.execute(
                "INSERT INTO devices (company, device, name, author, paired, token_id, token_sha256)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
                 ON CONFLICT (company, device) DO UPDATE SET name = ?3, author = ?4, paired = ?5,
                     token_id = ?6, token_sha256 = ?7, revoked = NULL, duplicate = 0",
                params![
                    company.id,
                    device,
                    name,
                    author,
                    now(),
                    token_id,
                    &token_sha256[..]
                ],
            )?;
            Ok(Some((company.name, author)))
        })
    }
}

/// The company of a name, made where it is new.
fn company(conn: &Connection, name: &str) -> rusqlite::Result<i64> {
    conn.execute(
        "INSERT OR IGNORE INTO companies (name, sum) VALUES (?1, ?2)",
        (name, SetDigest::default().hex()),
    )?;
    conn.query_row("SELECT id FROM companies WHERE name = ?1", [name], |row| {
        row.get(0)
    })
}

/// Where a company stands: its last number and the digest of its entries.
fn head(conn: &Connection, company: i64) -> Result<(u64, SetDigest), Problem> {
    let found = conn
        .prepare_cached("SELECT seq, count, sum FROM companies WHERE id = ?1")?
        .query_row([company], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get::<_, String>(2)?))
        })
        .optional()?;
    let (seq, count, sum) = found.ok_or_else(gone)?;
    Ok((seq, kept_digest(count, &sum)?))
}

/// Keeps what is fit. Returns the head after it and each one's fate.
fn keep_all(
    conn: &Connection,
    company: i64,
    entries: &[ValidEntry],
) -> Result<(u64, Vec<Status>), Problem> {
    let (mut head, mut digest) = head(conn, company)?;
    let before = head;
    let mut fates = Vec::with_capacity(entries.len());
    for fit in entries {
        let status = keep_one(conn, company, head + 1, fit)?;
        if status == Status::New {
            head += 1;
            digest = digest.with(fit.entry.id, &fit.entry.sha256);
        }
        fates.push(status);
    }
    if head > before {
        conn.prepare_cached("UPDATE companies SET seq = ?2, count = ?3, sum = ?4 WHERE id = ?1")?
            .execute((company, head, digest.count, digest.hex()))?;
    }
    Ok((head, fates))
}

fn keep_one(
    conn: &Connection,
    company: i64,
    seq: u64,
    fit: &ValidEntry,
) -> Result<Status, Problem> {
    let entry = &fit.entry;
    let life = (
        company,
        entry.device.to_string(),
        entry.incarnation.to_string(),
        entry.dseq,
    );
    let added = conn
        .prepare_cached(
            "INSERT INTO entries
                 (company, seq, id, book, device, incarnation, dseq, sha256, entry)
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)
             ON CONFLICT (company, id) DO NOTHING",
        )?
        .execute(params![
            company,
            seq,
            entry.id.to_string(),
            entry.book.to_string(),
            life.1,
            life.2,
            life.3,
            entry.sha256,
            fit.text.as_bytes(),
        ])?;
    if added == 1 {
        // One count of one life in two entries: two phones hold one identity.
        let counted: u64 = conn
            .prepare_cached(
                "SELECT count(*) FROM entries
                 WHERE company = ?1 AND device = ?2 AND incarnation = ?3 AND dseq = ?4",
            )?
            .query_row((life.0, &life.1, &life.2, life.3), |row| row.get(0))?;
        if counted > 1 {
            conn.execute(
                "UPDATE devices SET duplicate = 1 WHERE company = ?1 AND device = ?2",
                (company, &life.1),
            )?;
        }
        return Ok(Status::New);
    }
    let kept: Vec<u8> = conn
        .prepare_cached("SELECT entry FROM entries WHERE company = ?1 AND id = ?2")?
        .query_row((company, entry.id.to_string()), |row| row.get(0))?;
    let status = fit.compare_with(&kept);
    if status == Status::IdConflict {
        conn.prepare_cached(
            "INSERT OR IGNORE INTO conflicts (company, id, content, entry) VALUES (?1, ?2, ?3, ?4)",
        )?
        .execute((
            company,
            entry.id.to_string(),
            &fit.content()[..],
            fit.text.as_bytes(),
        ))?;
    }
    Ok(status)
}

/// Whose a code was that was good.
struct Company {
    id: i64,
    name: String,
    author: Option<String>,
}

/// Takes a code out of use where it is the right one; counts a wrong try against its name.
fn spend(
    conn: &Connection,
    code: &crate::code::Code,
    way: Way,
) -> Result<Option<Company>, Problem> {
    let found = conn
        .prepare_cached(
            "SELECT o.company, c.name, o.author, o.typed_sha256, o.link_sha256
             FROM codes o JOIN companies c ON c.id = o.company
             WHERE o.name = ?1 AND o.ends > ?2 AND o.tries < ?3",
        )?
        .query_row(
            (code.name(), chrono::Utc::now().timestamp(), TRIES),
            |row| {
                let company = Company {
                    id: row.get(0)?,
                    name: row.get(1)?,
                    author: row.get(2)?,
                };
                let kept: Vec<u8> = match way {
                    Way::Typed => row.get(3)?,
                    Way::Link => row.get(4)?,
                };
                Ok((company, kept))
            },
        )
        .optional()?;
    let Some((company, kept)) = found else {
        return Ok(None);
    };
    if token::same(&kept, &code.sha256()) {
        conn.execute("DELETE FROM codes WHERE name = ?1", [code.name()])?;
        Ok(Some(company))
    } else {
        conn.execute(
            "UPDATE codes SET tries = tries + 1 WHERE name = ?1",
            [code.name()],
        )?;
        Ok(None)
    }
}
