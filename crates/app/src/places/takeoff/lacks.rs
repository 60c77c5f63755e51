//! What nobody knows and what nobody priced, in words, with what it costs and where it is said.

use crate::names;
use crate::parts::job_rates::JobRates;
use crate::parts::solved_job::SolvedJob;
use crate::parts::{cautions, roof};
use crate::places::takeoff::reply::{LackView, ThingLink};
use crate::sentence::{Sentence, sentence};
use eavebook_core::book::kinds::Thing;
use eavebook_core::book::{counted, on_roof};
use eavebook_core::check::Caution;
use eavebook_core::price::{NotPriced, Price};
use eavebook_core::settled::RoofUnavailable;
use eavebook_core::solve::{Priced, Solved};
use eavebook_core::takeoff::{Cause, Ranged, TakeoffCaution, Unlisted};

fn lack(code: &str, words: impl Into<String>, opens: Option<ThingLink>) -> LackView {
    LackView {
        words: sentence(code, words),
        costs: None,
        opens,
        rate: None,
    }
}

fn link(thing: &Thing) -> Option<ThingLink> {
    let name = names::name(thing);
    Some(ThingLink {
        title: names::capital(&name),
        thing: name,
    })
}

fn face(seen: &SolvedJob, leg: usize) -> Option<ThingLink> {
    Some(ThingLink {
        thing: format!("face {}", leg + 1),
        title: roof::face_names(seen).get(leg)?.clone(),
    })
}

/// Why there is no roof to take off.
#[must_use]
pub fn no_roof(seen: &SolvedJob, solved: Option<&Solved>) -> LackView {
    let nothing =
        "No closed outline. Walk round the house and read its legs: then it is taken off.";
    let Some(solved) = solved else {
        return lack("no_outline", nothing, None);
    };
    let Err(why) = &solved.roof else {
        return lack(
            "no_takeoff",
            "This roof cannot be taken off. Look at its legs.",
            None,
        );
    };
    let said = cautions::said(&Caution::RoofUnavailable(why.clone()));
    let opens = match why {
        RoofUnavailable::RiseUnknown { leg, .. } => face(seen, *leg),
        RoofUnavailable::OutlineOpen { leg, .. } => u32::try_from(leg + 1)
            .ok()
            .and_then(|leg| link(&Thing::Leg { leg })),
        RoofUnavailable::NoBodies
        | RoofUnavailable::OutlineAmiss(_)
        | RoofUnavailable::Refused(_) => None,
    };
    LackView {
        words: said,
        costs: None,
        opens,
        rate: None,
    }
}

/// What nobody knows: layers, deck, sizes, overhangs, the height of the eaves.
#[must_use]
pub fn not_known(seen: &SolvedJob, priced: &Priced) -> Vec<LackView> {
    let mut lacks: Vec<LackView> = priced
        .price
        .unknowns
        .iter()
        .map(|unknown| {
            let opens = match unknown.of {
                Ranged::Layers => link(&Thing::Layers),
                Ranged::Deck => link(&Thing::Deck),
                Ranged::Area => None,
            };
            let words = format!("{}.", names::capital(unknown.words()));
            LackView {
                costs: Some(format!(
                    "{} to {}",
                    unknown.low.words(),
                    unknown.high.words()
                )),
                ..lack(unknown.name(), words, opens)
            }
        })
        .collect();
    for thing in on_roof::unsized_items(seen.book) {
        let title = names::capital(&names::name(&thing));
        let words = format!("{title} has no size: nothing is ordered for it.");
        lacks.push(lack("size_unread", words, link(&thing)));
    }
    let cautions = priced.takeoff.cautions.iter();
    let bare: Vec<usize> = cautions
        .filter_map(|caution| {
            if let TakeoffCaution::OverhangNotGiven { leg, .. } = caution {
                Some(*leg)
            } else {
                None
            }
        })
        .collect();
    if let Some(first) = bare.first() {
        let legs: Vec<String> = bare.iter().map(|leg| (leg + 1).to_string()).collect();
        let s = if bare.len() == 1 { "" } else { "s" };
        let words = format!(
            "Nobody read the overhang at leg{s} {}: the ice barrier there is counted with that of \
             the rates.",
            names::listed(&legs)
        );
        lacks.push(lack("overhang_unread", words, face(seen, *first)));
    }
    if counted::measured(seen.book, &Thing::EaveHeight).is_none() {
        let words = "Nobody read how high the eaves lie: hours are counted as on a low house.";
        lacks.push(lack("eave_height_unread", words, link(&Thing::EaveHeight)));
    }
    lacks
}

