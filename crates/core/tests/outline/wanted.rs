//! What no reading says, in words.

use eavebook_core::outline::{Outline, adjust};
use eavebook_houses::{House, house};

fn solved(house: &House) -> Outline {
    adjust(&house.body()).expect("an outline")
}

fn said(house: &House) -> Vec<String> {
    solved(house)
        .lacks
        .iter()
        .map(ToString::to_string)
        .collect()
}

/// A T with its stem in front.
fn tee() -> House {
    house("18' out 12' in 16' out 26' out 50' out 26' out 16' in 12' out")
}

#[test]
fn a_whole_survey_lacks_nothing() {
    assert!(said(&tee()).is_empty());
    assert!(said(&tee().unread(3)).is_empty());
    assert!(solved(&tee()).parts.is_empty());
}

#[test]
fn a_rectangle_whose_depth_nobody_read_says_so() {
    let open = house("48' out 27' out 48' out 27' out").unread(1).unread(3);
    assert_eq!(
        said(&open),
        ["nothing says how deep the house is: read leg 1 or leg 3"]
    );
}

#[test]
fn the_depth_of_a_wing_names_the_wing_its_legs_and_the_overall_that_would_do() {
    assert_eq!(
        said(&tee().unread(1).unread(7)),
        [
            "nothing says how deep the front wing is: read leg 1 or leg 7 or the overall from corner 0 to 4"
        ]
    );
    assert_eq!(
        said(&tee().unread(3).unread(5)),
        [
            "nothing says how deep the back wing is: read leg 3 or leg 5 or the overall from corner 0 to 4"
        ]
    );
    let with_overall = tee().overall(0, 4, 3).unread(3).unread(5);
    assert!(said(&with_overall).is_empty());
}

#[test]
fn both_ways_at_once_are_two_lacks() {
    let open = house("48' out 27' out 48' out 27' out")
        .tie(0, 1)
        .unread(0)
        .unread(1)
        .unread(2)
        .unread(3);
    assert_eq!(
        said(&open),
        ["nothing says how deep the house is: read leg 1 or leg 3"]
    );
}

#[test]
fn an_outline_without_a_reading_lacks_its_width_and_its_depth() {
    let mut body = house("48' out 27' out 48' out 27' out").body();
    body.readings.clear();
    let said: Vec<String> = adjust(&body)
        .expect("an outline")
        .lacks
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(
        said,
        [
            "nothing says how wide the house is: read leg 0 or leg 2",
            "nothing says how deep the house is: read leg 1 or leg 3",
        ]
    );
}

#[test]
fn legs_that_run_one_way_and_were_all_left_out_want_all_but_one() {
    let open = tee().unread(0).unread(2).unread(6).unread(4);
    assert_eq!(
        said(&open),
        ["nothing says how wide the house is: read 3 of legs 0, 2, 4 and 6"]
    );
}

#[test]
fn parts_that_nothing_joins_are_told_each_with_its_own_sum() {
    let parts = solved(&tee().unread(3).unread(5)).parts;
    let said: Vec<String> = parts.iter().map(ToString::to_string).collect();
    assert_eq!(parts.len(), 2);
    assert_eq!(parts[0].corners, [0, 1, 2, 3, 6, 7]);
    assert_eq!(said[1], "corners 4 to 5, 50.0 ft along and 0.0 ft across");
}
