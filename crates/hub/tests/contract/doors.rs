//! What holds at every door: versions, rates, slow askers, the end, what is told to a watcher.

use crate::stores;
use crate::talk::{Yard, answer, ask};
use serde_json::json;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::thread;
use std::time::{Duration, Instant};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

#[test]
fn hello_without_a_token_tells_which_hub_and_nothing_of_anybody() {
    let yard = Yard::new();
    let answer = ask(yard.address(), "GET", "/v1/hello", &[], b"").json();
    let mut fields: Vec<&String> = answer.as_object().unwrap().keys().collect();
    fields.sort();
    assert_eq!(fields, ["epoch", "hub_id", "limits", "protocol", "time"]);
    assert_eq!(answer["protocol"], json!({ "min": 1, "max": 1 }));
    let hello = yard.device("Ridge").hello();
    for more in ["head", "digest", "own", "company"] {
        assert!(hello.get(more).is_some(), "{more}");
    }
}

#[test]
fn a_protocol_that_is_not_spoken_is_refused_everywhere() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    for version in ["99", "0", "one"] {
        let answer = device.ask_with("GET", "/v1/feed", &[("eavebook-protocol", version)], b"");
        assert_eq!((answer.status, answer.code()), (426, "version".to_owned()));
    }
    let answer = device.ask_with("GET", "/v1/feed", &[("eavebook-protocol", "1")], b"");
    assert_eq!(answer.status, 200);
}

#[test]
fn addresses_that_are_none_are_problems_too() {
    let yard = Yard::new();
    let answer = ask(yard.address(), "GET", "/v2/feed", &[], b"");
    assert_eq!(
        (answer.status, answer.code()),
        (404, "not_found".to_owned())
    );
    let answer = ask(yard.address(), "PATCH", "/v1/hello", &[], b"");
    assert_eq!((answer.status, answer.code()), (405, "method".to_owned()));
    assert_eq!(
        answer.header("x-content-type-options").as_deref(),
        Some("nosniff")
    );
}

#[test]
fn a_device_that_asks_too_often_is_told_when_to_come_back_and_others_are_not_slowed() {
    let yard = Yard::with(|settings| settings.per_second = 5);
    let (eager, calm) = (yard.device("Ridge"), yard.device("Ridge"));
    let answer: Vec<_> = (0..60).map(|_| eager.get("/v1/conflicts")).collect();
    let slowed: Vec<_> = answer.iter().filter(|one| one.status == 429).collect();
    assert!(!slowed.is_empty());
    assert_eq!(slowed[0].code(), "rate");
    let seconds: u32 = slowed[0].header("retry-after").unwrap().parse().unwrap();
    assert!((1..=60).contains(&seconds));
    assert_eq!(calm.get("/v1/conflicts").status, 200);
}

#[test]
fn more_uploads_at_once_than_allowed_are_told_to_wait() {
    let yard = Yard::with(|settings| settings.uploads = 1);
    let device = yard.device("Ridge");
    let path = format!("/v1/blobs/{}", "0".repeat(64));
    let mut slow = TcpStream::connect(yard.address()).unwrap();
    let head = format!(
        "PUT {path} HTTP/1.1\r\nhost: hub\r\nauthorization: Bearer {}\r\n\
         expect: 100-continue\r\ncontent-length: 9\r\n\r\n",
        device.token
    );
    slow.write_all(head.as_bytes()).unwrap();
    // It is asked to go on once its place is taken.
    let mut asked = [0; 12];
    slow.read_exact(&mut asked).unwrap();
    assert_eq!(&asked, b"HTTP/1.1 100");
    let answer = device.ask("PUT", &path, b"x");
    assert_eq!((answer.status, answer.code()), (429, "rate".to_owned()));
    assert!(answer.header("retry-after").is_some());
    drop(slow);
    while device.ask("PUT", &path, b"x").status == 429 {
        thread::sleep(Duration::from_millis(20));
    }
}

#[test]
fn a_body_over_the_bound_is_refused_and_the_answer_can_be_read() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let large = vec![b' '; (8 << 20) + 1];
    for path in ["/v1/digest", "/v1/blobs/missing", "/v1/pair"] {
        let answer = device.ask("POST", path, &large);
        assert_eq!(
            (answer.status, answer.code()),
            (413, "too_large".to_owned()),
            "{path}"
        );
    }
}

