//! Printed examples of textbooks, adjusted by the solver that adjusts outlines.

use eavebook_core::outline::net::{
    Adjusted, Net, NetError, Observation, Row, Station, StationFixity, adjust_net,
};
use eavebook_core::survey::Point;
use serde::Deserialize;
use std::collections::BTreeMap;

/// One example as it stands in textbook.json: names of stations, angles as "degrees minutes
/// seconds" clockwise, spreads of angles in seconds, azimuths from north; x east, y north.
#[derive(Deserialize)]
struct Example {
    id: String,
    #[serde(default)]
    fixed: BTreeMap<String, [f64; 2]>,
    #[serde(default)]
    start: BTreeMap<String, [f64; 2]>,
    #[serde(default)]
    dist: Vec<(String, String, f64, f64)>,
    #[serde(default)]
    ang: Vec<(String, String, String, String, f64)>,
    #[serde(default)]
    az: Vec<(String, String, String, f64)>,
    /// (at, to, known azimuth of the backsight, angle turned from it, spread, 1 clockwise or -1).
    #[serde(default)]
    turn_az: Vec<(String, String, String, String, f64, f64)>,
    #[serde(default)]
    published: serde_json::Value,
    #[serde(default)]
    computed: serde_json::Value,
    dof: Option<usize>,
    chi2: Option<f64>,
    s0: Option<f64>,
    #[serde(default)]
    redundancy: Vec<f64>,
    /// Level nets: factors of the heights, one row an observation; their sums; their weights.
    #[serde(rename = "A", default)]
    rows: Vec<Vec<f64>>,
    #[serde(default)]
    l: Vec<f64>,
    #[serde(default)]
    w: Vec<f64>,
    /// Level lines: from, to, rise, length.
    #[serde(default)]
    lines: Vec<(String, String, f64, f64)>,
}

fn example(id: &str) -> Example {
    let all: Vec<Example> =
        serde_json::from_str(include_str!("textbook.json")).expect("textbook.json is as written");
    all.into_iter()
        .find(|e| e.id == id)
        .expect("an example of that name")
}

/// "46 15 02.0" in radians.
fn dms(text: &str) -> f64 {
    let parts: Vec<f64> = text
        .split_whitespace()
        .map(|p| p.parse().expect("degrees, minutes, seconds"))
        .collect();
    (parts[0] + parts[1] / 60.0 + parts[2] / 3600.0).to_radians()
}

fn seconds(seconds: f64) -> f64 {
    (seconds / 3600.0).to_radians()
}

const EAST_OF_NORTH: f64 = std::f64::consts::FRAC_PI_2;

impl Example {
    fn names(&self) -> Vec<&str> {
        self.fixed
            .keys()
            .chain(self.start.keys())
            .map(String::as_str)
            .collect()
    }

    fn station(&self, name: &str) -> usize {
        self.names()
            .iter()
            .position(|n| *n == name)
            .expect("a station of that name")
    }

    /// A clockwise angle, as the angle from its end to its beginning.
    fn angle(&self, at: &str, from: &str, to: &str, text: &str, spread: f64) -> Observation {
        Observation {
            row: Row::Angle {
                at: self.station(at),
                from: self.station(to),
                to: self.station(from),
            },
            value: dms(text),
            sigma: seconds(spread),
        }
    }

    fn azimuth(&self, from: &str, to: &str, azimuth: f64, spread: f64) -> Observation {
        Observation {
            row: Row::Direction {
                from: self.station(from),
                to: self.station(to),
            },
            value: EAST_OF_NORTH - azimuth,
            sigma: seconds(spread),
        }
    }

    fn net(&self) -> Net {
        let at = |p: &[f64; 2]| Point { x: p[0], y: p[1] };
        let stations = self
            .fixed
            .values()
            .map(|p| Station {
                at: at(p),
                held: StationFixity::Fixed,
            })
            .chain(self.start.values().map(|p| Station {
                at: at(p),
                held: StationFixity::Free,
            }))
            .collect();
        let mut observations = Vec::new();
        for (from, to, value, sigma) in &self.dist {
            observations.push(Observation {
                row: Row::Distance {
                    from: self.station(from),
                    to: self.station(to),
                },
                value: *value,
                sigma: *sigma,
            });
        }
        for (at, from, to, text, spread) in &self.ang {
            observations.push(self.angle(at, from, to, text, *spread));
        }
        for (from, to, text, spread) in &self.az {
            observations.push(self.azimuth(from, to, dms(text), *spread));
        }
        for (from, to, known, turned, spread, sense) in &self.turn_az {
            let azimuth = dms(known) + sense * dms(turned);
            observations.push(self.azimuth(from, to, azimuth, *spread));
        }
        Net {
            stations,
            observations,
        }
    }