/// What has work and no price.
#[must_use]
pub fn not_priced(seen: &SolvedJob, rates: &JobRates, price: &Price) -> Vec<LackView> {
    let lacks = price.not_priced.iter().map(|what| {
        let opens = match what {
            NotPriced::TooFlat { leg, .. } => face(seen, *leg),
            NotPriced::Unlisted(Unlisted::Saddle { penetration }) => item(seen, *penetration),
            NotPriced::Unlisted(Unlisted::Penetrations { penetrations, .. }) => {
                penetrations.first().and_then(|first| item(seen, *first))
            }
            NotPriced::Line { .. } | NotPriced::Square | NotPriced::VentShort { .. } => None,
        };
        let words = match what {
            NotPriced::TooFlat { leg, area, .. } => format!(
                "Not priced: {} over leg {}, too flat for shingles by the code profile. Price what \
                 goes there.",
                area.words(),
                leg + 1
            ),
            NotPriced::Line { .. }
            | NotPriced::Square
            | NotPriced::VentShort { .. }
            | NotPriced::Unlisted(_) => format!("Not priced: {what}"),
        };
        let key = match what {
            NotPriced::Line { line, .. } => price.lines.get(*line).and_then(|line| {
                let keys = line.because.iter().filter_map(|cause| {
                    if let Cause::Rate(key) = cause {
                        Some(key.as_str())
                    } else {
                        None
                    }
                });
                keys.map(|key| rates.view(key))
                    .find(|rate| rate.value.is_empty())
            }),
            NotPriced::Square => Some(rates.view("price.square_price")),
            NotPriced::TooFlat { .. } | NotPriced::VentShort { .. } | NotPriced::Unlisted(_) => {
                None
            }
        };
        LackView {
            rate: key,
            ..lack(what.code(), words, opens)
        }
    });
    lacks.collect()
}

fn item(seen: &SolvedJob, penetration: usize) -> Option<ThingLink> {
    let items = on_roof::penetrations(seen.book);
    link(&items.get(penetration)?.0)
}

/// What to look at before any of it is used; what lacks stands elsewhere.
#[must_use]
pub fn cautions_of(rates: &JobRates, priced: &Priced) -> Vec<Sentence> {
    let mut said = Vec::new();
    if rates.any_invented() {
        said.push(sentence(
            "demo_rates",
            "Rates that came with the program are invented. Give your own before anybody sees a \
             price.",
        ));
    }
    said.push(sentence(
        "structure",
        "Sagging, cracked or spongy framing, heavier roofing, or stacked loads need a qualified \
         person's word, not this sum.",
    ));
    let others = priced
        .takeoff
        .cautions
        .iter()
        .filter_map(|caution| match caution {
            TakeoffCaution::OverhangNotGiven { .. }
            | TakeoffCaution::LayersNotGiven
            | TakeoffCaution::TooFlat { .. }
            | TakeoffCaution::DemoRates => None,
            TakeoffCaution::DemoCode
            | TakeoffCaution::Loads
            | TakeoffCaution::OldCode { .. }
            | TakeoffCaution::CodeReadLater { .. } => {
                Some(sentence(caution.code(), caution.to_string()))
            }
        });
    said.extend(others);
    said
}
