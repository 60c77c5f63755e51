//! What the database is asked, in SQL.

use super::{Postgres, QueryError};
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
use deadpool_postgres::{Client, Object, Transaction};
use eavebook_core::book::digest::SetDigest;
use futures_util::TryStreamExt;
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::pin::pin;
use tokio::sync::watch;
use tokio_postgres::Row;
use tokio_postgres::types::ToSql;
use uuid::Uuid;

/// A count, which is never below nought.
fn count(row: &Row, column: usize) -> Result<u64, QueryError> {
    Ok(u64::try_from(row.try_get::<_, i64>(column)?).unwrap_or_default())
}

fn head(row: Option<&Row>) -> Result<(u64, SetDigest), QueryError> {
    let row = row.ok_or_else(gone)?;
    let sum: String = row.try_get(2)?;
    Ok((count(row, 0)?, kept_digest(count(row, 1)?, &sum)?))
}

impl Rows for Postgres {
    fn identity(&self) -> Result<Identity, Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = client
                .prepare_cached("SELECT hub_id, epoch, url FROM hub")
                .await?;
            let row = client.query_one(&sql, &[]).await?;
            Ok(Identity {
                hub_id: row.try_get(0)?,
                epoch: row.try_get(1)?,
                url: row.try_get(2)?,
            })
        })
    }

    fn reached_at(&self, url: &str) -> Result<(), Problem> {
        self.wait(async {
            let client = self.client().await?;
            client.execute("UPDATE hub SET url = $1", &[&url]).await?;
            Ok(())
        })
    }

    fn ready(&self) -> Result<(), Problem> {
        self.wait(async {
            let client = self.client().await?;
            // Written and not changed: a standby, or a full disk, refuses it.
            client.execute("UPDATE hub SET one = one", &[]).await?;
            Ok(())
        })
    }

    fn copy_to(&self, file: &std::path::Path) -> Result<(), Problem> {
        let mut target = crate::rows::sqlite::fresh(file)?;
        self.copy_into(&mut target)
    }

    fn committed(&self, company: i64) -> watch::Receiver<u64> {
        self.wakes.subscribe(company)
    }

    fn close(&self) {
        self.pool.close();
    }

    fn device(&self, token_id: &str) -> Result<Option<(Vec<u8>, Caller)>, Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = client
                .prepare_cached(
                    "SELECT d.token_sha256, d.token_id, d.device::text, d.company, c.name, d.author,
                            d.duplicate, h.epoch
                     FROM devices d JOIN companies c ON c.id = d.company, hub h
                     WHERE d.token_id = $1 AND d.revoked IS NULL",
                )
                .await?;
            let Some(row) = client.query_opt(&sql, &[&token_id]).await? else {
                return Ok(None);
            };
            let caller = Caller {
                token_id: row.try_get(1)?,
                device: row.try_get(2)?,
                company: row.try_get(3)?,
                company_name: row.try_get(4)?,
                author: row.try_get(5)?,
                duplicate: row.try_get(6)?,
                epoch: row.try_get(7)?,
            };
            Ok(Some((row.try_get(0)?, caller)))
        })
    }

    fn push(&self, company: i64, entries: Vec<ValidEntry>) -> Result<(u64, Vec<Status>), Problem> {
        let (head, fates) = self.lines.join(company, entries, |entries| {
            self.wait(async {
                let client = self.client().await?;
                let kept = keep_all(&client, company, entries).await;
                // A connection that cannot even take back is not used again.
                if kept.is_err() && client.batch_execute("ROLLBACK").await.is_err() {
                    drop(Object::take(client));
                }
                kept
            })
        })?;
        if fates.contains(&Status::New) {
            self.wakes.wake(company);
            // It ends with the hub.
            let _ = self.news.send(company);
        }
        Ok((head, fates))
    }

    fn conflicts(&self, company: i64) -> Result<Vec<Vec<u8>>, Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = client
                .prepare_cached("SELECT entry FROM conflicts WHERE company = $1 ORDER BY row")
                .await?;
            let rows = client.query(&sql, &[&company]).await?;
            Ok(rows
                .iter()
                .map(|row| row.try_get(0))
                .collect::<Result<_, _>>()?)
        })
    }

    fn company_state(&self, caller: &Caller) -> Result<CompanyState, Problem> {
        let device: Uuid = caller.device.parse().unwrap_or_default();
        self.wait(async {
            let client = self.client().await?;
            let company = client
                .prepare_cached("SELECT seq, count, sum FROM companies WHERE id = $1")
                .await?;
            let lives = client
                .prepare_cached(
                    "SELECT incarnation::text, max(dseq) FROM entries
                     WHERE company = $1 AND device = $2
                     GROUP BY incarnation ORDER BY incarnation",
                )
                .await?;
            let (head, digest) = self::head(
                client
                    .query_opt(&company, &[&caller.company])
                    .await?
                    .as_ref(),
            )?;
            let mut own = Vec::new();
            for row in client.query(&lives, &[&caller.company, &device]).await? {
                own.push((row.try_get(0)?, count(&row, 1)?));
            }
            Ok(CompanyState { head, digest, own })
        })
    }

    fn page(&self, asked: &PageQuery) -> Result<Page, Problem> {
        let books: Option<Vec<Uuid>> = asked
            .books
            .as_ref()
            .map(|books| books.iter().copied().collect());
        let (after, limit) = (signed(asked.after), signed(asked.limit));
        let most = signed(limits::PAGE_BYTES as u64);
        self.wait(async {
            let client = self.client().await?;
            let company = client
                .prepare_cached("SELECT seq, count, sum FROM companies WHERE id = $1")
                .await?;
            let entries = client
                .prepare_cached(
                    "SELECT seq, CASE WHEN shown THEN entry END FROM (
                         SELECT seq, entry, shown,
                                sum(CASE WHEN shown THEN octet_length(entry) ELSE 0 END)
                                    OVER (ORDER BY seq ROWS UNBOUNDED PRECEDING)
                                - CASE WHEN shown THEN octet_length(entry) ELSE 0 END AS before
                         FROM (SELECT seq, entry, $4::uuid[] IS NULL OR book = ANY ($4) AS shown
                               FROM entries WHERE company = $1 AND seq > $2
                               ORDER BY seq LIMIT $3) page
                     ) measured WHERE before < $5 ORDER BY seq",
                )
                .await?;
            // The head first: entries that come between the two are past it, and none is missed.
            let asks: [&(dyn ToSql + Sync); 1] = [&asked.company];
            let more: [&(dyn ToSql + Sync); 5] = [&asked.company, &after, &limit, &books, &most];
            let (company, rows) = tokio::try_join!(
                client.query_opt(&company, &asks),
                client.query(&entries, &more)
            )?;
            let mut page = Page {
                head: head(company.as_ref())?.0,
                next: asked.after,
                ..Page::default()
            };
            for row in rows {
                page.next = count(&row, 0)?;
                if let Some(text) = row.try_get(1)? {
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
        self.wait(async {
            let mut client = self.client().await?;
            let look = client.transaction().await?;
            // A large company takes longer than any other question.
            look.batch_execute("SET LOCAL statement_timeout = '60s'")
                .await?;
            let sql = "SELECT id, book, sha256 FROM entries
                       WHERE company = $1 AND ($2::uuid IS NULL OR book = $2) ORDER BY id";
            let asks: [&(dyn ToSql + Sync); 2] = [&company, &book];
            let mut rows = pin!(look.query_raw(sql, asks).await?);
            while let Some(row) = rows.try_next().await? {
                see(row.try_get(0)?, row.try_get(1)?, row.try_get(2)?);
            }
            Ok(())
        })
    }

    fn photos(&self, company: i64, sha256: &[String]) -> Result<Vec<(String, u64)>, Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = client
                .prepare_cached(
                    "SELECT sha256, size FROM blobs WHERE company = $1 AND sha256 = ANY ($2)",
                )
                .await?;
            let mut photos = Vec::new();
            for row in client.query(&sql, &[&company, &sha256]).await? {
                photos.push((row.try_get(0)?, count(&row, 1)?));
            }
            Ok(photos)
        })
    }

    fn publish(&self, photo: &Photo) -> Result<Arrival, Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = "INSERT INTO blobs (company, sha256, size) VALUES ($1, $2, $3)
                       ON CONFLICT (company, sha256) DO NOTHING";
            let sql = client.prepare_cached(sql).await?;
            let size = signed(photo.size);
            let added = client
                .execute(&sql, &[&photo.company, &photo.sha256, &size])
                .await?;
            Ok(if added == 0 {
                Arrival::Known
            } else {
                Arrival::New
            })
        })
    }

    fn forget(&self, company: i64, sha256: &str) -> Result<(), Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = "DELETE FROM blobs WHERE company = $1 AND sha256 = $2";
            client.execute(sql, &[&company, &sha256]).await?;
            Ok(())
        })
    }

    fn devices(&self) -> Result<Vec<PairedDevice>, Problem> {
        self.wait(async {
            let client = self.client().await?;
            let sql = "SELECT d.device::text, d.name, c.name, d.author, d.paired, d.revoked,
                              d.duplicate
                       FROM devices d JOIN companies c ON c.id = d.company
                       ORDER BY c.name, d.paired, d.device";
            let mut all = Vec::new();
            for row in client.query(sql, &[]).await? {
                all.push(PairedDevice {
                    device_id: row.try_get(0)?,
                    name: row.try_get(1)?,
                    company: row.try_get(2)?,
                    author: row.try_get(3)?,
                    paired: row.try_get(4)?,
                    revoked: row.try_get(5)?,
                    duplicate: row.try_get(6)?,
                });
            }
            Ok(all)
        })
    }

    fn revoke(&self, device: &str) -> Result<usize, Problem> {
        let Ok(device) = device.trim().parse::<Uuid>() else {
            return Ok(0);
        };
        self.wait(async {
            let client = self.client().await?;
            let sql = "UPDATE devices SET revoked = coalesce(revoked, $2) WHERE device = $1";
            let changed = client.execute(sql, &[&device, &now()]).await?;
            Ok(usize::try_from(changed).unwrap_or(usize::MAX))
        })
    }

    fn keep_code(&self, code: &KeptCode) -> Result<bool, Problem> {
        self.wait(async {
            let mut client = self.client().await?;
            let change = client.transaction().await?;
            let today = chrono::Utc::now().timestamp();
            change
                .execute("DELETE FROM codes WHERE ends <= $1", &[&today])
                .await?;
            let empty = SetDigest::default().hex();
            let sql = "INSERT INTO companies (name, sum) VALUES ($1, $2) ON CONFLICT DO NOTHING";
            change.execute(sql, &[&code.company, &empty]).await?;
            let sql = "INSERT INTO codes (name, company, author, typed_sha256, link_sha256, ends)
                       SELECT $1, id, $3, $4, $5, $6 FROM companies WHERE name = $2
                       ON CONFLICT (name) DO NOTHING";
            let added = change
                .execute(
                    sql,
                    &[
                        &code.name,
                        &code.company,
                        &code.author,
                        &&code.typed_sha256[..],
                        &&code.link_sha256[..],
                        &code.ends,
                    ],
                )
                .await?;
            change.commit().await?;
            Ok(added == 1)
        })
    }

    fn pair(&self, pairing: &Pairing) -> Result<Option<(String, String)>, Problem> {
        self.wait(async {
            let mut client = self.client().await?;
            let change = client.transaction().await?;
            let paired = match spend(&change, pairing).await? {
                None => None,
                Some((company, name, author)) => {
                    let author = author.unwrap_or_else(|| pairing.name.clone());
                    let sql = "INSERT INTO devices
                                   (company, device, name, author, paired, token_id, token_sha256)
                               VALUES ($1, $2, $3, $4, $5, $6, $7)
                               ON CONFLICT (company, device) DO UPDATE SET name = $3, author = $4,
                                   paired = $5, token_id = $6, token_sha256 = $7, revoked = NULL,
                                   duplicate = FALSE";
                    change
                        .execute(
                            sql,
                            &[
                                &company,
                                &pairing.device,
                                &pairing.name,
                                &author,
                                &now(),
                                &pairing.drawn.id,
                                &&pairing.drawn.sha256[..],
                            ],
                        )
                        .await?;
                    Some((name, author))
                }
            };
            // A wrong try is kept too.
            change.commit().await?;
            Ok(paired)
        })
    }
}

