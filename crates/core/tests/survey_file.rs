//! Survey files: what they say, and what is refused in which words.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::settings::{Chosen, Rates};
use eavebook_core::survey::{
    Band, Covering, Deck, PenetrationKind, Point, Rise, Sketch, Span, Way,
};
use eavebook_core::survey_file::{self, Refusal, SurveyFile};
use eavebook_core::units::{Angle, Length, Pitch};
use proptest::prelude::*;

/// A house with something of everything, invented.
const HOUSE: &str = include_str!("data/house.json");

/// A rectangle of known corners, with room for one thing more.
fn known(corners: &str) -> String {
    let format = r#""format": "eavebook-survey/1""#;
    format!(
        r#"{{ {format}, "bodies": [ {{ "id": "main", "outline": {{ "corners": {corners} }} }} ] }}"#
    )
}

fn read(text: &str) -> SurveyFile {
    survey_file::read(text.as_bytes()).unwrap()
}

fn refusal(text: &str) -> String {
    survey_file::read(text.as_bytes()).unwrap_err().to_string()
}

/// How the house is refused with the first `was` made `now`.
fn house_with(was: &str, now: &str) -> String {
    assert!(HOUSE.contains(was), "{was} is not in the house");
    refusal(&HOUSE.replacen(was, now, 1))
}

#[test]
fn a_survey_says_all_that_its_file_says() {
    let file = read(HOUSE);
    let [main, porch] = file.survey.bodies.as_slice() else {
        panic!("two bodies")
    };
    assert_eq!(
        (main.id.as_str(), main.eave_height),
        ("main", Length::feet(9.0))
    );
    let turned = |start, heading, turn, sigma| Sketch::Turned {
        start,
        heading: Angle::degrees(heading),
        turns: vec![Angle::degrees(turn); 4],
        turn_sigma: Angle::degrees(sigma),
    };
    assert_eq!(
        main.outline,
        turned(Point { x: 1.0, y: 2.0 }, 30.0, 90.0, 0.3)
    );
    let spans: Vec<Span> = main.readings.iter().map(|reading| reading.span).collect();
    let overhangs = [Length::feet(1.0), Length::inches(14.0)];
    let overall = Span::Overall {
        from: 0,
        to: 2,
        along_leg: 0,
    };
    assert_eq!(
        spans,
        [
            Span::Leg(0),
            Span::Tie(0, 2),
            overall,
            Span::WallOfLeg { leg: 1, overhangs }
        ]
    );
    let first = &main.readings[0];
    assert_eq!(first.text.as_deref(), Some("60'"));
    assert_eq!(
        (first.value, first.sigma),
        (Length::feet(60.0), Some(Length::feet(0.15)))
    );
    assert_eq!(
        (main.readings[1].text.as_deref(), main.readings[1].sigma),
        (None, None)
    );
    assert_eq!(main.edges[0].rise, Rise::Pitch(Pitch::rise_in_12(6.0)));
    let Rise::PitchReadings(looks) = &main.edges[1].rise else {
        panic!("pitch readings")
    };
    assert_eq!((looks[0].way, looks[1].way), (Way::Forward, Way::Reversed));
    assert_eq!(looks[1].angle, Angle::degrees(26.9));
    assert_eq!(main.edges[2].rise, Rise::Gable);
    assert_eq!(main.edges[3].overhang, Some(Length::feet(1.0)));

    assert_eq!(
        porch.outline,
        turned(Point { x: 0.0, y: 0.0 }, 0.0, -90.0, 0.21)
    );
    assert_eq!(porch.eave_height, Length::ZERO);
    let from = porch.placed_from.as_ref().unwrap();
    assert_eq!((from.body.as_str(), from.corner), ("main", 2));
    assert_eq!(
        (from.offset, from.sigma),
        (Point { x: 3.0, y: -4.0 }, Length::feet(0.3))
    );
    let bands = vec![
        Band {
            pitch: Pitch::rise_in_12(20.0),
            rise: Some(Length::feet(8.0)),
        },
        Band {
            pitch: Pitch::rise_in_12(4.0),
            rise: None,
        },
    ];
    assert_eq!(porch.edges[0].rise, Rise::Bands(bands));
    assert_eq!(porch.edges[1].rise, Rise::Wall);

    let survey = &file.survey;
    assert_eq!(survey.walls[0].top, Length::feet(18.0));
    let kinds: Vec<PenetrationKind> = survey.penetrations.iter().map(|it| it.kind).collect();
    let size = Length::inches(3.0);
    let (width, depth) = (Length::feet(3.0), Length::feet(2.0));
    assert_eq!(
        kinds,
        [
            PenetrationKind::Pipe { size },
            PenetrationKind::Chimney { width, depth },
            PenetrationKind::BoxVent
        ]
    );
    let deck = Deck {
        kind: Some("plank".to_owned()),
        plank_width: Some(Length::inches(5.5)),
        gap: Some(Length::inches(0.25)),
    };
    assert_eq!(survey.deck.as_ref(), Some(&deck));
    let covering = Covering {
        kind: Some("strip shingle".to_owned()),
        layers: Some(1),
    };
    assert_eq!(survey.covering.as_ref(), Some(&covering));
    assert_eq!(survey.hearsay[0].garage, Some(380.0));
    assert_eq!(survey.hearsay[0].roof_area, None);
    assert_eq!(file.rates, Some(Chosen::Demo(Rates::demo())));
    let Some(Chosen::Own(code)) = file.code else {
        panic!("a code profile of its own")
    };
    assert_eq!(
        (code.place.as_str(), code.ventilation.ratio.value()),
        ("here", 150.0)
    );
}

