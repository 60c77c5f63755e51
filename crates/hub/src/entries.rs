//! `POST /v1/entries`: each entry is taken, known, in conflict or rejected by itself; the answer
//! comes after the commit. `GET /v1/conflicts`: those whose id was taken by another content.

use crate::limits::{ENTRIES, ENTRIES_BYTES, ENTRY_BYTES};
use crate::metrics::add;
use crate::problem::{Code, Problem};
use crate::token::{self, Caller};
use crate::{Hub, body, keep};
use axum::Json;
use axum::body::Body;
use axum::extract::State;
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use eavebook_core::book::entry::Entry;
use rusqlite::{Connection, params};
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::value::RawValue;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

#[derive(Deserialize)]
struct Push {
    epoch: String,
    entries: Vec<Box<RawValue>>,
}

/// What became of one entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Became {
    /// As it came, null where there was none.
    id: Value,
    status: Status,
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<String>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
enum Status {
    New,
    Known,
    IdConflict,
    Rejected,
}

/// An entry that may be kept: the text as it came beside what was read of it.
struct Fit {
    entry: Entry,
    text: String,
}

/// Takes entries.
pub(crate) async fn push(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Json<Value>, Problem> {
    let sent = body::read(&headers, sent, ENTRIES_BYTES).await?;
    let epoch = hub.keep.epoch.clone();
    let read = hub.read(move |_| read(&sent, &epoch)).await?;
    let company = caller.company;
    let (results, head) = hub
        .keep
        .writer
        .write(move |conn| {
            let (head, mut results) = keep_all(conn, company, &read)?;
            results.extend(
                read.into_iter()
                    .enumerate()
                    .filter_map(|(place, one)| one.err().map(|rejected| (place, rejected))),
            );
            results.sort_by_key(|(place, _)| *place);
            let results: Vec<Became> = results.into_iter().map(|(_, became)| became).collect();
            Ok((results, head))
        })
        .await?;
    for became in &results {
        let count = match became.status {
            Status::New => &hub.metrics.entries_new,
            Status::Known => &hub.metrics.entries_known,
            Status::IdConflict => &hub.metrics.entries_conflict,
            Status::Rejected => &hub.metrics.entries_rejected,
        };
        add(count, 1);
    }
    Ok(Json(json!({ "results": results, "head": head })))
}

fn read(sent: &[u8], epoch: &str) -> Result<Vec<Result<Fit, Became>>, Problem> {
    let push: Push = body::json(sent)?;
    if push.epoch != epoch {
        return Err(other_epoch(epoch));
    }
    if push.entries.len() > ENTRIES {
        return Err(Problem::new(
            Code::TooLarge,
            format!(
                "{} entries are more than {ENTRIES} in one call and none was taken: send them in \
                 several",
                push.entries.len()
            ),
        ));
    }
    Ok(push.entries.iter().map(|raw| fit(raw.get())).collect())
}

/// That the asker speaks of a time before a restore.
pub(crate) fn other_epoch(epoch: &str) -> Problem {
    Problem::new(
        Code::Epoch,
        "this hub was restored from a backup since: begin its feed anew and offer every entry again",
    )
    .with("epoch", epoch)
}

/// Proves one entry, or says why it is none.
fn fit(text: &str) -> Result<Fit, Became> {
    let fields = serde_json::from_str::<Fields<'_>>(text);
    let id = fields
        .as_ref()
        .ok()
        .and_then(|fields| fields.0.get("id"))
        .and_then(|id| serde_json::from_str(id.get()).ok())
        .unwrap_or(Value::Null);
    let rejected = |reason: String| Became {
        id: id.clone(),
        status: Status::Rejected,
        reason: Some(reason),
    };
    if text.len() > ENTRY_BYTES {
        return Err(rejected(format!(
            "an entry of {} bytes is over {ENTRY_BYTES}: put what is large into a photo",
            text.len()
        )));
    }
    let fields = fields.map_err(|why| rejected(format!("this is no entry: {why}")))?;
    let entry = Entry::from_json(text).map_err(|why| rejected(why.to_string()))?;
    // One entry has one text of its names: the digest is made of them.
    let names = [
        ("id", entry.id),
        ("book", entry.book),
        ("device", entry.device),
        ("incarnation", entry.incarnation),
    ];
    for (name, read) in names {
        let canonical = format!("\"{read}\"");
        if fields.0.get(name).is_none_or(|raw| raw.get() != canonical) {
            return Err(rejected(format!(
                "the field {name} is not written as a UUID is: write {read}"
            )));
        }
    }
    if i64::try_from(entry.dseq).is_err() {
        return Err(rejected(
            "the field dseq is over 9223372036854775807: count from 1".to_owned(),
        ));
    }
    Ok(Fit {
        entry,
        text: text.to_owned(),
    })
}

/// The fields of an object, each said once: two readers must not read two things.
struct Fields<'a>(BTreeMap<String, &'a RawValue>);

