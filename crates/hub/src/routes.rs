//! All routes, and what holds for each of them: the protocol's version, headers, a log line.

use crate::hello::PROTOCOL;
use crate::metrics::add;
use crate::problem::{Code, Problem};
use crate::token::CallerSlot;
use crate::{Hub, body, devices, digest, entries, feed, hello, pairing, photos};
use axum::Router;
use axum::extract::{MatchedPath, Request, State};
use axum::http::{HeaderMap, HeaderValue, header};
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use axum::routing::{MethodRouter, delete, get, post, put};
use serde_json::json;
use std::sync::Arc;
use std::time::Instant;

/// The header in which a device says what it speaks.
const SPOKEN: &str = "eavebook-protocol";

/// The router over what a hub holds.
pub(crate) fn router(hub: Arc<Hub>) -> Router {
    let mut router = Router::new();
    for (path, methods) in routes() {
        router = router.route(path, methods);
    }
    router
        .method_not_allowed_fallback(|| async {
            Problem::new(Code::Method, "this address is not asked in this way")
        })
        .fallback(|| async { Problem::new(Code::NotFound, "there is nothing at this address") })
        .layer(middleware::from_fn_with_state(Arc::clone(&hub), around))
        .with_state(hub)
}

/// Every address and how it is asked. `openapi.json` says what each takes and gives.
fn routes() -> Vec<(&'static str, MethodRouter<Arc<Hub>>)> {
    vec![
        ("/v1/openapi.json", get(document)),
        ("/v1/hello", get(hello::hello)),
        ("/v1/pair", post(pairing::pair)),
        ("/v1/entries", post(entries::push)),
        ("/v1/conflicts", get(entries::conflicts)),
        ("/v1/feed", get(feed::feed)),
        ("/v1/digest", post(digest::digest)),
        ("/v1/blobs/missing", post(photos::missing)),
        ("/v1/blobs/{sha256}", put(photos::put).get(photos::get)),
        ("/v1/blobs/{sha256}/parts", get(photos::parts)),
        ("/v1/blobs/{sha256}/parts/{part}", put(photos::put_part)),
        ("/v1/blobs/{sha256}/complete", post(photos::complete)),
        ("/v1/devices", get(devices::list)),
        ("/v1/devices/{device}", delete(devices::revoke)),
        ("/healthz", get(|| async { "ok\n" })),
        ("/readyz", get(ready)),
        ("/metrics", get(metrics)),
    ]
}

/// The document of what is spoken here (OpenAPI 3.1).
const DOCUMENT: &str = include_str!("openapi.json");

async fn document() -> Response {
    ([(header::CONTENT_TYPE, "application/json")], DOCUMENT).into_response()
}

/// Whether it takes writing now.
async fn ready(State(hub): State<Arc<Hub>>) -> Result<&'static str, Problem> {
    if *hub.stopping.borrow() {
        return Err(crate::problem::stopping());
    }
    hub.work(|hub| hub.rows.ready()).await?;
    Ok("ready\n")
}

async fn metrics(State(hub): State<Arc<Hub>>) -> Response {
    let kind = "text/plain; version=0.0.4; charset=utf-8";
    ([(header::CONTENT_TYPE, kind)], hub.metrics.text()).into_response()
}

/// What holds for every request.
async fn around(State(hub): State<Arc<Hub>>, mut request: Request, next: Next) -> Response {
    let began = Instant::now();
    let method = request.method().to_string();
    // The route, not the address: an address may hold anything.
    let route = request
        .extensions()
        .get::<MatchedPath>()
        .map_or_else(|| "none".to_owned(), |path| path.as_str().to_owned());
    let slot = CallerSlot::default();
    request.extensions_mut().insert(slot.clone());
    let reads = request.headers().clone();
    let mut response = match spoken(&reads) {
        Ok(()) => body::packed(&reads, next.run(request).await).await,
        Err(refused) => refused.into_response(),
    };
    let headers = response.headers_mut();
    headers.insert(
        header::X_CONTENT_TYPE_OPTIONS,
        HeaderValue::from_static("nosniff"),
    );
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    let status = response.status();
    add(
        if status.is_server_error() {
            &hub.metrics.failed
        } else if status.is_client_error() {
            &hub.metrics.refused
        } else {
            &hub.metrics.answered_well
        },
        1,
    );
    let mut line = json!({
        "method": method,
        "route": route,
        "status": status.as_u16(),
        "ms": u64::try_from(began.elapsed().as_millis()).unwrap_or(u64::MAX),
    });
    if let (Some(line), Some(caller)) = (line.as_object_mut(), slot.0.get()) {
        line.insert("device".to_owned(), json!(caller.device));
        line.insert("company".to_owned(), json!(caller.company));
    }
    hub.log.tell("request", line);
    response
}

/// That the protocol a device names is spoken here; one that names none speaks the first.
fn spoken(headers: &HeaderMap) -> Result<(), Problem> {
    let Some(named) = headers.get(SPOKEN) else {
        return Ok(());
    };
    let version = named
        .to_str()
        .ok()
        .and_then(|text| text.trim().parse().ok());
    match version {
        Some(version) if PROTOCOL.contains(&version) => Ok(()),
        Some(_) | None => Err(Problem::new(
            Code::Version,
            format!(
                "this hub speaks versions {} to {} of the protocol: update the older of the two",
                PROTOCOL.start(),
                PROTOCOL.end()
            ),
        )
        .with("min", *PROTOCOL.start())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn the_document_names_every_address_that_is_served_and_no_other() {
        let document: serde_json::Value = serde_json::from_str(DOCUMENT).unwrap();
        let named = document["paths"].as_object().unwrap();
        let named: BTreeSet<&str> = named.keys().map(String::as_str).collect();
        let served: BTreeSet<&str> = routes().into_iter().map(|(path, _)| path).collect();
        assert_eq!(named, served);
    }

    #[test]
    fn the_document_names_every_reason_to_refuse() {
        let document: serde_json::Value = serde_json::from_str(DOCUMENT).unwrap();
        let named = &document["components"]["schemas"]["Problem"]["properties"]["code"]["enum"];
        assert_eq!(*named, json!(Code::ALL.map(Code::name)));
    }
}