    /// Asserts the printed coordinates to their last digit, and the other figures to theirs.
    fn comes_out_as_printed(&self) -> Adjusted {
        let adjusted = adjust_net(&self.net()).expect("a net that stands");
        let published: BTreeMap<String, [f64; 2]> =
            serde_json::from_value(self.published.clone()).expect("coordinates");
        for (name, printed) in &published {
            let place = adjusted.places[self.station(name)];
            println!(
                "{} {name}: printed {:.4} {:.4}, here {:.4} {:.4}",
                self.id, printed[0], printed[1], place.x, place.y
            );
            assert!(
                (place.x - printed[0]).abs() < 1.1e-4,
                "{} {name} x",
                self.id
            );
            assert!(
                (place.y - printed[1]).abs() < 1.1e-4,
                "{} {name} y",
                self.id
            );
        }
        assert_eq!(Some(adjusted.degrees_of_freedom), self.dof, "{}", self.id);
        let chi2 = self.chi2.expect("a sum of squares");
        assert!(
            (adjusted.chi2 - chi2).abs() < 2e-4 + 1e-5 * chi2,
            "{} chi2 {}",
            self.id,
            adjusted.chi2
        );
        assert_eq!(adjusted.observed.len(), self.redundancy.len());
        for (k, o) in adjusted.observed.iter().enumerate() {
            assert!(
                (o.redundancy - self.redundancy[k]).abs() < 1.1e-4,
                "{} redundancy {k}: {}",
                self.id,
                o.redundancy
            );
            let test = o.standardized_residual().unwrap_or(0.0);
            assert!(
                (test.abs() - self.w[k].abs()).abs() < 0.0021 + 1e-4 * self.w[k].abs(),
                "{} test value {k}: {test}",
                self.id
            );
        }
        let sum: f64 = adjusted.observed.iter().map(|o| o.redundancy).sum();
        assert!((sum - adjusted.degrees_of_freedom as f64).abs() < 1e-6);
        adjusted
    }
}

/// Ghilani, Adjustment Computations, 5th ed. (2010), example 14.5, p. 251.
#[test]
fn a_trilateration_comes_out_as_printed() {
    example("GH14.5").comes_out_as_printed();
}

/// Ghilani (2010), example 16.1, p. 300.
#[test]
fn a_link_traverse_comes_out_as_printed() {
    example("GH16.1").comes_out_as_printed();
}

/// Ghilani (2010), example 16.2, p. 307.
#[test]
fn a_braced_quadrilateral_comes_out_as_printed() {
    example("GH16.2").comes_out_as_printed();
}

/// Ghilani (2010), problem 21.10, p. 459.
#[test]
fn a_quadrilateral_with_gross_errors_comes_out_as_printed() {
    let adjusted = example("GH21.10").comes_out_as_printed();
    let largest = adjusted
        .observed
        .iter()
        .filter_map(|o| o.standardized_residual())
        .fold(0.0_f64, |m, w| m.max(w.abs()));
    assert!((largest - 29.19).abs() < 0.01, "{largest}");
}

/// Krumm, Geodetic Network Adjustment Examples, rev. 3.5 (2020), Traverse 1.
#[test]
fn a_traverse_between_two_known_azimuths_comes_out_as_printed() {
    example("KR-T1").comes_out_as_printed();
}

/// Ghilani (2010), example 16.2: the book leaves one angle out as a blunder.
#[test]
fn the_blunder_put_back_is_the_one_that_the_test_picks() {
    let example = example("GH16.2");
    let mut net = example.net();
    let blunder = net.observations.len();
    net.observations
        .push(example.angle("T", "Q", "R", "46 15 02.0", 4.0));
    let adjusted = adjust_net(&net).expect("a net that stands");
    let mut tests: Vec<(usize, f64)> = adjusted
        .observed
        .iter()
        .enumerate()
        .filter_map(|(k, o)| Some((k, o.standardized_residual()?.abs())))
        .collect();
    tests.sort_by(|a, b| b.1.total_cmp(&a.1));
    println!(
        "chi2 {:.1} on {}, largest test {:.2}, next {:.2}",
        adjusted.chi2, adjusted.degrees_of_freedom, tests[0].1, tests[1].1
    );
    assert_eq!(tests[0].0, blunder);
    assert_eq!(adjusted.degrees_of_freedom, 13);
    assert!((adjusted.chi2 - 28.6).abs() < 0.3, "{}", adjusted.chi2);
    assert!((tests[0].1 - 5.20).abs() < 0.03 && (tests[1].1 - 1.87).abs() < 0.03);
}

