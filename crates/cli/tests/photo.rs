//! `eavebook photo`, run as a person runs it.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use serde_json::Value;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

/// Lines about files of these names and contents, in their order.
fn told(files: &[(&str, &[u8])]) -> Vec<Value> {
    let dir = tempfile::tempdir().unwrap();
    let paths = files.iter().map(|(name, bytes)| {
        let path = dir.path().join(name);
        fs::write(&path, bytes).unwrap();
        path
    });
    let paths: Vec<PathBuf> = paths.collect();
    let said = Command::new(env!("CARGO_BIN_EXE_eavebook"))
        .arg("photo")
        .args(&paths)
        .output()
        .unwrap();
    assert_eq!(said.status.code(), Some(0), "{said:?}");
    let text = String::from_utf8(said.stdout).unwrap();
    text.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

#[test]
fn what_is_no_picture_is_refused_by_its_first_bytes_and_in_a_sentence() {
    let xmp = b"<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"/>";
    let lines = told(&[
        ("nothing.jpg", b""),
        ("words.jpg", b"some words and no picture"),
        ("film.jpg", b"\0\0\0\x18ftypmp42\0\0\0\0isommp42"),
        ("walk-07.xmp", xmp),
    ]);
    let said = |line: &Value| {
        assert_eq!(line["outcome"], "refused");
        assert_eq!(line["sheet"], Value::Null);
        (line["kind"].clone(), line["say"].clone())
    };
    let said: Vec<(Value, Value)> = lines.iter().map(said).collect();
    let sentence = |words: &str| Value::from(format!("The file {words}. Nothing was booked."));
    assert_eq!(
        said,
        [
            ("empty".into(), sentence("nothing.jpg holds nothing")),
            (
                "unknown".into(),
                sentence("words.jpg is no picture that is known here")
            ),
            ("video".into(), sentence("film.jpg is a film and no photo")),
            (
                "sidecar".into(),
                sentence("walk-07.xmp describes a picture and is none")
            ),
        ]
    );
}

#[test]
fn the_same_bytes_under_two_names_are_booked_once() {
    let broken = b"\xff\xd8\xff\xe0 the head of a picture";
    let lines = told(&[("walk-07.jpg", broken), ("walk-07 copy.png", broken)]);
    assert_eq!(lines[0]["outcome"], "kept, cannot be shown");
    assert_eq!(lines[1]["outcome"], "already here");
    assert_eq!(lines[1]["same_as"], "walk-07.jpg");
    assert_eq!(lines[0]["sha256"], lines[1]["sha256"]);
}

#[test]
fn a_file_that_is_not_there_does_not_keep_the_others_from_being_told() {
    let said = Command::new(env!("CARGO_BIN_EXE_eavebook"))
        .args(["photo", "not-there.jpg"])
        .output()
        .unwrap();
    assert_eq!(said.status.code(), Some(0), "{said:?}");
    let line: Value = serde_json::from_slice(&said.stdout).unwrap();
    assert_eq!(line["outcome"], "refused");
    let say = line["say"].as_str().unwrap();
    assert!(say.starts_with("The file not-there.jpg cannot be read: "));
}
