//! Roofs whose faces, edges and areas two or more programs that share no code agree on: a wavefront
//! in doubles, a weighted straight skeleton in exact arithmetic, scan lines over planes, closed
//! forms. `cases/NAME.json` is the survey, `expected.json` what it gives.

mod compare;
mod read;

use compare::{Differences, Expected, Story};
use eavebook_core::roof::raise;
use std::collections::BTreeMap;
use std::path::PathBuf;

/// Refusals that the reader of the survey file gives before there is a body at all.
const REFUSED_BY_THE_READER: [&str; 3] = ["not_a_number", "unknown_key", "unknown_end"];

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("oracles/roof")
}

fn expected() -> BTreeMap<String, Expected> {
    let text = std::fs::read_to_string(folder().join("expected.json")).expect("expected.json");
    serde_json::from_str(&text).expect("expected.json")
}

/// How one family came out.
#[derive(Default)]
struct Family {
    hold: usize,
    of: usize,
    worst: Differences,
}

#[test]
fn every_case_of_every_family_holds() {
    let mut families: BTreeMap<String, Family> = BTreeMap::new();
    let mut failures = Vec::new();
    for (name, expected) in expected() {
        let text = std::fs::read_to_string(folder().join(format!("cases/{name}.json")))
            .expect("a case file");
        let (family, told) = match &expected.story {
            Story::Refused { refusal, names } => {
                if REFUSED_BY_THE_READER.contains(&refusal.as_str()) {
                    continue;
                }
                let (bodies, walls) = read::survey(&text);
                let told = raise(&bodies, &walls);
                ("bad", compare::refused(&told, refusal, names))
            }
            Story::Raised(house) => {
                let (bodies, walls) = read::survey(&text);
                let told = match raise(&bodies, &walls) {
                    Ok(roof) => house.compare(&bodies, &roof),
                    Err(refusal) => Err(format!("refused: {refusal}")),
                };
                (expected.family.as_str(), told)
            }
        };
        let family = families.entry(family.to_string()).or_default();
        family.of += 1;
        match told {
            Ok(differences) => {
                family.hold += 1;
                family.worst = family.worst.max(differences);
            }
            Err(why) => failures.push(format!("{name}: {why}")),
        }
    }
    for (name, family) in &families {
        println!(
            "{name}: {} of {} hold, largest error {:.6} sq ft a face, {:.6} ft a kind of edge",
            family.hold, family.of, family.worst.area, family.worst.edge
        );
    }
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}