#[test]
fn headers_that_do_not_end_are_given_up_within_thirty_seconds() {
    let yard = Yard::new();
    let mut slow = TcpStream::connect(yard.address()).unwrap();
    slow.set_read_timeout(Some(Duration::from_secs(60)))
        .unwrap();
    slow.write_all(b"GET /v1/hello HTTP/1.1\r\nhost: hub\r\n")
        .unwrap();
    let began = Instant::now();
    let mut rest = Vec::new();
    // Closed or reset: either ends it.
    let _ = slow.read_to_end(&mut rest);
    assert!(began.elapsed() < Duration::from_secs(45));
    assert_eq!(ask(yard.address(), "GET", "/healthz", &[], b"").status, 200);
}

#[test]
fn health_readiness_and_counts_are_told_without_a_token_and_without_names() {
    let yard = Yard::new();
    let device = yard.device("Ridge and Sons");
    device.statuses(&[device.text(JOB, 1, "{}")]);
    assert_eq!(
        ask(yard.address(), "GET", "/healthz", &[], b"").text(),
        "ok\n"
    );
    assert_eq!(
        ask(yard.address(), "GET", "/readyz", &[], b"").text(),
        "ready\n"
    );
    let answer = ask(yard.address(), "GET", "/metrics", &[], b"").text();
    assert!(
        answer.contains("eavebook_hub_entries_total{status=\"new\"} 1\n"),
        "{answer}"
    );
    assert!(
        answer.contains("eavebook_hub_pairings_total 1\n"),
        "{answer}"
    );
    assert!(!answer.contains("Ridge"), "{answer}");
}

#[test]
fn a_plain_restart_keeps_epoch_entries_and_tokens_and_leaves_no_log_beside() {
    let mut yard = Yard::new();
    let mut device = yard.device("Ridge");
    device.statuses(&[device.text(JOB, 1, "{}")]);
    yard.hub.take().unwrap().stop();
    assert!(stores::is_folded(yard.folder()));
    yard.hub = Some(eavebook_hub::RunningHub::begin(&yard.settings).unwrap());
    device.at = yard.address();
    assert_eq!(device.hello()["epoch"], json!(device.epoch));
    assert_eq!(device.feed().len(), 1);
}

#[test]
fn a_stop_ends_the_long_wait_of_a_feed_with_an_answer() {
    let mut yard = Yard::new();
    let device = yard.device("Ridge");
    let waits = thread::spawn(move || device.get("/v1/feed?wait=25"));
    thread::sleep(Duration::from_millis(300));
    let began = Instant::now();
    yard.hub.take().unwrap().stop();
    assert_eq!(waits.join().unwrap().status, 200);
    assert!(began.elapsed() < Duration::from_secs(9));
}

#[test]
fn a_second_hub_over_one_folder_is_refused() {
    let yard = Yard::new();
    let refusal = eavebook_hub::RunningHub::begin(&yard.settings).unwrap_err();
    assert_eq!(
        refusal.to_string(),
        format!(
            "another hub serves {}: stop that one, or name another --dir",
            yard.folder().display()
        )
    );
}

#[test]
fn one_connection_carries_many_requests() {
    let yard = Yard::new();
    let mut stream = TcpStream::connect(yard.address()).unwrap();
    let one = "GET /healthz HTTP/1.1\r\nhost: hub\r\n\r\n";
    let last = "GET /healthz HTTP/1.1\r\nhost: hub\r\nconnection: close\r\n\r\n";
    stream
        .write_all(format!("{one}{one}{last}").as_bytes())
        .unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    assert_eq!(answer.matches("HTTP/1.1 200 OK").count(), 3);
}

#[test]
fn what_is_no_http_is_turned_away() {
    let yard = Yard::new();
    let mut stream = TcpStream::connect(yard.address()).unwrap();
    stream
        .write_all(b"\x16\x03\x01 no http at all\r\n\r\n")
        .unwrap();
    assert_eq!(answer(&mut stream).status, 400);
}
