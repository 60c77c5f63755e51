//! How many of the published figures the kernels are asked for, and why not the rest.

use crate::{advice, checks, factors, outlines, packs, roofs};
use std::collections::BTreeMap;

/// Why entries are not asked for yet, by the beginning of their ids.
const NOT_YET: &[(&[&str], &str)] = &[
    (
        &["WX-12", "WX-13"],
        "squares rounded up before they are packed: pieces are laid and counted, and only packs are rounded",
    ),
    (
        &["WS-01", "WS-02"],
        "waste as others saw it: ours is counted piece by piece for each roof",
    ),
    (
        &["PK-02", "PK-04", "PK-05", "PK-06", "PK-07", "PK-08"],
        "what packs hold: figures of the firm's rates, not worked out",
    ),
    (
        &["PK-12", "PK-13", "PK-14", "PK-15"],
        "boards of a deck: sheets are ordered, boards are not",
    ),
    (
        &["PK-16", "PK-17"],
        "nails that land in gaps: a wide gap is said in a caution, not counted",
    ),
    (&["PK-18"], "laps of felt are in what a roll covers"),
    (&["WX-21"], "lumber by the board foot is not counted"),
    (
        &["PS-01"],
        "the old pitch, rise over span, is not said anywhere",
    ),
    (&["TR-03"], "the wall under a gable is not measured"),
    (
        &["CD-", "CK-"],
        "limits of a model code that no figure of ours depends on: fastening, linings, saddles, upper share of vents as a range",
    ),
    (
        &["SA-"],
        "limits for people at work: said in cautions, not computed",
    ),
    (
        &["WT-"],
        "weights and densities as ranges: figures of the firm's rates, not worked out",
    ),
    (
        &["TP-", "TC-"],
        "tape corrections: a steel tape under tension is not modeled, sighting an eave from the ground is less sure by far",
    ),
    (
        &["IN-01"],
        "an outside study of phones, not a figure of ours",
    ),
    (
        &["GL-01", "GL-02", "GL-03"],
        "rules for counting living area: only its total is compared",
    ),
    (
        &["RG-"],
        "limits of pipes, chimneys and eaves: the code profile has no rows for them",
    ),
];

fn touched() -> Vec<&'static str> {
    [
        factors::TOUCHED,
        roofs::TOUCHED,
        advice::TOUCHED,
        advice::IN_PARTS,
        roofs::IN_WORDS,
        outlines::TOUCHED,
        packs::TOUCHED,
        packs::IN_PARTS,
    ]
    .concat()
}

#[test]
fn every_published_figure_is_asked_for_or_said_why_not() {
    let touched = touched();
    let all = checks::all();
    let mut waiting: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for check in all
        .iter()
        .filter(|check| !touched.contains(&check.id.as_str()))
    {
        let why = NOT_YET
            .iter()
            .find(|(ids, _)| ids.iter().any(|id| check.id.starts_with(id)))
            .unwrap_or_else(|| panic!("{} is neither asked for nor said why not", check.id));
        waiting.entry(why.1).or_default().push(&check.id);
    }
    println!(
        "published figures: {} of {} asked of the kernels",
        touched.len(),
        all.len()
    );
    for (why, ids) in &waiting {
        println!("  {} not: {why} ({})", ids.len(), ids.join(" "));
    }
    let listed: usize = waiting.values().map(Vec::len).sum();
    assert_eq!(
        touched.len() + listed,
        all.len(),
        "an entry is asked for twice"
    );
}

#[test]
fn no_reason_stands_for_an_entry_that_is_asked_for() {
    for id in touched() {
        let stale = NOT_YET
            .iter()
            .flat_map(|(ids, _)| ids.iter())
            .find(|it| **it == id);
        assert_eq!(stale, None, "{id} is asked for: take its reason out");
    }
}
