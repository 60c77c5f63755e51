//! Reading the feed.

use crate::talk::Yard;
use std::thread;
use std::time::{Duration, Instant};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);
const OTHER: Uuid = Uuid::from_u128(0xc);

#[test]
fn a_page_tells_where_the_next_begins_and_whether_there_is_more() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let texts: Vec<String> = (1..=5).map(|n| device.text(JOB, n, "{}")).collect();
    device.statuses(&texts);
    let epoch = device.epoch.clone();
    let page = device.get("/v1/feed?limit=2").json();
    assert_eq!(page["entries"].as_array().unwrap().len(), 2);
    assert_eq!(page["next"], format!("{epoch}.2"));
    assert_eq!(page["more"], true);
    let page = device.get(&format!("/v1/feed?after={epoch}.4")).json();
    assert_eq!(page["entries"][0]["seq"], 5);
    assert_eq!(page["more"], false);
    let page = device.get(&format!("/v1/feed?after={epoch}.5")).json();
    assert_eq!(
        (&page["next"], &page["more"]),
        (&format!("{epoch}.5").into(), &false.into())
    );
}

#[test]
fn a_filter_hides_other_jobs_and_moves_the_cursor_over_them() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let texts: Vec<String> = (1..=6)
        .map(|n| device.text(if n == 4 { JOB } else { OTHER }, n, "{}"))
        .collect();
    device.statuses(&texts);
    let page = device.get(&format!("/v1/feed?books={JOB}")).json();
    assert_eq!(page["entries"].as_array().unwrap().len(), 1);
    assert_eq!(page["entries"][0]["seq"], 4);
    assert_eq!(page["next"], format!("{}.6", device.epoch));
    let both = device.get(&format!("/v1/feed?books={JOB},{OTHER}")).json();
    assert_eq!(both["entries"].as_array().unwrap().len(), 6);
    let none = device.get(&format!("/v1/feed?limit=2&books={JOB}")).json();
    assert_eq!(none["next"], format!("{}.2", device.epoch));
    assert_eq!(
        (&none["entries"], &none["more"]),
        (&serde_json::json!([]), &true.into())
    );
}

#[test]
fn a_limit_over_five_hundred_is_five_hundred() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    for half in 0..2 {
        let from = half * 300;
        let texts: Vec<String> = (from..from + 300)
            .map(|n| device.text(JOB, n, "{}"))
            .collect();
        device.statuses(&texts);
    }
    let page = device.get("/v1/feed?limit=100000").json();
    assert_eq!(page["entries"].as_array().unwrap().len(), 500);
    assert_eq!(device.feed().len(), 600);
}

#[test]
fn cursors_of_another_epoch_past_the_head_or_of_no_shape_are_refused_by_their_codes() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let answer = device.get("/v1/feed?after=another.0");
    assert_eq!((answer.status, answer.code()), (409, "epoch".to_owned()));
    let answer = device.get(&format!("/v1/feed?after={}.1", device.epoch));
    assert_eq!(
        (answer.status, answer.code()),
        (410, "cursor_ahead".to_owned())
    );
    for bad in [
        "after=seven".to_owned(),
        format!("after={}.x", device.epoch),
        format!("after={}.-1", device.epoch),
        "books=7".to_owned(),
        "books=".to_owned(),
    ] {
        let answer = device.get(&format!("/v1/feed?{bad}"));
        assert_eq!(
            (answer.status, answer.code()),
            (400, "malformed".to_owned()),
            "{bad}"
        );
    }
    assert_eq!(device.get("/v1/feed?limit=x").status, 400);
}

#[test]
fn a_wait_ends_with_the_next_entry_and_not_before() {
    let yard = Yard::new();
    let (reader, writer) = (yard.device("Ridge"), yard.device("Ridge"));
    let waits = thread::spawn(move || {
        let answer = reader.get("/v1/feed?wait=25").json();
        (answer, Instant::now())
    });
    thread::sleep(Duration::from_millis(300));
    assert!(!waits.is_finished());
    let sent = Instant::now();
    writer.statuses(&[writer.text(JOB, 1, "{}")]);
    let (answer, heard) = waits.join().unwrap();
    assert_eq!(answer["entries"][0]["seq"], 1);
    assert!(heard > sent);
}

#[test]
fn a_wait_ends_empty_when_its_time_is_over_and_another_company_does_not_end_it() {
    let yard = Yard::new();
    let (reader, stranger) = (yard.device("Ridge"), yard.device("Eave"));
    let began = Instant::now();
    let waits = thread::spawn(move || reader.get("/v1/feed?wait=1").json());
    stranger.statuses(&[stranger.text(JOB, 1, "{}")]);
    let answer = waits.join().unwrap();
    assert_eq!(answer["entries"], serde_json::json!([]));
    assert!(began.elapsed() >= Duration::from_secs(1));
}

#[test]
fn a_feed_is_packed_for_who_reads_zstd() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let texts: Vec<String> = (1..=50).map(|n| device.text(JOB, n, "{}")).collect();
    device.statuses(&texts);
    let plain = device.get("/v1/feed");
    let packed = device.ask_with("GET", "/v1/feed", &[("accept-encoding", "gzip, zstd")], b"");
    assert_eq!(packed.header("content-encoding").as_deref(), Some("zstd"));
    assert!(packed.body.len() * 4 < plain.body.len());
    assert_eq!(
        zstd::stream::decode_all(&packed.body[..]).unwrap(),
        plain.body
    );
}

#[test]
fn a_page_of_large_entries_ends_near_a_mebibyte() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let large = format!("\"{}\"", "x".repeat(200_000));
    for n in 0..8 {
        device.statuses(&[device.text(JOB, n, &large)]);
    }
    let page = device.get("/v1/feed").json();
    assert_eq!(page["entries"].as_array().unwrap().len(), 6);
    assert_eq!(page["more"], true);
    assert_eq!(device.feed().len(), 8);
}
