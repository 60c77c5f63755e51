//! What must not move a figure, and what must move with it.

use super::shapes::{Shape, misses, stepped, taped};
use eavebook_core::outline::{LegFigure, Outline, adjust};
use eavebook_core::survey::{Body, Point, Reading, Sketch, Span};
use eavebook_core::units::{Angle, Length};
use proptest::prelude::*;

/// A survey with a check and a repeat, some of it misread.
fn survey(shape: &Shape, misses: &[f64], slip: (usize, f64)) -> Body {
    let mut readings = shape.read(misses);
    let legs = shape.legs();
    readings.push(taped(legs, Span::Leg(1), shape.lengths[1] + misses[0]));
    let corners = shape.corners();
    let across = (corners[2][0] - corners[0][0]).hypot(corners[2][1] - corners[0][1]);
    readings.push(taped(legs + 1, Span::Tie(0, 2), across + misses[1]));
    let wrong = slip.0 % legs;
    let value = readings[wrong].value.in_feet();
    readings[wrong].value = Length::feet((value + slip.1).max(3.0));
    shape.body(readings)
}

fn solved(body: &Body) -> Outline {
    adjust(body).expect("an outline")
}

fn near(a: f64, b: f64, what: &str) -> Result<(), TestCaseError> {
    let scale = 1.0 + a.abs().max(b.abs());
    prop_assert!((a - b).abs() < 1e-9 * scale, "{what}: {a} and {b}");
    Ok(())
}

/// The figures that have nothing to do with where the house stands.
fn same_house(a: &Outline, b: &Outline, scale: f64) -> Result<(), TestCaseError> {
    near(a.chi2, b.chi2, "chi2")?;
    prop_assert_eq!(a.degrees_of_freedom, b.degrees_of_freedom);
    for (leg, (p, q)) in a.legs.iter().zip(&b.legs).enumerate() {
        let figures = |f: &LegFigure| {
            let length = f.length.expect("a length");
            (length.value.in_feet(), length.sigma.in_feet())
        };
        let ((l, s), (m, t)) = (figures(p), figures(q));
        near(l * scale, m, &format!("length of leg {leg}"))?;
        near(s * scale, t, &format!("spread of leg {leg}"))?;
    }
    for (p, q) in a.readings.iter().zip(&b.readings) {
        near(
            (p.residual * scale).in_feet(),
            q.residual.in_feet(),
            "residual",
        )?;
        near(p.redundancy, q.redundancy, "redundancy")?;
    }
    Ok(())
}

fn same_suspects(a: &Outline, b: &Outline) -> Result<(), TestCaseError> {
    near(a.suspects.nothing_wrong, b.suspects.nothing_wrong, "chance")?;
    prop_assert_eq!(a.suspects.named.len(), b.suspects.named.len());
    for p in &a.suspects.named {
        let same = b.suspects.named.iter().find(|q| q.reading == p.reading);
        prop_assert!(same.is_some_and(|q| (q.probability - p.probability).abs() < 1e-6));
    }
    Ok(())
}

/// Returns the adjusted length of a leg, feet; NaN if it has none.
fn feet(figure: &LegFigure) -> f64 {
    figure
        .length
        .map_or(f64::NAN, |length| length.value.in_feet())
}

fn turned(body: &Body, start: Point, heading: f64) -> Body {
    let mut body = body.clone();
    if let Sketch::Turned {
        start: s,
        heading: h,
        ..
    } = &mut body.outline
    {
        *s = start;
        *h = Angle::degrees(heading);
    }
    body
}

