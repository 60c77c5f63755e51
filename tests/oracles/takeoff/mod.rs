//! Takeoffs and prices that another program, written from the same rules in another language, came
//! to. `cases/NAME.json` is a whole survey of a rectangular house with known corners, a survey that
//! must be refused, or the faces of a roof that nobody needs to raise.

mod compare;
mod face;

use compare::differences;
use eavebook_core::result::result;
use eavebook_core::solve::{solve, take_off_and_price};
use eavebook_core::survey_file;
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::PathBuf;

fn cases() -> Vec<(String, Value)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("oracles/takeoff/cases");
    let mut cases: Vec<(String, Value)> = std::fs::read_dir(folder)
        .expect("the cases")
        .map(|file| {
            let path = file.expect("a case").path();
            let text = std::fs::read_to_string(&path).expect("a case");
            let name = path.file_stem().expect("a name").to_string_lossy();
            (
                name.into_owned(),
                serde_json::from_str(&text).expect("JSON"),
            )
        })
        .collect();
    cases.sort_by(|a, b| a.0.cmp(&b.0));
    cases
}

/// What `eavebook solve` prints of a survey, or its refusal.
fn answer(survey: &Value) -> Result<Value, String> {
    let file = survey_file::read(survey.to_string().as_bytes()).map_err(|it| it.to_string())?;
    let solved = solve(&file.survey).map_err(|it| it.to_string())?;
    let terms = file.terms(None);
    let priced = take_off_and_price(&file.survey, &solved, &terms).map_err(|it| it.to_string())?;
    let roof = solved.roof.as_ref().map_err(ToString::to_string)?;
    let result = result(&file.survey, &solved).with_price(&file.survey, roof, &priced);
    serde_json::to_value(result).map_err(|it| it.to_string())
}

fn falls_short(case: &Value) -> Vec<String> {
    let told = match (&case["survey"], case["refuse"].as_str()) {
        (Value::Null, _) => face::answer(case),
        (survey, None) => answer(survey),
        (survey, Some(text)) => {
            return match answer(survey) {
                Ok(_) => vec![format!("is not refused for {text}")],
                Err(said) if said.contains(text) => Vec::new(),
                Err(said) => vec![format!("is refused with: {said}")],
            };
        }
    };
    match told {
        Ok(told) => differences("", &case["expect"], &told),
        Err(why) => vec![why],
    }
}

#[test]
fn every_case_of_every_family_holds() {
    let mut families: BTreeMap<String, [usize; 2]> = BTreeMap::new();
    let mut failures = Vec::new();
    let cases = cases();
    for (name, case) in &cases {
        let family = case["family"].as_str().expect("a family");
        let [held, of] = families.entry(family.to_owned()).or_default();
        *of += 1;
        let short = falls_short(case);
        *held += usize::from(short.is_empty());
        failures.extend(short.iter().take(5).map(|it| format!("{name}: {it}")));
    }
    for (family, [held, of]) in &families {
        println!("{family}: {held} of {of} hold");
    }
    let held: usize = families.values().map(|[held, _]| held).sum();
    println!("{held} of {} hold", cases.len());
    assert_eq!(cases.len(), 58);
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}

#[test]
fn the_comparison_sees_a_figure_that_is_wrong() {
    let cases = cases();
    let case = &cases
        .iter()
        .find(|(name, _)| name == "hip-01")
        .expect("hip-01")
        .1;
    let told = answer(&case["survey"]).expect("a result");
    for pointer in [
        "/takeoff/laid/new_pieces",
        "/takeoff/order/0/packs",
        "/takeoff/tear_off/p90_lb",
        "/takeoff/courses/1/reused",
        "/price/total",
        "/price/lines/3/amount",
        "/price/high",
    ] {
        let mut wrong = told.clone();
        let figure = wrong.pointer_mut(pointer).expect(pointer);
        *figure = match figure.as_f64() {
            Some(number) => Value::from(number + 1.0),
            None => Value::from("0.01"),
        };
        assert!(
            !differences("", &case["expect"], &wrong).is_empty(),
            "{pointer}"
        );
    }
}
