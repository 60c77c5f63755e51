//! Pairing, tokens, turning out.

use crate::stores;
use crate::talk::{Yard, ask, pair};
use serde_json::json;
use uuid::Uuid;

const DEVICE: Uuid = Uuid::from_u128(0xd);

#[test]
fn a_typed_code_becomes_a_token_and_tells_company_and_author() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", Some("Ada")).unwrap();
    assert_eq!(codes.typed.len(), 10);
    let answer = pair(yard.address(), &codes.typed, DEVICE);
    assert_eq!(answer.status, 201);
    let answer = answer.json();
    assert_eq!(
        (&answer["device_id"], &answer["company"], &answer["author"]),
        (&json!(DEVICE), &json!("Ridge"), &json!("Ada"))
    );
    let token = answer["token"].as_str().unwrap();
    let (id, secret) = token.split_once('.').unwrap();
    assert!(id.starts_with("dev_") && secret.len() == 43, "{token}");
}

#[test]
fn a_link_names_the_address_the_pin_and_a_code_that_works() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let hub = yard.hub.as_ref().unwrap();
    let start = format!("{}#pin={}&code=", hub.url, hub.pin);
    let code = codes.link.strip_prefix(&start).unwrap();
    assert_eq!(code.len(), 30);
    assert_eq!(pair(yard.address(), code, DEVICE).status, 201);
}

#[test]
fn a_code_is_read_as_a_person_writes_it() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let written = codes
        .typed
        .to_lowercase()
        .replace('0', "o")
        .replace('1', "l");
    let written = format!("{}-{}", &written[..4], &written[4..]);
    assert_eq!(pair(yard.address(), &written, DEVICE).status, 201);
}

#[test]
fn a_code_works_once_in_either_form() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let link = codes.link.rsplit('=').next().unwrap();
    assert_eq!(pair(yard.address(), &codes.typed, DEVICE).status, 201);
    for spent in [codes.typed.as_str(), link] {
        let answer = pair(yard.address(), spent, DEVICE);
        assert_eq!(
            (answer.status, answer.code()),
            (401, "pair_code".to_owned())
        );
    }
}

#[test]
fn five_tries_wrong_in_the_last_sign_end_a_code_and_no_other() {
    let yard = Yard::new();
    let tried = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let other = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let last = if tried.typed.ends_with('0') { '2' } else { '0' };
    let wrong = format!("{}{last}", &tried.typed[..9]);
    for _ in 0..5 {
        assert_eq!(pair(yard.address(), &wrong, DEVICE).status, 401);
    }
    assert_eq!(pair(yard.address(), &tried.typed, DEVICE).status, 401);
    assert_eq!(pair(yard.address(), &other.typed, DEVICE).status, 201);
}

#[test]
fn four_wrong_tries_do_not_end_a_code() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let last = if codes.typed.ends_with('0') { '2' } else { '0' };
    let wrong = format!("{}{last}", &codes.typed[..9]);
    for _ in 0..4 {
        assert_eq!(pair(yard.address(), &wrong, DEVICE).status, 401);
    }
    assert_eq!(pair(yard.address(), &codes.typed, DEVICE).status, 201);
}

#[test]
fn a_code_of_ten_minutes_ago_is_no_code() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let aged = |seconds| stores::age_codes(yard.folder(), seconds);
    aged(590);
    let fresh = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    assert_eq!(pair(yard.address(), &codes.typed, DEVICE).status, 201);
    aged(601);
    assert_eq!(pair(yard.address(), &fresh.typed, DEVICE).status, 401);
}

#[test]
fn a_device_without_a_name_is_refused_and_the_code_stays() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let asks = json!({ "code": codes.typed, "device_name": " ", "device_id": DEVICE });
    let answer = ask(
        yard.address(),
        "POST",
        "/v1/pair",
        &[],
        asks.to_string().as_bytes(),
    );
    assert_eq!(
        (answer.status, answer.code()),
        (400, "malformed".to_owned())
    );
    assert_eq!(pair(yard.address(), &codes.typed, DEVICE).status, 201);
}

