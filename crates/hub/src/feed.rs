//! `GET /v1/feed`: every committed entry once, in the order of its number.

use crate::Hub;
use crate::entries::other_epoch;
use crate::limits::{PAGE, WAIT};
use crate::problem::{Code, Problem};
use crate::rows::{Page, PageQuery};
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
pub(crate) struct FeedQuery {
    after: Option<String>,
    limit: Option<u64>,
    wait: Option<u64>,
    books: Option<String>,
}

/// A page of the feed; where it would be empty, waits for the next commit of the company.
pub(crate) async fn feed(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    query: Result<Query<FeedQuery>, QueryRejection>,
) -> Result<Response, Problem> {
    let Query(query) = query.map_err(|why| {
        Problem::malformed(format!(
            "the feed is asked with after, limit, wait and books: {}",
            why.body_text()
        ))
    })?;
    let epoch = caller.epoch;
    let page_query = PageQuery {
        company: caller.company,
        after: after(query.after.as_deref(), &epoch)?,
        limit: query.limit.unwrap_or(PAGE).clamp(1, PAGE),
        books: query.books.as_deref().map(books).transpose()?,
    };
    let until = Instant::now() + Duration::from_secs(query.wait.unwrap_or(0)).min(WAIT);
    let mut committed = hub.rows.committed(caller.company);
    let mut stopping = hub.stopping.clone();
    loop {
        // Marked before the look, so that no commit falls between the look and the wait.
        committed.borrow_and_update();
        let query = page_query.clone();
        let page = hub.work(move |hub| hub.rows.page(&query)).await?;
        if page_query.after > page.head {
            return Err(Problem::new(
                Code::CursorAhead,
                "this cursor is past the last entry, so this hub has less than it had: begin its \
                 feed anew and offer every entry again",
            )
            .with("head", page.head));
        }
        if page.next > page_query.after || *stopping.borrow() || Instant::now() >= until {
            return Ok(page_response(&epoch, &page));
        }
        tokio::select! {
            changed = committed.changed() => {
                if changed.is_err() {
                    // Taken out while nobody waited: waited for anew.
                    committed = hub.rows.committed(page_query.company);
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

fn books(text: &str) -> Result<BTreeSet<Uuid>, Problem> {
    text.split(',')
        .map(|book| {
            book.trim().parse().map_err(|_| {
                Problem::malformed("`books` holds the ids of jobs with commas between them")
            })
        })
        .collect()
}

fn page_response(epoch: &str, page: &Page) -> Response {
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
        page.next,
        page.next < page.head
    );
    ([(header::CONTENT_TYPE, "application/json")], text).into_response()
}
