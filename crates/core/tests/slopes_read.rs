//! Slopes as a survey file gives them, through to what the result says of them.

use eavebook_core::result::result;
use eavebook_core::solve::solve;
use eavebook_core::survey::{PitchReading, Rise, SlopePlace, Way};
use eavebook_core::survey_file::read;
use serde_json::{Value, json};

/// A hip of 60 x 30 ft, leg 0 read as given, the others taken as numbers.
fn survey(readings: &Value) -> Vec<u8> {
    let known = json!({
        "format": "eavebook-survey/1",
        "bodies": [{
            "id": "main",
            "eave_height": 9.0,
            "outline": { "corners": [[0, 0], [60, 0], [60, 30], [0, 30]] },
            "edges": [{ "pitch_readings": readings }, { "pitch": 6 }, { "pitch": 6 }, { "pitch": 6 }]
        }]
    });
    known.to_string().into_bytes()
}

fn looks(readings: &Value) -> Vec<PitchReading> {
    let survey = read(&survey(readings)).expect("a survey").survey;
    let Rise::PitchReadings(looks) = &survey.bodies[0].edges[0].rise else {
        return Vec::new();
    };
    looks.clone()
}

fn refusal(reading: &Value) -> String {
    read(&survey(&json!([reading])))
        .expect_err("no reading")
        .to_string()
}

fn told(readings: &Value) -> Value {
    let survey = read(&survey(readings)).expect("a survey").survey;
    let solved = solve(&survey).expect("an outline");
    serde_json::to_value(result(&survey, &solved)).expect("JSON")
}

fn cautions(told: &Value, code: &str) -> Vec<String> {
    let all = told["cautions"].as_array().expect("a list");
    let named = all.iter().filter(|caution| caution["code"] == code);
    named
        .map(|caution| caution["words"].as_str().expect("words").to_owned())
        .collect()
}

#[test]
fn every_way_of_reading_a_slope_is_read() {
    let looks = looks(&json!([
        { "degrees": 26.4, "place": "near the eave" },
        { "gravity": [0.1, -4.47, -8.94], "reversed": true, "place": "above the second course" },
        { "run_in": 12, "rise_in": 6, "place": "near the ridge" },
        { "sighted": 6.2, "sigma": 0.3 },
        { "number": 6 }
    ]));
    let ways = looks.iter().map(|look| look.way).collect::<Vec<_>>();
    assert_eq!(
        ways,
        [
            Way::Forward,
            Way::Reversed,
            Way::LevelAndTape,
            Way::Sighted,
            Way::Number
        ]
    );
    assert_eq!(looks[0].place, Some(SlopePlace::NearEave));
    assert_eq!(looks[1].place, Some(SlopePlace::AboveSecondCourse));
    assert_eq!(looks[2].place, Some(SlopePlace::NearRidge));
    assert!((looks[1].angle.in_degrees() - 26.565).abs() < 0.01);
    assert!((looks[2].angle.in_degrees() - 26.565).abs() < 0.001);
    let sigma = looks[3].sigma.expect("it was stated").in_degrees();
    assert!((sigma - 1.13).abs() < 0.01, "{sigma}");
}

#[test]
fn a_reading_that_is_none_is_refused_with_the_remedy() {
    let refused = [
        json!({ "gravity": [1.2, 4.4, 8.8] }),
        json!({ "gravity": [0, 0, 0] }),
        json!({ "gravity": [0, 1] }),
        json!({ "gravity": [0, 0, 9.8] }),
        json!({ "degrees": 26, "sighted": 6 }),
        json!({ "sighted": 6, "reversed": true }),
        json!({ "degrees": 26, "sigma": 1 }),
        json!({ "sighted": 0 }),
        json!({ "sighted": 6, "sigma": 0 }),
        json!({ "number": 6, "place": "near the eave" }),
        json!({ "degrees": 26, "place": "on top" }),
        json!({ "run_in": 12 }),
        json!({ "run_in": 1, "rise_in": 100 }),
        json!({ "slope": 6 }),
    ];
    let sentences: Vec<String> = refused.iter().map(refusal).collect();
    insta::assert_snapshot!(sentences.join("\n"));
}

