//! Surveys that lack a reading: what is determined is given, what is not never gets a number.

use super::shapes::{misses, stepped, taped};
use eavebook_core::outline::{ClosureState, Outline, adjust};
use eavebook_core::survey::{Body, Span};
use eavebook_houses::house;
use proptest::prelude::*;

fn solved(body: &Body) -> Outline {
    adjust(body).expect("an outline")
}

/// Whether legs in right angles or at 45 degrees are determined by the read ones and the two sums:
/// a leg is, if its own row adds nothing to the rank. Worked out here by elimination.
fn determined(units: &[[f64; 2]], read: &[bool]) -> Vec<bool> {
    let legs = units.len();
    let mut rows: Vec<Vec<f64>> = [0, 1]
        .map(|axis| units.iter().map(|u| u[axis]).collect())
        .to_vec();
    let own =
        |leg: usize| -> Vec<f64> { (0..legs).map(|k| f64::from(u8::from(k == leg))).collect() };
    rows.extend((0..legs).filter(|leg| read[*leg]).map(own));
    let known = rank(rows.clone());
    (0..legs)
        .map(|leg| {
            let mut more = rows.clone();
            more.push(own(leg));
            rank(more) == known
        })
        .collect()
}

fn rank(mut rows: Vec<Vec<f64>>) -> usize {
    let mut rank = 0;
    for column in 0..rows[0].len() {
        let Some(pivot) = (rank..rows.len()).find(|r| rows[*r][column].abs() > 1e-6) else {
            continue;
        };
        rows.swap(rank, pivot);
        for r in rank + 1..rows.len() {
            let share = rows[r][column] / rows[rank][column];
            for k in column..rows[r].len() {
                let taken = share * rows[rank][k];
                rows[r][k] -= taken;
            }
        }
        rank += 1;
        if rank == rows.len() {
            break;
        }
    }
    rank
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn a_leg_has_a_length_exactly_when_something_says_so(
        shape in stepped(), misses in misses(), kept in prop::collection::vec(0.0..1.0_f64, 20), share in 0.1..1.0_f64,
    ) {
        let legs = shape.legs();
        let read: Vec<bool> = (0..legs).map(|leg| kept[leg] < share).collect();
        prop_assume!(read.iter().any(|r| *r));
        let readings = shape
            .read(&misses)
            .into_iter()
            .zip(&read)
            .filter(|(_, read)| **read)
            .map(|(reading, _)| reading)
            .collect();
        let outline = solved(&shape.body(readings));
        let mut heading = 0.0_f64;
        let units: Vec<[f64; 2]> = shape
            .turns
            .iter()
            .map(|turn| {
                let (sin, cos) = heading.to_radians().sin_cos();
                heading += turn;
                [cos, sin]
            })
            .collect();
        for (leg, known) in determined(&units, &read).into_iter().enumerate() {
            let figure = &outline.legs[leg];
            prop_assert_eq!(figure.length.is_some(), known, "leg {}", leg);
            prop_assert_eq!(figure.worked_out, !read[leg]);
            if let Some(length) = figure.length {
                let apart = (length.value.in_feet() - shape.lengths[leg]).abs();
                prop_assert!(apart < 0.31 * legs as f64, "leg {} is {} off", leg, apart);
            }
        }
        for (corner, place) in outline.corners.iter().enumerate() {
            let variance = outline.covariance[(2 * corner, 2 * corner)];
            prop_assert_eq!(place.is_none(), variance.is_nan(), "corner {}", corner);
        }
        if read.iter().all(|r| *r) {
            prop_assert!(outline.corners.iter().all(Option::is_some));
        } else {
            let state = outline.closure.as_ref().map(|c| c.state);
            prop_assert_eq!(state, Some(ClosureState::NotChecked));
        }
    }
}

#[test]
fn a_side_that_was_not_read_is_worked_out() {
    let outline = solved(&house("48' out 27' out 48' out 27' out").unread(3).body());
    let leg = outline.legs[3];
    assert!(leg.worked_out);
    assert!((leg.length.expect("a length").value.in_feet() - 27.0).abs() < 1e-6);
    assert_eq!(leg.redundancy, None);
    // Its opposite is then checked by nothing, the pair of long sides by each other.
    assert!(outline.readings[1].is_unproved());
    assert_eq!(outline.readings[1].smallest_slip, None);
    assert!(!outline.readings[0].is_unproved());
}

#[test]
fn a_depth_that_nobody_read_has_no_number_and_the_width_has_one() {
    let outline = solved(
        &house("48' out 27' out 48' out 27' out")
            .unread(1)
            .unread(3)
            .body(),
    );
    assert_eq!(outline.legs[1].length, None);
    assert_eq!(outline.legs[3].length, None);
    assert!((outline.legs[0].length.expect("a length").value.in_feet() - 48.0).abs() < 1e-6);
    let placed: Vec<bool> = outline.corners.iter().map(Option::is_some).collect();
    assert_eq!(placed, [true, true, false, false]);
    let closure = outline.closure.expect("closure");
    assert!(closure.along.is_some() && closure.across.is_none());
    assert_eq!(
        closure.words.to_string(),
        "Not checked: 2 legs are worked out from the others."
    );
}

#[test]
fn an_overall_depth_stands_in_for_the_sides() {
    let unread = house("48' out 27' out 48' out 27' out")
        .overall(0, 2, 1)
        .unread(1)
        .unread(3);
    let outline = solved(&unread.body());
    assert!((outline.legs[1].length.expect("a length").value.in_feet() - 27.0).abs() < 1e-6);
    assert!(outline.corners.iter().all(Option::is_some));
}

#[test]
fn a_diagonal_stands_in_for_the_sides() {
    let unread = house("60' out 30' out 60' out 30' out")
        .tie(0, 2)
        .unread(1)
        .unread(3);
    let outline = solved(&unread.body());
    assert!((outline.legs[1].length.expect("a length").value.in_feet() - 30.0).abs() < 1e-3);
}

#[test]
fn a_survey_without_a_reading_knows_where_it_begins_and_nothing_else() {
    let shape = super::shapes::Shape {
        lengths: vec![40.0, 30.0, 40.0, 30.0],
        turns: vec![90.0; 4],
    };
    let outline = solved(&shape.body(Vec::new()));
    assert!(outline.corners[0].is_some());
    assert!(outline.corners[1..].iter().all(Option::is_none));
    assert!(
        outline
            .legs
            .iter()
            .all(|leg| leg.length.is_none() && leg.worked_out)
    );
    assert!(outline.suspects.named.is_empty());
}

#[test]
fn one_reading_alone_says_its_own_leg_and_no_other() {
    let shape = super::shapes::Shape {
        lengths: vec![40.0, 30.0, 40.0, 30.0],
        turns: vec![90.0; 4],
    };
    let outline = solved(&shape.body(vec![taped(0, Span::Leg(1), 30.0)]));
    let known: Vec<bool> = outline
        .legs
        .iter()
        .map(|leg| leg.length.is_some())
        .collect();
    // The opposite side follows by closing.
    assert_eq!(known, [false, true, false, true]);
    assert!(outline.readings[0].is_unproved());
}
