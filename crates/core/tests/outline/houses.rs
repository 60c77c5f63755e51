//! What the readings of a house say against one another.

use eavebook_core::outline::{ClosureState, Outline, SlipKind, adjust};
use eavebook_core::survey::{Body, Reading, Span};
use eavebook_core::units::Length;
use eavebook_houses::house;

fn solved(body: &Body) -> Outline {
    adjust(body).expect("an outline")
}

fn suspect_legs(body: &Body) -> Vec<usize> {
    let mut legs: Vec<usize> = solved(body)
        .suspects
        .named
        .iter()
        .filter_map(|s| match body.readings[s.reading].span {
            Span::Leg(leg) => Some(leg),
            Span::Tie(..) | Span::Overall { .. } | Span::WallOfLeg { .. } => None,
        })
        .collect();
    legs.sort_unstable();
    legs
}

#[test]
fn a_rectangle_read_twice_with_one_tens_slip_names_that_leg() {
    let body = house("60' out 30' out 60' out 30' out")
        .read_each(2)
        .misread(2, "50'")
        .body();
    assert_eq!(suspect_legs(&body), [2]);
    let named = &solved(&body).suspects.named[0];
    assert_eq!(named.kind, SlipKind::Tens);
    assert!((named.likely_value.in_feet() - 60.0).abs() < 1e-9);
    assert!(named.probability > 0.99);
}

#[test]
fn a_rectangle_read_once_with_one_tens_slip_names_the_pair_never_one_leg() {
    let body = house("60' out 30' out 60' out 30' out")
        .misread(2, "50'")
        .body();
    assert_eq!(suspect_legs(&body), [0, 2]);
    for suspect in solved(&body).suspects.named {
        assert!((suspect.probability - 0.5).abs() < 0.01, "{suspect:?}");
    }
}

#[test]
fn a_kind_that_fits_one_leg_of_a_pair_names_it_first_and_the_pair_all_the_same() {
    // 42 for 24: on the other side no known slip makes 24 of 42 but the same one.
    let body = house("62' out 24' out 62' out 24' out")
        .misread(0, "26'")
        .body();
    let told = solved(&body);
    assert_eq!(suspect_legs(&body), [0, 2]);
    assert_eq!(told.suspects.named[0].kind, SlipKind::Transposed);
}

#[test]
fn a_clean_house_names_nobody() {
    let body = house("60' out 40' out 24' out 16' in 36' out 24' out").body();
    let told = solved(&body);
    assert!(told.suspects.named.is_empty());
    assert!(told.suspects.nothing_wrong > 0.9);
    assert_eq!(told.degrees_of_freedom, 2);
    let closure = told.closure.expect("closure");
    assert_eq!(closure.state, ClosureState::Closes);
    assert!(!closure.cannot_see.is_empty());
}

#[test]
fn an_overhang_left_out_at_both_ends_is_known_for_what_it_is() {
    let body = house("62' out 33' out 62' out 33' out")
        .overhang(1.5)
        .read_each(2)
        .misread(0, "59'")
        .body();
    let told = solved(&body);
    let named = &told.suspects.named[0];
    assert_eq!(suspect_legs(&body), [0]);
    assert_eq!(named.kind, SlipKind::Overhang);
    assert!((named.likely_value.in_feet() - 62.0).abs() < 1e-9);
}

#[test]
fn a_tape_read_from_its_other_end_is_known_for_what_it_is() {
    let body = house("62' out 33' out 62' out 33' out")
        .read_each(2)
        .misread(0, "38'")
        .body();
    let named = solved(&body).suspects.named;
    assert_eq!(named[0].kind, SlipKind::Reversed);
    assert!((named[0].likely_value.in_feet() - 62.0).abs() < 1e-9);
}

#[test]
fn a_metric_slip_of_ten_is_ten_meters() {
    let meters = |id: &str, leg: usize, text: &str| Reading {
        id: id.to_owned(),
        span: Span::Leg(leg),
        value: Length::meters(text.parse().expect("metres")),
        text: Some(format!("{text} m")),
        sigma: None,
    };
    let mut body = house("47' out 31' out 47' out 31' out").body();
    body.readings = vec![
        meters("a", 0, "14.32"),
        meters("b", 1, "9.45"),
        meters("c", 2, "24.33"),
        meters("d", 3, "9.44"),
        meters("e", 0, "14.30"),
    ];
    let named = solved(&body).suspects.named;
    assert_eq!((named[0].reading, named[0].kind), (2, SlipKind::Tens));
    assert!(((named[0].likely_value - Length::meters(14.33)).in_feet()).abs() < 1e-9);
}

#[test]
fn a_wall_and_its_overhangs_make_a_leg_less_sure_than_a_taped_one() {
    let mut body = house("51' out 30' out 51' out 30' out").body();
    body.readings[0] = Reading {
        id: "wall".to_owned(),
        span: Span::WallOfLeg {
            leg: 0,
            overhangs: [Length::feet(2.0), Length::feet(2.0)],
        },
        value: Length::feet(47.0),
        text: None,
        sigma: None,
    };
    let told = solved(&body);
    assert!((told.legs[0].length.expect("a length").value.in_feet() - 51.0).abs() < 1e-6);
    assert!(!told.legs[0].worked_out);
    // A wall read as such is bound less closely: more of a slip shows in its own residual.
    assert!(told.legs[0].redundancy > told.legs[2].redundancy);
}

