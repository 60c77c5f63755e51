//! The document of `/v1`, and every answer of this suite held against it.

use crate::talk::{Answer, Yard, ask};
use serde_json::Value;
use std::sync::OnceLock;

fn document() -> &'static Value {
    static READ: OnceLock<Value> = OnceLock::new();
    READ.get_or_init(|| serde_json::from_str(include_str!("../../src/openapi.json")).unwrap())
}

/// Follows a reference of the document.
fn resolve(mut value: &'static Value) -> &'static Value {
    while let Some(to) = value.get("$ref") {
        let pointer = to.as_str().unwrap().strip_prefix('#').unwrap();
        value = document()
            .pointer(pointer)
            .unwrap_or_else(|| panic!("{to} is not in the document"));
    }
    value
}

/// The path of the document that an address is of.
fn path(address: &str) -> Option<&'static Value> {
    let address: Vec<&str> = address.split('?').next()?.split('/').collect();
    let paths = document()["paths"].as_object().unwrap();
    let fits = |named: &str| {
        let named: Vec<&str> = named.split('/').collect();
        named.len() == address.len()
            && named.iter().zip(&address).all(|(named, stated)| {
                named == stated || (named.starts_with('{') && !stated.is_empty())
            })
    };
    // `/v1/blobs/missing` before `/v1/blobs/{sha256}`.
    let mut found: Vec<_> = paths.iter().filter(|(named, _)| fits(named)).collect();
    found.sort_by_key(|(named, _)| named.matches('{').count());
    found.first().map(|(_, path)| *path)
}

/// Holds an answer against the document.
pub fn check(method: &str, address: &str, answer: &Answer) {
    let shown = format!("{method} {address} {}", answer.status);
    // What is no HTTP, and a head that never ends, are answered before any route.
    let Some(path) = path(address) else {
        assert!([404, 400].contains(&answer.status), "{shown}");
        return;
    };
    let Some(operation) = path.get(method.to_ascii_lowercase()) else {
        assert_eq!(answer.status, 405, "{shown}");
        return;
    };
    let response = operation["responses"]
        .get(answer.status.to_string())
        .unwrap_or_else(|| panic!("{shown} is not in the document"));
    let Some(content) = resolve(response).get("content") else {
        assert!(answer.body.is_empty(), "{shown} has a body");
        return;
    };
    let kind = answer.header("content-type").unwrap();
    let kind = kind.split(';').next().unwrap();
    let content = content
        .get(kind)
        .unwrap_or_else(|| panic!("{shown} of {kind} is not in the document"));
    let packed = answer.header("content-encoding").is_some();
    if let (Some(schema), false) = (content.get("schema"), packed) {
        fits(resolve(schema), &answer.json(), &shown);
    }
}

