//! `POST /v1/entries`: each entry is taken, known, in conflict or rejected by itself; the answer
//! comes after the commit. `GET /v1/conflicts`: those whose id was taken by another content.

use crate::limits::{ENTRIES, ENTRIES_BYTES, ENTRY_BYTES};
use crate::metrics::add;
use crate::problem::{Code, Problem};
use crate::token::{self, Caller};
use crate::{Hub, body};
use axum::Json;
use axum::body::Body;
use axum::extract::State;
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use eavebook_core::book::entry::Entry;
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::value::RawValue;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;
use uuid::Uuid;

#[derive(Deserialize)]
struct Push<'a> {
    epoch: String,
    #[serde(borrow)]
    entries: Vec<&'a RawValue>,
}

/// What became of one entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct EntryReply {
    /// As it came, null where there was none.
    id: Value,
    status: Status,
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<String>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Status {
    New,
    Known,
    IdConflict,
    Rejected,
}

/// An entry that may be kept: the text as it came beside what was read of it.
#[derive(Debug)]
pub(crate) struct ValidEntry {
    pub(crate) entry: Entry,
    pub(crate) text: String,
}

impl ValidEntry {
    /// What becomes of an entry whose id is taken: known where it says the same.
    pub(crate) fn compare_with(&self, kept: &[u8]) -> Status {
        let same = kept == self.text.as_bytes()
            || std::str::from_utf8(kept)
                .ok()
                .and_then(|text| Entry::from_json(text).ok())
                .is_some_and(|kept| kept == self.entry);
        if same {
            Status::Known
        } else {
            Status::IdConflict
        }
    }

    /// SHA-256 of its fields in one order.
    pub(crate) fn content(&self) -> [u8; 32] {
        token::sha256(self.entry.to_json().as_bytes())
    }
}

/// Takes entries.
pub(crate) async fn push(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Json<Value>, Problem> {
    let sent = body::read(&headers, sent, ENTRIES_BYTES).await?;
    let (results, head) = hub
        .work(move |hub| {
            let mut results = Vec::new();
            let (mut fit, mut places) = (Vec::new(), Vec::new());
            for (place, one) in read(&sent, &caller.epoch)?.into_iter().enumerate() {
                match one {
                    Ok(one) => {
                        results.push(EntryReply::pending(&one));
                        places.push(place);
                        fit.push(one);
                    }
                    Err(rejected) => results.push(rejected),
                }
            }
            let (head, fates) = hub.rows.push(caller.company, fit)?;
            for (place, status) in places.into_iter().zip(fates) {
                results[place].settle(status);
            }
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

impl EntryReply {
    /// Of one that may be kept, until it is known what became of it.
    fn pending(fit: &ValidEntry) -> EntryReply {
        EntryReply {
            id: json!(fit.entry.id),
            status: Status::Rejected,
            reason: None,
        }
    }

    fn settle(&mut self, status: Status) {
        self.status = status;
        self.reason = (status == Status::IdConflict).then(|| {
            "another entry has this id: both are kept, and a person is to look at them".to_owned()
        });
    }
}

fn read(sent: &[u8], epoch: &str) -> Result<Vec<Result<ValidEntry, EntryReply>>, Problem> {
    let push: Push<'_> = body::json(sent)?;
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

/// The fields that hold a UUID.
const NAMES: [&str; 4] = ["id", "book", "device", "incarnation"];

/// Proves one entry, or says why it is none.
fn fit(text: &str) -> Result<ValidEntry, EntryReply> {
    let fields = serde_json::from_str::<Fields<'_>>(text);
    let id = fields
        .as_ref()
        .ok()
        .and_then(|fields| fields.0.get("id"))
        .and_then(|id| serde_json::from_str(id.get()).ok())
        .unwrap_or(Value::Null);
    let rejected = |reason: String| EntryReply {
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
    let fields = fields
        .map_err(|why| rejected(format!("this is no entry: {why}")))?
        .0;
    let written = NAMES.map(|name| fields.get(name).map(|raw| raw.get()));
    let entry = Entry::from_fields(fields).map_err(|why| rejected(why.to_string()))?;
    // One entry has one text of its names: the digest is made of them.
    let read = [entry.id, entry.book, entry.device, entry.incarnation];
    for ((name, written), read) in NAMES.into_iter().zip(written).zip(read) {
        let mut text = Uuid::encode_buffer();
        let canonical: &str = read.hyphenated().encode_lower(&mut text);
        let inner = written.and_then(|raw| raw.strip_prefix('"')?.strip_suffix('"'));
        if inner != Some(canonical) {
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
    Ok(ValidEntry {
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

/// The entries whose id was taken, each once, as they came.
pub(crate) async fn conflicts(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
) -> Result<Response, Problem> {
    let texts = hub
        .work(move |hub| hub.rows.conflicts(caller.company))
        .await?;
    let mut body = b"{\"conflicts\":[".to_vec();
    body.extend(texts.join(&b","[..]));
    body.extend(b"]}");
    Ok(([(header::CONTENT_TYPE, "application/json")], body).into_response())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_entry_is_rejected_with_its_reason() {
        let reason = |text: &str| match fit(text) {
            Err(became) => became.reason.unwrap_or_default(),
            Ok(_) => "fit".to_owned(),
        };
        assert_eq!(
            reason("7"),
            "this is no entry: invalid type: integer `7`, expected an object at line 1 column 1"
        );
        assert!(reason(r#"{"id":1,"id":2}"#).contains("the field id is said twice"));
        assert!(reason(r#"{"id":"0"}"#).contains("the field id: "));
        assert!(reason(&format!("\"{}\"", "x".repeat(ENTRY_BYTES))).contains("is over 262144"));
    }
}
