//! Comparing sets and finding what differs.

use crate::talk::{Device, Yard};
use eavebook_core::book::digest::SetDigest;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use uuid::Uuid;

fn digest(of: &[&Value]) -> SetDigest {
    of.iter().fold(SetDigest::default(), |sum, one| {
        let id = one["id"].as_str().unwrap().parse().unwrap();
        sum.with(id, one["sha256"].as_str().unwrap())
    })
}

fn compare(device: &Device, scope: &str, mine: SetDigest) -> Value {
    let asks = json!({ "scope": scope, "count": mine.count, "sum": mine.hex() });
    let answer = device.post("/v1/digest", &asks);
    assert_eq!(answer.status, 200, "{}", answer.text());
    answer.json()
}

#[test]
fn equal_sets_are_the_same_at_every_scope() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let job = Uuid::now_v7();
    let all: Vec<Value> = (1..=20).map(|n| device.entry(job, n, "{}")).collect();
    assert_eq!(
        compare(&device, "company", SetDigest::default()),
        json!({ "same": true })
    );
    let texts: Vec<String> = all.iter().map(Value::to_string).collect();
    device.statuses(&texts);
    let mine = digest(&all.iter().collect::<Vec<_>>());
    assert_eq!(compare(&device, "company", mine), json!({ "same": true }));
    assert_eq!(
        compare(&device, &format!("book:{job}"), mine),
        json!({ "same": true })
    );
    let answer = device.hello();
    assert_eq!(answer["digest"], json!({ "count": 20, "sum": mine.hex() }));
}

#[test]
fn a_difference_is_found_from_the_company_down_to_its_ids() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let jobs = [Uuid::now_v7(), Uuid::now_v7()];
    let mut all: Vec<Value> = (0..60)
        .map(|n| device.entry(jobs[n % 2], n as u64, "{}"))
        .collect();
    let texts: Vec<String> = all.iter().map(Value::to_string).collect();
    device.statuses(&texts);
    // What the phone lacks.
    let lost = all.remove(17);
    let mut found = Vec::new();
    let mut open = vec!["company".to_owned()];
    while let Some(scope) = open.pop() {
        let mine: Vec<&Value> = all.iter().filter(|one| is_in(one, &scope)).collect();
        let answer = compare(&device, &scope, digest(&mine));
        if answer["same"] == true {
            continue;
        }
        let ours: BTreeMap<&str, ()> = mine
            .iter()
            .map(|one| (one["id"].as_str().unwrap(), ()))
            .collect();
        for id in answer["ids"].as_array().into_iter().flatten() {
            if !ours.contains_key(id.as_str().unwrap()) {
                found.push(id.clone());
            }
        }
        for part in answer["scopes"].as_array().into_iter().flatten() {
            let name = part["scope"].as_str().unwrap();
            let mine: Vec<&Value> = all.iter().filter(|one| is_in(one, name)).collect();
            let same = part["sum"] == digest(&mine).hex() && part["count"] == mine.len();
            if !same {
                open.push(name.to_owned());
            }
        }
    }
    assert_eq!(found, [lost["id"].clone()]);
}

fn is_in(one: &Value, scope: &str) -> bool {
    let (book, id) = (one["book"].as_str().unwrap(), one["id"].as_str().unwrap());
    match scope
        .strip_prefix("book:")
        .map(|rest| rest.split_once('/').unwrap_or((rest, "")))
    {
        None => true,
        Some((named, byte)) => book == named && id.ends_with(byte),
    }
}

#[test]
fn a_job_that_the_hub_has_not_is_told_as_empty() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let job = Uuid::now_v7();
    let mine = digest(&[&device.entry(job, 1, "{}")]);
    let answer = compare(&device, &format!("book:{job}"), mine);
    assert_eq!(answer, json!({ "same": false, "scopes": [] }));
    let answer = compare(&device, &format!("book:{job}/00"), mine);
    assert_eq!(answer, json!({ "same": false, "ids": [] }));
}

#[test]
fn what_is_no_scope_is_malformed() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let answer = device.post(
        "/v1/digest",
        &json!({ "scope": "all", "count": 0, "sum": "" }),
    );
    assert_eq!(
        (answer.status, answer.code()),
        (400, "malformed".to_owned())
    );
}