#[test]
fn a_pitch_from_one_place_says_so_and_no_per_cent() {
    let told = told(&json!([{ "degrees": 26.5 }, { "degrees": 26.7, "reversed": true }]));
    assert_eq!(
        cautions(&told, "pitch_from_few_places"),
        [
            "The pitch at leg 0 of main: read at one place only: read two more above the second course."
        ]
    );
    let pitch = &told["bodies"][0]["pitches"][0];
    assert_eq!(pitch["stands_on"], "one_place");
    assert!(!pitch["words"].as_str().expect("words").contains('%'));
}

#[test]
fn a_pitch_near_the_eave_or_from_a_photo_alone_says_so() {
    let eave = told(&json!([
        { "degrees": 26.5, "place": "near the eave" },
        { "degrees": 26.4, "place": "near the eave" },
        { "degrees": 26.6, "place": "near the eave" }
    ]));
    assert_eq!(
        cautions(&eave, "pitch_near_eave_only"),
        [
            "The pitch at leg 0 of main: read near the eave only, where roofs kick out flatter: read \
          two places above the second course."
        ]
    );
    let photo = told(&json!([{ "sighted": 6.2, "sigma": 0.3 }]));
    assert_eq!(
        cautions(&photo, "pitch_from_photo_alone"),
        [
            "The pitch at leg 0 of main: from a photo alone, good to a quarter inch in 12 at best: \
          read it on the roof or with a level and tape."
        ]
    );
}

#[test]
fn a_phone_that_lay_askew_once_is_said() {
    let flip = |slope: f64, zero: f64| {
        [
            json!({ "degrees": slope + zero }),
            json!({ "degrees": slope - zero, "reversed": true }),
        ]
    };
    let readings = [flip(26.5, 0.5), flip(26.7, 2.6), flip(26.4, 0.6)].concat();
    let told = told(&json!(readings));
    assert_eq!(
        cautions(&told, "phone_askew"),
        [
            "The pitch at leg 0 of main, flip 2: the phone's zero error stands 2.0 degrees off that of \
          the other flips, so the phone lay askew, or it was another phone. Lay it again."
        ]
    );
}

#[test]
fn the_steeper_of_two_pitches_comes_with_its_cost_and_its_odds() {
    let told = told(&json!([{ "degrees": 28.4 }, { "degrees": 28.4, "reversed": true }]));
    let pitch = &told["bodies"][0]["pitches"][0];
    let number = |key: &str| pitch["when_unsure"][key].as_f64().expect("a number");
    let (used, steeper) = (pitch["pitch"].as_f64().expect("a number"), number("pitch"));
    assert!(steeper > used, "{pitch}");
    assert!(number("too_low") < number("too_low_likeliest"));
    // The front of a hip 60 x 30 with another pitch over leg 0: its own plan, as it was raised.
    let faces = told["faces"].as_array().expect("a list");
    let front = faces.iter().find(|face| face["leg"] == 0).expect("a front");
    let factor = |in_12: f64| (1.0 + (in_12 / 12.0).powi(2)).sqrt();
    let plan = front["plan_area"].as_f64().expect("a number");
    let more = plan * (factor(steeper) - factor(used));
    assert!((number("more_area") - more).abs() < 1e-6);
    assert!((number("more_percent") - 100.0 * (factor(steeper) / factor(used) - 1.0)).abs() < 1e-9);
    let sure = json!([{ "degrees": 26.5 }, { "degrees": 26.6, "reversed": true }]);
    let readings = [sure.clone(), sure.clone(), sure]
        .iter()
        .flat_map(|pair| pair.as_array().cloned().unwrap_or_default())
        .collect::<Vec<Value>>();
    let sure = self::told(&json!(readings));
    let cost = &sure["bodies"][0]["pitches"][0]["when_unsure"]["more_area"];
    assert!(cost.as_f64().expect("a number").abs() < 1e-9);
}
