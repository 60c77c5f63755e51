//! What was seen of a roof beside what is computed of it.

use eavebook_core::roof::EdgeKind;
use eavebook_core::solve::{Comparison, judge_seen};
use eavebook_core::survey::{Band, ObservedEnd, Rise, RoofObservation, Survey};
use eavebook_core::units::{Length, Pitch};
use eavebook_houses::{House, Told, house};

fn rectangle() -> House {
    house("60' out 30' out 60' out 30' out").pitch(6.0)
}

fn judged(house: &House, seen: RoofObservation) -> Comparison {
    judged_of(house.survey(), seen)
}

fn judged_of(mut survey: Survey, seen: RoofObservation) -> Comparison {
    survey.seen = vec![seen];
    let told = Told::of(survey);
    let mut judged = judge_seen(&told.survey, &told.solved, &told.survey);
    judged
        .pop()
        .unwrap_or_else(|| unreachable!("one thing was seen"))
}

fn ridge(feet: f64) -> RoofObservation {
    RoofObservation::Ridge {
        body: 0,
        over_eaves: Length::feet(feet),
        sigma: Length::feet(0.3),
    }
}

fn end(leg: usize, end: ObservedEnd) -> RoofObservation {
    RoofObservation::End { body: 0, leg, end }
}

fn faces(leg: usize, count: usize) -> RoofObservation {
    RoofObservation::Faces {
        body: 0,
        leg,
        count,
    }
}

#[test]
fn a_gable_seen_where_a_hip_is_drawn_is_flagged_with_what_it_would_change() {
    // 60 x 30 at 6 in 12, by hand: the ridge grows by half the width, two hips of 15 x 1.5 go, two
    // rakes of 15 x 1.118 come, an eave of 30 goes, and hip area equals gable area.
    let Comparison::Flagged(words) = judged(&rectangle(), end(1, ObservedEnd::Gable)) else {
        unreachable!("flagged")
    };
    assert_eq!(
        words,
        "leg 1 of main was seen as a gable and is drawn as a slope: as seen, the area stays, eave \
         from 180.0 to 150.0 ft, rake from 0.0 to 33.5 ft, ridge from 30.0 to 45.0 ft, hip from \
         90.0 to 45.0 ft. Look again and say which it is."
    );
}

#[test]
fn a_slope_seen_where_a_gable_is_drawn_is_flagged_the_other_way_round() {
    let house = rectangle().gable(1);
    let told = judged(&house, end(1, ObservedEnd::Slope));
    assert!(matches!(told, Comparison::Flagged(_)), "{told}");
    assert!(
        told.words().contains("ridge from 45.0 to 30.0 ft"),
        "{told}"
    );
}

#[test]
fn an_end_seen_as_it_is_drawn_agrees() {
    let house = rectangle().gable(1);
    for seen in [end(1, ObservedEnd::Gable), end(0, ObservedEnd::Slope)] {
        let told = judged(&house, seen);
        assert!(matches!(told, Comparison::Agrees(_)), "{told}");
    }
}

#[test]
fn the_last_slope_seen_as_a_gable_says_that_no_roof_would_be_left() {
    let house = rectangle().gable(1).gable(2).gable(3);
    let told = judged(&house, end(0, ObservedEnd::Gable));
    assert!(told.words().contains("there would be no roof"), "{told}");
}

#[test]
fn a_ridge_seen_lower_names_the_slope_that_would_explain_it() {
    // Half of 30 ft at 6 in 12 is 7.5 ft; 6 ft are four fifths of it, which is 4.8 in 12.
    let Comparison::Flagged(words) = judged(&rectangle(), ridge(6.0)) else {
        unreachable!("flagged")
    };
    assert_eq!(
        words,
        "the ridge of main was seen 6.0 ft over its eaves, lower than the computed 7.5 ft ± 0.0: \
         slopes 0.80 times as steep (4.8 in 12 for 6.0) would bring it there, or a flatter slope \
         above a break. Read a slope again and look at the upper part of the roof."
    );
    // And so it is.
    let other = Told::of(house("60' out 30' out 60' out 30' out").pitch(4.8).survey());
    let roof = other.solved.roof.unwrap_or_default();
    let tops = roof
        .edges
        .iter()
        .filter(|edge| edge.kind == EdgeKind::Ridge);
    assert!(
        tops.map(|edge| edge.to.height().in_feet())
            .all(|top| (top - 6.0 - eaves(&other.survey)).abs() < 1e-9)
    );
}