/// A number that fits: all that are counted here are far below half of what 64 bits hold.
fn signed(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}

/// Takes a code out of use where it is the right one; counts a wrong try against its name.
async fn spend(
    change: &Transaction<'_>,
    pairing: &Pairing,
) -> Result<Option<(i64, String, Option<String>)>, QueryError> {
    let today = chrono::Utc::now().timestamp();
    let tries = i32::try_from(TRIES).unwrap_or(i32::MAX);
    let name = pairing.code.name();
    // Held: tries at two hubs at once are two tries.
    let sql = "SELECT o.company, c.name, o.author, o.typed_sha256, o.link_sha256
               FROM codes o JOIN companies c ON c.id = o.company
               WHERE o.name = $1 AND o.ends > $2 AND o.tries < $3 FOR UPDATE OF o";
    let Some(row) = change.query_opt(sql, &[&name, &today, &tries]).await? else {
        return Ok(None);
    };
    let kept: Vec<u8> = match pairing.way {
        Way::Typed => row.try_get(3)?,
        Way::Link => row.try_get(4)?,
    };
    if token::same(&kept, &pairing.code.sha256()) {
        change
            .execute("DELETE FROM codes WHERE name = $1", &[&name])
            .await?;
        Ok(Some((row.try_get(0)?, row.try_get(1)?, row.try_get(2)?)))
    } else {
        let sql = "UPDATE codes SET tries = tries + 1 WHERE name = $1";
        change.execute(sql, &[&name]).await?;
        Ok(None)
    }
}

