//! Outlines by the thousand.

use super::bodies::{area_within, bands, body, height_from_leg, hipped, holds, roof};
use super::inputs::of_bodies;
use eavebook_core::roof::{BodyShape, RaiseError, Rise, raise};
use eavebook_core::units::{Length, Pitch};
use eavebook_houses::{Grid, Numbers, cells, tangle, thousand};

/// Largest share by which faces miss the outline's area, in plan and times the slope factor.
fn area_off(shape: &BodyShape) -> Result<f64, RaiseError> {
    let roof = raise(std::slice::from_ref(shape), &[])?;
    let plan = area_within(&shape.corners);
    let factor = roof.faces[0].pitch.slope_factor();
    Ok(((roof.plan_area().in_square_feet() - plan) / plan)
        .abs()
        .max(((roof.area().in_square_feet() - plan * factor) / plan).abs()))
}

#[test]
fn a_thousand_outlines_are_raised_and_their_faces_tile_them() {
    let mut worst = 0.0_f64;
    let mut failures = Vec::new();
    for (place, corners) in thousand().enumerate() {
        match area_off(&hipped(&corners, 6.0)) {
            Ok(off) => worst = worst.max(off),
            Err(refusal) => failures.push(format!("{place}: {} legs: {refusal}", corners.len())),
        }
    }
    println!(
        "1000 outlines, {} failures, area off by {worst:.1e}",
        failures.len()
    );
    assert!(failures.is_empty(), "{}", failures.join("\n"));
    assert!(worst < 1e-9, "area off by {worst:e} of itself");
}

#[test]
fn a_thousand_outlines_at_unequal_pitches_are_raised_or_refused_by_leg() {
    let (mut raised, mut refused) = (0, 0);
    for (place, corners) in thousand().enumerate() {
        let mut numbers = Numbers::new(7000 + place as u64);
        let pitches: Vec<f64> = corners
            .iter()
            .map(|_| [3.0, 4.0, 6.0, 8.0, 12.0][numbers.below(5)])
            .collect();
        let mut shape = body(&corners, &pitches);
        for leg in &mut shape.legs {
            if numbers.even() < 0.1 {
                leg.rise = Rise::Gable;
            }
        }
        match raise(std::slice::from_ref(&shape), &[]) {
            Ok(roof) => {
                raised += 1;
                let plan = area_within(&shape.corners);
                let off = ((roof.plan_area().in_square_feet() - plan) / plan).abs();
                assert!(off < 1e-8, "outline {place}: plan area off by {off:e}");
            }
            Err(
                RaiseError::Overtaking { .. }
                | RaiseError::LeavesOpen { .. }
                | RaiseError::NeverCloses { .. },
            ) => refused += 1,
            Err(refusal) => panic!("outline {place}: {refusal}: {shape:?}"),
        }
    }
    println!("1000 outlines at unequal pitches with gables: {raised} raised, {refused} refused");
    assert!(raised > 500, "{raised} raised");
}

/// A plan as they stand on a street, and stranger: a tangle or right-angled, of 4 to 28 legs at one
/// pitch, several or in bands, some legs ends; every third with a wing beside or across it.
fn plan(seed: u64) -> Vec<BodyShape> {
    let mut numbers = Numbers::new(seed);
    let wing = seed
        .is_multiple_of(3)
        .then(|| body_of(&mut numbers, "wing", 8));
    let mut bodies = vec![body_of(&mut numbers, "main", 28)];
    bodies.extend(wing);
    bodies
}

fn body_of(numbers: &mut Numbers, id: &str, most: usize) -> BodyShape {
    let legs = 4 + numbers.below(most - 3);
    let corners = match numbers.below(4) {
        0 => cells(numbers, legs, Grid::Even),
        1 => cells(numbers, legs, Grid::Uneven),
        _ => tangle(numbers, legs),
    };
    let family = numbers.below(4);
    let mut shape = hipped(&corners, 6.0);
    for leg in &mut shape.legs {
        let pitch = Pitch::rise_in_12([3.0, 4.0, 6.0, 9.0, 14.0][numbers.below(5)]);
        let steep_below = bands(&[(18.0, Some(5.0)), (pitch.in_12(), None)]);
        leg.rise = match (family, numbers.below(10)) {
            (1 | 2, 0) => Rise::Gable,
            (2, 1) => Rise::Wall,
            (2, _) => Rise::slope(pitch),
            (3, 0..5) => steep_below,
            (_, _) => leg.rise.clone(),
        };
    }
    shape.id = id.to_string();
    shape.eave_height = Length::feet(8.0 + numbers.below(3) as f64);
    shape
}

