//! `GET /v1/feed`: every committed entry once, in the order of its number.

use crate::Hub;
use crate::entries::other_epoch;
use crate::keep::{self, Keep};
use crate::limits::{PAGE, PAGE_BYTES, WAIT};
use crate::problem::{Code, Problem};
use crate::token::Caller;
use axum::extract::rejection::QueryRejection;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use std::collections::BTreeSet;
use std::io::Write;
use std::sync::Arc;
use std::time::Duration;
use tokio::time::Instant;
use uuid::Uuid;

#[derive(Deserialize)]
pub(crate) struct Asks {
    after: Option<String>,
    limit: Option<u64>,
    wait: Option<u64>,
    books: Option<String>,
}

/// One page of the feed.
#[derive(Default)]
struct Page {
    entries: Vec<(u64, Vec<u8>)>,
    /// The last number looked at, also of what a filter hides.
    next: u64,
    more: bool,
}

/// A page of the feed; where it would be empty, waits for the next commit of the company.
pub(crate) async fn feed(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    asks: Result<Query<Asks>, QueryRejection>,
) -> Result<Response, Problem> {
    let Query(asks) = asks.map_err(|why| {
        Problem::malformed(format!(
            "the feed is asked with after, limit, wait and books: {}",
            why.body_text()
        ))
    })?;
    let after = after(asks.after.as_deref(), &hub.keep.epoch)?;
    let books = asks.books.as_deref().map(books).transpose()?.map(Arc::new);
    let limit = asks.limit.unwrap_or(PAGE).clamp(1, PAGE);
    let until = Instant::now() + Duration::from_secs(asks.wait.unwrap_or(0)).min(WAIT);
    let mut committed = hub.keep.writer.committed();
    let mut stopping = hub.stopping.clone();
    loop {
        // Marked before the look, so that no commit falls between the look and the wait.
        committed.borrow_and_update();
        let (company, books) = (caller.company, books.clone());
        let page = hub
            .read(move |keep| page(keep, company, after, limit, books.as_deref()))
            .await?;
        if page.next > after || *stopping.borrow() || Instant::now() >= until {
            return Ok(told(&hub.keep.epoch, &page));
        }
        tokio::select! {
            changed = committed.changed() => {
                if changed.is_err() {
                    return Ok(told(&hub.keep.epoch, &page));
                }
            }
            _ = stopping.changed() => {}
            () = tokio::time::sleep_until(until) => {}
        }
    }
}

fn after(text: Option<&str>, epoch: &str) -> Result<u64, Problem> {
    let Some(text) = text.filter(|text| !text.is_empty() && *text != "0") else {
        return Ok(0);
    };
    let (named, seq) = text.rsplit_once('.').ok_or_else(|| {
        Problem::malformed("a cursor is an epoch, a point and a number: give the last `next`")
    })?;
    if named != epoch {
        return Err(other_epoch(epoch));
    }
    seq.parse().map_err(|_| {
        Problem::malformed("a cursor ends with a number: give the last `next` as it came")
    })
}

fn books(text: &str) -> Result<BTreeSet<String>, Problem> {
    text.split(',')
        .map(|book| {
            let book: Uuid = book.trim().parse().map_err(|_| {
                Problem::malformed("`books` holds the ids of jobs with commas between them")
            })?;
            Ok(book.to_string())
        })
        .collect()
}

fn page(
    keep: &Keep,
    company: i64,
    after: u64,
    limit: u64,
    books: Option<&BTreeSet<String>>,
) -> Result<Page, Problem> {
    keep.read(|conn| {
        // One snapshot for the head and the rows.
        let snapshot = conn.unchecked_transaction()?;
        let (head, _) = keep::head(&snapshot, company)?;
        if after > head {
            return Err(Problem::new(
                Code::CursorAhead,
                "this cursor is past the last entry, so this hub has less than it had: begin its \
                 feed anew and offer every entry again",
            )
            .with("head", head));
        }
        let mut page = Page {
            next: after,
            ..Page::default()
        };
        let mut bytes = 0;
        let mut query = snapshot.prepare_cached(
            "SELECT seq, book, entry FROM entries WHERE company = ?1 AND seq > ?2
             ORDER BY seq LIMIT ?3",
        )?;
        let mut rows = query.query((company, after, limit))?;
        while bytes < PAGE_BYTES
            && let Some(row) = rows.next()?
        {
            page.next = row.get(0)?;
            let book: String = row.get(1)?;
            if books.is_none_or(|books| books.contains(&book)) {
                let text: Vec<u8> = row.get(2)?;
                bytes += text.len();
                page.entries.push((page.next, text));
            }
        }
        page.more = page.next < head;
        Ok(page)
    })
}

fn told(epoch: &str, page: &Page) -> Response {
    let mut text = b"{\"entries\":[".to_vec();
    for (place, (seq, entry)) in page.entries.iter().enumerate() {
        if place > 0 {
            text.push(b',');
        }
        let _ = write!(text, "{{\"seq\":{seq},\"entry\":");
        text.extend(entry);
        text.push(b'}');
    }
    let _ = write!(
        text,
        "],\"next\":\"{epoch}.{}\",\"more\":{}}}",
        page.next, page.more
    );
    ([(header::CONTENT_TYPE, "application/json")], text).into_response()
}