/// What is new of some entries, a column each.
#[derive(Default)]
struct NewEntries<'a> {
    seq: Vec<i64>,
    id: Vec<Uuid>,
    book: Vec<Uuid>,
    device: Vec<Uuid>,
    incarnation: Vec<Uuid>,
    dseq: Vec<i64>,
    sha256: Vec<&'a str>,
    entry: Vec<&'a [u8]>,
}

/// Counts that are not above the last of their life, a column each: each may be one that is taken.
#[derive(Default)]
struct RepeatedCounts {
    device: Vec<Uuid>,
    incarnation: Vec<Uuid>,
    dseq: Vec<i64>,
}

/// The last count of some lives, as far as they are known. A step along the index for each: looked
/// for by a join, a young table without statistics would be read whole.
const LAST_OF_LIVES: &str = "
    SELECT life.device, life.incarnation, last.dseq
    FROM unnest($2::uuid[], $3::uuid[]) AS life (device, incarnation)
    CROSS JOIN LATERAL (
        SELECT e.dseq FROM entries e
        WHERE e.company = $1 AND e.device = life.device AND e.incarnation = life.incarnation
        ORDER BY e.dseq DESC LIMIT 1
    ) last";

fn life(fit: &ValidEntry) -> (Uuid, Uuid) {
    (fit.entry.device, fit.entry.incarnation)
}

