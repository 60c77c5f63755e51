//! What another reading would do, held against solving again with it; and where the area's spread
//! comes from.

use eavebook_core::check::{MissingReading, ReadFirst, Reason, Unread};
use eavebook_core::outline::{Checked, net};
use eavebook_core::solve::Solved;
use eavebook_core::survey::{Hearsay, PlacedFrom, Point, Reading, Rise, Span, Survey};
use eavebook_core::uncertainty::{SpanRow, UncertaintySource};
use eavebook_core::units::Length;
use eavebook_houses::{House, Noise, Told, house};

const RECTANGLE: &str = "60' out 30' out 60' out 30' out";
const TEE: &str = "18' out 12' in 16' out 26' out 50' out 26' out 16' in 12' out";
/// A jog, a bay of 45 degrees and a notch.
const BAYED: &str = "20' out 45 8' out 45 24' out 18' in 10' out 7' 8\" out 39' 8\" out";

/// Every reading with a stated spread: then nothing is learned from one more.
fn stated(house: &House, noise: &mut Noise) -> Survey {
    let mut survey = house.clone().pitch(6.0).noisy(noise, 0.1).survey();
    for reading in &mut survey.bodies[0].readings {
        reading.sigma = Some(Length::feet(0.18));
    }
    survey
}

fn variance(solved: &Solved) -> f64 {
    let area = solved.totals.area.expect("a roof");
    area.sigma.in_square_feet().powi(2)
}

/// The variance that one more reading really takes off, read as the outline has it.
fn really_gains(survey: &Survey, solved: &Solved, span: Span, sigma: f64) -> f64 {
    let body = &solved.bodies[0];
    let row = SpanRow::new(span, &survey.bodies[0], body).expect("a span");
    let at = |corner: usize| body.outline.corners[corner].expect("a place").at;
    let (from, to) = (at(row.from), at(row.to));
    let feet = (to.x - from.x) * row.along[0] + (to.y - from.y) * row.along[1];
    let mut again = survey.clone();
    again.bodies[0].readings.push(Reading {
        id: "again".into(),
        span,
        value: Length::feet(feet.abs()),
        text: None,
        sigma: Some(Length::feet(sigma)),
    });
    variance(solved) - variance(&Told::of(again).solved)
}

#[test]
fn what_a_reading_would_gain_is_what_solving_again_with_it_gains() {
    let mut noise = Noise::seeded(11);
    for outline in [
        RECTANGLE,
        TEE,
        "60' out 40' out 24' out 16' in 36' out 24' out",
    ] {
        for unread in [None, Some(1)] {
            let read = match unread {
                None => house(outline),
                Some(leg) => house(outline).unread(leg),
            };
            let survey = stated(&read, &mut noise);
            let solved = Told::of(survey.clone()).solved;
            let usual = eavebook_core::outline::default_sigma(Length::feet(30.0)).in_feet();
            let helps: Vec<(&MissingReading, Span)> = solved
                .missing_readings
                .iter()
                .filter_map(|help| Some((help, help.unread.span()?)))
                .collect();
            let really: Vec<f64> = helps
                .iter()
                .map(|(_, span)| really_gains(&survey, &solved, *span, usual))
                .collect();
            for ((help, _), really) in helps.iter().zip(&really) {
                let told = help.gain.expect("there is a roof");
                let apart = (told - really).abs();
                assert!(
                    apart < 0.02 * really + 0.02,
                    "{help:?} really gains {really}"
                );
            }
            for pair in really.windows(2) {
                assert!(pair[0] > pair[1] - 0.02 * pair[0] - 0.02, "{really:?}");
            }
            let firsts: Vec<(&ReadFirst, f64)> = solved
                .read_first
                .iter()
                .map(|first| {
                    let UncertaintySource::Reading { reading, .. } = first.again else {
                        panic!("{first:?}")
                    };
                    let span = survey.bodies[0].readings[reading].span;
                    (first, really_gains(&survey, &solved, span, 0.18))
                })
                .collect();
            for (first, really) in firsts {
                let told = first.gain.expect("there is a roof");
                assert!(
                    (told - really).abs() < 0.02 * really + 0.02,
                    "{first:?}: {really}"
                );
            }
        }
    }
}

#[test]
fn an_overall_that_nobody_took_is_listed_and_one_that_was_taken_is_not() {
    let depth = |told: &Told| {
        told.solved
            .missing_readings
            .iter()
            .any(|help| matches!(help.unread, Unread::Overall { along_leg: 1, .. }))
    };
    assert!(depth(&house(TEE).pitch(6.0).solve()));
    assert!(!depth(&house(TEE).pitch(6.0).overall(0, 4, 3).solve()));
    // A rectangle has none that is no leg.
    assert!(
        house(RECTANGLE)
            .pitch(6.0)
            .solve()
            .solved
            .missing_readings
            .is_empty()
    );
}