#[test]
fn a_leg_read_twice_has_no_redundancy_of_its_own() {
    let told = solved(&house("60' out 30' out 60' out 30' out").again(0).body());
    assert_eq!(told.legs[0].redundancy, None);
    assert_eq!(told.legs[0].smallest_slip, None);
    assert!(told.legs[1].redundancy.is_some_and(|r| r > 0.2));
    assert!(
        told.legs[1]
            .smallest_slip
            .is_some_and(|slip| slip > Length::feet(1.0))
    );
}

#[test]
fn corners_known_from_elsewhere_have_no_spread_and_readings_are_compared() {
    let told = solved(
        &house("60' out 30' out 60' out 30' out")
            .known()
            .again(0)
            .again(1)
            .misread(1, "40'")
            .body(),
    );
    assert!(told.covariance.iter().all(|q| q.abs() < 1e-15));
    assert!(
        told.corners
            .iter()
            .flatten()
            .all(|c| c.sigma.in_feet().abs() < 1e-15)
    );
    assert!(told.closure.is_none());
    assert!(
        told.readings
            .iter()
            .all(|r| (r.redundancy - 1.0).abs() < 1e-12)
    );
    assert!(told.legs.iter().all(|leg| !leg.worked_out));
    assert_eq!(told.suspects.named.len(), 1);
    assert_eq!(told.suspects.named[0].kind, SlipKind::Tens);
}

#[test]
fn a_corner_in_the_middle_of_a_wall_is_a_corner() {
    let told = solved(&house("20' straight 40' out 30' out 60' out 30' out").body());
    assert!(told.suspects.named.is_empty());
    assert!((told.legs[1].length.expect("a length").value.in_feet() - 40.0).abs() < 1e-6);
    assert!(told.corners[1].is_some_and(|c| (c.at.x - 20.0).abs() < 1e-6));
}

#[test]
fn a_jog_of_two_feet_keeps_its_direction() {
    let told = solved(&house("60' out 40' out 30' out 2' in 30' out 38' out").body());
    assert!((told.legs[3].length.expect("a length").value.in_feet() - 2.0).abs() < 1e-6);
    assert_eq!(told.degrees_of_freedom, 2);
}

#[test]
fn an_outline_of_sixty_corners_is_adjusted() {
    let mut walk = String::from("400' out 20' out ");
    for _ in 0..14 {
        walk.push_str("14' out 6' in 14' in 6' out ");
    }
    walk.push_str("8' out 20' out");
    let told = solved(&house(&walk).body());
    assert_eq!(told.legs.len(), 60);
    assert!(told.suspects.named.is_empty());
}

#[test]
fn a_triangle_and_an_octagon_are_adjusted_and_a_slip_in_them_is_among_the_named() {
    let three = "30' out 120 30' out 120 30' out 120";
    let eight =
        "12' out 45 12' out 45 12' out 45 12' out 45 12' out 45 12' out 45 12' out 45 12' out 45";
    for walk in [three, eight] {
        let told = solved(&house(walk).body());
        assert!(told.suspects.named.is_empty());
        assert_eq!(told.degrees_of_freedom, 2);
        let slipped = house(walk).misread(1, "22'");
        let slipped = if walk == three {
            house(walk).misread(1, "40'")
        } else {
            slipped
        };
        assert!(suspect_legs(&slipped.body()).contains(&1), "{walk}");
        // In slanting directions closing tells legs apart that right angles would pair.
        let named = solved(&slipped.body()).suspects.named;
        assert!(named[0].probability > 0.45, "{walk}: {named:?}");
    }
}

#[test]
fn a_slip_that_turns_a_leg_round_still_leaves_numbers() {
    // The arms come to less than the mouth across: some leg would have to run backward.
    let body = house("20' out 18' in 20' in 18' out 20' out 40' out 60' out 40' out")
        .misread(2, "92'")
        .body();
    let told = solved(&body);
    assert!(told.chi2.is_finite() && told.chi2 > 1000.0);
    assert!(told.legs.iter().all(|leg| {
        leg.length
            .is_some_and(|length| length.value.in_feet().is_finite())
    }));
    assert!(suspect_legs(&body).contains(&2));
}

#[test]
fn ten_thousand_readings_with_a_slip_in_each_tenth_are_answered() {
    let mut body = house("60' out 30' out 60' out 30' out").body();
    body.readings = (0..10_000)
        .map(|k| Reading {
            id: format!("t{k}"),
            span: Span::Leg(k % 4),
            value: Length::feet([60.0, 30.0][k % 2] + if k % 10 == 3 { 10.0 } else { 0.0 }),
            text: None,
            sigma: None,
        })
        .collect();
    let told = solved(&body);
    assert!(told.suspects.nothing_wrong < 0.5);
    assert!(told.chi2.is_finite());
}
