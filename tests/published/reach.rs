//! How many of the published figures the kernels are asked for, and why not the rest.

use crate::{advice, checks, factors, outlines, roofs};
use std::collections::BTreeMap;

/// Why entries are not asked for yet, by the beginning of their ids.
const NOT_YET: &[(&[&str], &str)] = &[
    (
        &[
            "WX-12", "WX-13", "WX-14", "WX-16", "WX-17", "WX-18", "WX-19", "WX-20", "WX-22",
            "WX-23", "WX-24", "WS-", "PK-",
        ],
        "packs, rolls, pieces and waste: there is no order list yet",
    ),
    (&["WX-21"], "lumber by the board foot is not counted"),
    (
        &["PS-01"],
        "the old pitch, rise over span, is not said anywhere",
    ),
    (&["TR-03"], "the wall under a gable is not measured"),
    (
        &["CD-", "CK-"],
        "limits of a model code beyond the cautions: there is no code profile yet",
    ),
    (
        &["SA-"],
        "limits for people at work: said in cautions, not computed",
    ),
    (&["WT-"], "weights: there is no tear-off load yet"),
    (
        &["TP-", "TC-"],
        "tape corrections: a steel tape under tension is not modelled, sighting an eave from the ground is less sure by far",
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
        "limits of pipes, chimneys and eaves: there is no code profile yet",
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