/// Holds a value against a schema: the words of JSON Schema that the document uses, and no others.
fn fits(schema: &'static Value, value: &Value, at: &str) {
    for (word, stated) in schema.as_object().unwrap() {
        match word.as_str() {
            "description" | "maxItems" => {}
            "type" => {
                let kind = |kind: &Value| match kind.as_str().unwrap() {
                    "object" => value.is_object(),
                    "array" => value.is_array(),
                    "string" => value.is_string(),
                    "boolean" => value.is_boolean(),
                    "null" => value.is_null(),
                    "integer" => value.is_u64() || value.is_i64(),
                    other => panic!("{other} is no type"),
                };
                let held = stated
                    .as_array()
                    .map_or_else(|| kind(stated), |all| all.iter().any(kind));
                assert!(held, "{at}: {value} is no {stated}");
            }
            "const" => assert_eq!(value, stated, "{at}"),
            "enum" => assert!(stated.as_array().unwrap().contains(value), "{at}: {value}"),
            "minimum" => assert!(value.as_i64() >= stated.as_i64(), "{at}: {value}"),
            "maximum" => assert!(value.as_i64() <= stated.as_i64(), "{at}: {value}"),
            "format" => {
                assert_eq!(stated, "uuid");
                let text = value.as_str().unwrap();
                assert!(text.parse::<uuid::Uuid>().is_ok(), "{at}: {text}");
            }
            "pattern" => {
                assert_eq!(stated, "^[0-9a-f]{64}$");
                let text = value.as_str().unwrap();
                let hex = text
                    .bytes()
                    .all(|digit| matches!(digit, b'0'..=b'9' | b'a'..=b'f'));
                assert!(hex && text.len() == 64, "{at}: {text}");
            }
            "required" => {
                for name in stated.as_array().unwrap() {
                    let name = name.as_str().unwrap();
                    assert!(value.get(name).is_some(), "{at} lacks {name}");
                }
            }
            "properties" => {
                for (name, schema) in stated.as_object().unwrap() {
                    if let Some(value) = value.get(name) {
                        fits(resolve(schema), value, &format!("{at}/{name}"));
                    }
                }
            }
            "additionalProperties" => {
                let named = schema.get("properties");
                for (name, value) in value.as_object().unwrap() {
                    if named.is_some_and(|named| named.get(name).is_some()) {
                        continue;
                    }
                    assert_ne!(
                        stated,
                        &Value::Bool(false),
                        "{at} has {name}, which is not named"
                    );
                    fits(resolve(stated), value, &format!("{at}/{name}"));
                }
            }
            "items" => {
                for (n, value) in value.as_array().unwrap().iter().enumerate() {
                    fits(resolve(stated), value, &format!("{at}/{n}"));
                }
            }
            other => panic!("{at}: `{other}` is not held against anything"),
        }
    }
}

#[test]
fn the_hub_hands_out_its_document() {
    let yard = Yard::new();
    let answer = ask(yard.address(), "GET", "/v1/openapi.json", &[], b"");
    assert_eq!(answer.status, 200);
    assert_eq!(&answer.json(), document());
}

#[test]
fn every_address_of_the_document_is_asked_as_it_says_and_in_no_other_way() {
    let yard = Yard::new();
    for (named, path) in document()["paths"].as_object().unwrap() {
        let address = named
            .replace("{sha256}", &"0".repeat(64))
            .replace("{part}", "0")
            .replace("{device}", "nobody");
        let answer = ask(yard.address(), "TRACE", &address, &[], b"");
        assert_eq!(answer.status, 405, "{named}");
        let allowed = answer.header("allow").unwrap();
        let mut allowed: Vec<String> = allowed
            .split(',')
            .map(|method| method.trim().to_ascii_lowercase())
            // What HTTP itself gives with GET.
            .filter(|method| method != "head")
            .collect();
        allowed.sort();
        let mut stated: Vec<String> = path.as_object().unwrap().keys().cloned().collect();
        stated.sort();
        assert_eq!(allowed, stated, "{named}");
    }
}

#[test]
fn an_answer_that_is_not_as_the_document_says_is_seen() {
    let answer = |body: &str| Answer {
        status: 200,
        head: "HTTP/1.1 200 OK\r\ncontent-type: application/json".to_owned(),
        body: body.as_bytes().to_vec(),
    };
    let bad = |method: &'static str, address: &'static str, answer: Answer| {
        std::panic::catch_unwind(move || check(method, address, &answer)).is_err()
    };
    assert!(!bad("POST", "/v1/digest", answer(r#"{"same":true}"#)));
    assert!(bad("POST", "/v1/digest", answer(r#"{"same":1}"#)));
    assert!(bad(
        "POST",
        "/v1/digest",
        answer(r#"{"same":true,"more":1}"#)
    ));
    assert!(bad("POST", "/v1/digest", answer(r#"{}"#)));
    assert!(bad("GET", "/v1/digest", answer(r#"{"same":true}"#)));
    assert!(bad("GET", "/v1/nothing", answer(r#"{}"#)));
}
