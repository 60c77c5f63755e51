//! What is said of a closure, and what a gap is said to come from.

use eavebook_core::outline::{
    Closure, ClosureState, ClosureWords, GapHint, LastLeg, Miss, Sense, Unseen, adjust,
};
use eavebook_core::units::Length;
use eavebook_houses::{House, house};

fn closure(house: House) -> Closure {
    adjust(&house.body())
        .expect("an outline")
        .closure
        .expect("closure")
}

fn rectangle() -> House {
    house("60' out 30' out 60' out 30' out")
}

fn said(house: House) -> String {
    closure(house).words.to_string()
}

#[test]
fn what_closes_says_within_what() {
    assert_eq!(said(rectangle()), "Closes within 1 in.");
    assert_eq!(
        said(rectangle().misread(0, "60' 3\"")),
        "Closes within 3 in."
    );
    // Five inches in 180 ft are within half a per cent.
    assert_eq!(
        said(rectangle().misread(0, "60' 5\"")),
        "Closes within 5 in."
    );
}

#[test]
fn what_gapes_says_which_sum_and_by_how_much() {
    assert_eq!(
        said(rectangle().misread(0, "42'")),
        "18 ft short along the front."
    );
    assert_eq!(
        said(rectangle().misread(2, "42'")),
        "18 ft long along the front."
    );
    assert_eq!(
        said(rectangle().misread(1, "31' 7\"").misread(0, "58'")),
        "2 ft short along the front and 1 ft 7 in long across it."
    );
    assert_eq!(
        said(rectangle().misread(3, "40'")),
        "10 ft short across the front."
    );
}

#[test]
fn no_word_ever_says_correct() {
    let all = [
        said(rectangle()),
        said(rectangle().misread(0, "42'")),
        said(rectangle().unread(0)),
        Unseen::all(vec![[0, 2]])
            .iter()
            .map(ToString::to_string)
            .collect::<String>(),
    ];
    for word in ["correct", "guaranteed", "safe"] {
        assert!(all.iter().all(|text| !text.contains(word)));
    }
}

#[test]
fn a_leg_worked_out_is_no_check_even_where_another_sum_gapes() {
    let closure = closure(rectangle().unread(1).misread(0, "50'"));
    assert_eq!(closure.state, ClosureState::NotChecked);
    assert_eq!(
        closure.words.to_string(),
        "Not checked: a leg is worked out from the others. 10 ft short along the front."
    );
}

#[test]
fn a_gap_of_nines_asks_for_swapped_digits() {
    let hints = closure(rectangle().misread(0, "6'")).hints;
    assert!(!hints.iter().any(|h| matches!(h, GapHint::FullTape { .. })));
    let l = house("62' out 40' out 35' out 16' in 27' out 24' out").misread(0, "26'");
    let hints = closure(l).hints;
    assert_eq!(hints[0], GapHint::SwappedDigits { legs: vec![0] });
    assert_eq!(hints[0].to_string(), "Swapped digits?");
    assert_eq!(
        hints.last(),
        Some(&GapHint::ReadOneAgain {
            legs: vec![0, 2, 4]
        })
    );
}

#[test]
fn a_gap_of_ten_and_of_a_full_tape_ask_for_them() {
    assert!(
        closure(rectangle().misread(0, "50'"))
            .hints
            .contains(&GapHint::DroppedTen)
    );
    let long = house("160' out 30' out 160' out 30' out").misread(0, "60'");
    let full = GapHint::FullTape {
        length: Length::feet(100.0),
    };
    assert!(closure(long).hints.contains(&full));
    assert_eq!(full.to_string(), "A full tape of 100 ft forgotten?");
}

#[test]
fn a_gap_as_long_as_a_leg_asks_whether_one_is_missing() {
    let t = house("60' out 40' out 24' out 16' in 36' out 24' out").misread(1, "24'");
    let hints = closure(t).hints;
    assert!(hints.contains(&GapHint::LegMissing {
        as_long_as: vec![3]
    }));
}

#[test]
fn every_sentence_can_be_said_from_its_parts() {
    let gap = ClosureWords::Gap {
        along: Some(Miss {
            by: Length::feet(18.0),
            sense: Sense::Short,
        }),
        across: None,
        last_leg: LastLeg::Perhaps,
    };
    assert_eq!(
        gap.to_string(),
        "If this was the last leg, it is 18 ft short along the front."
    );
    let open = ClosureWords::ToClose {
        along: Some(Length::feet(18.0)),
        across: None,
    };
    assert_eq!(
        open.to_string(),
        "To close: 18 ft along, an unread length across."
    );
}
