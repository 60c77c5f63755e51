//! Houses from their readings to a roof and what is said of it.

use eavebook_core::check::{Unread, Why};
use eavebook_core::roof::EdgeKind;
use eavebook_core::settled::{Ground, RoofUnavailable};
use eavebook_core::solve::solve_over;
use eavebook_core::survey::{Covering, Deck, Hearsay, PlacedFrom, Point, Rise, Span};
use eavebook_core::uncertainty::UncertaintySource;
use eavebook_core::units::Length;
use eavebook_houses::{Noise, Told, house};

const RECTANGLE: &str = "60' out 30' out 60' out 30' out";
const L: &str = "60' out 40' out 24' out 16' in 36' out 24' out";

fn near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "{found} is not {expected} +- {within}"
    );
}

#[test]
fn a_hip_over_a_rectangle_has_the_area_and_edges_of_the_closed_forms() {
    let told = house(RECTANGLE).pitch(6.0).solve();
    near(told.area(), 1800.0 * 1.25_f64.sqrt(), 1e-6);
    near(told.length_of(EdgeKind::Ridge), 30.0, 1e-6);
    near(told.length_of(EdgeKind::Hip), 4.0 * 15.0 * 1.5, 1e-6);
    near(told.length_of(EdgeKind::Eave), 180.0, 1e-6);
}

#[test]
fn a_gable_at_one_end_makes_rakes_there() {
    let told = house(RECTANGLE).pitch(6.0).gable(1).solve();
    near(told.length_of(EdgeKind::Ridge), 45.0, 1e-6);
    near(
        told.length_of(EdgeKind::Rake),
        2.0 * 15.0 * 1.25_f64.sqrt(),
        1e-6,
    );
}

#[test]
fn a_rectangle_read_twice_with_one_tens_slip_names_that_leg() {
    let told = house(RECTANGLE).read_each(2).misread(2, "50'").solve();
    assert_eq!(told.suspect_legs(), [2]);
}

#[test]
fn a_rectangle_read_once_with_one_tens_slip_names_the_pair_never_one_leg() {
    let told = house(RECTANGLE).misread(2, "50'").solve();
    assert_eq!(told.suspect_legs(), [0, 2]);
}

#[test]
fn a_slip_moves_the_area_until_somebody_settles_it() {
    let clean = house(RECTANGLE).pitch(6.0).solve();
    let slipped = house(RECTANGLE).pitch(6.0).misread(2, "50'").solve();
    near(slipped.area(), clean.area() * 55.0 / 60.0, 12.0);
}

#[test]
fn the_sigma_of_a_hip_is_that_of_its_sides_worked_by_hand() {
    // 60 x 30 at 6 in 12, four sides read once with 0.15 ft, corners square: each dimension is
    // the mean of two readings, so (30 F 0.15)^2 / 2 + (60 F 0.15)^2 / 2, F = 1.118.
    let mut survey = house(RECTANGLE).pitch(6.0).survey();
    for reading in &mut survey.bodies[0].readings {
        reading.sigma = Some(Length::feet(0.15));
    }
    let by_hand = 1.25_f64.sqrt() * 0.15 * (900.0_f64 + 3600.0).sqrt() / 2.0_f64.sqrt();
    near(Told::of(survey).area_sigma(), by_hand, 0.05);
}

#[test]
fn corners_that_are_known_leave_nothing_uncertain() {
    let told = house(L).pitch(6.0).known().solve();
    near(told.area_sigma(), 0.0, 1e-12);
    near(
        told.area(),
        (24.0 * 40.0 + 36.0 * 24.0) * 1.25_f64.sqrt(),
        1e-6,
    );
}

#[test]
fn a_slope_read_once_is_looked_at_again_before_any_tape() {
    let told = house(RECTANGLE).pitch(6.0).one_look(0, 26.4).solve();
    let first = &told.solved.read_first[0];
    assert_eq!(first.again, UncertaintySource::Pitch { body: 0, leg: 0 });
    assert_eq!(first.why, Why::Unproved);
    assert!(told.area_sigma() > house(RECTANGLE).pitch(6.0).solve().area_sigma());
}

