//! One id, two contents.

use crate::talk::Yard;
use serde_json::json;
use uuid::Uuid;

const JOB: Uuid = Uuid::from_u128(0xb);

#[test]
fn an_id_that_is_taken_keeps_both_and_is_shown_once_however_often_it_is_said() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let first = device.entry(JOB, 1, "{}");
    let mut second = first.clone();
    second["author"] = json!("Bea");
    let mut third = first.clone();
    third["tomorrow"] = json!(1);
    let texts = [first.to_string(), second.to_string(), third.to_string()];
    assert_eq!(
        device.statuses(&texts),
        ["new", "id_conflict", "id_conflict"]
    );
    assert_eq!(
        device.statuses(&texts),
        ["known", "id_conflict", "id_conflict"]
    );
    assert_eq!(device.feed(), [(1, first)]);
    for _ in 0..2 {
        let answer = device.get("/v1/conflicts");
        assert_eq!(answer.json(), json!({ "conflicts": [second, third] }));
    }
}

#[test]
fn any_field_that_differs_is_a_conflict() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let first = device.entry(JOB, 1, "{}");
    assert_eq!(device.statuses(&[first.to_string()]), ["new"]);
    let other = Uuid::now_v7();
    let changes = [
        ("book", json!(other)),
        ("device", json!(other)),
        ("incarnation", json!(other)),
        ("dseq", json!(2)),
        ("author", json!("")),
        ("hlc", json!("1.1")),
        ("kind", json!("strike")),
        ("kind_version", json!(2)),
        ("local_time", json!("2026-05-02T14:41:07Z")),
        ("supersedes", json!([other])),
        ("refs", json!(["x"])),
        ("new field", json!(null)),
    ];
    for (name, value) in changes {
        let mut changed = first.clone();
        changed[name] = value;
        assert_eq!(
            device.statuses(&[changed.to_string()]),
            ["id_conflict"],
            "{name}"
        );
    }
    assert_eq!(device.hello()["digest"]["count"], 1);
}

#[test]
fn one_id_in_two_companies_is_no_conflict_and_neither_sees_the_other() {
    let yard = Yard::new();
    let (ridge, eave) = (yard.device("Ridge"), yard.device("Eave"));
    let mut one = ridge.entry(JOB, 1, "{}");
    assert_eq!(ridge.statuses(&[one.to_string()]), ["new"]);
    one["author"] = json!("Bea");
    assert_eq!(eave.statuses(&[one.to_string()]), ["new"]);
    assert_eq!(ridge.feed()[0].1["author"], "Ada");
    assert_eq!(eave.feed()[0].1["author"], "Bea");
    assert_eq!(eave.get("/v1/conflicts").json(), json!({ "conflicts": [] }));
}