fn eaves(survey: &Survey) -> f64 {
    survey.bodies[0].eave_height.in_feet()
}

#[test]
fn a_ridge_seen_within_what_is_known_is_explained() {
    let told = judged(&rectangle(), ridge(7.1));
    assert!(matches!(told, Comparison::Explained(_)), "{told}");
    let told = judged(&rectangle(), ridge(7.5));
    assert!(matches!(told, Comparison::Agrees(_)), "{told}");
}

#[test]
fn a_slope_looked_at_once_leaves_a_ridge_more_room() {
    let house = house("60' out 30' out 60' out 30' out")
        .one_look(0, 26.6)
        .rises(1, Rise::SameAs(0))
        .rises(2, Rise::SameAs(0))
        .rises(3, Rise::SameAs(0));
    let told = judged(&house, ridge(6.8));
    assert!(matches!(told, Comparison::Explained(_)), "{told}");
    let told = judged(&rectangle(), ridge(6.8));
    assert!(matches!(told, Comparison::Flagged(_)), "{told}");
}

#[test]
fn a_face_that_the_outline_does_not_give_is_flagged() {
    let told = judged(&rectangle(), faces(0, 2));
    assert_eq!(
        told,
        Comparison::Flagged(
            "2 faces were seen over leg 0 of main, where the outline gives 1: a dormer or a wing is \
             a body of its own, a change of slope is a band. Say which it is."
                .to_owned()
        )
    );
    let told = judged(&rectangle(), faces(0, 1));
    assert!(matches!(told, Comparison::Agrees(_)), "{told}");
}

#[test]
fn a_small_upper_face_that_nobody_saw_is_explained_and_a_large_one_is_flagged() {
    let broken = |rise: f64| {
        let band = |pitch: f64, rise: Option<f64>| Band {
            pitch: Pitch::rise_in_12(pitch),
            rise: rise.map(Length::feet),
        };
        rectangle().rises(0, Rise::Bands(vec![band(6.0, Some(rise)), band(5.0, None)]))
    };
    let told = judged(&broken(7.0), faces(0, 1));
    assert!(matches!(told, Comparison::Explained(_)), "{told}");
    let told = judged(&broken(3.0), faces(0, 1));
    assert!(matches!(told, Comparison::Flagged(_)), "{told}");
}

#[test]
fn what_cannot_be_compared_says_why() {
    for (house, seen) in [
        (rectangle(), end(9, ObservedEnd::Gable)),
        (
            rectangle(),
            RoofObservation::Faces {
                body: 3,
                leg: 0,
                count: 1,
            },
        ),
        (house("60' out 30' out 60' out 30' out"), ridge(7.0)),
    ] {
        let told = judged(&house, seen);
        assert!(matches!(told, Comparison::NotCompared(_)), "{told}");
        assert!(!told.words().is_empty());
    }
}

#[test]
fn the_ridge_is_as_unsure_as_the_width_under_it() {
    // Half the width at 6 in 12 is a quarter of it. By hand: two ends of 30 ft read to 0.181 ft
    // leave the width 0.128 ft and the ridge a quarter of that, 0.03.
    let told = judged(&rectangle(), ridge(12.0));
    assert!(told.words().contains("7.5 ft ± 0.0"), "{told}");
    // Read to a foot, the two ends leave the width 0.71 ft and the ridge a quarter of that.
    let mut rough = rectangle().survey();
    for reading in &mut rough.bodies[0].readings {
        reading.sigma = Some(Length::feet(1.0));
    }
    let told = judged_of(rough, ridge(12.0));
    assert!(told.words().contains("7.5 ft ± 0.2"), "{told}");
}