impl<'de: 'a, 'a> Deserialize<'de> for Fields<'a> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Each;
        impl<'de> Visitor<'de> for Each {
            type Value = BTreeMap<String, &'de RawValue>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("an object")
            }

            fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<Self::Value, M::Error> {
                let mut fields = BTreeMap::new();
                while let Some((name, value)) = map.next_entry::<String, &RawValue>()? {
                    if fields.contains_key(&name) {
                        return Err(M::Error::custom(format!("the field {name} is said twice")));
                    }
                    fields.insert(name, value);
                }
                Ok(fields)
            }
        }
        from.deserialize_map(Each).map(Fields)
    }
}

/// Keeps what is fit. Returns the head after it and each one's place and fate.
fn keep_all(
    conn: &Connection,
    company: i64,
    read: &[Result<Fit, Became>],
) -> Result<(u64, Vec<(usize, Became)>), Problem> {
    let (mut head, mut digest) = keep::head(conn, company)?;
    let before = head;
    let mut results = Vec::new();
    for (place, one) in read.iter().enumerate() {
        let Ok(fit) = one else {
            continue;
        };
        let status = keep_one(conn, company, head + 1, fit)?;
        if status == Status::New {
            head += 1;
            digest = digest.with(fit.entry.id, &fit.entry.sha256);
        }
        let became = Became {
            id: json!(fit.entry.id),
            status,
            reason: (status == Status::IdConflict).then(|| {
                "another entry has this id: both are kept, and a person is to look at them"
                    .to_owned()
            }),
        };
        results.push((place, became));
    }
    if head > before {
        conn.prepare_cached("UPDATE companies SET seq = ?2, count = ?3, sum = ?4 WHERE id = ?1")?
            .execute((company, head, digest.count, digest.hex()))?;
    }
    Ok((head, results))
}

fn keep_one(conn: &Connection, company: i64, seq: u64, fit: &Fit) -> Result<Status, Problem> {
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
    let there: Vec<u8> = conn
        .prepare_cached("SELECT entry FROM entries WHERE company = ?1 AND id = ?2")?
        .query_row((company, entry.id.to_string()), |row| row.get(0))?;
    if there == fit.text.as_bytes() {
        return Ok(Status::Known);
    }
    let same = std::str::from_utf8(&there)
        .ok()
        .and_then(|text| Entry::from_json(text).ok())
        .is_some_and(|there| there == *entry);
    if same {
        return Ok(Status::Known);
    }
    conn.prepare_cached(
        "INSERT OR IGNORE INTO conflicts (company, id, content, entry) VALUES (?1, ?2, ?3, ?4)",
    )?
    .execute((
        company,
        entry.id.to_string(),
        &token::sha256(entry.to_json().as_bytes())[..],
        fit.text.as_bytes(),
    ))?;
    Ok(Status::IdConflict)
}

/// The entries whose id was taken, each once, as they came.
pub(crate) async fn conflicts(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
) -> Result<Response, Problem> {
    let texts = hub
        .read(move |keep| {
            keep.read(|conn| {
                let sql = "SELECT entry FROM conflicts WHERE company = ?1 ORDER BY row";
                let mut query = conn.prepare_cached(sql)?;
                let rows = query.query_map([caller.company], |row| row.get::<_, Vec<u8>>(0))?;
                Ok(rows.collect::<rusqlite::Result<Vec<_>>>()?)
            })
        })
        .await?;
    let mut told = b"{\"conflicts\":[".to_vec();
    told.extend(texts.join(&b","[..]));
    told.extend(b"]}");
    Ok(([(header::CONTENT_TYPE, "application/json")], told).into_response())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_entry_is_rejected_with_its_reason() {
        let said = |text: &str| match fit(text) {
            Err(became) => became.reason.unwrap_or_default(),
            Ok(_) => "fit".to_owned(),
        };
        assert_eq!(
            said("7"),
            "this is no entry: invalid type: integer `7`, expected an object at line 1 column 1"
        );
        assert!(said(r#"{"id":1,"id":2}"#).contains("the field id is said twice"));
        assert!(said(r#"{"id":"0"}"#).contains("the field id: "));
        assert!(said(&format!("\"{}\"", "x".repeat(ENTRY_BYTES))).contains("is over 262144"));
    }
}
