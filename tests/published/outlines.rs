//! Walls and overhangs to outlines, by way of a survey file and the adjustment.

use crate::published;
use eavebook_core::outline;
use eavebook_core::roof::{self, BodyShape, LegRise, Rise};
use eavebook_core::survey_file;
use eavebook_core::units::{Length, Pitch};

/// The corners of a rectangle whose two walls were taped, with the same overhang all round.
fn corners(long: f64, short: f64, overhang: f64) -> Vec<outline::Corner> {
    let wall = |leg, value| {
        format!(
            r#"{{"wall_of_leg": {leg}, "value": {value}, "overhangs": [{overhang}, {overhang}]}}"#
        )
    };
    let walls = [wall(0, long), wall(1, short), wall(2, long), wall(3, short)].join(", ");
    let text = format!(
        r#"{{"format": "eavebook-survey/1", "bodies": [ {{"id": "main",
             "outline": {{"turns_deg": [90, 90, 90, 90]}}, "readings": [{walls}]}} ]}}"#
    );
    let survey = survey_file::read(text.as_bytes()).unwrap().survey;
    let adjusted = outline::adjust(&survey.bodies[0]).unwrap();
    adjusted.corners.into_iter().map(Option::unwrap).collect()
}

published! {
    an_overhang_is_added_at_both_ends = "TR-04", |check| {
        let corners = corners(check.input("wall_len_ft"), 20.0, check.input("overhang_ft"));
        let (from, to) = (corners[0].at, corners[1].at);
        (to.x - from.x).hypot(to.y - from.y)
    };
    a_footprint_with_its_overhangs_on_the_slope = "GL-05", |_| {
        let body = BodyShape {
            id: "main".to_owned(),
            corners: corners(42.0, 28.0, 1.0).iter().map(|corner| corner.at).collect(),
            nominal_directions: None,
            legs: vec![LegRise { rise: Rise::slope(Pitch::rise_in_12(6.0)), overhang: Length::feet(1.0) }; 4],
            eave_height: Length::feet(9.0),
        };
        roof::raise(&[body], &[]).unwrap().area().in_square_feet()
    };
}
