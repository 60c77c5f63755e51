//! `eavebook words`, run as a person runs it.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use serde_json::Value;
use std::collections::BTreeSet;
use std::process::{Command, Output};

fn words(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_eavebook"))
        .arg("words")
        .args(arguments)
        .output()
        .unwrap()
}

fn lines(arguments: &[&str]) -> Vec<Value> {
    let output = words(arguments);
    assert!(output.status.success() && output.stderr.is_empty());
    let text = String::from_utf8(output.stdout).unwrap();
    text.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

fn keys(lines: &[Value]) -> BTreeSet<(String, u64)> {
    let key = |line: &Value| {
        let id = line["id"].as_str().unwrap().to_owned();
        (id, line["sample"].as_u64().unwrap())
    };
    lines.iter().map(key).collect()
}

#[test]
fn both_languages_list_the_same_ids_and_samples() {
    let (english, spanish) = (lines(&["--lang", "en"]), lines(&["--lang", "es"]));
    assert_eq!(keys(&english), keys(&spanish));
    assert_eq!(keys(&english).len(), english.len());
    assert_eq!(lines(&[]), english);
    let is_closes = |line: &&Value| line["id"] == "closure.closes";
    let text = |lines: &[Value]| lines.iter().find(is_closes).unwrap()["text"].clone();
    assert_eq!(text(&english), "Closes within 2 in.");
    assert_eq!(text(&spanish), "Cierra a 2 pulg.");
}

#[test]
fn an_unknown_language_is_refused() {
    let output = words(&["--lang", "fr"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty() && !output.stderr.is_empty());
}
