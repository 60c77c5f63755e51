//! What is no roof, from the file to the sentence that names the leg or body and what to do.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use eavebook_core::solve::{Solved, solve};
use eavebook_core::survey_file::{self, Refusal};
use serde_json::{Value, json};

const RECTANGLE: [[f64; 2]; 4] = [[0.0, 0.0], [40.0, 0.0], [40.0, 20.0], [0.0, 20.0]];

fn body(id: &str, corners: &[[f64; 2]], edges: &[Value]) -> Value {
    json!({ "id": id, "outline": { "corners": corners }, "edges": edges })
}

fn hipped(id: &str, corners: &[[f64; 2]]) -> Value {
    body(id, corners, &vec![json!({ "pitch": 6 }); corners.len()])
}

/// A rectangle at 6 in 12 with another thing at leg 2.
fn rectangle_with(edge: Value) -> Value {
    let mut edges = vec![json!({ "pitch": 6 }); 4];
    edges[2] = edge;
    body("main", &RECTANGLE, &edges)
}

fn survey(bodies: &[Value]) -> Value {
    json!({ "format": "eavebook-survey/1", "bodies": bodies })
}

/// As a person writes it, the name of a body before what it has.
fn written(survey: &Value) -> String {
    let mut rest = survey.clone();
    let bodies = rest["bodies"].as_array_mut().unwrap();
    let bodies: Vec<String> = std::mem::take(bodies)
        .iter_mut()
        .map(|body| {
            let id = body.as_object_mut().unwrap().remove("id").unwrap();
            let said = body.to_string();
            format!("{{\"id\":{id},{}", &said[1..])
        })
        .collect();
    rest.to_string().replace(
        "\"bodies\":[]",
        &format!("\"bodies\":[{}]", bodies.join(",")),
    )
}

/// The sentence, whoever says it: the reader of the file or the roof.
fn said(survey: &Value) -> String {
    let said = match survey_file::read(written(survey).as_bytes()) {
        Err(refusal) => refusal.to_string(),
        Ok(file) => match solve(&file.survey) {
            Err(refusal) => refusal.to_string(),
            Ok(solved) => solved.roof.unwrap_err().to_string(),
        },
    };
    assert!(said.chars().count() <= Refusal::LONGEST, "{said}");
    assert!(!said.contains('\n'), "{said}");
    said
}

fn refused(body: Value) -> String {
    said(&survey(&[body]))
}

fn solved(survey: &Value) -> Solved {
    let file = survey_file::read(written(survey).as_bytes()).unwrap();
    solve(&file.survey).unwrap()
}

fn cautions(solved: &Solved) -> Vec<String> {
    solved.cautions.iter().map(ToString::to_string).collect()
}

#[test]
fn an_outline_that_crosses_itself() {
    let bow_tie = [[0.0, 0.0], [20.0, 20.0], [20.0, 0.0], [0.0, 20.0]];
    assert_eq!(
        refused(hipped("main", &bow_tie)),
        "bodies[0].outline.corners (body main): legs 0 and 2 cross or touch: give the corners in \
         order around the roof"
    );
}

#[test]
fn an_outline_that_touches_itself() {
    let touching = [
        [0.0, 0.0],
        [20.0, 0.0],
        [20.0, 20.0],
        [10.0, 0.0],
        [0.0, 20.0],
    ];
    assert!(
        refused(hipped("main", &touching)).contains("(body main): legs 0 and 2 cross or touch")
    );
}

#[test]
fn a_corner_given_twice() {
    let twice = [
        [0.0, 0.0],
        [40.0, 0.0],
        [40.0, 0.0],
        [40.0, 20.0],
        [0.0, 20.0],
    ];
    assert_eq!(
        refused(hipped("main", &twice)),
        "bodies[0].outline.corners (body main): corners 1 and 2 lie in one place, nearer than \
         0.01 ft: keep one of the two"
    );
}

#[test]
fn corners_all_in_one_line() {
    let line = [[0.0, 0.0], [20.0, 0.0], [30.0, 0.0]];
    assert_eq!(
        refused(hipped("main", &line)),
        "bodies[0].outline.corners (body main): all corners lie in one line and enclose no area: \
         give the corners on the other side"
    );
}

#[test]
fn two_corners() {
    assert_eq!(
        refused(hipped("main", &[[0.0, 0.0], [20.0, 0.0]])),
        "bodies[0].outline.corners (body main): an outline of 2 corners encloses nothing: give at \
         least 3"
    );
}

#[test]
fn edges_that_are_not_one_a_leg() {
    assert_eq!(
        refused(body("main", &RECTANGLE, &vec![json!({ "pitch": 6 }); 3])),
        "bodies[0].edges (body main): 3 edges stand for 4 legs: give one a leg, or none at all"
    );
}

#[test]
fn a_pitch_of_nothing() {
    assert_eq!(
        refused(rectangle_with(json!({ "pitch": 0 }))),
        "bodies[0].edges[2].pitch (leg 2 of main): a pitch of 0 in 12 is no slope of a roof: write \
         more than 0 and at most 48, or {\"end\": \"gable\"} where nothing slopes"
    );
}

