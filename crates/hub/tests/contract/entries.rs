//! Pushing entries.

use crate::talk::{Yard, entry};
use serde_json::{Value, json};
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

#[test]
fn an_entry_is_new_then_known_and_stands_in_the_feed_once() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let text = device.text(JOB, 1, "{\"text\":\"loose step\"}");
    assert_eq!(device.statuses(std::slice::from_ref(&text)), ["new"]);
    assert_eq!(
        device.statuses(&[text.clone(), text.clone()]),
        ["known", "known"]
    );
    let answer = device.push(std::slice::from_ref(&text)).json();
    let sent: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(answer["head"], 1);
    assert_eq!(answer["results"][0]["id"], sent["id"]);
    assert_eq!(device.feed(), [(1, sent)]);
}

#[test]
fn one_bad_entry_is_rejected_with_its_reason_and_the_others_land() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let good = |n| device.text(JOB, n, "{}");
    let change = |name: &str, value: Value| {
        let mut one = device.entry(JOB, 9, "{}");
        one[name] = value;
        one.to_string()
    };
    let bad = [
        ("7".to_owned(), "this is no entry"),
        ("{}".to_owned(), "the field id is missing"),
        (change("id", json!("seven")), "the field id"),
        (change("id", json!(Uuid::new_v4())), "no UUID of version 7"),
        (
            change("id", json!(Uuid::now_v7().to_string().to_uppercase())),
            "the field id is not written as a UUID is",
        ),
        (
            change("sha256", json!("0".repeat(64))),
            "does not match its SHA-256",
        ),
        (change("body", json!({})), "the field body"),
        (change("hlc", json!("soon")), "is no stamp"),
        (change("local_time", json!("noon")), "RFC 3339").clone(),
        (change("dseq", json!(-1)), "the field dseq"),
        (change("dseq", json!(u64::MAX)), "the field dseq"),
        (change("supersedes", json!("x")), "the field supersedes"),
        (
            change("author", json!("x".repeat(300_000))),
            "is over 262144",
        ),
        (
            good(8).replacen('{', "{\"kind\":\"strike\",", 1),
            "the field kind is said twice",
        ),
        (
            change("body", json!("x")).replace("\"x\"", "\"\\ud800\""),
            "the field body",
        ),
    ];
    let mut batch = vec![good(1)];
    batch.extend(bad.iter().map(|(text, _)| text.clone()));
    batch.push(good(2));
    let answer = device.push(&batch);
    assert_eq!(answer.status, 200, "{}", answer.text());
    let results = answer.json()["results"].as_array().unwrap().clone();
    assert_eq!(results.len(), batch.len());
    for (result, (text, reason)) in results[1..].iter().zip(&bad) {
        assert_eq!(result["status"], "rejected", "{text}");
        let refusal = result["reason"].as_str().unwrap();
        let expected = if *reason == "RFC 3339" {
            "local time"
        } else {
            reason
        };
        assert!(refusal.contains(expected), "{refusal} of {expected}");
    }
    assert_eq!(results[0]["status"], "new");
    assert_eq!(results[batch.len() - 1]["status"], "new");
    assert_eq!(device.feed().len(), 2);
}

#[test]
fn unknown_kinds_fields_and_bytes_are_passed_on_as_they_came() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    // The order of fields, white space, a number no float holds, NUL, and kinds of tomorrow.
    let body = "{\"a\":\u{0}1.10,\"é\":\"\u{2028}\u{1F3E0}\"}";
    let sent = device.text(JOB, 1, body).replacen(
        '{',
        "{ \"zeta\" : 1.10, \"big\":123456789012345678901234567890, \"deep\":{\"b\":1,\"a\":[ ]},\t",
        1,
    );
    let sent = sent.replace("\"note\"", "\"drone flight\"");
    assert_eq!(device.statuses(std::slice::from_ref(&sent)), ["new"]);
    let other = yard.device("Ridge");
    let answer = other.get("/v1/feed").text();
    assert!(
        answer.contains(&format!("{{\"seq\":1,\"entry\":{sent}}}")),
        "{answer}"
    );
    assert!(answer.contains("\\u0000"), "{answer}");
    assert_eq!(other.statuses(&[sent]), ["known"]);
}

#[test]
fn an_entry_said_with_its_fields_in_another_order_is_known() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let one = device.entry(JOB, 1, "{}");
    let fields: Vec<String> = one
        .as_object()
        .unwrap()
        .iter()
        .rev()
        .map(|(name, value)| format!("\"{name}\": {value}"))
        .collect();
    let turned = format!("{{{}}}", fields.join(" , "));
    assert_eq!(
        device.statuses(&[one.to_string(), turned]),
        ["new", "known"]
    );
}

