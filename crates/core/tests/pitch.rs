//! The slopes of simulated roofs, read with a simulated phone: what is stated against what is so.
//!
//! The simulated roofs are built board by board, not drawn from the curves that weigh the readings:
//! rafters sag, courses make waves, eaves kick out, grit lies under a phone, other pitches are met
//! more often. So the figures also show how the weighing bends when roofs are not as it supposes.

use eavebook_core::pitch::{PitchChances, weigh};
use eavebook_core::survey::{PitchReading, SlopePlace, Way};
use eavebook_core::units::{Angle, Pitch};
use eavebook_houses::Noise;

/// Pitches and how often they are met on the simulated street.
const STREET: [(f64, f64); 14] = [
    (3.0, 4.0),
    (4.0, 18.0),
    (4.5, 1.0),
    (5.0, 16.0),
    (5.5, 1.0),
    (6.0, 19.0),
    (6.5, 1.0),
    (7.0, 9.0),
    (8.0, 12.0),
    (9.0, 7.0),
    (10.0, 5.0),
    (12.0, 5.0),
    (14.0, 1.0),
    (16.0, 1.0),
];

/// A face, cut along its slope.
struct Cut {
    framed: Pitch,
    /// As built, the mean of the whole, degrees.
    built: f64,
    /// Feet along the slope.
    length: f64,
    /// Dip of the rafters at their middle, feet.
    sag: f64,
    /// Height, length and shift of each wave in the courses, feet.
    waves: [[f64; 3]; 2],
    /// How much flatter the lowest foot and a half is, degrees.
    kick_out: f64,
}

impl Cut {
    fn built(noise: &mut Noise) -> Cut {
        let mut left = noise.between(0.0, STREET.iter().map(|(_, often)| often).sum());
        let met = STREET.iter().find(|(_, often)| {
            left -= often;
            left < 0.0
        });
        let framed = Pitch::rise_in_12(met.map_or(6.0, |(pitch, _)| *pitch));
        // One roof in six is old and wavy.
        let old = if noise.share() < 1.0 / 6.0 { 3.0 } else { 1.0 };
        let wave = |noise: &mut Noise| {
            let height = old * noise.between(0.0, 0.06 / 12.0);
            [height, noise.between(2.0, 6.0), noise.between(0.0, 6.0)]
        };
        Cut {
            framed,
            built: framed.angle().in_degrees() + noise.between(-0.6, 0.6),
            length: noise.between(13.0, 22.0),
            sag: old * noise.between(0.0, 0.4 / 12.0),
            waves: [wave(noise), wave(noise)],
            kick_out: if noise.share() < 0.3 {
                noise.between(2.0, 5.0)
            } else {
                0.0
            },
        }
    }

    /// Slope under a phone half a foot long, degrees.
    fn at(&self, feet: f64) -> f64 {
        let height = |at: f64| {
            let share = at / self.length;
            let dip = -4.0 * self.sag * share * (1.0 - share);
            let waves = self.waves.iter().map(|[height, length, shift]| {
                height * (std::f64::consts::TAU * (at - shift) / length).sin()
            });
            dip + waves.sum::<f64>()
        };
        let turned = ((height(feet + 0.25) - height(feet - 0.25)) / 0.5).atan();
        let kick_out = if feet < 1.5 { self.kick_out } else { 0.0 };
        self.built + turned.to_degrees() - kick_out
    }
}

#[derive(Clone, Copy)]
enum Taken {
    OneWay,
    BothWays,
}

#[derive(Clone, Copy)]
enum Where {
    /// Anywhere above the second course.
    Above,
    /// The first near the eave, and said to be.
    FirstNearEave,
    /// The first near the eave, and nobody said where any was.
    NobodySaid,
}