fn slip() -> impl Strategy<Value = (usize, f64)> {
    (
        0..40_usize,
        prop::sample::select(vec![0.0, 0.0, 1.0, -10.0, 18.0]),
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_order_of_the_readings_moves_nothing(
        shape in stepped(), misses in misses(), slip in slip(), by in 1..20_usize,
    ) {
        let body = survey(&shape, &misses, slip);
        let mut shuffled = body.clone();
        let by = by % body.readings.len();
        shuffled.readings.rotate_left(by);
        shuffled.readings[by..].reverse();
        let (a, b) = (solved(&body), solved(&shuffled));
        prop_assert_eq!(&a.corners, &b.corners);
        prop_assert_eq!(&a.legs, &b.legs);
        prop_assert_eq!(a.suspects.named.len(), b.suspects.named.len());
        for (p, q) in a.suspects.named.iter().zip(&b.suspects.named) {
            prop_assert_eq!(&body.readings[p.reading].id, &shuffled.readings[q.reading].id);
            prop_assert_eq!(p.probability.to_bits(), q.probability.to_bits());
        }
    }

    #[test]
    fn the_way_the_house_faces_and_stands_moves_only_its_corners(
        shape in stepped(), misses in misses(), slip in slip(), heading in -360.0..360.0_f64,
    ) {
        let body = survey(&shape, &misses, slip);
        let start = Point { x: 12.0, y: -7.0 };
        let (a, b) = (solved(&body), solved(&turned(&body, start, heading)));
        same_house(&a, &b, 1.0)?;
        same_suspects(&a, &b)?;
        let (sin, cos) = heading.to_radians().sin_cos();
        for (p, q) in a.corners.iter().flatten().zip(b.corners.iter().flatten()) {
            near(start.x + cos * p.at.x - sin * p.at.y, q.at.x, "x")?;
            near(start.y + sin * p.at.x + cos * p.at.y, q.at.y, "y")?;
            near(p.sigma.in_feet(), q.sigma.in_feet(), "spread of a corner")?;
        }
        for k in (0..a.covariance.nrows()).step_by(2) {
            let trace = |o: &Outline| o.covariance[(k, k)] + o.covariance[(k + 1, k + 1)];
            near(trace(&a), trace(&b), "covariance")?;
        }
    }

    #[test]
    fn a_mirrored_house_is_the_same_house(
        shape in stepped(), misses in misses(), slip in slip(),
    ) {
        let body = survey(&shape, &misses, slip);
        let mirror = Shape {
            turns: shape.turns.iter().map(|t| -t).collect(),
            ..shape.clone()
        };
        let (a, b) = (solved(&body), solved(&mirror.body(body.readings.clone())));
        same_house(&a, &b, 1.0)?;
        same_suspects(&a, &b)?;
        for (p, q) in a.corners.iter().flatten().zip(b.corners.iter().flatten()) {
            near(p.at.x, q.at.x, "x")?;
            near(p.at.y, -q.at.y, "y")?;
        }
        let words = |o: &Outline| o.closure.as_ref().expect("closure").words.to_string();
        prop_assert_eq!(words(&a), words(&b));
    }

    #[test]
    fn a_walk_begun_at_another_corner_is_the_same_house(
        shape in stepped(), misses in misses(), slip in slip(), first in 1..8_usize,
    ) {
        let body = survey(&shape, &misses, slip);
        let legs = shape.legs();
        let first = first % legs;
        let renamed = |k: usize| (k + legs - first) % legs;
        let readings: Vec<Reading> = body
            .readings
            .iter()
            .map(|r| Reading {
                span: match r.span {
                    Span::Leg(leg) => Span::Leg(renamed(leg)),
                    Span::Tie(a, b) => Span::Tie(renamed(a), renamed(b)),
                    Span::Overall { .. } | Span::WallOfLeg { .. } => r.span,
                },
                ..r.clone()
            })
            .collect();
        let mut turns = shape.turns.clone();
        turns.rotate_left(first);
        let other = Shape { turns, ..shape.clone() };
        let (a, mut b) = (solved(&body), solved(&other.body(readings)));
        b.legs.rotate_right(first);
        // Another corner is the datum: the same least sum of squares, found from elsewhere.
        prop_assert!((a.chi2 - b.chi2).abs() < 1e-6 * (1.0 + a.chi2));
        for (p, q) in a.legs.iter().zip(&b.legs) {
            let apart = feet(p) - feet(q);
            prop_assert!(apart.abs() < 1e-5, "{} apart", apart);
        }
        same_suspects_roughly(&a, &b)?;
    }

    #[test]
    fn a_house_of_another_size_grows_with_its_readings_and_spreads(
        shape in stepped(), misses in misses(), slip in slip(), scale in 0.5..4.0_f64,
    ) {
        let mut body = survey(&shape, &misses, slip);
        for reading in &mut body.readings {
            reading.sigma = Some(Length::feet(0.2));
        }
        let mut grown = body.clone();
        for reading in &mut grown.readings {
            reading.value = Length::feet(reading.value.in_feet() * scale);
            reading.sigma = Some(Length::feet(0.2 * scale));
        }
        let (a, b) = (solved(&body), solved(&grown));
        prop_assert!((a.chi2 - b.chi2).abs() < 1e-7 * (1.0 + a.chi2));
        for (p, q) in a.legs.iter().zip(&b.legs) {
            let apart = scale * feet(p) - feet(q);
            prop_assert!(apart.abs() < 1e-6, "{} apart", apart);
        }
    }

    #[test]
    fn names_of_readings_move_nothing(shape in stepped(), misses in misses(), slip in slip()) {
        let body = survey(&shape, &misses, slip);
        let mut renamed = body.clone();
        for (k, reading) in renamed.readings.iter_mut().enumerate() {
            reading.id = format!("z{}", 100 - k);
        }
        let (a, b) = (solved(&body), solved(&renamed));
        prop_assert_eq!(&a.corners, &b.corners);
        prop_assert_eq!(&a.suspects, &b.suspects);
    }
}

fn same_suspects_roughly(a: &Outline, b: &Outline) -> Result<(), TestCaseError> {
    let apart = (a.suspects.nothing_wrong - b.suspects.nothing_wrong).abs();
    prop_assert!(apart < 1e-4, "chances {} apart", apart);
    Ok(())
}