#[test]
fn a_reading_that_tells_the_suspects_apart_comes_before_one_that_does_not() {
    let told = house(TEE).pitch(6.0).misread(3, "36'").solve();
    let helps = &told.solved.missing_readings;
    assert!(helps[0].separates > 0.5, "{helps:?}");
    assert!(
        matches!(helps[0].unread, Unread::Overall { along_leg: 1, .. }),
        "{helps:?}"
    );
    let none = house(TEE).pitch(6.0).solve();
    assert!(
        none.solved
            .missing_readings
            .iter()
            .all(|help| help.separates.abs() < 1e-12)
    );
}

#[test]
fn the_story_of_a_hip_begins_with_its_short_sides_by_hand() {
    let mut survey = house(RECTANGLE).pitch(6.0).survey();
    for reading in &mut survey.bodies[0].readings {
        reading.sigma = Some(Length::feet(0.15));
    }
    let solved = Told::of(survey).solved;
    let story = &solved.area_story;
    // Half of 0.15 ft on 60 ft of width, on the slope.
    let by_hand = 0.5 * 0.15 * 60.0 * 1.25_f64.sqrt();
    for share in &story[..2] {
        assert!(matches!(
            share.source,
            UncertaintySource::Reading { reading: 1 | 3, .. }
        ));
        let feet = share.area.in_square_feet();
        assert!(
            (feet - by_hand).abs() < 0.02 * by_hand,
            "{feet} is not {by_hand}"
        );
    }
    let parts: f64 = story.iter().map(|share| share.part).sum();
    assert!((0.97..=1.0).contains(&parts), "{parts}");
}

#[test]
fn a_slope_looked_at_once_leads_the_story() {
    let mut read = house(RECTANGLE).one_look(0, 26.4);
    for leg in 1..4 {
        read = read.rises(leg, Rise::SameAs(0));
    }
    let told = read.solve();
    let first = told.solved.area_story[0];
    assert_eq!(first.source, UncertaintySource::Pitch { body: 0, leg: 0 });
    assert!(first.part > 0.5);
}

#[test]
fn a_reading_says_how_far_it_is_checked_and_what_its_slip_would_do() {
    let told = house(RECTANGLE).pitch(6.0).unread(3).solve().solved;
    let proofs = &told.proofs;
    assert_eq!(proofs[1].checked, Checked::Nothing);
    assert_eq!(
        proofs[1].to_string(),
        "nothing checks this: each slip of 1 ft moves the area by 67 sq ft"
    );
    assert_eq!(proofs[0].checked, Checked::Well);
    let said = proofs[0].to_string();
    assert!(
        said.starts_with("checked: a slip under 1.") && said.ends_with(" sq ft"),
        "{said}"
    );
}

#[test]
fn two_bodies_found_from_one_another_are_adjusted_as_one_net_would_be() {
    let mut noise = Noise::seeded(5);
    let mut survey = house(RECTANGLE)
        .noisy(&mut noise, 0.2)
        .and(
            house("20' out 14' out 20' out 14' out")
                .named("porch")
                .noisy(&mut noise, 0.2),
        )
        .survey();
    survey.bodies[1].placed_from = Some(PlacedFrom {
        body: "main".into(),
        corner: 2,
        offset: Point { x: 3.0, y: -2.0 },
        sigma: Length::feet(0.3),
    });
    let told = Told::of(survey.clone()).solved;
    let mut one = net::Net::default();
    for (body, held) in survey
        .bodies
        .iter()
        .zip([net::StationFixity::Fixed, net::StationFixity::Free])
    {
        let first = one.stations.len();
        let mut at = Point { x: 63.0, y: 28.0 };
        if first == 0 {
            at = Point { x: 0.0, y: 0.0 };
        }
        for (k, reading) in body.readings.iter().enumerate() {
            let held = if k == 0 {
                held
            } else {
                net::StationFixity::Free
            };
            one.stations.push(net::Station { at, held });
            let feet = reading.value.in_feet();
            let way = [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)][k];
            at = Point {
                x: at.x + feet * way.0,
                y: at.y + feet * way.1,
            };
            let (from, to) = (first + k, first + (k + 1) % 4);
            one.observations.push(net::Observation {
                row: net::Row::Distance { from, to },
                value: feet,
                sigma: eavebook_core::outline::default_sigma(reading.value).in_feet(),
            });
            one.observations.push(net::Observation {
                row: net::Row::Direction { from, to },
                value: f64::atan2(way.1, way.0),
                sigma: 0.21_f64.to_radians() / 2.0_f64.sqrt(),
            });
        }
    }
    for (axis, offset) in [([1.0, 0.0], 3.0), ([0.0, 1.0], -2.0)] {
        one.observations.push(net::Observation {
            row: net::Row::Linear(vec![(2, [-axis[0], -axis[1]]), (4, axis)]),
            value: offset,
            sigma: 0.3,
        });
    }
    let adjusted = net::adjust_net(&one).expect("a net");
    let main = &told.bodies[0].outline;
    let porch = &told.bodies[1].outline;
    for (k, place) in adjusted.places.iter().enumerate() {
        let corner = if k < 4 {
            main.corners[k]
        } else {
            porch.corners[k - 4]
        };
        let at = corner.expect("a place").at;
        assert!(
            (at.x - place.x).abs() < 1e-6 && (at.y - place.y).abs() < 1e-6,
            "{k}"
        );
    }
    for i in 0..8 {
        for j in 0..8 {
            let (own, across) = (
                porch.covariance[(i, j)],
                told.together.between((1, i), (0, j)),
            );
            assert!((own - adjusted.covariance[(8 + i, 8 + j)]).abs() < 1e-8);
            assert!((across - adjusted.covariance[(8 + i, j)]).abs() < 1e-8);
        }
    }
}