/// Keeps what is fit, in one transaction. Returns the head after it and each one's fate; after an
/// error the transaction may still be open.
///
/// Its beginning is sent with what is asked first and its end with what is written last: three answers
/// are waited for, not five. The company's row is held first, and what is there is looked up in a
/// statement after that, which sees all that was committed before: so two hubs number after each
/// other, without a gap.
async fn keep_all(
    client: &Client,
    company: i64,
    entries: &[ValidEntry],
) -> Result<(u64, Vec<Status>), QueryError> {
    // Prepared before anything is sent: what is sent together goes in its order.
    let hold = client
        .prepare_cached("SELECT seq, count, sum FROM companies WHERE id = $1 FOR NO KEY UPDATE")
        .await?;
    let look = client
        .prepare_cached("SELECT id, entry FROM entries WHERE company = $1 AND id = ANY ($2)")
        .await?;
    let counted = client.prepare_cached(LAST_OF_LIVES).await?;
    let insert = client.prepare_cached(ADD).await?;
    let number = client
        .prepare_cached("UPDATE companies SET seq = $2, count = $3, sum = $4 WHERE id = $1")
        .await?;
    let ids: Vec<Uuid> = entries.iter().map(|fit| fit.entry.id).collect();
    let lives: BTreeSet<(Uuid, Uuid)> = entries.iter().map(life).collect();
    let (devices, incarnations): (Vec<Uuid>, Vec<Uuid>) = lives.into_iter().unzip();
    let asks: [&(dyn ToSql + Sync); 1] = [&company];
    let more: [&(dyn ToSql + Sync); 2] = [&company, &ids];
    let lives: [&(dyn ToSql + Sync); 3] = [&company, &devices, &incarnations];
    let ((), held, kept_rows, counted) = tokio::try_join!(
        biased;
        client.batch_execute("BEGIN"),
        client.query_opt(&hold, &asks),
        client.query(&look, &more),
        client.query(&counted, &lives)
    )?;
    let (mut head, mut digest) = head(held.as_ref())?;
    let mut last: BTreeMap<(Uuid, Uuid), i64> = BTreeMap::new();
    for row in &counted {
        last.insert((row.try_get(0)?, row.try_get(1)?), row.try_get(2)?);
    }
    let mut texts: BTreeMap<Uuid, Cow<'_, [u8]>> = BTreeMap::new();
    for row in &kept_rows {
        texts.insert(row.try_get(0)?, Cow::Owned(row.try_get(1)?));
    }
    let (mut new, mut fates, mut taken) = (NewEntries::default(), Vec::new(), Vec::new());
    let mut again = RepeatedCounts::default();
    for fit in entries {
        let entry = &fit.entry;
        let status = match texts.get(&entry.id) {
            Some(kept) => fit.compare_with(kept),
            None => Status::New,
        };
        if status == Status::New {
            texts.insert(entry.id, Cow::Borrowed(fit.text.as_bytes()));
            head += 1;
            digest = digest.with(entry.id, &entry.sha256);
            new.seq.push(signed(head));
            new.id.push(entry.id);
            new.book.push(entry.book);
            new.device.push(entry.device);
            new.incarnation.push(entry.incarnation);
            let dseq = signed(entry.dseq);
            new.dseq.push(dseq);
            let last = last.entry(life(fit)).or_insert(i64::MIN);
            // A count above the last of its life is no other's.
            if dseq > *last {
                *last = dseq;
            } else {
                again.device.push(entry.device);
                again.incarnation.push(entry.incarnation);
                again.dseq.push(dseq);
            }
            new.sha256.push(&entry.sha256);
            new.entry.push(fit.text.as_bytes());
        } else if status == Status::IdConflict {
            taken.push(fit);
        }
        fates.push(status);
    }
    for fit in taken {
        let sql = "INSERT INTO conflicts (company, id, content, entry) VALUES ($1, $2, $3, $4)
                   ON CONFLICT (company, content) DO NOTHING";
        let (content, text) = (fit.content(), fit.text.as_bytes());
        client
            .execute(sql, &[&company, &fit.entry.id, &&content[..], &text])
            .await?;
    }
    let (last, count, sum) = (signed(head), signed(digest.count), digest.hex());
    let rows: [&(dyn ToSql + Sync); 9] = [
        &company,
        &new.seq,
        &new.id,
        &new.book,
        &new.device,
        &new.incarnation,
        &new.dseq,
        &new.sha256,
        &new.entry,
    ];
    let numbers: [&(dyn ToSql + Sync); 4] = [&company, &last, &count, &sum];
    if new.seq.is_empty() {
        client.batch_execute("COMMIT").await?;
    } else if again.dseq.is_empty() {
        // Where one of them fails, the end takes all of it back.
        tokio::try_join!(
            biased;
            client.execute(&insert, &rows),
            client.execute(&number, &numbers),
            client.batch_execute("COMMIT")
        )?;
    } else {
        client.execute(&insert, &rows).await?;
        client.execute(&number, &numbers).await?;
        mark_twice(client, company, &again).await?;
        client.batch_execute("COMMIT").await?;
    }
    Ok((head, fates))
}

