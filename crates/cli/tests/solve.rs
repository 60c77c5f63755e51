//! `eavebook solve` as a script meets it: exit code, stdout, stderr.

use serde_json::Value;
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};

struct Said {
    code: Option<i32>,
    out: String,
    err: String,
}

fn eavebook(arguments: &[&str], stdin: &str) -> Said {
    let mut child = Command::new(env!("CARGO_BIN_EXE_eavebook"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    // A program that refuses its arguments never reads this.
    let _ = child
        .stdin
        .take()
        .expect("a pipe")
        .write_all(stdin.as_bytes());
    let said = child.wait_with_output().expect("the program ends");
    Said {
        code: said.status.code(),
        out: String::from_utf8(said.stdout).expect("text"),
        err: String::from_utf8(said.stderr).expect("text"),
    }
}

fn demo_house() -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../assets/demo-house.json");
    path.display().to_string()
}

fn refused(said: &Said) -> &str {
    assert_eq!(
        (said.code, said.out.as_str()),
        (Some(2), ""),
        "{}",
        said.err
    );
    assert_eq!(said.err.lines().count(), 1, "{}", said.err);
    assert!(said.err.chars().count() <= 500, "{}", said.err);
    said.err.trim_end()
}

fn rectangle(edges: &str) -> String {
    format!(
        r#"{{ "format": "eavebook-survey/1", "bodies": [ {{ "id": "main",
             "outline": {{ "turns_deg": [90, 90, 90, 90] }},
             "readings": [ {{ "id": "a", "leg": 0, "value": 60 }}, {{ "id": "b", "leg": 1, "value": 30 }},
                           {{ "id": "c", "leg": 2, "value": 60 }}, {{ "id": "d", "leg": 3, "value": 30 }} ],
             "edges": [ {edges} ] }} ] }}"#
    )
}

#[test]
fn the_demo_house_has_a_roof_with_its_spread() {
    let said = eavebook(&["solve", &demo_house()], "");
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    let told: Value = serde_json::from_str(&said.out).expect("JSON");
    let figure = |name: &str| told["totals"][name].as_f64().expect(name);
    assert!((2300.0..2500.0).contains(&figure("area")));
    assert!((5.0..30.0).contains(&figure("area_sigma")));
    assert!((figure("squares") - figure("area") / 100.0).abs() < 1e-9);
    assert_eq!(told["bodies"][0]["suspects"], serde_json::json!([]));
    assert_eq!(told["bodies"][0]["closure"]["state"], "closes");
    assert_eq!(told["faces"].as_array().expect("faces").len(), 12);
    assert!(told["retake_first"][0]["pitch"].is_object());
    let pieces = told["takeoff"]["laid"]["new_pieces"].as_u64().unwrap();
    assert_eq!(told["takeoff"]["order"][0]["needed"], pieces as f64);
    let money = |key: &str| -> f64 { told["price"][key].as_str().unwrap().parse().unwrap() };
    assert!(money("low") < money("total") && money("total") < money("high"));
}

#[test]
fn squaring_moves_the_area_of_the_demo_house_by_less_than_its_spread() {
    let area = |arguments: &[&str]| {
        let told: Value = serde_json::from_str(&eavebook(arguments, "").out).expect("JSON");
        told["totals"]["area"].as_f64().expect("an area")
    };
    let file = demo_house();
    assert!((area(&["solve", &file]) - area(&["solve", &file, "--squared"])).abs() < 5.0);
}

#[test]
fn stdin_is_a_file_too() {
    let said = eavebook(
        &["solve", "-"],
        &rectangle(r#"{"pitch": 6}, {"end": "gable"}, {"pitch": 6}, {"end": "gable"}"#),
    );
    assert_eq!(said.code, Some(0), "{}", said.err);
    let told: Value = serde_json::from_str(&said.out).expect("JSON");
    let area = told["totals"]["area"].as_f64().expect("an area");
    assert!((area - 1800.0 * 1.25_f64.sqrt()).abs() < 0.01, "{area}");
}

#[test]
fn the_survey_that_help_shows_is_one() {
    let help = eavebook(&["solve", "--help"], "").out;
    let from = help.find("{ \"format\"").expect("an example");
    let end = "] } ] }";
    let to = help[from..].find(end).expect("its end") + from + end.len();
    let said = eavebook(&["solve", "-"], &help[from..to]);
    assert_eq!(said.code, Some(0), "{}", said.err);
}

#[test]
fn a_reading_less_than_a_roof_wants_is_no_refusal() {
    let survey = rectangle(r#"{"pitch": 6}, {"pitch": 6}, {"pitch": 6}, {"pitch": 6}"#)
        .replace(r#""leg": 1"#, r#""leg": 0"#)
        .replace(r#""leg": 3"#, r#""leg": 2"#);
    let said = eavebook(&["solve", "-"], &survey);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let told: Value = serde_json::from_str(&said.out).expect("JSON");
    assert_eq!(told["totals"]["area"], Value::Null);
    assert_eq!(told["faces"], serde_json::json!([]));
    assert_eq!(told["bodies"][0]["legs"][1]["length"], Value::Null);
    assert_eq!(told["cautions"][0]["code"], "no_roof");
    assert_eq!(told["would_help"][0]["leg"], 1);
}

#[test]
fn ends_all_round_are_refused() {
    let gable = r#"{"end": "gable"}"#;
    let survey = rectangle(&[gable; 4].join(", "));
    assert_eq!(
        refused(&eavebook(&["solve", "-"], &survey)),
        "every leg of main is an end, so the roof never closes: give at least one leg a pitch"
    );
}

#[test]
fn a_bad_file_is_refused_by_the_path_of_the_fault() {
    let survey = rectangle(r#"{"pitch": 6}, {"pitch": 6}, {"pitch": -1}, {"pitch": 6}"#);
    let said = eavebook(&["solve", "-"], &survey);
    assert!(
        refused(&said).starts_with("bodies[0].edges[2].pitch"),
        "{}",
        said.err
    );
}

#[test]
fn a_file_that_cannot_be_had_is_refused_with_a_remedy() {
    let missing = eavebook(&["solve", "no such house.json"], "");
    assert_eq!(
        refused(&missing),
        "there is no file \"no such house.json\": look at its name and folder"
    );
    let folder = eavebook(&["solve", env!("CARGO_MANIFEST_DIR")], "");
    assert!(refused(&folder).ends_with("is a folder: name a survey file in it"));
}

#[test]
fn a_wrong_argument_is_one_sentence() {
    for arguments in [
        &["solve"][..],
        &["sovle", "house.json"],
        &["solve", "--fast", "house.json"],
        &["solve", "one.json", "two.json"],
        &["solve", "--on", "yesterday", "-"],
        &[],
    ] {
        let said = eavebook(arguments, "");
        assert!(refused(&said).contains("eavebook --help"), "{}", said.err);
    }
}

#[test]
fn a_name_with_strange_signs_stays_in_its_line() {
    let name = format!("roof\n\u{1b}[31m{}", "x".repeat(200));
    let said = eavebook(&["solve", &name], "");
    let sentence = refused(&said);
    assert!(sentence.starts_with("there is no file \"roof\\n\\u{1b}[31m"));
    assert!(sentence.ends_with(": look at its name and folder"));
}
