//! Five hundred outlines roofed by us, by a weighted straight skeleton in exact arithmetic (SFCGAL, by
//! CGAL), and by eating the outline away in small steps with polygon booleans (GEOS).
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use eavebook_core::roof::{EdgeKind, Roof, raise};
use eavebook_core::units::Length;
use eavebook_houses::{Grid, Numbers, cells, tangle};
use eavebook_roofs::{Outline, area_above, areas_by_leg};
use serde_json::{Value, json};
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

const OUTLINES: usize = 500;
/// Levels at which the roofs are compared.
const LEVELS: u32 = 12;
/// What one slope may differ from the exact one, sq ft.
const EXACT: f64 = 1e-4;
/// A slope that changes by more when pitches change by a millionth has jumped, sq ft.
const JUMP: f64 = 0.1;
/// What the area above a level may differ from the one found by steps, as a share of the outline.
const BY_STEPS: f64 = 5e-3;

/// Half right-angled, half tangles; half of each at one pitch, the others at several, some with gables.
fn outline(seed: usize) -> Outline {
    let mut numbers = Numbers::new(90_000 + seed as u64);
    let legs = 6 + numbers.below(25);
    let corners = match seed % 4 {
        0 => cells(&mut numbers, legs, Grid::Even),
        1 => cells(&mut numbers, legs, Grid::Uneven),
        _ => tangle(&mut numbers, legs),
    };
    let mut outline = Outline::hipped(corners, 6.0);
    if seed % 8 < 4 {
        return outline;
    }
    for pitch in &mut outline.pitches {
        *pitch = Some([3.0, 4.0, 6.0, 8.0, 12.0][numbers.below(5)]);
        if seed % 16 >= 8 && numbers.even() < 0.1 {
            *pitch = None;
        }
    }
    outline
}

/// Outlines that have a roof, with it: from as many seeds as it takes.
fn roofed() -> (Vec<(Outline, Roof)>, usize) {
    let mut refused = 0;
    let mut found = Vec::new();
    for seed in 0.. {
        if found.len() == OUTLINES {
            break;
        }
        let outline = outline(seed);
        match raise(&[outline.shape()], &[]) {
            Ok(roof) => found.push((outline, roof)),
            Err(_) => refused += 1,
        }
    }
    (found, refused)
}

/// Whether a hair decides which roof this is: with its pitches a millionth steeper or flatter, each its own
/// way, a slope jumps or the roof is refused. There fronts that face the same way draw level just as others
/// meet, and the weighted skeleton is not one (Biedl, Held, Huber, Kaaser and Palfrader, *Weighted straight
/// skeletons in the plane*, 2015).
fn is_tie(outline: &Outline, roof: &Roof) -> bool {
    let legs = outline.corners.len();
    let ours = outline.by_plane(&areas_by_leg(roof, legs));
    [1.0, -1.0].iter().any(|way| {
        let mut nudged = outline.clone();
        for pitch in nudged.pitches.iter_mut().flatten() {
            *pitch *= 1.0 + way * 1e-6 * (*pitch - 5.0);
        }
        match raise(&[nudged.shape()], &[]) {
            Ok(other) => worst(&ours, &outline.by_plane(&areas_by_leg(&other, legs))) > JUMP,
            Err(_) => true,
        }
    })
}

fn levels(roof: &Roof) -> Vec<f64> {
    let heights = roof.faces.iter().flat_map(|face| &face.polygon);
    let top = heights.map(|at| at.height().in_feet()).fold(0.0, f64::max);
    (1..=LEVELS)
        .map(|k| top * (f64::from(k) - 0.5) / f64::from(LEVELS))
        .collect()
}