/// Entries, a column each.
const ADD: &str = "
    INSERT INTO entries (company, seq, id, book, device, incarnation, dseq, sha256, entry)
    SELECT $1, new.* FROM unnest($2::bigint[], $3::uuid[], $4::uuid[], $5::uuid[], $6::uuid[],
        $7::bigint[], $8::text[], $9::bytea[]) AS new";

/// One count of one life in two entries: two phones hold one identity.
async fn mark_twice(
    client: &Client,
    company: i64,
    again: &RepeatedCounts,
) -> Result<(), QueryError> {
    let sql = "UPDATE devices SET duplicate = TRUE WHERE company = $1 AND NOT duplicate AND device IN (
                   SELECT e.device FROM entries e
                   JOIN unnest($2::uuid[], $3::uuid[], $4::bigint[]) AS n (device, incarnation, dseq)
                       ON e.device = n.device AND e.incarnation = n.incarnation AND e.dseq = n.dseq
                   WHERE e.company = $1
                   GROUP BY e.device, e.incarnation, e.dseq HAVING count(DISTINCT e.id) > 1)";
    let sql = client.prepare_cached(sql).await?;
    let asks: [&(dyn ToSql + Sync); 4] = [&company, &again.device, &again.incarnation, &again.dseq];
    client.execute(&sql, &asks).await?;
    Ok(())
}
