//! Eight invented houses, read with noise, some with one slip, adjusted and roofed by another
//! program. `cases/NAME.json` is the survey, `expected.json` what it gives and how nearly.

mod compare;
mod moves_nothing;

use eavebook_core::result::result;
use eavebook_core::solve::{Ground, solve_over};
use eavebook_core::survey_file::{self, SurveyFile};
use serde_json::{Map, Value};
use std::path::PathBuf;

/// Fields of the result that nothing computes yet: a house is not held to them until they stand.
const NOT_YET: [&str; 2] = ["takeoff", "price"];

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("oracles/houses")
}

fn expected() -> Map<String, Value> {
    let text = std::fs::read_to_string(folder().join("expected.json")).expect("expected.json");
    serde_json::from_str(&text).expect("expected.json")
}

fn survey(name: &str) -> SurveyFile {
    let path = folder().join(format!("cases/{name}.json"));
    let text = std::fs::read(path).expect("a case file");
    survey_file::read(&text).expect(name)
}

fn answer(file: &SurveyFile) -> Value {
    // The other program raised its roofs over the corners as they came out.
    let solved = solve_over(&file.survey, Ground::AsAdjusted).expect("a survey");
    serde_json::to_value(result(&file.survey, &solved)).expect("a result")
}

#[test]
fn every_house_holds() {
    let mut held = 0;
    let mut failures = Vec::new();
    let expected = expected();
    for (name, expected) in &expected {
        let file = survey(name);
        let got = answer(&file);
        let mut falls_short = compare::compare(expected, &got);
        falls_short.extend(moves_nothing::what_must_not_move_a_figure(&file, &got));
        held += usize::from(falls_short.is_empty());
        println!(
            "{name}: {}",
            falls_short.first().map_or("holds", String::as_str)
        );
        failures.extend(falls_short.iter().map(|why| format!("{name}: {why}")));
    }
    let waiting = NOT_YET
        .into_iter()
        .filter(|field| answer(&survey("mill-hip")).get(field).is_none());
    println!(
        "{held} of {} houses hold; not computed yet: {}",
        expected.len(),
        waiting.collect::<Vec<_>>().join(", ")
    );
    assert_eq!(expected.len(), 8);
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}

#[test]
fn the_comparison_sees_a_figure_that_is_wrong() {
    let expected = expected();
    for pointer in [
        "/totals/area",
        "/totals/area_sigma",
        "/totals/hip",
        "/bodies/0/legs/1/length",
        "/bodies/0/legs/1/sigma",
        "/bodies/0/corners/2/x",
        "/bodies/0/closure/along",
        "/faces/0/pitch",
        "/edges/0/length",
    ] {
        let mut got = answer(&survey("mill-hip"));
        let figure = got.pointer_mut(pointer).expect(pointer);
        *figure = Value::from(figure.as_f64().expect(pointer) * 3.0 + 1.0);
        assert!(
            !compare::compare(&expected["mill-hip"], &got).is_empty(),
            "{pointer}"
        );
    }
}