#[test]
fn ten_thousand_plans_are_roofed_whole_or_refused_by_body() {
    let raised = (0..10_000)
        .filter(|&seed| of_bodies(&plan(50_000 + seed)).is_some())
        .count();
    println!("10000 plans: {raised} raised whole, the rest refused by body");
    assert!((5000..10_000).contains(&raised), "{raised} raised");
}

/// Largest-coordinate distance from a place to an outline of legs along the axes.
fn square_distance(corners: &[[f64; 2]], [x, y]: [f64; 2]) -> f64 {
    let gap = |at: f64, a: f64, b: f64| (a.min(b) - at).max(at - a.max(b)).max(0.0);
    (0..corners.len())
        .map(|leg| {
            let (a, b) = (corners[leg], corners[(leg + 1) % corners.len()]);
            gap(x, a[0], b[0]).max(gap(y, a[1], b[1]))
        })
        .fold(f64::INFINITY, f64::min)
}

#[test]
fn a_right_angled_roof_at_one_pitch_is_the_square_distance_to_its_outline() {
    let mut worst = 0.0_f64;
    let mut sampled = 0;
    for seed in 0..500 {
        let mut numbers = Numbers::new(20_000 + seed);
        let grid = if seed % 2 == 0 {
            Grid::Even
        } else {
            Grid::Uneven
        };
        let legs = 8 + numbers.below(53);
        let corners = cells(&mut numbers, legs, grid);
        let shape = hipped(&corners, 7.0);
        let roof = roof(&shape);
        for _ in 0..200 {
            let place = [numbers.between(0.0, 160.0), numbers.between(0.0, 160.0)];
            let Some(face) = roof.faces.iter().find(|face| holds(face, place)) else {
                continue;
            };
            let by_distance = 9.0 + square_distance(&corners, place) * 7.0 / 12.0;
            let by_face = height_from_leg(&shape, face.leg, place);
            worst = worst.max((by_distance - by_face).abs());
            sampled += 1;
        }
    }
    println!("500 right-angled outlines, {sampled} places: heights within {worst:.1e} ft");
    assert!(sampled > 5000, "{sampled} places");
    assert!(worst < 1e-6, "height off by {worst} ft");
}

#[test]
fn a_convex_roof_is_the_lowest_of_its_planes() {
    let mut worst = 0.0_f64;
    for seed in 0..500 {
        let mut numbers = Numbers::new(30_000 + seed);
        let legs = 3 + numbers.below(9);
        // Corners on a stretched ring, in order: convex.
        let mut turns: Vec<f64> = (0..legs).map(|_| numbers.between(0.0, 1.0)).collect();
        turns.sort_by(f64::total_cmp);
        turns.dedup_by(|a, b| *a - *b < 0.02);
        let corners: Vec<[f64; 2]> = turns
            .iter()
            .map(|turn| {
                let (sine, cosine) = (turn * std::f64::consts::TAU).sin_cos();
                [40.0 * cosine, 25.0 * sine]
            })
            .collect();
        if corners.len() < 3 {
            continue;
        }
        let pitches: Vec<f64> = corners.iter().map(|_| numbers.between(2.0, 14.0)).collect();
        let shape = body(&corners, &pitches);
        let roof = roof(&shape);
        for _ in 0..60 {
            let place = [numbers.between(-40.0, 40.0), numbers.between(-25.0, 25.0)];
            let Some(face) = roof.faces.iter().find(|face| holds(face, place)) else {
                continue;
            };
            let lowest = (0..corners.len())
                .map(|leg| height_from_leg(&shape, leg, place))
                .fold(f64::INFINITY, f64::min);
            worst = worst.max((lowest - height_from_leg(&shape, face.leg, place)).abs());
        }
    }
    println!("500 convex outlines: heights within {worst:.1e} ft");
    assert!(worst < 1e-6, "height off by {worst} ft");
}
