//! Our roofs beside the straight skeleton of CGAL over the same outlines, and how time and memory grow
//! with the legs. Prints rows; `cargo xtask bench` judges them.

use eavebook_core::roof::{BodyShape, raise};
use eavebook_houses::{Grid, Numbers, cells, tangle};
use eavebook_roofs::{Outline, areas_by_leg};
use peak_alloc::PeakAlloc;
use std::error::Error;
use std::io::Write;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// Outlines of each size.
const OUTLINES: usize = 24;
/// Both sides take turns, so that a slow minute of the machine is one of both.
const TURNS: usize = 5;
/// Roofs over one outline in a turn.
const ROUNDS: usize = 5;
/// What the face of a leg may differ from the peer's, sq ft.
const ALIKE: f64 = 1e-4;
/// Legs of the outlines along which growth is measured.
const SIZES: [usize; 5] = [30, 50, 80, 130, 200];

fn main() -> Result<(), Box<dyn Error>> {
    let houses = outlines(30)?;
    beside_peer(&houses)?;
    growth()
}

/// Half right-angled on an uneven grid, half tangles, hipped at one pitch.
fn outlines(legs: usize) -> Result<Vec<Outline>, Box<dyn Error>> {
    let mut found = Vec::new();
    for seed in 0..40 * OUTLINES as u64 {
        let mut numbers = Numbers::new(400_000 + seed);
        let corners = if found.len() % 2 == 0 && legs <= 50 {
            cells(&mut numbers, legs, Grid::Uneven)
        } else {
            tangle(&mut numbers, legs)
        };
        if corners.len() == legs {
            found.push(Outline::hipped(corners, 6.0));
        }
        if found.len() == OUTLINES {
            return Ok(found);
        }
    }
    Err(format!("too few outlines of {legs} legs").into())
}