/// What the others say; none where there is no python that has them.
fn others(roofed: &[(Outline, Roof)]) -> Option<Vec<Value>> {
    let python = std::env::var_os("EAVEBOOK_PYTHON")?;
    let outlines: Vec<Value> = roofed
        .iter()
        .map(|(outline, roof)| {
            json!({ "corners": outline.corners, "runs": outline.runs(), "levels": levels(roof) })
        })
        .collect();
    let mut peer = Command::new(python)
        .arg(Path::new(env!("CARGO_MANIFEST_DIR")).join("others.py"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let task = json!({ "outlines": outlines }).to_string();
    peer.stdin
        .take()
        .unwrap()
        .write_all(task.as_bytes())
        .unwrap();
    let said = peer.wait_with_output().unwrap();
    assert!(said.status.success(), "the others failed");
    Some(serde_json::from_slice(&said.stdout).unwrap())
}

fn numbers(told: &Value) -> Option<Vec<f64>> {
    told.as_array()?.iter().map(Value::as_f64).collect()
}

fn worst(ours: &[f64], theirs: &[f64]) -> f64 {
    let apart = ours.iter().zip(theirs).map(|(a, b)| (a - b).abs());
    apart.fold(0.0, f64::max)
}

#[test]
fn five_hundred_outlines_have_the_roofs_that_two_other_programs_find() {
    let (roofed, refused) = roofed();
    let Some(told) = others(&roofed) else {
        println!("no EAVEBOOK_PYTHON with pysfcgal and shapely: nothing was compared");
        return;
    };
    let (mut exact, mut unusable, mut ties, mut exact_worst) = (0, 0, 0, 0.0_f64);
    let (mut by_steps, mut steps_worst) = (0, 0.0_f64);
    let mut faults = Vec::new();
    for (place, ((outline, roof), told)) in roofed.iter().zip(&told).enumerate() {
        let legs = outline.corners.len();
        if is_tie(outline, roof) {
            ties += 1;
            continue;
        }
        // What does not fill the outline is no roof, whoever made it.
        let library = numbers(&told["library"])
            .filter(|areas| (areas.iter().sum::<f64>() - outline.area()).abs() < EXACT);
        let ours = outline.by_plane(&areas_by_leg(roof, legs));
        let apart = library.map(|areas| worst(&ours, &outline.by_plane(&areas)));
        match apart {
            None => unusable += 1,
            Some(apart) if apart < EXACT => exact += 1,
            Some(apart) => faults.push(format!(
                "{place}: a slope is {apart} sq ft off: {outline:?}"
            )),
        }
        exact_worst = exact_worst.max(apart.unwrap_or_default());
        let levels = levels(roof);
        let ours: Vec<f64> = levels
            .iter()
            .map(|level| area_above(roof, *level))
            .collect();
        let theirs = numbers(&told["steps"]).unwrap_or_else(|| vec![f64::INFINITY; levels.len()]);
        let off = worst(&ours, &theirs) / outline.area();
        steps_worst = steps_worst.max(off);
        if off < BY_STEPS {
            by_steps += 1;
        } else if apart.is_none() {
            faults.push(format!(
                "{place}: {off} of the area off by steps: {outline:?}"
            ));
        }
    }
    let ridges = |(_, roof): &&(Outline, Roof)| roof.length_of(EdgeKind::Ridge) > Length::ZERO;
    let compared = OUTLINES - ties;
    println!(
        "{OUTLINES} outlines ({refused} more have no roof), {} with a ridge; {ties} stand on a tie where a \
         hair decides, {compared} are compared",
        roofed.iter().filter(ridges).count()
    );
    println!(
        "exact weighted skeleton (SFCGAL by CGAL): {exact} of {} agree, worst slope {exact_worst:.1e} sq ft; \
         it gave no whole roof for {unusable}",
        compared - unusable
    );
    println!(
        "small steps by booleans (GEOS): {by_steps} of {compared} agree within {BY_STEPS} of the area, worst \
         {steps_worst:.1e}"
    );
    for fault in faults.iter().take(8) {
        println!("{fault}");
    }
    assert!(faults.is_empty(), "{} faults", faults.len());
    assert!(unusable * 20 < compared, "{unusable} unusable");
    assert!(ties * 20 < OUTLINES, "{ties} ties");
    // Steps round what happens within one of them.
    assert!(by_steps * 100 > compared * 97, "{by_steps} by steps");
}
