//! Adjusting, testing and searching for slips in twelve legs, beside scipy on the same model; and a job
//! of thirty legs solved again after one key, beside a quarter of a display's frame.

use crate::{median, row, timed};
use eavebook_core::outline::{Outline, adjust};
use eavebook_core::solve::solve;
use eavebook_core::survey::{Body, LegEdge, Point, Reading, Rise, Sketch, Span, Survey};
use eavebook_core::units::{Angle, Length, Pitch};
use serde_json::{Value, json};
use std::error::Error;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

/// Both sides take turns, so that a slow minute of the machine is one of both.
const TURNS: usize = 9;
/// Rounds of each side in a turn.
const ROUNDS: usize = 7;
/// Ours and the peer's outputs agree to this: feet, parts and chances.
const ALIKE: f64 = 1e-6;
/// One frame at 60 a second on a machine four times as slow, milliseconds.
const QUARTER_FRAME: f64 = 1000.0 / 60.0 / 4.0;

/// Python with numpy and scipy is the one that `EAVEBOOK_PYTHON` names, else `python3`; without it
/// the row is left out, in so many words.
pub fn run() -> Result<(), Box<dyn Error>> {
    thirty_legs()?;
    let bodies: Vec<Body> = SLIPS.iter().map(|slip| twelve_legs(*slip)).collect();
    let Some(told) = ask_peer(&bodies)? else {
        println!("no python with numpy and scipy: the outline has no peer, set EAVEBOOK_PYTHON");
        return Ok(());
    };
    let outlines = bodies.iter().map(adjust).collect::<Result<Vec<_>, _>>()?;
    let answers = told["answers"]
        .as_array()
        .ok_or("the peer gave no answers")?;
    for (outline, answer) in outlines.iter().zip(answers) {
        let apart = apart(outline, answer);
        if apart.is_none_or(|apart| apart > ALIKE) {
            return Err(format!("ours and the peer's outputs are {apart:?} apart").into());
        }
    }
    let (mut ours, mut peer) = (Vec::new(), vec![milliseconds(&told)?]);
    for turn in 0..TURNS {
        if turn > 0 {
            let told = ask_peer(&bodies)?.ok_or("the peer is gone")?;
            peer.push(milliseconds(&told)?);
        }
        for _ in 0..ROUNDS {
            let (done, took) = timed(|| bodies.iter().map(adjust).collect::<Result<Vec<_>, _>>());
            done?;
            ours.push(took / bodies.len() as u32);
        }
    }
    let [ours, peer] = [ours, peer].map(|times| median(times).as_secs_f64() * 1000.0);
    row(
        "adjust, test and slips of 12 legs, against scipy",
        [1.0 / ours, 1.0 / peer],
        "per ms",
        ("at least", 20.0),
    );
    Ok(())
}

fn milliseconds(told: &Value) -> Result<Duration, Box<dyn Error>> {
    let took = told["milliseconds"].as_f64();
    Ok(Duration::from_secs_f64(
        took.ok_or("the peer gave no time")? / 1000.0,
    ))
}

/// A leg misread, and by how many feet; and a clean house.
const SLIPS: [(usize, f64); 4] = [(0, 0.0), (0, 10.0), (5, -1.0), (8, -3.0)];

/// A house in steps: legs along the front and the back, with a tie across a notch.
fn twelve_legs((slipped, by): (usize, f64)) -> Body {
    let inches = |feet: f64| (feet * 12.0).round() / 12.0;
    let legs = [
        58.0, 14.0, 12.0, 11.0, 9.5, 12.5, 8.0, 8.0, 12.5, 17.0, 16.0, 28.5,
    ];
    let turns = [
        90.0, 90.0, -90.0, 90.0, -90.0, 90.0, -90.0, 90.0, 90.0, -90.0, 90.0, 90.0,
    ];
    let misses = [
        0.1, -0.12, 0.2, 0.0, -0.1, 0.15, -0.2, 0.1, 0.0, 0.12, -0.15, 0.1,
    ];
    let mut readings: Vec<Reading> = legs
        .iter()
        .zip(misses)
        .enumerate()
        .map(|(leg, (feet, miss))| reading(leg, Span::Leg(leg), inches(feet + miss)))
        .collect();
    readings.push(reading(
        12,
        Span::Tie(2, 4),
        inches(12.0_f64.hypot(11.0) + 0.1),
    ));
    let value = &mut readings[slipped].value;
    *value = Length::feet(inches(value.in_feet() + by));
    body(&turns, readings)
}

fn reading(k: usize, span: Span, feet: f64) -> Reading {
    let inches = (feet * 12.0).round();
    Reading {
        id: format!("t{k}"),
        span,
        value: Length::feet(feet),
        text: Some(format!(
            "{:.0}' {:.0}\"",
            (inches / 12.0).floor(),
            inches % 12.0
        )),
        sigma: None,
    }
}