#[test]
fn a_pitch_below_nothing() {
    assert!(
        refused(rectangle_with(json!({ "pitch": -4 })))
            .starts_with("bodies[0].edges[2].pitch (leg 2 of main): a pitch of -4 in 12")
    );
}

#[test]
fn a_pitch_past_48_in_12_and_one_all_but_vertical() {
    for pitch in ["48.1", "4800", "1e30"] {
        let steep = rectangle_with(json!({ "pitch": pitch.parse::<f64>().unwrap() }));
        assert!(
            refused(steep).starts_with("bodies[0].edges[2].pitch (leg 2 of main): a pitch of "),
            "{pitch}"
        );
    }
    let at_most = rectangle_with(json!({ "pitch": 48 }));
    assert!(solved(&survey(&[at_most])).roof.is_ok());
}

#[test]
fn a_pitch_that_is_no_number() {
    assert_eq!(
        refused(rectangle_with(json!({ "pitch": "steep" }))),
        "bodies[0].edges[2].pitch (leg 2 of main): write the rise in 12 as a number here, not the \
         text \"steep\""
    );
}

#[test]
fn a_corner_that_is_no_number() {
    let mut shape = hipped("main", &RECTANGLE);
    shape["outline"]["corners"][1][0] = json!("NaN");
    assert_eq!(
        refused(shape),
        "bodies[0].outline.corners[1][0] (body main): write a number of feet here, not the text \
         \"NaN\""
    );
}

#[test]
fn a_key_that_nobody_knows() {
    assert_eq!(
        refused(rectangle_with(json!({ "slope": 6 }))),
        "bodies[0].edges[2].slope (leg 2 of main): the key \"slope\" is unknown here: take it out, known \
         are pitch, pitch_readings, same_as, bands, end, overhang"
    );
}

#[test]
fn an_end_that_nobody_knows() {
    assert_eq!(
        refused(rectangle_with(json!({ "end": "fancy" }))),
        "bodies[0].edges[2].end (leg 2 of main): the end \"fancy\" is unknown: write gable or wall"
    );
}

#[test]
fn a_pitch_and_an_end_at_one_leg() {
    assert_eq!(
        refused(rectangle_with(json!({ "pitch": 6, "end": "gable" }))),
        "bodies[0].edges[2].pitch (leg 2 of main): it gives both end and pitch: keep one of the two"
    );
}

#[test]
fn an_edge_that_says_nothing() {
    assert_eq!(
        refused(rectangle_with(json!({}))),
        "bodies[0].edges[2] (leg 2 of main): nothing is said of what rises here: give pitch, \
         pitch_readings, bands or end"
    );
}

#[test]
fn bands_that_do_not_stand_on_each_other() {
    let bands = |bands: Value| refused(rectangle_with(json!({ "bands": bands })));
    assert_eq!(
        bands(json!([{ "pitch": 20 }, { "pitch": 4 }])),
        "bodies[0].edges[2].bands[0] (leg 2 of main): a band with another above it has no rise: \
         give the height in feet that it rises"
    );
    assert_eq!(
        bands(json!([{ "pitch": 20, "rise": 8 }])),
        "bodies[0].edges[2].bands[0] (leg 2 of main): the last band has a rise: take it out, it \
         runs up to the ridge"
    );
    assert_eq!(
        bands(json!([])),
        "bodies[0].edges[2].bands (leg 2 of main): it has 0 bands: give 1 to 4, from the eave up"
    );
    assert_eq!(
        bands(json!([{ "pitch": 20, "rise": 0 }, { "pitch": 4 }])),
        "bodies[0].edges[2].bands[0].rise (leg 2 of main): 0 ft is no length of a house: write \
         more than 0 and at most 10,000 ft"
    );
}

#[test]
fn a_band_steeper_than_48_in_12() {
    let bands = json!({ "bands": [{ "pitch": 48.5, "rise": 8 }, { "pitch": 4 }] });
    assert!(refused(rectangle_with(bands)).starts_with(
        "bodies[0].edges[2].bands[0].pitch (leg 2 of main): a pitch of 48.5 in 12 is no slope"
    ));
}

#[test]
fn an_overhang_below_nothing() {
    assert_eq!(
        refused(rectangle_with(json!({ "pitch": 6, "overhang": -1 }))),
        "bodies[0].edges[2].overhang (leg 2 of main): -1 ft is out of range: write 0 to 10,000 ft"
    );
}

#[test]
fn neighbors_in_one_line_at_two_pitches() {
    let corners = [
        [0.0, 0.0],
        [20.0, 0.0],
        [40.0, 0.0],
        [40.0, 20.0],
        [0.0, 20.0],
    ];
    let edges = [4, 8, 6, 6, 6].map(|pitch| json!({ "pitch": pitch }));
    assert_eq!(
        refused(body("main", &corners, &edges)),
        "legs 0 and 1 of main lie in one line and rise differently: give one of them its own body"
    );
}

