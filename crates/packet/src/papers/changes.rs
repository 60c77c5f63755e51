//! What turned up once the old roof was off: how many sheets under which face, with its photos,
//! what a sheet costs laid, and who agreed.

use super::{PaperInput, caution, money};
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Mark, Picture, Set, Table};
use crate::said;
use crate::words;
use eavebook_core::book::fold::Noted;
use eavebook_core::book::kinds::ChangeFound;
use eavebook_core::units::Money;

pub fn leaf(told: &PaperInput) -> Leaf {
    let address = &told.job.book.address;
    let changes = told.job.book.changes.iter();
    let standing: Vec<_> = changes.filter(|noted| noted.struck.is_none()).collect();
    let opening = format!(
        "This is what was found at {address} once the old roof was off: {}, what each costs laid, and who agreed.",
        words::counted(standing.len(), "change", "changes")
    );
    let mut leaf = told.begin(PaperKind::Changes, Lang::En, opening);
    leaf.under("Changes", vec![Block::Table(table(told))]);
    if standing.iter().any(|noted| !noted.what.consent) {
        leaf.blocks.push(caution(
            "Nobody agreed yet to the changes that say so: they are not in the price that was accepted.",
        ));
    }
    leaf.under("What the price rests on", vec![basis(&standing)]);
    for noted in standing {
        let pictures = pictures(told, &noted.what);
        if !pictures.is_empty() {
            let heading = format!("Photos of change {}", noted.what.number);
            leaf.under(
                &heading,
                vec![Block::Photos {
                    pictures,
                    across: 2,
                }],
            );
        }
    }
    leaf
}

fn table(told: &PaperInput) -> Table {
    let mut table = Table::with(&[
        ("Change", Set::Figures),
        ("Found", Set::Words),
        ("A sheet, laid", Set::Figures),
        ("Amount", Set::Figures),
        ("Agreed", Set::Wide),
    ]);
    let priced = |amount: Option<Money>| amount.map_or_else(|| "not priced".to_owned(), money);
    for noted in &told.job.book.changes {
        let change = &noted.what;
        let place = told
            .parts
            .places
            .get((change.leg as usize).saturating_sub(1));
        let face = place.map_or_else(|| format!("leg {}", change.leg), |place| place.name());
        let sheets = words::counted(change.sheets as usize, "deck sheet", "deck sheets");
        let (mark, agreed) = match &noted.struck {
            Some(struck) => (Mark::Struck, said::taken_out(struck.how).to_owned()),
            None => (Mark::Plain, agreed(noted)),
        };
        table.marked(
            mark,
            vec![
                change.number.to_string(),
                format!("{sheets} under {face}"),
                priced(change.a_sheet()),
                priced(change.amount()),
                agreed,
            ],
        );
    }
    let standing = told.job.book.changes.iter();
    let agreed = standing.filter(|noted| noted.struck.is_none() && noted.what.consent);
    let amounts: Vec<Money> = agreed.filter_map(|noted| noted.what.amount()).collect();
    if amounts.len() > 1 {
        let sum = amounts.into_iter().sum();
        let blank = String::new;
        table.marked(
            Mark::Sum,
            vec![
                blank(),
                "Agreed, together".to_owned(),
                blank(),
                money(sum),
                blank(),
            ],
        );
    }
    table
}

fn agreed(noted: &Noted<ChangeFound>) -> String {
    let when = said::local(&noted.local_time);
    match (noted.what.consent, &noted.what.by) {
        (true, Some(name)) => format!("by {name}, {when}"),
        (true, None) => format!("yes, {when}"),
        (false, _) => "nobody yet".to_owned(),
    }
}

fn basis(standing: &[&Noted<ChangeFound>]) -> Block {
    let unpriced = standing.iter().any(|noted| noted.what.each.is_none());
    let mut items = vec![
        "The price of a sheet is what stood in the rates when the change was booked; a rate that changed since does not change it.".to_owned(),
    ];
    if unpriced {
        items.push(
            "Where a sheet was not priced its rate was blank: it is no gift, it is open."
                .to_owned(),
        );
    }
    Block::List { items }
}

fn pictures(told: &PaperInput, change: &ChangeFound) -> Vec<Picture> {
    let name = change.thing().name();
    let of_it = told
        .photos
        .iter()
        .filter(|photo| photo.shows.as_deref() == Some(name.as_str()));
    of_it.map(super::photos::picture).collect()
}