#[test]
fn bodies_and_readings_without_an_id_are_named_by_their_place() {
    let body = r#"{ "outline": { "turns_deg": [90, 90, 90, 90] },
        "readings": [ { "leg": 0, "value": 1 }, { "leg": 1, "value": 2 } ] }"#;
    let file = read(&format!(
        r#"{{ "bodies": [ {body}, {body} ], "format": "eavebook-survey/1" }}"#
    ));
    let bodies = &file.survey.bodies;
    assert_eq!([&bodies[0].id, &bodies[1].id], ["body 1", "body 2"]);
    assert_eq!(bodies[1].readings[1].id, "reading 4");
    assert_eq!((file.rates, file.code), (None, None));
}

#[test]
fn a_body_may_say_where_it_lies_in_its_outline_too() {
    let outline = r#""from": { "body": "main", "corner": 2, "offset": [3, -4], "sigma": 0.3 },
      "outline": { "turns_deg""#;
    let inside = r#""outline": { "from": { "body": "main", "corner": 2, "offset": [3, -4], "sigma": 0.3 },
      "turns_deg""#;
    assert!(HOUSE.contains(outline));
    assert_eq!(read(&HOUSE.replace(outline, inside)), read(HOUSE));
}

#[test]
fn a_file_that_is_no_json_is_refused_by_line_and_column() {
    let said: Vec<String> = [
        "",
        " \n ",
        "\u{feff}",
        "{",
        "{\"format\": \"eavebook-survey/1\",\n  \"bodies\": [,]}",
        "{\"format\"; 1}",
        "{format: 1}",
        "{\"bodies\": [ {\"outline\": {\"corners\": [[0, 0], [NaN, 1",
        "{\"bodies\": [ {\"outline\": {\"corners\": [[0, 0], [-Infinity, 1",
        "{\"bodies\": [ {\"eave_height\": .5",
        "{\"bodies\": [ {\"eave_height\": 05",
        "{\"bodies\": [ {\"eave_height\": +5",
        "{\"bodies\": [ {\"eave_height\": 0x1F",
        "{\"bodies\": [ {\"eave_height\": 5.",
        "{\"format\": \"eavebook-survey/1\", // the format",
        "{\"format\": \"eavebook-survey/1\", }",
        "{\"format\": 'eavebook-survey/1'}",
        "{\"format\": \"eavebook\nsurvey/1\"}",
        "{\"format\": \"eavebook\\survey/1\"}",
        "{\"format\": \"\\ud800\"}",
        "{\"format\": \"eavebook-survey/1\" \"bodies\": []}",
        "{\"walls\": [] } x",
        "yes",
    ]
    .map(refusal)
    .into();
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn bytes_that_are_no_text_are_refused_by_line_and_column() {
    let said = survey_file::read(b"{\n \"format\": \"\xff\"}").unwrap_err();
    assert_eq!(
        said.to_string(),
        "line 2 column 13: these bytes are no UTF-8 text: save the file as UTF-8"
    );
}

#[test]
fn a_wrong_key_or_kind_of_value_is_refused_by_its_path() {
    let said = [
        house_with("\"bodies\"", "\"roofs\""),
        house_with("\"eave_height\"", "\"eaves\""),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": 6, \"slope\": 6 }"),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": 6, \"pitch\": 8 }"),
        house_with(
            "\"eave_height\": 9.0",
            "\"eave_height\": 9.0, \"\\u0065ave_height\": 8.0",
        ),
        house_with("\"eavebook-survey/1\"", "\"eavebook-survey/2\""),
        house_with("\"format\": \"eavebook-survey/1\",", ""),
        house_with("\"outline\": { \"turns_deg\": [-90, -90, -90, -90] },", ""),
        house_with("\"heading_deg\": 30", "\"heading_deg\": \"north\""),
        house_with("\"value\": 67.08", "\"value\": null"),
        house_with("[1, 2]", "[1, 2, 3]"),
        house_with("[1, 2]", "{ \"x\": 1, \"y\": 2 }"),
        house_with("\"eave_height\": 9.0", "\"eave_height\": 1e999"),
        house_with("\"reversed\": true", "\"reversed\": 1"),
        refusal("[]"),
        refusal("{}"),
        refusal("{\"format\": \"eavebook-survey/1\"}"),
        refusal("{\"format\": \"eavebook-survey/1\", \"bodies\": []}"),
        refusal("{\"format\": \"eavebook-survey/1\", \"bodies\": [{}]}"),
        refusal("{\"format\": \"eavebook-survey/1\", \"bodies\": [{\"outline\": {}}]}"),
    ];
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn a_reading_that_cannot_be_one_is_refused_by_its_name() {
    let said = [
        house_with("\"60'\"", "\"60' 14\\\"\""),
        house_with("\"60'\"", "\"60'\\n14\\\"\""),
        house_with("\"60'\"", "0"),
        house_with("67.08", "-67.08"),
        house_with("67.08", "10000.1"),
        house_with("\"sigma\": 0.15", "\"sigma\": 0"),
        house_with("\"sigma\": 0.15", "\"sigma\": -0.1"),
        house_with("\"leg\": 0", "\"leg\": 4"),
        house_with("\"leg\": 0", "\"leg\": 0.5"),
        house_with("\"leg\": 0", "\"leg\": -1"),
        house_with("\"tie\": [0, 2]", "\"tie\": [0, 4]"),
        house_with("\"tie\": [0, 2]", "\"tie\": [2, 2]"),
        house_with(
            "\"overall\": [0, 2], \"along_leg\": 0",
            "\"overall\": [0, 2]",
        ),
        house_with(
            "\"overall\": [0, 2], \"along_leg\": 0",
            "\"overall\": [0, 2], \"along_leg\": 9",
        ),
        house_with("\"overall\": [0, 2]", "\"leg\": 1"),
        house_with(", \"overhangs\": [1, \"14 in\"]", ""),
        house_with("[1, \"14 in\"]", "[1, -1]"),
        house_with("\"wall_of_leg\": 1", "\"leg\": 1"),
        house_with("\"wall_of_leg\": 1", "\"tie\": [0, 1], \"wall_of_leg\": 1"),
        house_with("\"leg\": 0, ", ""),
        house_with("\"value\": \"60'\", ", ""),
        house_with("\"id\": \"r2\"", "\"id\": \"r1\""),
        house_with("\"id\": \"r2\"", "\"id\": \" \""),
    ];
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn an_edge_that_no_roof_has_is_refused() {
    let said = [
        house_with("{ \"pitch\": 6 }", "{}"),
        house_with("{ \"pitch\": 6 }", "{ \"overhang\": 1 }"),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": 0 }"),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": -4 }"),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": 48.1 }"),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": \"6/12\" }"),
        house_with("{ \"pitch\": 6 }", "{ \"pitch\": 6, \"end\": \"gable\" }"),
        house_with("\"end\": \"gable\"", "\"end\": \"fancy\""),
        house_with("\"end\": \"gable\"", "\"overhang\": -1, \"end\": \"gable\""),
        house_with("\"degrees\": 26.4", "\"degrees\": 0"),
        house_with("\"degrees\": 26.4", "\"degrees\": -26.4"),
        house_with("\"degrees\": 26.4", "\"reversed\": false"),
        house_with(
            "[ { \"degrees\": 26.4 }, { \"degrees\": 26.9, \"reversed\": true } ]",
            "[]",
        ),
        house_with("\"rise\": 8", "\"rise\": 0"),
        house_with(", \"rise\": 8", ""),
        house_with("{ \"pitch\": 4 }", "{ \"pitch\": 4, \"rise\": 2 }"),
        house_with("[ { \"pitch\": 20, \"rise\": 8 }, { \"pitch\": 4 } ]", "[]"),
        house_with("{ \"pitch\": 6 },", ""),
    ];
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn an_outline_or_place_that_cannot_be_is_refused() {
    let said = [
        house_with("[90, 90, 90, 90]", "[90, 90, 90]"),
        house_with("[90, 90, 90, 90]", "[90, 270]"),
        house_with("[90, 90, 90, 90]", "[180, 90, 90]"),
        house_with("\"turn_sigma_deg\": 0.3", "\"turn_sigma_deg\": 0"),
        house_with("\"start\": [1, 2]", "\"corners\": [[0, 0], [1, 0], [0, 1]]"),
        house_with("\"id\": \"porch\"", "\"id\": \"main\""),
        house_with("\"body\": \"main\"", "\"body\": \"garage\""),
        house_with("\"corner\": 2", "\"corner\": 4"),
        house_with("\"body\": \"main\"", "\"body\": \"porch\""),
        house_with(
            "\"eave_height\": 9.0",
            "\"from\": { \"body\": \"porch\", \"corner\": 0 }",
        ),
    ];
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn known_corners_that_are_no_outline_are_refused() {
    let said = [
        "[[0,0],[20.7,0]]",
        "[[0,0],[20.7,0],[20.7,0.005],[20.7,20],[0,20]]",
        "[[0,0],[20.7,0],[20.7,20],[0,20],[0,0]]",
        "[[0,0],[20.7,20],[20.7,0],[0,20]]",
        "[[0,0],[20.7,0],[20.7,20],[10,0],[0,20]]",
        "[[0,0],[20,0],[20,20],[10,20],[10,30],[10,20],[0,20]]",
        "[[0,0],[20,0],[30,0],[20,0.0000001],[20,20],[0,20]]",
        "[[0,0],[20.7,0],[30.7,0]]",
        "[[0,0],[20,0],[40,0],[20,0.0001]]",
        "[[0,0],[20000,0],[20,20]]",
        "[[0,0],[1e9,0],[20,20]]",
        "[[0,0],[\"NaN\",0],[20,20]]",
    ]
    .map(|corners| refusal(&known(corners)));
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn what_is_no_body_is_refused_by_its_path() {
    let said = [
        house_with("\"to\": [10, 0]", "\"to\": [0, 0]"),
        house_with("\"top\": 18", "\"top\": 0"),
        house_with("\"kind\": \"pipe\"", "\"kind\": \"tube\""),
        house_with("\"size_in\": 3, ", ""),
        house_with("\"size_in\": 3", "\"size_in\": 0"),
        house_with("\"width\": 3, ", ""),
        house_with("\"box vent\"", "\"box vent\", \"size_in\": 8"),
        house_with(", \"at\": [12, 8]", ""),
        house_with("\"gap_in\": 0.25", "\"gap_in\": -1"),
        house_with("\"layers\": 1", "\"layers\": 0"),
        house_with("\"layers\": 1", "\"layers\": 1.5"),
        house_with("\"living_area\": 1860", "\"living_area\": -1"),
        house_with("\"source\": \"public record\", ", ""),
        house_with("\"rates\": \"demo\"", "\"rates\": \"mine\""),
        house_with("\"rates\": \"demo\"", "\"rates\": []"),
        house_with(
            "\"most_layers\": 2",
            "\"most_layers\": 2, \"most_layers\": 3",
        ),
        house_with("\"most_layers\": 2", "\"most_layers\": 1e999"),
    ];
    insta::assert_snapshot!(said.join("\n"));
}

/// Three bodies, each with so many known corners in a circle.
fn three_rounds(corners: usize) -> String {
    let step = std::f64::consts::TAU / corners as f64;
    let corner = |place: usize| {
        let (sin, cos) = (place as f64 * step).sin_cos();
        [100.0 * cos, 100.0 * sin]
    };
    let round = serde_json::to_string(&(0..corners).map(corner).collect::<Vec<_>>()).unwrap();
    let body = format!(r#"{{ "outline": {{ "corners": {round} }} }}"#);
    format!(r#"{{ "format": "eavebook-survey/1", "bodies": [{body}, {body}, {body}] }}"#)
}

#[test]
fn a_file_of_any_depth_or_length_is_refused_in_one_short_line() {
    let deep = |open: &str, times| HOUSE.replace("\"here\"", &open.repeat(times));
    let long = |value: &str, times| {
        let list = vec![value; times].join(",");
        known(&format!("[{list}]"))
    };
    let spread = "\\u202e\\u0007".repeat(60);
    let said = [
        refusal(&"[".repeat(1_000_000)),
        refusal(&deep("[", 1_000_000)),
        refusal(&deep("{\"a\":", 1_000_000)),
        refusal(&long("[0,0]", 1_000_000)),
        refusal(&long("0", 1_000_000)),
        refusal(&HOUSE.replace("\"here\"", &format!("[{}0]", "0,".repeat(1_000_000)))),
        refusal(&three_rounds(400)),
        refusal(&HOUSE.replace("public record", &"x".repeat(1_000_000))),
        refusal(&HOUSE.replace("\"here\"", &"9".repeat(1_000_000))),
        house_with("\"end\": \"gable\"", &format!("\"end\": \"{spread}\"")),
        house_with("\"living_area\"", &format!("\"{spread}\"")),
    ];
    for said in &said {
        assert!(said.chars().count() <= Refusal::LONGEST, "{said}");
        assert!(!said.chars().any(char::is_control), "{said}");
    }
    insta::assert_snapshot!(said.join("\n"));
}

/// A corner each 360 / n degrees about the middle, at its own distance: never crosses itself.
fn stars() -> impl Strategy<Value = Vec<[f64; 2]>> {
    prop::collection::vec(5.0_f64..50.0, 3..40).prop_map(|distances| {
        let step = std::f64::consts::TAU / distances.len() as f64;
        let corner = |(place, far): (usize, &f64)| {
            let (sin, cos) = (place as f64 * step).sin_cos();
            [far * cos, far * sin]
        };
        distances.iter().enumerate().map(corner).collect()
    })
}

fn is_taken(corners: &[[f64; 2]]) -> bool {
    let text = known(&serde_json::to_string(corners).unwrap());
    survey_file::read(text.as_bytes()).is_ok()
}

proptest! {
    #[test]
    fn an_outline_that_meets_itself_nowhere_is_taken_either_way_round(star in stars()) {
        // Opposite corners of a star of few can shut it to a line; those of more cannot.
        prop_assume!(star.len() > 4);
        prop_assert!(is_taken(&star));
        let back: Vec<[f64; 2]> = star.iter().rev().copied().collect();
        prop_assert!(is_taken(&back));
    }

    #[test]
    fn two_corners_of_a_round_outline_exchanged_make_it_cross_itself(
        count in 5_usize..40,
        first in 0_usize..40,
        apart in 2_usize..37,
    ) {
        let (first, second) = (first % count, (first + apart) % count);
        prop_assume!(first != second && (first + 1) % count != second && (second + 1) % count != first);
        let step = std::f64::consts::TAU / count as f64;
        let mut round: Vec<[f64; 2]> = (0..count)
            .map(|place| (place as f64 * step).sin_cos())
            .map(|(sin, cos)| [30.0 * cos, 30.0 * sin])
            .collect();
        round.swap(first, second);
        prop_assert!(!is_taken(&round));
    }
}

#[test]
fn blanks_and_the_order_of_keys_change_nothing() {
    let by_name: serde_json::Value = serde_json::from_str(HOUSE).unwrap();
    assert_eq!(read(&serde_json::to_string(&by_name).unwrap()), read(HOUSE));
    assert_eq!(
        read(&serde_json::to_string_pretty(&by_name).unwrap()),
        read(HOUSE)
    );
}

#[test]
fn what_is_nothing_seen_is_refused_by_its_place_in_the_list() {
    for (seen, said) in [
        (
            r#"{"leg": [0, 1], "end": "hip"}"#,
            "seen[0].end: \"hip\" is nothing seen over a leg: write gable or slope",
        ),
        (
            r#"{"leg": [0, 1]}"#,
            "seen[0]: it must say one thing: \"leg\" with \"end\" or \"faces\", or \"ridge_of\" with \
             \"over_eaves\"",
        ),
        (
            r#"{"leg": [0, 1], "end": "gable", "ridge_of": 0, "over_eaves": 5}"#,
            "seen[0]: it must say one thing: \"leg\" with \"end\" or \"faces\", or \"ridge_of\" with \
             \"over_eaves\"",
        ),
        (
            r#"{"ridge_of": 0, "over_eaves": 5, "sigma": 0}"#,
            "seen[0].sigma: a sigma of 0 says that nothing was uncertain: write more than 0, or leave \
             it out",
        ),
    ] {
        let with = format!("\"seen\": [{seen}], \"bodies\"");
        assert_eq!(house_with("\"bodies\"", &with), said);
    }
}
