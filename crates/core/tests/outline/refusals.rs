//! What is no outline is told by name, with the remedy.

use eavebook_core::outline::adjust;
use eavebook_core::survey::{Body, Point, Sketch, Span};
use eavebook_core::units::{Angle, Length};
use eavebook_houses::house;

fn rectangle() -> Body {
    house("60' out 30' out 60' out 30' out").body()
}

fn told(change: impl FnOnce(&mut Body)) -> String {
    let mut body = rectangle();
    change(&mut body);
    adjust(&body).expect_err("a refusal").to_string()
}

#[test]
fn each_refusal_names_the_thing_and_the_remedy() {
    let turns = |degrees: &[f64]| Sketch::Turned {
        start: Point { x: 0.0, y: 0.0 },
        heading: Angle::degrees(0.0),
        turns: degrees.iter().map(|d| Angle::degrees(*d)).collect(),
        turn_sigma: Angle::degrees(0.21),
    };
    assert_eq!(
        told(|b| b.outline = Sketch::Known(vec![Point { x: 0.0, y: 0.0 }; 2])),
        "body main has 2 corners: an outline needs at least 3"
    );
    assert_eq!(
        told(|b| b.outline = turns(&[90.0, 90.0, 90.0, 80.0])),
        "the turns of body main sum to 350 degrees: once around is 360 or -360, check the turn at each corner"
    );
    assert_eq!(
        told(|b| b.outline = turns(&[180.0, 0.0, 180.0, 0.0])),
        "every leg of body main runs one way or back, so it encloses nothing: check the turn at each corner"
    );
    assert_eq!(
        told(|b| b.outline = turns(&[1.8; 201])),
        "body main has 201 corners to adjust: at most 200 go into one body, split it or give its corners as known"
    );
    assert_eq!(
        told(|b| b.outline = turns(&[90.0, 90.0, 90.0, f64::NAN])),
        "the turns of body main sum to NaN degrees: once around is 360 or -360, check the turn at each corner"
    );
    assert_eq!(
        told(|b| b.readings[1].span = Span::Leg(4)),
        "reading r1 names leg 4, but body main has legs 0 to 3: name one of them"
            .replace("r1", &rectangle().readings[1].id)
    );
    assert_eq!(
        told(|b| {
            b.readings[0].id = "t9".to_owned();
            b.readings[0].span = Span::Tie(1, 7);
        }),
        "reading t9 names corner 7, but body main has corners 0 to 3: name one of them"
    );
    assert_eq!(
        told(|b| {
            b.readings[0].id = "t9".to_owned();
            b.readings[0].span = Span::Tie(2, 2);
        }),
        "reading t9 runs from corner 2 to itself: name two corners"
    );
    for feet in [0.0, -3.0, 1e9, f64::INFINITY, f64::NAN] {
        let text = told(|b| {
            b.readings[0].id = "t9".to_owned();
            b.readings[0].value = Length::feet(feet);
        });
        assert!(
            text.ends_with("a reading is more than 0 and at most 10,000 ft, read it again"),
            "{text}"
        );
    }
    assert_eq!(
        told(|b| {
            b.readings[0].id = "t9".to_owned();
            b.readings[0].sigma = Some(Length::feet(0.0));
        }),
        "reading t9 has a sigma of 0 ft: give one above 0, or leave it out"
    );
    assert_eq!(
        told(|b| {
            b.readings[0].id = "t9".to_owned();
            b.readings[0].span = Span::WallOfLeg {
                leg: 0,
                overhangs: [Length::feet(1.0), Length::feet(-1.0)],
            };
        }),
        "reading t9 has an overhang of -1 ft: give 0 or more"
    );
    assert_eq!(
        told(|b| {
            if let Sketch::Turned { turn_sigma, .. } = &mut b.outline {
                *turn_sigma = Angle::degrees(0.0);
            }
        }),
        "the spread of the turns of body main is no usable number: give a finite one above 0"
    );
}