#[test]
fn how_well_a_porch_was_found_reaches_the_area_of_the_joined_roof() {
    let area_sigma = |found_within: f64| {
        let mut survey = house("40' out 24' out 40' out 24' out")
            .pitch(6.0)
            .and(
                house("14' out 20' out 14' out 20' out")
                    .pitch(6.0)
                    .named("wing"),
            )
            .survey();
        // Half of the wing lies under the main roof.
        survey.bodies[1].placed_from = Some(PlacedFrom {
            body: "main".into(),
            corner: 0,
            offset: Point { x: 12.0, y: -10.0 },
            sigma: Length::feet(found_within),
        });
        Told::of(survey).area_sigma()
    };
    let (well, badly) = (area_sigma(0.01), area_sigma(1.0));
    // A foot in or out is a foot of the wing's width, on the slope.
    let by_hand = 14.0 * 1.25_f64.sqrt();
    let added = (badly * badly - well * well).sqrt();
    assert!(
        (added - by_hand).abs() < 0.2 * by_hand,
        "{added} is not {by_hand}"
    );
}

#[test]
fn a_figure_of_somebody_else_comes_with_what_most_likely_makes_the_difference() {
    let mut survey = house(RECTANGLE).pitch(6.0).overhang(1.0).survey();
    let said = |living: Option<f64>, floors: Option<f64>, roof: Option<f64>| Hearsay {
        source: "somebody".into(),
        living_area: living,
        floors,
        garage: None,
        roof_area: roof,
    };
    let walls = 58.0 * 28.0;
    let slope = 1800.0 * 1.25_f64.sqrt();
    survey.hearsay = vec![
        said(Some(2.0 * walls), Some(2.0), None),
        said(Some(2.0 * walls), Some(1.0), None),
        said(Some(walls - 420.0), None, None),
        said(None, None, Some(slope * 1.01)),
        said(None, None, Some(1800.0)),
        said(None, None, Some(slope * 2.0)),
    ];
    let told = Told::of(survey).solved;
    let reasons: Vec<Option<Reason>> = told.hearsay.iter().map(|said| said.reason).collect();
    assert_eq!(
        reasons,
        [
            Some(Reason::NoOverhang),
            Some(Reason::Floors(2.0)),
            Some(Reason::GarageLeftOut),
            Some(Reason::Agree),
            Some(Reason::InPlan),
            Some(Reason::Unexplained),
        ]
    );
    let warns: Vec<bool> = told.hearsay.iter().map(|said| said.warn).collect();
    assert_eq!(warns, [false, true, true, false, true, true]);
    let last = told.cautions.last().expect("a caution").to_string();
    assert!(
        last.starts_with(
            "somebody says 100 per cent more than the readings: nothing usual explains it"
        ),
        "{last}"
    );
}

#[test]
fn an_outline_with_a_bay_is_worked_like_any_other() {
    let told = house(BAYED).pitch(6.0).solve();
    assert!(told.solved.bodies[0].outline.suspects.named.is_empty());
    assert!(told.area().is_finite());
}