/// A net of heights: station k stands at x = height, y held at 0 by a row of its own.
fn levels(heights: usize, observations: Vec<Observation>) -> Net {
    let stations = vec![
        Station {
            at: Point { x: 0.0, y: 0.0 },
            held: StationFixity::Free,
        };
        heights
    ];
    let flat = (0..heights).map(|k| Observation {
        row: Row::Linear(vec![(k, [0.0, 1.0])]),
        value: 0.0,
        sigma: 1.0,
    });
    Net {
        stations,
        observations: observations.into_iter().chain(flat).collect(),
    }
}

fn level_example(id: &str, printed_to: f64) {
    let example = example(id);
    let observations = (0..example.rows.len())
        .map(|k| Observation {
            row: Row::Linear(
                example.rows[k]
                    .iter()
                    .enumerate()
                    .map(|(station, factor)| (station, [*factor, 0.0]))
                    .collect(),
            ),
            value: example.l[k],
            sigma: 1.0 / example.w[k].sqrt(),
        })
        .collect();
    let adjusted = adjust_net(&levels(3, observations)).expect("a net that stands");
    let printed: Vec<f64> = serde_json::from_value(example.published).expect("heights");
    let computed: Vec<f64> = serde_json::from_value(example.computed).expect("heights");
    for (place, (printed, computed)) in adjusted.places.iter().zip(printed.iter().zip(&computed)) {
        println!("{id}: printed {printed}, here {:.4}", place.x);
        assert!((place.x - printed).abs() < printed_to);
        assert!((place.x - computed).abs() < 1e-4);
    }
    let s0 = (adjusted.chi2 / adjusted.degrees_of_freedom as f64).sqrt();
    assert!((s0 - example.s0.expect("s0")).abs() < 1e-4, "{s0}");
}

/// Wolf and Ghilani, Adjustment Computations, example 12.3.
#[test]
fn a_level_net_comes_out_as_printed() {
    level_example("Wolf/Ghilani level net Ex.12.3 unweighted", 5.1e-4);
}

/// Wolf and Ghilani, Adjustment Computations, example 12.4.
#[test]
fn a_weighted_level_net_comes_out_as_printed() {
    level_example("Ex.12.4 weighted", 5.1e-4);
}

/// Mikhail, Observations and Least Squares (1976), example 7.4: weights by length of line, bench
/// mark A at 800.
#[test]
fn a_level_net_on_a_bench_mark_comes_out_as_printed() {
    let example = example("Mikhail7.4");
    let names = ["A", "B", "C", "D", "E"];
    let height = |name: &str| {
        names
            .iter()
            .position(|n| *n == name)
            .expect("a height of that name")
    };
    let observations = example
        .lines
        .iter()
        .map(|(from, to, rise, length)| Observation {
            row: Row::Linear(vec![(height(from), [-1.0, 0.0]), (height(to), [1.0, 0.0])]),
            value: *rise,
            sigma: length.sqrt(),
        })
        .collect();
    let mut net = levels(5, observations);
    net.stations[0] = Station {
        at: Point { x: 800.0, y: 0.0 },
        held: StationFixity::Fixed,
    };
    let adjusted = adjust_net(&net).expect("a net that stands");
    let printed: BTreeMap<String, f64> = serde_json::from_value(example.computed).expect("heights");
    for (name, printed) in printed {
        let here = adjusted.places[height(&name)].x;
        println!("level {name}: printed {printed}, here {here:.4}");
        assert!((here - printed).abs() < 1.1e-4);
    }
}

#[test]
fn a_net_that_nothing_holds_is_refused_by_station() {
    let mut net = example("GH14.5").net();
    net.observations.retain(|o| o.value < 5000.0);
    let refused = adjust_net(&net).expect_err("a loose net");
    assert!(matches!(refused, NetError::Loose { .. }));
    assert_eq!(
        refused.to_string(),
        "nothing holds station 2 of the net: observe it from another one, or fix it"
    );
}