#[test]
fn faces_that_share_a_slope_share_its_uncertainty() {
    let read = house(RECTANGLE).pitch(6.0).one_look(0, 26.4);
    let apart = read.clone().one_look(2, 26.4).solve();
    let shared = read.rises(2, Rise::SameAs(0)).solve();
    near(apart.area(), shared.area(), 1e-9);
    assert!(shared.area_sigma() > apart.area_sigma());
}

#[test]
fn the_short_side_gains_most_from_a_second_reading() {
    let told = house(RECTANGLE).pitch(6.0).solve();
    let UncertaintySource::Reading { reading, .. } = told.solved.read_first[0].again else {
        panic!("{:?}", told.solved.read_first[0])
    };
    assert!(matches!(
        told.survey.bodies[0].readings[reading].span,
        Span::Leg(1 | 3)
    ));
}

#[test]
fn a_leg_read_by_nobody_is_worked_out_and_would_help() {
    let told = house(RECTANGLE).pitch(6.0).unread(3).solve();
    near(told.area(), 1800.0 * 1.25_f64.sqrt(), 0.1);
    assert_eq!(told.unproved_legs(), [1]);
    assert_eq!(told.solved.missing_readings[0].unread, Unread::Leg(3));
    assert!(told.solved.missing_readings[0].gain.is_some());
    assert_eq!(
        told.cautions(),
        [
            "A leg of main was worked out from the others, so its outline is not checked: read that leg or a tie."
        ]
    );
}

#[test]
fn a_net_that_lacks_a_reading_says_which_and_gives_no_area() {
    let told = house(RECTANGLE).pitch(6.0).unread(1).unread(3).solve();
    assert!(told.area().is_nan());
    assert_eq!(
        told.cautions()[0],
        "No roof yet: the outline of main lacks a reading: nothing says how deep the house is: read leg 1 or leg 3."
    );
    assert_eq!(told.solved.missing_readings[0].unread, Unread::Leg(1));
}

#[test]
fn a_slope_that_nobody_looked_at_leaves_the_plan_area() {
    let told = house(RECTANGLE).solve();
    assert!(told.area().is_nan());
    let plan = told.solved.totals.plan_area.expect("the outline is known");
    near(plan.in_square_feet(), 1800.0, 1e-6);
    // By hand: each of two opposite sides once, so 30 x .1825 / sqrt 2 and 60 x .1806 / sqrt 2,
    // squared and added.
    let sigma = told.solved.totals.outline_sigma.expect("it was read");
    near(sigma.in_square_feet(), 8.585, 0.05);
    assert_eq!(
        told.cautions(),
        [
            "No roof yet: nobody said what rises at leg 0 of main: read its pitch or call it a gable."
        ]
    );
}

#[test]
fn readings_that_make_an_outline_cross_itself_are_a_caution_not_a_refusal() {
    let told = house("40' out 30' out 10' out 20' in 20' in 20' out 10' out 30' out")
        .pitch(6.0)
        .misread(4, "70'")
        .misread(0, "4'")
        .solve();
    let Err(RoofUnavailable::OutlineAmiss(_)) = &told.solved.roof else {
        panic!("{:?}", told.solved.roof)
    };
    assert!(
        told.cautions()[0].starts_with("No roof yet: "),
        "{:?}",
        told.cautions()
    );
}

#[test]
fn ends_all_round_are_refused_in_the_words_of_the_roof() {
    let told = house(RECTANGLE).gable(0).gable(1).gable(2).gable(3).solve();
    assert_eq!(
        told.solved.roof.expect_err("no roof closes").to_string(),
        "every leg of main is an end, so the roof never closes: give at least one leg a pitch"
    );
}

#[test]
fn a_body_found_from_another_moves_with_it() {
    let mut survey = house(RECTANGLE)
        .standing(5.0, 7.0, 0.0)
        .and(house("20' out 20' out 20' out 20' out").named("porch"))
        .survey();
    survey.bodies[1].placed_from = Some(PlacedFrom {
        body: "main".into(),
        corner: 2,
        offset: Point { x: 1.0, y: -2.0 },
        sigma: Length::feet(0.3),
    });
    let told = Told::of(survey);
    let corner = told.solved.bodies[1].outline.corners[0].expect("the datum");
    near(corner.at.x, 66.0, 1e-6);
    near(corner.at.y, 35.0, 1e-6);
}