#[test]
fn another_epoch_is_refused_and_told() {
    let yard = Yard::new();
    let mut device = yard.device("Ridge");
    let epoch = std::mem::replace(&mut device.epoch, "another".to_owned());
    let answer = device.push(&[device.text(JOB, 1, "{}")]);
    assert_eq!((answer.status, answer.code()), (409, "epoch".to_owned()));
    assert_eq!(answer.json()["epoch"], json!(epoch));
    assert!(device.feed().is_empty());
}

#[test]
fn five_hundred_entries_or_one_mebibyte_are_a_call_and_more_is_none() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let many: Vec<String> = (1..=501).map(|n| device.text(JOB, n, "{}")).collect();
    let answer = device.push(&many);
    assert_eq!(
        (answer.status, answer.code()),
        (413, "too_large".to_owned())
    );
    assert!(device.feed().is_empty());
    assert_eq!(device.push(&many[..500]).json()["head"], 500);
    let large = format!("\"{}\"", "x".repeat(200_000));
    let six: Vec<String> = (601..607).map(|n| device.text(JOB, n, &large)).collect();
    let answer = device.push(&six);
    assert_eq!(
        (answer.status, answer.code()),
        (413, "too_large".to_owned())
    );
    assert_eq!(device.push(&six[..5]).json()["head"], 505);
}

#[test]
fn what_is_no_push_is_malformed() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    for bad in [
        &b""[..],
        b"{",
        b"[]",
        b"{\"entries\":[]}",
        b"{\"epoch\":1,\"entries\":[]}",
        b"\xff\xfe",
        b"{\"epoch\":\"\xff\",\"entries\":[]}",
    ] {
        let answer = device.ask("POST", "/v1/entries", bad);
        assert_eq!(
            (answer.status, answer.code()),
            (400, "malformed".to_owned())
        );
    }
}

#[test]
fn packed_bodies_are_read_and_bombs_and_other_packings_refused() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let push = |entries: &str, packing: &str| {
        let body = format!("{{\"epoch\":\"{}\",\"entries\":[{entries}]}}", device.epoch);
        let packed = zstd::stream::encode_all(body.as_bytes(), 3).unwrap();
        device.ask_with(
            "POST",
            "/v1/entries",
            &[("content-encoding", packing)],
            &packed,
        )
    };
    let answer = push(&device.text(JOB, 1, "{}"), "zstd");
    assert_eq!(answer.status, 200, "{}", answer.text());
    let bomb = format!("\"{}\"", "x".repeat(40 << 20));
    let answer = push(&bomb, "zstd");
    assert_eq!(
        (answer.status, answer.code()),
        (413, "too_large".to_owned())
    );
    assert_eq!(push("", "gzip").code(), "encoding");
    let cut = zstd::stream::encode_all(&b"{\"epoch\":\"\",\"entries\":[]}"[..], 3).unwrap();
    let headers = [("content-encoding", "zstd")];
    let answer = device.ask_with("POST", "/v1/entries", &headers, &cut[..cut.len() - 3]);
    assert_eq!(
        (answer.status, answer.code()),
        (400, "malformed".to_owned())
    );
}

#[test]
fn hello_tells_each_life_of_the_device_and_its_last_count() {
    let yard = Yard::new();
    let (device, other) = (yard.device("Ridge"), yard.device("Ridge"));
    let mut second = device.entry(JOB, 4, "{}");
    second["incarnation"] = json!(Uuid::from_u128(8));
    device.statuses(&[
        device.text(JOB, 1, "{}"),
        device.text(JOB, 9, "{}"),
        second.to_string(),
        other.text(JOB, 77, "{}"),
    ]);
    let answer = device.hello();
    assert_eq!(
        answer["own"],
        json!([
            { "incarnation": Uuid::from_u128(7), "max_dseq": 9 },
            { "incarnation": Uuid::from_u128(8), "max_dseq": 4 },
        ])
    );
    assert_eq!(answer["head"], 4);
    assert_eq!(answer["duplicate"], false);
}

#[test]
fn two_phones_with_one_identity_lose_nothing_and_are_flagged() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (one, two) = (device.text(JOB, 5, "1"), device.text(JOB, 5, "2"));
    assert_eq!(device.statuses(&[one, two]), ["new", "new"]);
    assert_eq!(device.hello()["duplicate"], true);
    assert_eq!(device.feed().len(), 2);
}

#[test]
fn clocks_ten_years_off_are_taken_like_any() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let at = |hlc: &str, time: &str| {
        let mut one = entry(Uuid::now_v7(), JOB, device.id, 1, "{}");
        one["hlc"] = json!(hlc);
        one["local_time"] = json!(time);
        one.to_string()
    };
    let answer = device.statuses(&[
        at("0.0", "1970-01-01T00:00:00Z"),
        at("281474976710655.65535", "9999-12-31T23:59:59+14:00"),
    ]);
    assert_eq!(answer, ["new", "new"]);
}
