//! Outlines by the thousand, the same each run.

use std::collections::{BTreeMap, BTreeSet};

/// Numbers without a source of chance: the same each run.
pub struct Numbers(u64);

impl Numbers {
    /// The numbers that belong to a seed.
    #[must_use]
    pub fn new(seed: u64) -> Numbers {
        Numbers(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15))
    }

    /// Evenly spread from 0 to 1 (Steele, Lea and Flood, *Fast splittable pseudorandom number
    /// generators*, 2014).
    pub fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Evenly spread between two numbers.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// A whole number from 0, less than `count`.
    pub fn below(&mut self, count: usize) -> usize {
        (self.even() * count as f64) as usize
    }

    /// Normal, mean 0, standard deviation 1 (Box and Muller 1958).
    pub fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.even()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.even()).cos()
    }
}

/// A simple outline through random places: crossing legs are uncrossed until none is left.
pub fn tangle(numbers: &mut Numbers, legs: usize) -> Vec<[f64; 2]> {
    let mut ring: Vec<[f64; 2]> = (0..legs)
        .map(|_| [numbers.between(0.0, 100.0), numbers.between(0.0, 100.0)])
        .collect();
    let side = |a: [f64; 2], b: [f64; 2], c: [f64; 2]| {
        (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    };
    loop {
        let mut uncrossed = true;
        for one in 0..legs {
            for two in one + 2..legs {
                if one == 0 && two == legs - 1 {
                    continue;
                }
                let (a, b) = (ring[one], ring[one + 1]);
                let (c, d) = (ring[two], ring[(two + 1) % legs]);
                if side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0 {
                    ring[one + 1..=two].reverse();
                    uncrossed = false;
                }
            }
        }
        if uncrossed {
            return ring;
        }
    }
}

/// How far apart the lines of a grid stand.
#[derive(Clone, Copy, PartialEq)]
pub enum Grid {
    /// All alike: many events at one height.
    Even,
    /// Each its own.
    Uneven,
}

/// A right-angled outline: cells of a grid joined one by one, without holes or touching corners.
pub fn cells(numbers: &mut Numbers, most_legs: usize, grid: Grid) -> Vec<[f64; 2]> {
    let size = 14_i32;
    let lines: Vec<Vec<f64>> = (0..2)
        .map(|_| {
            let mut at = 0.0;
            (0..=size)
                .map(|_| {
                    at += match grid {
                        Grid::Even => 8.0,
                        Grid::Uneven => numbers.between(3.0, 15.0),
                    };
                    at
                })
                .collect()
        })
        .collect();
    let mut taken = BTreeSet::from([(size / 2, size / 2)]);
    let mut best = ring_around(&taken).expect("one cell");
    for _ in 0..400 {
        let cell = (
            numbers.below(size as usize) as i32,
            numbers.below(size as usize) as i32,
        );
        if taken.contains(&cell) {
            continue;
        }
        taken.insert(cell);
        match ring_around(&taken) {
            Some(ring) if ring.len() <= most_legs => best = ring,
            _ => {
                taken.remove(&cell);
            }
        }
    }
    best.iter()
        .map(|&(x, y)| [lines[0][x as usize], lines[1][y as usize]])
        .collect()
}

/// The corners around cells, counter-clockwise; none unless it is one ring that meets no corner
/// twice.
fn ring_around(taken: &BTreeSet<(i32, i32)>) -> Option<Vec<(i32, i32)>> {
    let mut next = BTreeMap::new();
    let mut sides = 0;
    for &(x, y) in taken {
        let around = [
            ((x, y - 1), (x, y), (x + 1, y)),
            ((x + 1, y), (x + 1, y), (x + 1, y + 1)),
            ((x, y + 1), (x + 1, y + 1), (x, y + 1)),
            ((x - 1, y), (x, y + 1), (x, y)),
        ];
        for (beside, from, to) in around {
            if !taken.contains(&beside) {
                sides += 1;
                if next.insert(from, to).is_some() {
                    return None;
                }
            }
        }
    }
    let start = *next.keys().next()?;
    let mut ring = vec![start];
    let mut at = next[&start];
    while at != start {
        ring.push(at);
        at = next[&at];
    }
    if ring.len() != sides {
        return None;
    }
    let count = ring.len();
    let turns = |corner: usize| {
        let (a, b, c) = (
            ring[(corner + count - 1) % count],
            ring[corner],
            ring[(corner + 1) % count],
        );
        (b.0 - a.0, b.1 - a.1) != (c.0 - b.0, c.1 - b.1)
    };
    Some((0..count).filter(|&c| turns(c)).map(|c| ring[c]).collect())
}

/// A thousand outlines of 8 to 60 legs: 500 tangles, 500 right-angled, half of these with many
/// events at one height.
pub fn thousand() -> impl Iterator<Item = Vec<[f64; 2]>> {
    (0..1000).map(|seed| {
        let mut numbers = Numbers::new(seed);
        let legs = 8 + numbers.below(53);
        match seed % 4 {
            0 => cells(&mut numbers, legs, Grid::Even),
            1 => cells(&mut numbers, legs, Grid::Uneven),
            _ => tangle(&mut numbers, legs),
        }
    })
}
