//! The permit sheet: what the permit office asks for, beside the notes that somebody read. The
//! notes are no law.

use super::{PaperInput, caution};
use crate::cautions;
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Set, Table};
use eavebook_core::settings::Code;

pub fn leaf(told: &PaperInput) -> Leaf {
    let address = &told.job.book.address;
    let opening = format!(
        "This is the roof at {address} for the permit office: what would be done, how large and how steep it is, what it lies on, and which notes of the rules were read."
    );
    let mut leaf = told.begin(PaperKind::Permit, Lang::En, opening);
    leaf.blocks.push(told.plan(Lang::En));
    leaf.say(told.area(Lang::En));
    leaf.under("Faces", told.faces(Lang::En).into_iter().collect());
    leaf.under(
        "Edges by kind",
        told.lengths_by_kind(Lang::En).into_iter().collect(),
    );
    leaf.under(
        "Deck and layers",
        vec![Block::List {
            items: told.deck_and_layers(Lang::En),
        }],
    );
    leaf.under(
        "What stands out of the roof",
        told.items(Lang::En).into_iter().collect(),
    );
    let mut rules = vec![caution(cautions::permit_office())];
    if let Some(takeoff) = told.job.takeoff {
        let air = &takeoff.ventilation;
        let mut items = vec![format!(
            "Air under the roof: {:.0} sq ft in plan at 1 to {:.0} ask for {:.0} sq in of opening, {:.0} of it near the ridge; ridge vents give {:.0}, {:.0} lack.",
            air.plan_area.in_square_feet(),
            air.ratio.value(),
            air.required.value(),
            air.upper.value(),
            air.ridge_vent.value(),
            air.upper_short.value()
        )];
        items.push(if takeoff.ice_barrier.is_empty() {
            "Barrier against ice: none in the notes.".to_owned()
        } else {
            let feet: f64 = takeoff
                .ice_barrier
                .iter()
                .map(|row| row.length.in_feet())
                .sum();
            format!("Barrier against ice along the eaves: {feet:.0} ft of it in all.")
        });
        rules.push(Block::List { items });
    }
    if let Some(code) = told.job.code {
        rules.push(notes(code));
    }
    leaf.under("Notes of the rules", rules);
    leaf.under("Not known", told.not_known(Lang::En));
    leaf
}

/// The notes row by row, each with its source, its day and who read it.
fn notes(code: &Code) -> Block {
    let mut table = Table::with(&[
        ("Row", Set::Words),
        ("As it was read", Set::Wide),
        ("Source", Set::Wide),
    ]);
    let source = format!(
        "{}; {}, read {} by {}",
        code.place, code.source, code.date, code.read_by
    );
    let ice = &code.ice_barrier;
    let rows = [
        (
            "Barrier against ice",
            if ice.required {
                format!(
                    "{} in past the wall line; at least {} in up the slope from {} in 12",
                    ice.inside_in.value(),
                    ice.steep_in.value(),
                    ice.steep_from_pitch.in_12()
                )
            } else {
                "not asked for".to_owned()
            },
        ),
        (
            "Underlayment",
            format!(
                "half-lapped below {} in 12",
                code.underlayment.half_lap_below_pitch.in_12()
            ),
        ),
        (
            "Least pitch",
            format!(
                "no shingles below {} in 12",
                code.underlayment.least_pitch.in_12()
            ),
        ),
        (
            "Ventilation",
            format!(
                "1 to {}, {} % of it near the ridge",
                code.ventilation.ratio.value(),
                code.ventilation.upper_percent.value()
            ),
        ),
        (
            "Layers",
            format!("at most {} in the end", code.recover.most_layers),
        ),
    ];
    for (row, read) in rows {
        table.row(vec![row.to_owned(), read, source.clone()]);
    }
    Block::Table(table)
}