#[test]
fn bodies_found_from_each_other_stay_where_their_sketches_start() {
    let mut survey = house(RECTANGLE)
        .and(house(RECTANGLE).named("porch"))
        .survey();
    for (k, other) in [(0, "porch"), (1, "main")] {
        survey.bodies[k].placed_from = Some(PlacedFrom {
            body: other.into(),
            corner: 0,
            offset: Point { x: 1.0, y: 1.0 },
            sigma: Length::feet(0.3),
        });
    }
    let told = Told::of(survey);
    let corner = told.solved.bodies[1].outline.corners[0].expect("the datum");
    near(corner.at.x, 0.0, 1e-12);
}

#[test]
fn turning_the_house_and_shuffling_its_readings_move_no_area() {
    let mut noise = Noise::seeded(4);
    let here = house(L)
        .tie(2, 4)
        .read_each(2)
        .pitch(6.0)
        .gable(1)
        .noisy(&mut noise, 0.15);
    let mut there = here.clone().standing(12.0, -7.0, 31.0).survey();
    there.bodies[0].readings.reverse();
    let (here, there) = (here.solve(), Told::of(there));
    near(here.area(), there.area(), 1e-6);
    near(here.area_sigma(), there.area_sigma(), 1e-4);
}

#[test]
fn shoulders_an_inch_out_of_line_make_hips_only_where_nothing_is_squared() {
    let read = house("23' out 13' in 18' out 27' out 58' out 26' 11\" out 17' in 13' 1\" out")
        .pitch(7.0)
        .gable(0)
        .gable(3)
        .gable(5);
    near(read.solve().length_of(EdgeKind::Hip), 0.0, 1e-6);
    let hair = solve_over(&read.survey(), Ground::AsAdjusted).expect("a survey");
    assert!(hair.totals.edges[&EdgeKind::Hip].in_feet() > 2.0);
    near(read.solve().area(), read.known().solve().area(), 2.0);
}

#[test]
fn a_record_of_floors_is_explained_by_the_overhangs() {
    let mut survey = house(RECTANGLE).pitch(6.0).overhang(1.0).survey();
    survey.hearsay = vec![
        hearsay("public record", Some(2.0 * 58.0 * 28.0), None),
        hearsay("another report", None, Some(1850.0)),
    ];
    let told = Told::of(survey).solved;
    assert_eq!(told.hearsay[0].explained, Some(true));
    near(
        told.hearsay[0].difference_percent.expect("both are known"),
        100.0 * (58.0 * 28.0 - 1800.0) / 1800.0,
        1e-6,
    );
    assert_eq!(told.hearsay[1].explained, Some(false));
}

fn hearsay(source: &str, living_area: Option<f64>, roof_area: Option<f64>) -> Hearsay {
    Hearsay {
        source: source.into(),
        living_area,
        floors: living_area.map(|_| 2.0),
        garage: None,
        roof_area,
    }
}

#[test]
fn what_lies_on_the_roof_is_spoken_of() {
    let mut survey = house(RECTANGLE).pitch(9.0).pitch_of(0, 3.0).survey();
    survey.covering = Some(Covering {
        kind: Some("Asbestos-cement shingle".into()),
        layers: Some(2),
    });
    survey.deck = Some(Deck {
        kind: Some("plank".into()),
        plank_width: None,
        gap: Some(Length::inches(0.5)),
    });
    let said = Told::of(survey).cautions();
    for word in [
        "9 in 12",
        "3 in 12",
        "2 layers",
        "0.5 in between planks",
        "asbestos",
    ] {
        assert!(
            said.iter().any(|said| said.contains(word)),
            "{word}: {said:?}"
        );
    }
}

#[test]
fn a_plain_house_has_nothing_to_be_careful_of() {
    assert_eq!(
        house(L).tie(2, 4).pitch(6.0).solve().cautions(),
        Vec::<String>::new()
    );
}
