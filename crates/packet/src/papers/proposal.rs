//! The proposal: what would be done, for how much, what is not in it and what nobody could know.
//! The owner sees what is to be paid, never what it costs the firm nor what is earned on it.

use super::crew::item;
use super::{PaperInput, caution, money};
use crate::cautions;
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Mark, Set, Table};
use crate::words;
use eavebook_core::price::{NotPriced, Price};
use eavebook_core::settings::Origin;
use eavebook_core::takeoff::{OrderItem, Ranged, Takeoff, TakeoffCaution, Unlisted};

pub fn leaf(told: &PaperInput) -> Leaf {
    let address = &told.job.book.address;
    let opening = format!(
        "This is a proposal for the roof at {address}, for its owner: what would be done, for how much, and what nobody could know before the work begins."
    );
    let mut leaf = told.begin(PaperKind::Proposal, Lang::En, opening);
    if told.job.price.is_some() && told.job.rates_from == Origin::Demo {
        leaf.blocks.push(caution(
            "Worked out with the invented rates that come with the program: no figure of money here is an offer. Put in the firm's own rates and make it again.",
        ));
    }
    leaf.blocks.push(told.plan(Lang::En));
    leaf.say(told.area(Lang::En));
    leaf.blocks.extend(solid(told));
    leaf.under("What would be done", scope(told));
    if let Some(price) = told.job.price {
        leaf.under("What it comes to", amounts(price));
        leaf.under("Not in it", not_priced(told, price));
    } else {
        leaf.under(
            "What it comes to",
            vec![Block::Text {
                text: "Nothing is worked out yet: what is not known stands below.".to_owned(),
            }],
        );
    }
    leaf.under("Not known", told.not_known(Lang::En));
    leaf.under("Faces", told.faces(Lang::En).into_iter().collect());
    leaf.under(
        "Edges by kind",
        told.lengths_by_kind(Lang::En).into_iter().collect(),
    );
    leaf.under(
        "What stands out of the roof",
        told.items(Lang::En).into_iter().collect(),
    );
    let mut apart = vec![
        caution(cautions::structure(Lang::En)),
        caution(
            "What the rules of building ask for here is decided by the permit office: check with the permit office before the work begins.",
        ),
        caution(cautions::insurance()),
    ];
    apart.extend(
        cautions::of_job(told.job, Lang::En)
            .into_iter()
            .map(caution),
    );
    let takeoff = told.job.takeoff.map(|takeoff| takeoff.cautions.as_slice());
    // That the rates are invented stands at the top, in words for the owner; what nobody measured
    // stands under what is not known.
    let all = takeoff.unwrap_or_default().iter();
    let others = all.filter(|one| match one {
        TakeoffCaution::DemoRates
        | TakeoffCaution::OverhangNotGiven { .. }
        | TakeoffCaution::LayersNotGiven => false,
        TakeoffCaution::DemoCode
        | TakeoffCaution::Loads
        | TakeoffCaution::OldCode { .. }
        | TakeoffCaution::CodeReadLater { .. }
        | TakeoffCaution::TooFlat { .. } => true,
    });
    apart.extend(others.map(|one| caution(one.to_string())));
    leaf.under("To keep in mind", apart);
    leaf.under(
        "Agreed",
        vec![Block::Sign {
            lines: [
                "This proposal holds until",
                "For the owner: name, date, who may say yes",
                "For the firm: name, date",
            ]
            .map(str::to_owned)
            .to_vec(),
        }],
    );
    leaf
}

/// The roof as a solid, where there is one: a picture for who reads no plan.
fn solid(told: &PaperInput) -> Option<Block> {
    let faces: Vec<String> = told
        .parts
        .faces
        .iter()
        .map(|named| words::face(named, Lang::En))
        .collect();
    (!faces.is_empty()).then(|| Block::Solid {
        alt: format!(
            "The roof as a solid over the front's right corner, not to be measured. Its faces are {}; the tables give their figures.",
            words::listed(&faces, Lang::En)
        ),
    })
}

