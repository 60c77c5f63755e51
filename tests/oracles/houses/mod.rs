//! Eight invented houses, read with noise, some with one slip, adjusted and roofed by another
//! program. `cases/NAME.json` is the survey, `expected.json` what it gives and how nearly.

mod compare;
mod moves_nothing;

use eavebook_core::result::result;
use eavebook_core::settled::Ground;
use eavebook_core::solve::{solve_over, take_off_and_price_as_meant};
use eavebook_core::survey_file::{self, SurveyFile};
use serde_json::{Map, Value};
use std::path::PathBuf;

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
    let terms = file.terms(None);
    let priced = take_off_and_price_as_meant(&file.survey, &solved, &terms);
    let result = result(&file.survey, &solved);
    let priced = match (&priced, &solved.roof) {
        (Ok((priced, Some(roof))), _) | (Ok((priced, None)), Ok(roof)) => {
            result.with_price(&file.survey, roof, priced)
        }
        (Ok((_, None)), Err(lack)) => panic!("priced without a roof: {lack}"),
        (Err(why), _) => result.without_price(why),
    };
    serde_json::to_value(priced).expect("a result")
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
    println!("{held} of {} houses hold", expected.len());
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
