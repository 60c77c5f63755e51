//! Five surveys that an independent program for geodetic networks adjusted: its input (`.gkf`) and its
//! output (`.txt`), with feet passed as meters.

use eavebook_core::outline::net::{Net, Observation, Row, Station, StationFixity, adjust_net};
use eavebook_core::survey::Point;
use std::collections::BTreeMap;

/// What the other program printed.
struct Printed {
    places: BTreeMap<String, [f64; 2]>,
    chi2: f64,
    degrees_of_freedom: usize,
    /// Greater half axis of each error ellipse, thousandths.
    ellipses: BTreeMap<String, f64>,
}

/// The value of an attribute, `val="18.3"`.
fn attribute<'a>(line: &'a str, name: &str) -> Option<&'a str> {
    let start = line.find(&format!("{name}=\""))? + name.len() + 2;
    line[start..].split('"').next()
}

fn number(line: &str, name: &str) -> f64 {
    attribute(line, name)
        .and_then(|text| text.parse().ok())
        .expect("a number")
}

/// "270-00-0.0" in radians.
fn dms(text: &str) -> f64 {
    let parts: Vec<f64> = text
        .split('-')
        .map(|p| p.parse().expect("degrees, minutes, seconds"))
        .collect();
    (parts[0] + parts[1] / 60.0 + parts[2] / 3600.0).to_radians()
}

/// Angles there are "left-handed" with x first: azimuths run from x toward y, as directions do here.
fn read_net(gkf: &str) -> (Vec<String>, Net) {
    let mut names: Vec<String> = Vec::new();
    let mut net = Net::default();
    let mut from = 0;
    for line in gkf.lines().map(str::trim) {
        let station = |names: &[String], name: &str| {
            names
                .iter()
                .position(|n| n == name)
                .expect("a point of that name")
        };
        if line.starts_with("<point ") {
            names.push(attribute(line, "id").expect("an id").to_owned());
            net.stations.push(Station {
                at: Point {
                    x: number(line, "x"),
                    y: number(line, "y"),
                },
                held: match attribute(line, "fix") {
                    Some(_) => StationFixity::Fixed,
                    None => StationFixity::Free,
                },
            });
        } else if line.starts_with("<obs ") {
            from = station(&names, attribute(line, "from").expect("a station"));
        } else if line.starts_with("<distance ") || line.starts_with("<azimuth ") {
            let to = station(&names, attribute(line, "to").expect("a target"));
            let spread = number(line, "stdev");
            let distance = line.starts_with("<distance ");
            net.observations.push(Observation {
                row: if distance {
                    Row::Distance { from, to }
                } else {
                    Row::Direction { from, to }
                },
                value: if distance {
                    number(line, "val")
                } else {
                    dms(attribute(line, "val").expect("an angle"))
                },
                sigma: if distance {
                    spread / 1000.0
                } else {
                    (spread / 3600.0).to_radians()
                },
            });
        }
    }
    (names, net)
}

fn read_printed(txt: &str) -> Printed {
    let mut printed = Printed {
        places: BTreeMap::new(),
        chi2: f64::NAN,
        degrees_of_freedom: 0,
        ellipses: BTreeMap::new(),
    };
    let mut section = "";
    let mut point = String::new();
    for line in txt.lines() {
        let words: Vec<&str> = line.split_whitespace().collect();
        if line.starts_with("Adjusted coordinates") {
            section = "coordinates";
        } else if line.starts_with("Mean errors") {
            section = "ellipses";
        } else if line.starts_with("Adjusted observations") {
            section = "";
        }
        if let Some(at) = words.iter().position(|w| *w == "[pvv]") {
            printed.chi2 = words[at + 2].parse().expect("a sum of squares");
        }
        if line.starts_with("Degrees of freedom") {
            printed.degrees_of_freedom = words[4].parse().expect("a count");
        }
        match (section, words.as_slice()) {
            ("coordinates", [name]) if name.starts_with('P') => point = (*name).to_owned(),
            ("coordinates", [_, axis @ ("x" | "y"), _, _, adjusted, _, _]) => {
                let place = printed.places.entry(point.clone()).or_insert([0.0; 2]);
                place[usize::from(*axis == "y")] = adjusted.parse().expect("a coordinate");
            }
            ("ellipses", [name, _, _, a, ..]) if name.starts_with('P') => {
                printed
                    .ellipses
                    .insert((*name).to_owned(), a.parse().expect("a half axis"));
            }
            _ => {}
        }
    }
    printed
}

fn comes_out_as_printed(gkf: &str, txt: &str) {
    let (names, net) = read_net(gkf);
    let printed = read_printed(txt);
    let adjusted = adjust_net(&net).expect("a net that stands");
    let mut furthest = 0.0_f64;
    for (name, place) in &printed.places {
        let station = names.iter().position(|n| n == name).expect("a point");
        let here = adjusted.places[station];
        furthest = furthest.max((here.x - place[0]).hypot(here.y - place[1]));
        let q = &adjusted.covariance;
        let k = 2 * station;
        let (xx, yy, xy) = (q[(k, k)], q[(k + 1, k + 1)], q[(k, k + 1)]);
        let greater = (0.5 * (xx + yy) + (0.5 * (xx - yy)).hypot(xy)).sqrt();
        assert!(
            (greater * 1000.0 - printed.ellipses[name]).abs() < 0.11,
            "{name}: half axis {greater}"
        );
    }
    println!(
        "{} points, furthest {furthest:.5} ft apart, chi2 printed {} here {:.6}",
        printed.places.len(),
        printed.chi2,
        adjusted.chi2
    );
    assert_eq!(printed.places.len(), names.len() - 1);
    assert!(furthest < 0.001);
    assert!((adjusted.chi2 / printed.chi2 - 1.0).abs() < 0.001);
    assert_eq!(adjusted.degrees_of_freedom, printed.degrees_of_freedom);
}

#[test]
fn a_clean_rectangle_comes_out_as_the_other_program_had_it() {
    comes_out_as_printed(
        include_str!("network/case028_R4.gkf"),
        include_str!("network/case028_R4.txt"),
    );
}

#[test]
fn a_clean_l_with_a_tie_comes_out_as_the_other_program_had_it() {
    comes_out_as_printed(
        include_str!("network/case009_L6_tie.gkf"),
        include_str!("network/case009_L6_tie.txt"),
    );
}

#[test]
fn a_u_with_a_slip_of_one_foot_comes_out_as_the_other_program_had_it() {
    comes_out_as_printed(
        include_str!("network/case022_U8_mouth.gkf"),
        include_str!("network/case022_U8_mouth.txt"),
    );
}

#[test]
fn a_rectangle_read_twice_with_a_slip_comes_out_as_the_other_program_had_it() {
    comes_out_as_printed(
        include_str!("network/case032_R4x2.gkf"),
        include_str!("network/case032_R4x2.txt"),
    );
}

#[test]
fn an_l_with_a_slip_of_ten_feet_comes_out_as_the_other_program_had_it() {
    comes_out_as_printed(
        include_str!("network/case034_L6.gkf"),
        include_str!("network/case034_L6.txt"),
    );
}
