//! Two slips in one house, and what is believed after a leg was read again.

use eavebook_core::outline::{Outline, Unseen, adjust};
use eavebook_core::survey::{Body, Span};
use eavebook_houses::{House, house};

const RECTANGLE: &str = "62' out 33' out 62' out 33' out";

fn solved(body: &Body) -> Outline {
    adjust(body).expect("an outline")
}

/// Legs of the named readings, and what each would have been.
fn named(house: &House) -> Vec<(usize, f64)> {
    let body = house.body();
    let mut named: Vec<(usize, f64)> = solved(&body)
        .suspects
        .named
        .iter()
        .filter_map(|s| match body.readings[s.reading].span {
            Span::Leg(leg) => Some((leg, s.likely_value.in_feet())),
            Span::Tie(..) | Span::Overall { .. } | Span::WallOfLeg { .. } => None,
        })
        .collect();
    named.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    named
}

#[test]
fn two_slips_in_a_house_read_twice_are_both_named_with_what_they_would_have_been() {
    let two = house(RECTANGLE)
        .read_each(2)
        .misread(0, "72'")
        .misread(1, "23'");
    let named = named(&two);
    let legs: Vec<usize> = named.iter().map(|(leg, _)| *leg).collect();
    assert_eq!(legs, [0, 1]);
    assert!((named[0].1 - 62.0).abs() < 1e-9 && (named[1].1 - 33.0).abs() < 1e-9);
    let suspects = solved(&two.body()).suspects;
    assert!(
        suspects.named.iter().all(|s| s.probability > 0.95),
        "{suspects:?}"
    );
    assert!(suspects.possible[0].slips.len() == 2 && suspects.possible[0].chance > 0.9);
}

#[test]
fn two_slips_where_each_leg_was_read_once_name_both_pairs() {
    let two = house(RECTANGLE).misread(0, "52'").misread(1, "43'");
    let legs: Vec<usize> = named(&two).into_iter().map(|(leg, _)| leg).collect();
    assert_eq!(legs, [0, 1, 2, 3]);
}

#[test]
fn one_slip_is_never_told_as_two() {
    for one in [
        house(RECTANGLE).misread(2, "52'"),
        house(RECTANGLE).read_each(2).misread(2, "52'"),
        house("60' out 40' out 24' out 16' in 36' out 24' out")
            .tie(2, 4)
            .misread(0, "50'"),
    ] {
        let suspects = solved(&one.body()).suspects;
        assert!(!suspects.named.is_empty());
        assert!(
            suspects.possible.iter().all(|p| p.slips.len() == 1),
            "{suspects:?}"
        );
    }
}

#[test]
fn a_leg_read_again_moves_the_belief_and_does_not_begin_it_anew() {
    let once = house(RECTANGLE).misread(2, "52'");
    let legs = |house: &House| -> Vec<usize> { named(house).iter().map(|(leg, _)| *leg).collect() };
    assert_eq!(legs(&once), [0, 2]);
    // The other leg of the pair says the same again: now it is this one, nearly surely.
    let other_again = once.clone().again(0);
    assert_eq!(legs(&other_again), [2]);
    let suspects = solved(&other_again.body()).suspects;
    assert!(suspects.named[0].probability > 0.95);
    assert!((suspects.named[0].likely_value.in_feet() - 62.0).abs() < 1e-9);
    // This one is read again and says the other thing: its first reading is named, not its second.
    let itself_again = once.again(2);
    let suspects = solved(&itself_again.body()).suspects;
    assert_eq!(suspects.named.len(), 1);
    assert_eq!(suspects.named[0].reading, 2);
    assert!(suspects.named[0].probability > 0.95);
}

#[test]
fn the_same_slip_on_both_legs_of_a_pair_closes_and_is_said_to_be_invisible() {
    let both = house(RECTANGLE).misread(0, "52'").misread(2, "52'");
    let told = solved(&both.body());
    assert!(told.suspects.named.is_empty());
    let closure = told.closure.expect("closure");
    assert_eq!(closure.words.to_string(), "Closes within 1 in.");
    let said: Vec<String> = closure.cannot_see.iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        [
            "the same slip on both legs of a pair (legs 0 and 2, or 1 and 3)",
            "one wrong unit or a stretched tape on every reading",
            "an overhang left out all round",
            "walls out of square",
        ]
    );
}

#[test]
fn a_pair_of_which_one_leg_was_read_twice_is_not_said_to_be_invisible() {
    let closure = solved(&house(RECTANGLE).again(0).body())
        .closure
        .expect("closure");
    let pairs = vec![[1, 3]];
    assert_eq!(closure.cannot_see[0], Unseen::PairedSlip { pairs });
}