fn read(cut: &Cut, positions: u32, taken: Taken, places: Where, noise: &mut Noise) -> PitchChances {
    let zero_error = noise.between(-1.5, 1.5);
    let mut readings = Vec::new();
    for position in 0..positions {
        let near_eave = position == 0 && !matches!(places, Where::Above);
        let feet = if near_eave {
            noise.between(0.4, 1.2)
        } else {
            noise.between(2.0, cut.length - 1.0)
        };
        let place = match places {
            Where::NobodySaid => None,
            Where::Above | Where::FirstNearEave if near_eave => Some(SlopePlace::NearEave),
            Where::Above | Where::FirstNearEave => Some(SlopePlace::AboveSecondCourse),
        };
        let here = cut.at(feet);
        let mut lay = |zero_error: f64, way: Way| {
            let grit = if noise.share() < 0.04 {
                noise.between(-2.5, 2.5)
            } else {
                0.0
            };
            let degrees = here + zero_error + noise.between(-0.6, 0.6) + grit;
            readings.push(PitchReading {
                place,
                ..PitchReading::new(Angle::degrees(degrees), way)
            });
        };
        lay(zero_error, Way::Forward);
        if matches!(taken, Taken::BothWays) {
            lay(-zero_error, Way::Reversed);
        }
    }
    weigh(&readings).expect("there are readings")
}

/// Shares of houses in 1.
struct Shares {
    right: f64,
    stated: f64,
    low: f64,
    steeper_low: f64,
    stated_steeper_low: f64,
    /// Mean of what the steeper one adds to the area.
    cost: f64,
}

fn simulate(positions: u32, taken: Taken, places: Where) -> Shares {
    const HOUSES: u32 = 2000;
    let mut noise = Noise::seeded(40_961);
    let mut sums = [0.0; 6];
    for _ in 0..HOUSES {
        let cut = Cut::built(&mut noise);
        let told = read(&cut, positions, taken, places, &mut noise);
        let one = |is: bool| f64::from(u8::from(is));
        let off = told.likeliest().in_12() - cut.framed.in_12();
        let steeper = told.steeper_when_unsure.max(told.likeliest());
        let each = [
            one(off.abs() < 1e-9),
            told.chances[0].1,
            one(off < -1e-9),
            one(steeper.in_12() - cut.framed.in_12() < -1e-9),
            told.more_than_steeper,
            steeper.slope_factor() / told.likeliest().slope_factor() - 1.0,
        ];
        for (sum, each) in sums.iter_mut().zip(each) {
            *sum += each;
        }
    }
    let [right, stated, low, steeper_low, stated_steeper_low, cost] =
        sums.map(|sum| sum / f64::from(HOUSES));
    Shares {
        right,
        stated,
        low,
        steeper_low,
        stated_steeper_low,
        cost,
    }
}

fn row(name: &str, positions: u32, taken: Taken, places: Where) -> Shares {
    let told = simulate(positions, taken, places);
    println!(
        "| {name} | {positions} | {:.1} ({:.1}) | {:.1} -> {:.1} ({:.1}) | +{:.2} |",
        100.0 * told.right,
        100.0 * told.stated,
        100.0 * told.low,
        100.0 * told.steeper_low,
        100.0 * told.stated_steeper_low,
        100.0 * told.cost
    );
    told
}

trait Max {
    fn max(self, other: Self) -> Self;
}

impl Max for Pitch {
    fn max(self, other: Pitch) -> Pitch {
        if other > self { other } else { self }
    }
}

#[test]
fn what_is_stated_of_simulated_roofs_is_so() {
    use Taken::{BothWays, OneWay};
    use Where::{Above, FirstNearEave, NobodySaid};
    println!("| read | places | right % (stated %) | too low % -> steeper % (stated) | area % |");
    let one_look = row("one way", 1, OneWay, Above);
    row("one way", 3, OneWay, Above);
    let one = row("both ways", 1, BothWays, Above);
    row("both ways", 2, BothWays, Above);
    let three = row("both ways", 3, BothWays, Above);
    row("both ways, first near the eave", 3, BothWays, FirstNearEave);
    row("same, nobody said so", 3, BothWays, NobodySaid);
    row("both ways", 4, BothWays, Above);
    row("both ways, first near the eave", 4, BothWays, FirstNearEave);
    let eave_alone = row("both ways, on the eave alone", 1, BothWays, FirstNearEave);

    assert!(three.right >= 0.95, "{}", three.right);
    assert!((three.right - three.stated).abs() <= 0.03);
    assert!(three.steeper_low <= 0.01, "{}", three.steeper_low);
    assert!(three.steeper_low <= three.low);
    assert!(
        eave_alone.stated < one.stated,
        "the eave alone is trusted less"
    );
    assert!(one_look.right < one.right && one.right < three.right);
}
