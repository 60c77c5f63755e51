//! The slopes of simulated roofs, read with a simulated phone: what is stated against what is so.
//!
//! The simulation draws from the same model that weighs the readings, so this shows that the
//! weighing is right for its model, not that the model is right for roofs.

use eavebook_core::pitch::weigh;
use eavebook_core::survey::{PitchReading, Way};
use eavebook_core::units::{Angle, Pitch};
use eavebook_houses::Noise;

/// A pitch from 2 to 16 in 12 as often as it is met; one in thirteen or so lies half way to the next.
fn pitch(noise: &mut Noise) -> Pitch {
    let met = [
        0.3, 0.6, 1.0, 1.0, 1.0, 0.9, 0.8, 0.65, 0.5, 0.5, 0.5, 0.325, 0.15, 0.1, 0.05,
    ];
    let mut left = noise.share() * met.iter().sum::<f64>();
    let mut rise = 2.0;
    for weight in met {
        if left < weight {
            break;
        }
        left -= weight;
        rise += 1.0;
    }
    let half = noise.share() < 0.08 / 1.08;
    Pitch::rise_in_12(rise + if half { 0.5 } else { 0.0 })
}

#[derive(Clone, Copy)]
enum Taken {
    OneWay,
    BothWays,
}

/// Shares of houses in 1: likeliest pitch right, the chance stated for it, pitch taken too low,
/// the steeper one of the two named too low.
struct Shares {
    right: f64,
    stated: f64,
    low: f64,
    steeper_low: f64,
}

fn simulate(houses: u32, positions: u32, taken: Taken) -> Shares {
    let mut noise = Noise::seeded(7);
    let mut counts = [0.0; 4];
    for _ in 0..houses {
        let framed = pitch(&mut noise);
        let built = framed.angle().in_degrees() + noise.normal(0.35);
        let zero_error = noise.normal(0.7);
        let mut readings = Vec::new();
        for _ in 0..positions {
            let odd = noise.share() < 0.15;
            let here = built + noise.normal(if odd { 2.5 } else { 0.15 });
            readings.push((here + zero_error + noise.normal(0.35), Way::Forward));
            if matches!(taken, Taken::BothWays) {
                readings.push((here - zero_error + noise.normal(0.35), Way::Reversed));
            }
        }
        let readings: Vec<PitchReading> = readings
            .into_iter()
            .map(|(degrees, way)| PitchReading {
                angle: Angle::degrees(degrees),
                way,
            })
            .collect();
        let told = weigh(&readings).expect("there are readings");
        let one = |is: bool| f64::from(u8::from(is));
        let off = told.likeliest().in_12() - framed.in_12();
        counts[0] += one(off.abs() < 1e-9);
        counts[1] += told.chances[0].1;
        counts[2] += one(off < -1e-9);
        counts[3] += one(told.steeper_when_unsure.in_12() - framed.in_12() < -1e-9);
    }
    let [right, stated, low, steeper_low] = counts.map(|count| count / f64::from(houses));
    Shares {
        right,
        stated,
        low,
        steeper_low,
    }
}

#[test]
fn three_positions_both_ways_name_the_pitch_and_state_their_chance_fairly() {
    let told = simulate(600, 3, Taken::BothWays);
    println!(
        "both ways, 3 positions: right {:.3}, stated {:.3}, low {:.3}, steeper low {:.3}",
        told.right, told.stated, told.low, told.steeper_low
    );
    assert!(told.right >= 0.95);
    assert!((told.right - told.stated).abs() <= 0.03);
    assert!(told.steeper_low <= 0.01);
    assert!(told.steeper_low <= told.low);
}

#[test]
fn one_look_one_way_is_right_less_often_and_says_so() {
    let told = simulate(600, 1, Taken::OneWay);
    println!(
        "one way, 1 position: right {:.3}, stated {:.3}, low {:.3}, steeper low {:.3}",
        told.right, told.stated, told.low, told.steeper_low
    );
    assert!((0.70..0.90).contains(&told.right));
    assert!((told.right - told.stated).abs() <= 0.05);
    assert!(told.steeper_low < told.low);
}
