//! The order list: what to bring, in units that are sold, for who sells it. No money of ours.

use super::crew::{item, pack};
use super::{PaperInput, caution};
use crate::cautions;
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Set, Table};
use crate::words;

pub fn leaf(told: &PaperInput) -> Leaf {
    let address = &told.job.book.address;
    let opening = format!(
        "This is the order for the roof at {address}, for who brings the material: what, how much in units that are sold, and what is still to be filled in."
    );
    let mut leaf = told.begin(PaperKind::Order, Lang::En, opening);
    match told.job.takeoff {
        Some(takeoff) if !takeoff.order.is_empty() => {
            let mut table = Table::with(&[
                ("Line", Set::Figures),
                ("What", Set::Wide),
                ("Bring", Set::Figures),
                ("Needed", Set::Figures),
                ("Spare", Set::Figures),
                ("Colour, lot", Set::Blank),
                ("Received", Set::Blank),
            ]);
            for (line, number) in takeoff.order.iter().zip(1_u32..) {
                let unit = line.needed.unit().name();
                table.row(vec![
                    number.to_string(),
                    words::capital(&item(&line.item, Lang::En)),
                    format!("{} {}", line.packs, pack(line.pack, line.packs, Lang::En)),
                    format!("{} {unit}", plain(line.needed.amount())),
                    format!("{} {unit}", plain(line.spare.amount())),
                    String::new(),
                    String::new(),
                ]);
            }
            leaf.blocks.push(Block::Table(table));
            leaf.say("Needed is what the roof takes. Spare is what is over of the whole packs, sticks, rolls and sheets; packs that come back unopened are returned.");
        }
        Some(_) | None => {
            leaf.say("No quantities yet: the takeoff wants a closed outline with a pitch for every face. What is not known stands below.");
        }
    }
    leaf.say(told.area(Lang::En));
    leaf.under(
        "Where it goes",
        vec![
            told.plan(Lang::En),
            caution(cautions::wires(Lang::En)),
            caution(cautions::structure(Lang::En)),
        ],
    );
    leaf.under("Not known", told.not_known(Lang::En));
    leaf.under(
        "To be filled in",
        vec![Block::Sign {
            lines: [
                "Day and hour of delivery",
                "Drop place: roof or ground, and where",
                "Who receives it",
                "Substitutions agreed with",
            ]
            .map(str::to_owned)
            .to_vec(),
        }],
    );
    leaf
}

/// One decimal at most, thousands apart.
fn plain(number: f64) -> String {
    let tenths = (number * 10.0).round() / 10.0;
    let text = format!("{tenths:.1}");
    let (whole, tenth) = text.split_once('.').unwrap_or((&text, "0"));
    let mut grouped = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place).is_multiple_of(3) && !grouped.ends_with('-') {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    if tenth == "0" {
        grouped
    } else {
        format!("{grouped}.{tenth}")
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn a_quantity_has_its_thousands_apart_and_no_idle_zero() {
        assert_eq!(plain(1944.0), "1,944");
        assert_eq!(plain(100.04), "100");
        assert_eq!(plain(0.06), "0.1");
        assert_eq!(plain(-1234.5), "-1,234.5");
        assert_eq!(plain(1_234_567.89), "1,234,567.9");
    }
}
