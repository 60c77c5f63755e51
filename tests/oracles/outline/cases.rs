//! Sixty invented surveys with truth, and what one other solver made of them.

use super::body::{area, body, reading};
use eavebook_core::outline::{Outline, adjust};
use eavebook_core::survey::{Body, Span};
use serde::Deserialize;
use std::collections::BTreeMap;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    id: String,
    config: String,
    sketch: CaseSketch,
    observations: Vec<CaseObservation>,
    injected: Option<Injected>,
    reference: Reference,
}

#[derive(Deserialize)]
struct CaseSketch {
    edge_directions_deg: Vec<f64>,
    direction_sigma_deg: f64,
}

#[derive(Deserialize)]
struct CaseObservation {
    id: String,
    #[serde(rename = "type")]
    kind: String,
    from: Option<usize>,
    to: Option<usize>,
    axis_deg: Option<f64>,
    value_ft: Option<f64>,
    sigma_ft: Option<f64>,
    raw: Option<String>,
}

#[derive(Deserialize)]
struct Injected {
    observation: String,
    kind: String,
    bias_ft: f64,
}

#[derive(Deserialize)]
struct Reference {
    vertices_ft: Vec<[f64; 2]>,
    area_sqft: f64,
    chi2: f64,
    dof: usize,
    redundancy: BTreeMap<String, f64>,
}

fn read_cases() -> Vec<Case> {
    let cases: Cases =
        serde_json::from_str(include_str!("cases.json")).expect("cases.json is as written");
    cases.cases
}

impl Case {
    /// Only the sketch and what was observed; none where an area of record is among it, which a
    /// survey of an outline does not hold.
    fn survey(&self) -> Option<Body> {
        let directions = &self.sketch.edge_directions_deg;
        let legs = directions.len();
        let turns: Vec<f64> = (0..legs)
            .map(|leg| {
                let turn = directions[(leg + 1) % legs] - directions[leg];
                (turn + 540.0).rem_euclid(360.0) - 180.0
            })
            .collect();
        let readings = self
            .observations
            .iter()
            .map(|o| {
                let (from, to) = (o.from?, o.to?);
                let span = match o.kind.as_str() {
                    "edge" => Span::Leg(from),
                    "tie" => Span::Tie(from, to),
                    _ => {
                        let axis = o.axis_deg?;
                        Span::Overall {
                            from,
                            to,
                            along_leg: directions.iter().position(|d| (d - axis).abs() < 1e-9)?,
                        }
                    }
                };
                Some(reading(&o.id, span, o.value_ft?, o.sigma_ft, o.raw.clone()))
            })
            .collect::<Option<Vec<_>>>()?;
        let turn_sigma = self.sketch.direction_sigma_deg * std::f64::consts::SQRT_2;
        Some(body(&turns, turn_sigma, readings))
    }
}

fn corners(outline: &Outline) -> Vec<[f64; 2]> {
    outline
        .corners
        .iter()
        .map(|c| c.map_or([f64::NAN; 2], |c| [c.at.x, c.at.y]))
        .collect()
}

/// The data are printed to four decimals, spreads too: a large slip magnifies the rounding.
fn rounding(case: &Case) -> f64 {
    0.001 + 1e-4 * case.injected.as_ref().map_or(0.0, |i| i.bias_ft.abs())
}

#[test]
fn every_case_comes_out_as_the_other_solver_had_it() {
    let mut compared = 0;
    for case in read_cases() {
        let Some(survey) = case.survey() else {
            continue;
        };
        compared += 1;
        let outline = adjust(&survey).unwrap();
        let reference = &case.reference;
        let id = &case.id;
        for (corner, (ours, theirs)) in corners(&outline)
            .iter()
            .zip(&reference.vertices_ft)
            .enumerate()
        {
            let apart = (ours[0] - theirs[0]).hypot(ours[1] - theirs[1]);
            assert!(
                apart < rounding(&case),
                "{id} corner {corner}: {apart} ft apart"
            );
        }
        let chi2_apart = (outline.chi2 - reference.chi2).abs();
        assert!(
            chi2_apart < 0.001 * reference.chi2 + 0.003,
            "{id} chi2 {}",
            outline.chi2
        );
        assert_eq!(outline.degrees_of_freedom, reference.dof, "{id}");
        let ours = area(&corners(&outline));
        assert!(
            (ours / reference.area_sqft - 1.0).abs() < 2e-4,
            "{id} area {ours}"
        );
        for (reading, figure) in survey.readings.iter().zip(&outline.readings) {
            let theirs = reference.redundancy[&reading.id];
            assert!(
                (figure.redundancy - theirs).abs() < 0.003,
                "{id} {} redundancy {}",
                reading.id,
                figure.redundancy
            );
            assert_eq!(figure.is_unproved(), theirs < 0.05, "{id} {}", reading.id);
        }
    }
    assert_eq!(compared, 51);
}

#[test]
fn slips_of_the_cases_are_found_and_clean_ones_left_alone() {
    let (mut big, mut found, mut held, mut clean, mut alarmed) = (0, 0, 0, 0, 0);
    for case in read_cases() {
        let Some(survey) = case.survey() else {
            continue;
        };
        let outline = adjust(&survey).unwrap();
        let named: Vec<&str> = outline
            .suspects
            .named
            .iter()
            .map(|s| survey.readings[s.reading].id.as_str())
            .collect();
        match &case.injected {
            None => {
                clean += 1;
                alarmed += usize::from(!named.is_empty());
                if !named.is_empty() {
                    println!("{} {:14} clean -> {named:?}", case.id, case.config);
                }
            }
            Some(slip) => {
                let checked = outline.readings.iter().all(|figure| !figure.is_unproved());
                if slip.bias_ft.abs() >= 0.9 && checked {
                    big += 1;
                    found += usize::from(!named.is_empty());
                    held += usize::from(named.contains(&slip.observation.as_str()));
                }
                println!(
                    "{} {:14} {:9} {:6.2} ft in {:3} -> {named:?}",
                    case.id, case.config, slip.kind, slip.bias_ft, slip.observation
                );
            }
        }
    }
    println!("{big} big slips where every reading is checked: {found} found, {held} in the set");
    println!("{clean} clean: {alarmed} alarmed");
    assert!(alarmed <= 1);
    assert!(held == found, "a set without the culprit");
    assert!(found * 100 >= big * 78, "{found} of {big}");
}