/// Milliseconds of each roof, outline by outline: the one of its rounds that was asked for.
fn times(
    shapes: &[BodyShape],
    of: fn(Vec<Duration>) -> Duration,
) -> Result<Vec<f64>, Box<dyn Error>> {
    let mut all = Vec::new();
    for shape in shapes {
        let mut rounds = Vec::new();
        for _ in 0..ROUNDS {
            let start = Instant::now();
            let roof = raise(std::slice::from_ref(shape), &[]);
            rounds.push(start.elapsed());
            roof?;
        }
        all.push(of(rounds).as_secs_f64() * 1000.0);
    }
    Ok(all)
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn shortest(times: Vec<Duration>) -> Duration {
    times.into_iter().min().unwrap_or_default()
}

fn mean(times: &[f64]) -> f64 {
    times.iter().sum::<f64>() / times.len() as f64
}

/// The peer is the program that `EAVEBOOK_ROOFS_PEER` names; without it the row is left out, in so many
/// words.
fn beside_peer(outlines: &[Outline]) -> Result<(), Box<dyn Error>> {
    let Some(peer) = std::env::var_os("EAVEBOOK_ROOFS_PEER") else {
        println!(
            "EAVEBOOK_ROOFS_PEER names no program: roofs have no peer, run `cargo xtask bench`"
        );
        return Ok(());
    };
    let shapes: Vec<BodyShape> = outlines.iter().map(Outline::shape).collect();
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for turn in 0..TURNS {
        let told = ask(Command::new(&peer), outlines)?;
        ours.extend(times(&shapes, median)?);
        theirs.extend(told.iter().map(|(time, _)| *time));
        if turn > 0 {
            continue;
        }
        for ((outline, shape), (_, areas)) in outlines.iter().zip(&shapes).zip(&told) {
            let roof = raise(std::slice::from_ref(shape), &[])?;
            let by_leg = outline.by_plane(&areas_by_leg(&roof, outline.corners.len()));
            let apart = by_leg.iter().zip(outline.by_plane(areas));
            let apart = apart.map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            if apart > ALIKE {
                return Err(format!("a face is {apart} sq ft off the peer's: {outline:?}").into());
            }
        }
    }
    let [ours, theirs] = [ours, theirs].map(|times| 1.0 / mean(&times));
    row(
        "roofs over 30 legs, against CGAL",
        [ours, theirs],
        "per ms",
        ("at least", 1.0),
    );
    Ok(())
}

/// What the peer says of one outline: milliseconds of its roof, areas in plan by leg.
type Told = (f64, Vec<f64>);

/// What the peer says of each outline.
fn ask(mut peer: Command, outlines: &[Outline]) -> Result<Vec<Told>, Box<dyn Error>> {
    let mut task = format!("{ROUNDS}\n");
    for outline in outlines {
        task.push_str(&format!("{}\n", outline.corners.len()));
        for [x, y] in &outline.corners {
            task.push_str(&format!("{x:?} {y:?}\n"));
        }
    }
    let mut peer = peer.stdin(Stdio::piped()).stdout(Stdio::piped()).spawn()?;
    peer.stdin
        .take()
        .ok_or("the peer takes no outlines")?
        .write_all(task.as_bytes())?;
    let said = peer.wait_with_output()?;
    if !said.status.success() {
        return Err("the peer of the roofs failed".into());
    }
    let text = String::from_utf8(said.stdout)?;
    text.lines()
        .map(|line| {
            let mut numbers = line.split(' ').map(str::parse::<f64>);
            let time = numbers.next().ok_or("the peer gave no time")??;
            Ok((time, numbers.collect::<Result<_, _>>()?))
        })
        .collect()
}

/// Time and memory from 30 to 200 legs, over tangles alone: each size the same kind of outline.
fn growth() -> Result<(), Box<dyn Error>> {
    let mut told = Vec::new();
    for legs in SIZES {
        let tangles: Vec<BodyShape> = (0..OUTLINES as u64)
            .map(|seed| tangle(&mut Numbers::new(500_000 + seed), legs))
            .map(|corners| Outline::hipped(corners, 6.0).shape())
            .collect();
        // The longer a roof takes the likelier another program cuts in: the round without it counts.
        let time = mean(&times(&tangles, shortest)?);
        let memory = tangles.iter().map(peak).collect::<Result<Vec<f64>, _>>()?;
        println!(
            "{legs} legs: {time:.3} ms, {:.1} kB at most",
            mean(&memory) / 1024.0
        );
        told.push((legs as f64, time, mean(&memory)));
    }
    let [Some(&(_, least, little)), Some(&(_, most, much))] = [told.first(), told.last()] else {
        return Err("nothing was measured".into());
    };
    let legs: Vec<f64> = told.iter().map(|told| told.0).collect();
    let of = |figure: fn(&(f64, f64, f64)) -> f64| told.iter().map(figure).collect::<Vec<f64>>();
    row(
        "a roof of 200 legs, against one of 30",
        [most, least],
        "ms",
        ("at most", 50.0),
    );
    row(
        "power of the legs with which time grows, against 2",
        [power(&legs, &of(|told| told.1)), 2.0],
        "",
        ("at most", 1.1),
    );
    row(
        "memory of a roof of 200 legs a leg, against 30",
        [much / 200.0 / 1024.0, little / 30.0 / 1024.0],
        "kB",
        ("at most", 1.5),
    );
    Ok(())
}

/// Most bytes held at once while one roof is raised, beyond those held before.
fn peak(shape: &BodyShape) -> Result<f64, Box<dyn Error>> {
    let before = MEMORY.current_usage();
    MEMORY.reset_peak_usage();
    let roof = raise(std::slice::from_ref(shape), &[])?;
    let most = MEMORY.peak_usage();
    drop(roof);
    Ok(most.saturating_sub(before) as f64)
}

/// The exponent of the power law that fits best: least squares over logarithms.
fn power(sizes: &[f64], figures: &[f64]) -> f64 {
    let logs = |numbers: &[f64]| numbers.iter().map(|n| n.ln()).collect::<Vec<f64>>();
    let (x, y) = (logs(sizes), logs(figures));
    let (mx, my) = (mean(&x), mean(&y));
    let both: f64 = x.iter().zip(&y).map(|(x, y)| (x - mx) * (y - my)).sum();
    both / x.iter().map(|x| (x - mx) * (x - mx)).sum::<f64>()
}

/// Prints one comparison.
fn row(name: &str, [ours, peer]: [f64; 2], unit: &str, (side, ratio): (&str, f64)) {
    println!("row\t{name}\t{ours:.3}\t{peer:.3}\t{unit}\t{side}\t{ratio}");
}