#[test]
fn a_token_that_is_wrong_cut_or_absent_is_refused() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let (id, secret) = device.token.split_once('.').unwrap();
    let other = yard.device("Other");
    let (_, others) = other.token.split_once('.').unwrap();
    let bad = [
        String::new(),
        "Bearer".to_owned(),
        format!("Bearer {id}"),
        format!("Bearer {id}."),
        format!("Bearer {id}.{}", &secret[1..]),
        format!("Bearer {id}.{others}"),
        format!("Basic {}", device.token),
        "Bearer dev_é.x".to_owned(),
    ];
    for bad in bad {
        for path in ["/v1/feed", "/v1/hello", "/v1/conflicts", "/v1/devices"] {
            let answer = ask(yard.address(), "GET", path, &[("authorization", &bad)], b"");
            assert_eq!(
                (answer.status, answer.code()),
                (401, "token".to_owned()),
                "{bad} {path}"
            );
        }
    }
    assert_eq!(ask(yard.address(), "GET", "/v1/feed", &[], b"").status, 401);
}

#[test]
fn a_device_turned_out_is_out_at_once_and_what_it_sent_stays() {
    let yard = Yard::new();
    let (lost, kept) = (yard.device("Ridge"), yard.device("Ridge"));
    assert_eq!(lost.statuses(&[lost.text(DEVICE, 1, "{}")]), ["new"]);
    eavebook_hub::revoke(yard.folder(), &lost.id.to_string()).unwrap();
    assert_eq!(lost.get("/v1/feed").status, 401);
    assert_eq!(lost.push(&[lost.text(DEVICE, 2, "{}")]).status, 401);
    assert_eq!(kept.feed().len(), 1);
    let refusal = eavebook_hub::revoke(yard.folder(), "nobody").unwrap_err();
    assert_eq!(
        refusal.to_string(),
        "no device nobody is paired here: `eavebook hub devices` lists them"
    );
}

#[test]
fn a_device_paired_anew_has_a_new_token_and_its_old_one_is_dead() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let answer = pair(yard.address(), &codes.typed, device.id);
    assert_eq!(answer.status, 201);
    assert_eq!(device.get("/v1/feed").status, 401);
}

#[test]
fn no_secret_is_in_the_folder_as_it_was_given() {
    let yard = Yard::new();
    let codes = eavebook_hub::code(yard.folder(), "Ridge", None).unwrap();
    let device = yard.device("Ridge");
    let secret = device.token.split_once('.').unwrap().1.to_owned();
    let link = codes.link.rsplit('=').next().unwrap().to_owned();
    for (file, bytes) in stores::kept(yard.folder()) {
        for secret in [&secret, &codes.typed, &link] {
            let found = bytes
                .windows(secret.len())
                .any(|part| part == secret.as_bytes());
            assert!(!found, "{file}");
        }
    }
}

#[test]
fn the_keeper_lists_and_turns_out_and_a_device_may_not() {
    let yard = Yard::new();
    let device = yard.device("Ridge");
    let answer = device.get("/v1/devices");
    assert_eq!(
        (answer.status, answer.code()),
        (403, "admin_only".to_owned())
    );
    let path = format!("/v1/devices/{}", device.id);
    assert_eq!(device.ask("DELETE", &path, b"").status, 403);
    let keeper = std::fs::read_to_string(yard.folder().join("admin.token")).unwrap();
    let keeper = format!("Bearer {}", keeper.trim());
    let as_keeper = [("authorization", keeper.as_str())];
    let listed = ask(yard.address(), "GET", "/v1/devices", &as_keeper, b"").json();
    assert_eq!(listed["devices"][0]["device_id"], json!(device.id));
    assert_eq!(
        ask(yard.address(), "DELETE", &path, &as_keeper, b"").status,
        204
    );
    assert_eq!(device.get("/v1/feed").status, 401);
    let nobody = ask(yard.address(), "DELETE", "/v1/devices/x", &as_keeper, b"");
    assert_eq!(
        (nobody.status, nobody.code()),
        (404, "not_found".to_owned())
    );
}