fn body(turns: &[f64], readings: Vec<Reading>) -> Body {
    Body {
        id: "main".into(),
        eave_height: Length::feet(9.0),
        outline: Sketch::Turned {
            start: Point { x: 0.0, y: 0.0 },
            heading: Angle::degrees(0.0),
            turns: turns.iter().map(|turn| Angle::degrees(*turn)).collect(),
            turn_sigma: Angle::degrees(0.21),
        },
        readings,
        edges: Vec::new(),
        placed_from: None,
    }
}

/// What the peer says of these surveys; none where there is no such python.
fn ask_peer(bodies: &[Body]) -> Result<Option<Value>, Box<dyn Error>> {
    let python = std::env::var_os("EAVEBOOK_PYTHON").unwrap_or_else(|| "python3".into());
    let has_scipy = Command::new(&python)
        .args(["-c", "import numpy, scipy.optimize"])
        .stderr(Stdio::null())
        .status();
    if !has_scipy.is_ok_and(|status| status.success()) {
        return Ok(None);
    }
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("outline_peer.py");
    let mut peer = Command::new(&python)
        .arg(script)
        // One thread: ours has no more.
        .env("OMP_NUM_THREADS", "1")
        .env("OPENBLAS_NUM_THREADS", "1")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()?;
    let surveys: Vec<Value> = bodies.iter().map(survey_json).collect();
    let task = json!({"rounds": ROUNDS, "surveys": surveys});
    if let Some(stdin) = peer.stdin.as_mut() {
        stdin.write_all(task.to_string().as_bytes())?;
    }
    let said = peer.wait_with_output()?;
    if !said.status.success() {
        return Err("the peer of the outline failed".into());
    }
    Ok(Some(serde_json::from_slice(&said.stdout)?))
}

fn survey_json(body: &Body) -> Value {
    let Sketch::Turned { turns, .. } = &body.outline else {
        return Value::Null;
    };
    let readings: Vec<Value> = body
        .readings
        .iter()
        .map(|reading| {
            let feet = reading.value.in_feet();
            match reading.span {
                Span::Leg(leg) | Span::WallOfLeg { leg, .. } => json!({"leg": leg, "feet": feet}),
                Span::Tie(from, to) | Span::Overall { from, to, .. } => {
                    json!({"tie": [from, to], "feet": feet})
                }
            }
        })
        .collect();
    let turns: Vec<f64> = turns.iter().map(|turn| turn.in_degrees()).collect();
    json!({"turns": turns, "readings": readings})
}

/// The greatest difference between our outputs and the peer's; none where one of them lacks.
fn apart(outline: &Outline, peer: &Value) -> Option<f64> {
    let mut apart: f64 = 0.0;
    let mut beside = |ours: f64, theirs: &Value| -> Option<()> {
        apart = apart.max((ours - theirs.as_f64()?).abs());
        Some(())
    };
    for (k, corner) in outline.corners.iter().enumerate() {
        let at = (*corner)?.at;
        beside(at.x, &peer["corners"][k][0])?;
        beside(at.y, &peer["corners"][k][1])?;
    }
    for (k, figure) in outline.readings.iter().enumerate() {
        beside(figure.residual.in_feet(), &peer["residuals"][k])?;
        beside(figure.redundancy, &peer["redundancies"][k])?;
    }
    beside(outline.suspects.nothing_wrong, &peer["nothing_wrong"])?;
    for suspect in &outline.suspects.named {
        beside(suspect.probability, &peer["chances"][suspect.reading])?;
    }
    Some(apart)
}

/// A comb of thirty legs with a roof, one reading changed at a time.
fn thirty_legs() -> Result<(), Box<dyn Error>> {
    let mut legs = vec![(98.0, 90.0), (30.0, 90.0)];
    for _ in 0..6 {
        legs.extend([(7.0, 90.0), (4.0, -90.0), (7.0, -90.0), (4.0, 90.0)]);
    }
    legs.extend([(7.0, 90.0), (4.0, -90.0), (7.0, 90.0), (26.0, 90.0)]);
    let turns: Vec<f64> = legs.iter().map(|leg| leg.1).collect();
    let readings = legs
        .iter()
        .enumerate()
        .map(|(leg, (feet, _))| reading(leg, Span::Leg(leg), *feet))
        .collect();
    let mut survey = Survey {
        bodies: vec![body(&turns, readings)],
        ..Survey::default()
    };
    survey.bodies[0].edges = vec![
        LegEdge {
            rise: Rise::Pitch(Pitch::rise_in_12(6.0)),
            overhang: Some(Length::feet(1.0)),
        };
        legs.len()
    ];
    let mut times = Vec::new();
    for round in 0..ROUNDS {
        let key = [0.0, 0.1, 1.0, 10.0][round % 4];
        survey.bodies[0].readings[1].value = Length::feet(30.0 + key);
        let (done, took) = timed(|| solve(&survey));
        done?;
        times.push(took);
    }
    let ours = median(times).as_secs_f64() * 1000.0;
    row(
        "solve of 30 legs after one key, against a quarter frame",
        [ours, QUARTER_FRAME],
        "ms",
        ("at most", 1.0),
    );
    Ok(())
}
