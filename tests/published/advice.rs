//! Where a caution begins, and what a public record is held against.

use crate::checks;
use crate::published;
use eavebook_core::solve::{Solved, solve};
use eavebook_core::survey_file;

/// A gable of known corners, 42 by 28 ft, with something more said of it.
fn house(pitch: f64, more: &str) -> Solved {
    let slope = format!(r#"{{"pitch": {pitch}}}, {{"end": "gable"}}"#);
    let text = format!(
        r#"{{"format": "eavebook-survey/1", "bodies": [ {{
             "outline": {{"corners": [[0, 0], [42, 0], [42, 28], [0, 28]]}},
             "edges": [{slope}, {slope}]}} ]{more}}}"#
    );
    solve(&survey_file::read(text.as_bytes()).unwrap().survey).unwrap()
}

fn cautions_of(solved: &Solved, code: &str) -> bool {
    solved.cautions.iter().any(|caution| caution.code() == code)
}

/// The number between two at which an answer changes, to a millionth.
pub fn turning_point(mut from: f64, mut to: f64, says: impl Fn(f64) -> bool) -> f64 {
    let at_from = says(from);
    assert_ne!(at_from, says(to), "nothing changes from {from} to {to}");
    while to - from > 1e-8 {
        let middle = f64::midpoint(from, to);
        if says(middle) == at_from {
            from = middle;
        } else {
            to = middle;
        }
    }
    (to * 1e6).round() / 1e6
}

published! {
    doubled_underlayment_is_spoken_of_below_4_in_12 = "CD-02", |_| {
        turning_point(2.0, 9.0, |pitch| cautions_of(&house(pitch, ""), "under_4_in_12"))
    };
    a_saddle_is_spoken_of_behind_a_chimney_over_30_in = "CD-17", |_| {
        12.0 * turning_point(1.0, 4.0, |width| {
            let chimney = format!(r#"{{"kind": "chimney", "width": {width}, "depth": 2, "at": [21, 7]}}"#);
            cautions_of(&house(6.0, &format!(r#", "penetrations": [{chimney}]"#)), "wide_chimney")
        })
    };
    layers_are_spoken_of_from_two = "CD-21", |_| {
        let speaks = |layers: &u32| {
            let covering = format!(r#", "covering": {{"kind": "strip shingle", "layers": {layers}}}"#);
            cautions_of(&house(6.0, &covering), "layers")
        };
        f64::from((1..10).find(speaks).unwrap())
    };
}

/// Entries that are no plain number, tested below.
pub const IN_PARTS: &[&str] = &["GL-04"];

#[test]
fn the_floors_of_a_two_story_house_are_held_against_its_footprint_by_floor() {
    let check = checks::find("GL-04");
    let (living_area, floors) = (&check.expected["gla"], check.input("levels"));
    let record = format!(
        r#", "hearsay": [{{"source": "public record", "living_area": {living_area}, "storeys": {floors}}}]"#
    );
    let solved = house(6.0, &record);
    let ours = solved.totals.plan_area.unwrap().in_square_feet();
    let difference = solved.hearsay[0].difference_percent.unwrap();
    let footprint = check.expected["footprint"].as_f64().unwrap();
    assert!(
        (ours * (1.0 + difference / 100.0) - footprint).abs() < 1e-6,
        "{}",
        check.source
    );
    assert_eq!(solved.hearsay[0].explained, Some(true));
}