#[test]
fn a_step_in_a_front_whose_slopes_overtake() {
    let corners = [
        [0.0, 0.0],
        [30.0, 0.0],
        [30.0, 2.0],
        [60.0, 2.0],
        [60.0, 40.0],
        [0.0, 40.0],
    ];
    let edges = [3, 12, 12, 6, 6, 6].map(|pitch| json!({ "pitch": pitch }));
    assert_eq!(
        refused(body("main", &corners, &edges)),
        "legs 0 and 2 of main face the same way at 3/12 and 12/12 and their slopes overlap: give \
         one of them its own body"
    );
}

#[test]
fn ends_all_round() {
    assert_eq!(
        refused(body(
            "main",
            &RECTANGLE,
            &vec![json!({ "end": "gable" }); 4]
        )),
        "every leg of main is an end, so the roof never closes: give at least one leg a pitch"
    );
}

#[test]
fn ends_between_which_no_slope_reaches() {
    let corners = [
        [0.0, 0.0],
        [50.0, 0.0],
        [50.0, 20.0],
        [20.0, 20.0],
        [24.0, 40.0],
        [0.0, 40.0],
    ];
    let mut edges = vec![json!({ "end": "gable" }); 6];
    edges[1] = json!({ "pitch": 6 });
    assert_eq!(
        refused(body("main", &corners, &edges)),
        "the roof of main never closes: no slope reaches what lies between the ends at legs 0, 3, \
         4, 5, give one of them a pitch"
    );
}

#[test]
fn one_id_for_two_bodies() {
    let two = survey(&[hipped("main", &RECTANGLE), hipped("main", &RECTANGLE)]);
    assert!(said(&two).starts_with("bodies[1].id: "), "{}", said(&two));
    assert!(said(&two).contains("main"), "{}", said(&two));
}

#[test]
fn no_bodies() {
    assert!(said(&survey(&[])).starts_with("bodies: "));
}

#[test]
fn more_bodies_than_any_roof_has() {
    let bodies: Vec<Value> = (0..61)
        .map(|place| {
            let aside = 50.0 * f64::from(place);
            hipped(
                &format!("shed {place}"),
                &RECTANGLE.map(|[x, y]| [x + aside, y]),
            )
        })
        .collect();
    assert_eq!(
        said(&survey(&bodies)),
        "there are 61 roof bodies: one roof takes at most 60, make it two jobs"
    );
    assert!(solved(&survey(&bodies[..60])).roof.is_ok());
}

#[test]
fn more_corners_than_any_body_has() {
    let round: Vec<[f64; 2]> = (0..501)
        .map(|corner| {
            let (sine, cosine) = (f64::from(corner) * std::f64::consts::TAU / 501.0).sin_cos();
            [900.0 * cosine, 900.0 * sine]
        })
        .collect();
    let shape = json!({ "id": "main", "outline": { "corners": round } });
    assert_eq!(
        refused(shape),
        "bodies[0].outline.corners (body main): the list has more than 500 places: leave some out, \
         or make two surveys of it"
    );
}

#[test]
fn a_body_inside_a_body_is_a_roof() {
    let turret = RECTANGLE.map(|[x, y]| [10.0 + x / 4.0, 5.0 + y / 4.0]);
    let mut turret = hipped("turret", &turret);
    turret["eave_height"] = json!(20);
    let told = solved(&survey(&[hipped("main", &RECTANGLE), turret]));
    assert!(told.roof.is_ok());
    // The turret stands in a hole of the roof below it: neither is counted twice.
    let plan = told.totals.plan_area.unwrap().in_square_feet();
    assert!((plan - 800.0).abs() < 1e-6, "{plan}");
}

#[test]
fn a_wall_beside_no_end_is_a_caution() {
    let mut house = survey(&[hipped("main", &RECTANGLE)]);
    house["walls"] = json!([{ "from": [0, 0], "to": [40, 0], "top": 18 }]);
    let told = solved(&house);
    assert!(told.roof.is_ok());
    assert!(
        cautions(&told).contains(
            &"Wall 0 lies along no gable or wall leg and changes nothing: look at its ends."
                .to_string()
        ),
        "{:?}",
        cautions(&told)
    );
}

#[test]
fn a_gable_at_an_inside_corner_is_a_caution() {
    let corners = [
        [0.0, 0.0],
        [58.0, 0.0],
        [58.0, 17.0],
        [20.0, 17.0],
        [20.0, 47.0],
        [0.0, 47.0],
    ];
    let mut edges = vec![json!({ "pitch": 6 }); 6];
    edges[2] = json!({ "end": "gable" });
    let told = solved(&survey(&[body("main", &corners, &edges)]));
    assert!(told.roof.is_ok());
    assert!(
        cautions(&told).contains(
            &"The gable at leg 2 of main stands at an inside corner: are these two bodies?"
                .to_string()
        ),
        "{:?}",
        cautions(&told)
    );
}

#[test]
fn a_leg_of_which_nobody_said_anything() {
    let none = json!({ "id": "main", "outline": { "corners": RECTANGLE } });
    assert_eq!(
        refused(none),
        "nobody said what rises at leg 0 of main: read its pitch or call it a gable"
    );
}