/// What would be done, from the lines of the order.
fn scope(told: &PaperInput) -> Vec<Block> {
    let Some(takeoff) = told.job.takeoff else {
        return Vec::new();
    };
    let mut items = vec![removal(told)];
    let has = |wanted: fn(&OrderItem) -> bool| takeoff.order.iter().any(|line| wanted(&line.item));
    let squares = format!("{:.1} squares", takeoff.net_area.in_squares());
    if has(|item| *item == OrderItem::IceBarrier) {
        let valleys = if told.has(eavebook_core::roof::EdgeKind::Valley) {
            "along the eaves and in the valleys"
        } else {
            "along the eaves"
        };
        items.push(format!("Lay a barrier against ice {valleys}."));
    }
    if has(|item| *item == OrderItem::Underlayment) {
        items.push("Lay underlayment over the whole roof.".to_owned());
    }
    let named = |wanted: &[OrderItem]| -> Vec<String> {
        let there = takeoff
            .order
            .iter()
            .filter(|line| wanted.contains(&line.item));
        there.map(|line| item(&line.item, Lang::En)).collect()
    };
    let metal = named(&[
        OrderItem::EaveEdgeMetal,
        OrderItem::RakeEdgeMetal,
        OrderItem::ValleyMetal,
        OrderItem::StepFlashing,
        OrderItem::ApronFlashing,
        OrderItem::KickOut,
    ]);
    if !metal.is_empty() {
        items.push(format!(
            "Put on new metal: {}.",
            words::listed(&metal, Lang::En)
        ));
    }
    let laid = named(&[
        OrderItem::Starter,
        OrderItem::Field,
        OrderItem::Cap,
        OrderItem::RidgeVent,
    ]);
    if !laid.is_empty() {
        items.push(format!(
            "Lay {squares}: {}.",
            words::listed(&laid, Lang::En)
        ));
    }
    items.extend(boots(takeoff));
    if takeoff.deck_overlay {
        items.push(
            "Lay sheets over the whole deck, since nails would miss between its planks.".to_owned(),
        );
    }
    items.push("Sweep the ground for nails and leave the site as it was found.".to_owned());
    vec![Block::List { items }]
}

fn removal(told: &PaperInput) -> String {
    let survey = told.job.laid.survey.as_ref();
    let layers = survey.and_then(|survey| survey.covering.as_ref()?.layers);
    match layers {
        Some(layers) => format!(
            "Take off and haul away the covering that lies there: {}.",
            words::counted(layers as usize, "layer", "layers")
        ),
        None => {
            "Take off and haul away the covering that lies there; how many layers is not known."
                .to_owned()
        }
    }
}

fn boots(takeoff: &Takeoff) -> Option<String> {
    let boots = takeoff
        .order
        .iter()
        .filter(|line| matches!(line.item, OrderItem::Boot { .. }));
    let named: Vec<String> = boots
        .map(|line| format!("{} {}", line.packs, line.item))
        .collect();
    (!named.is_empty()).then(|| format!("Put on new boots: {}.", words::listed(&named, Lang::En)))
}

/// The total with what would change it. No line of it, since a line is the firm's cost.
fn amounts(price: &Price) -> Vec<Block> {
    let mut table = Table::with(&[("", Set::Wide), ("Amount", Set::Figures)]);
    table.columns[0].head = "What".to_owned();
    table.marked(Mark::Sum, vec!["Total".to_owned(), money(price.total)]);
    if price.low != price.high {
        table.row(vec![
            "If the roof is as small as it is one time in ten".to_owned(),
            money(price.low),
        ]);
        table.row(vec![
            "If the roof is as large as it is one time in ten".to_owned(),
            money(price.high),
        ]);
    }
    let others = price
        .unknowns
        .iter()
        .filter(|unknown| unknown.of != Ranged::Area);
    for unknown in others {
        table.row(vec![
            format!("{}: {}", words::capital(unknown.name()), unknown.words()),
            format!("{} to {}", money(unknown.low), money(unknown.high)),
        ]);
    }
    vec![Block::Table(table)]
}

/// What has work and is in no amount.
fn not_priced(told: &PaperInput, price: &Price) -> Vec<Block> {
    let mut items: Vec<String> = price
        .not_priced
        .iter()
        .map(|one| without(told, one))
        .collect();
    items.push("Anything that is not named above.".to_owned());
    vec![Block::List { items }]
}

fn without(told: &PaperInput, one: &NotPriced) -> String {
    match one {
        NotPriced::Line { item, .. } => {
            format!("{}: not priced.", words::capital(&item.to_string()))
        }
        NotPriced::Square => "The square of roof: not priced.".to_owned(),
        NotPriced::TooFlat { leg, area, .. } => {
            let place = told.parts.places.get(*leg).map(|place| place.name());
            format!(
                "Face {}, {}: too flat for shingles, its covering is not priced.",
                place.unwrap_or_default(),
                words::area(*area, Lang::En)
            )
        }
        NotPriced::VentShort { area } => {
            let sqin = area.value();
            format!("Vents near the ridge: {sqin:.0} sq in of opening lack, not priced.")
        }
        NotPriced::Unlisted(Unlisted::Saddle { .. }) => {
            "A saddle behind the wide chimney: not priced.".to_owned()
        }
        NotPriced::Unlisted(Unlisted::Penetrations { what, penetrations }) => {
            let count = penetrations.len();
            format!("{}: {count} counted, not priced.", words::capital(what))
        }
    }
}
