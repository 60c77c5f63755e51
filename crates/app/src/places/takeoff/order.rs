//! Squares, waste and the order list: each line with its formula, its packs and what is over.

use crate::figures::{counted, number, whole};
use crate::names;
use crate::parts::reply::Figure;
use crate::places::takeoff::because::{Made, Traces};
use crate::places::takeoff::reply::{TakeoffLine, TakeoffPart};
use crate::sentence::sentence;
use eavebook_core::settings::BillingBy;
use eavebook_core::takeoff::{Cause, Courses, OrderItem, OrderLine, Takeoff};
use eavebook_core::units::{self, Area};

/// A line with nothing but its figure; what made it is added.
#[must_use]
pub fn line(key: &str, name: &str, words: String, formula: String, made: Made) -> TakeoffLine {
    TakeoffLine {
        key: key.to_owned(),
        name: name.to_owned(),
        value: Figure {
            words,
            give_or_take: None,
        },
        spare: None,
        word: None,
        step: None,
        formula,
        rates: made.rates,
        notes: made.notes,
        things: made.things,
        lines: Vec::new(),
    }
}

/// How much roof there is, and how much of what is laid on it is cut off.
#[must_use]
pub fn squares(
    traces: &Traces,
    takeoff: &Takeoff,
    area: Option<units::Figure<Area>>,
) -> TakeoffPart {
    let causes: Vec<Cause> = takeoff
        .courses
        .iter()
        .map(|courses| Cause::Face(courses.face))
        .collect();
    let laid = &takeoff.laid;
    let field = takeoff
        .order
        .iter()
        .find(|line| line.item == OrderItem::Field);
    let of_field = field.map_or(&[][..], |line| &line.because);
    let to_order = line(
        "to order",
        "To order",
        squares_of(takeoff.billing.ordered),
        "The packs of field pieces in the order list, as squares at their exposure.".to_owned(),
        traces.made(of_field),
    );
    let mut net = line(
        "net area",
        "Area to cover",
        takeoff.net_area.words(),
        "The faces of the roof, less the openings that are cut out of them. The ± is one standard \
         deviation."
            .to_owned(),
        traces.made(&causes),
    );
    net.value.give_or_take = area.map(|area| area.give_or_take());
    let mut waste = line(
        "waste",
        "Cut waste as laid",
        format!("{} %", number(laid.waste.value(), 1)),
        format!(
            "{} taken from packs for {} of roof, at their exposure; {} laid again. Starter, cap and \
             metal are not in it.",
            whole(laid.new_pieces + laid.valley_pieces, "piece"),
            takeoff.net_area.words(),
            whole(laid.reused, "off-cut"),
        ),
        traces.made(of_field),
    );
    waste.lines = takeoff
        .courses
        .iter()
        .map(|courses| face(traces, courses))
        .collect();
    let ordered = line(
        "ordered waste",
        "Waste as ordered",
        format!("{} %", number(laid.ordered_waste.value(), 1)),
        "The same with whole packs and the margin.".to_owned(),
        traces.made(of_field),
    );
    TakeoffPart {
        name: "Squares".to_owned(),
        words: None,
        loads: None,
        lines: vec![to_order, net, waste, ordered],
    }
}

fn squares_of(area: Area) -> String {
    counted(area.in_squares(), 2, "square")
}

fn face(traces: &Traces, courses: &Courses) -> TakeoffLine {
    let made = traces.made(&[Cause::Face(courses.face)]);
    let name = made
        .things
        .first()
        .map_or("Face", |thing| &thing.title)
        .to_owned();
    #[expect(
        clippy::cast_precision_loss,
        reason = "a count of courses, far below 2^53"
    )]
    let count = courses.courses as f64;
    line(
        &format!("face {}", courses.face),
        &name,
        format!("{} %", number(courses.waste.value(), 1)),
        format!(
            "{} over {}: {} taken from packs, {} laid again.",
            counted(count, 0, "course"),
            courses.net_area.words(),
            whole(courses.new_pieces, "piece"),
            whole(courses.reused, "off-cut"),
        ),
        made,
    )
}

/// What to buy.
#[must_use]
pub fn order(traces: &Traces, takeoff: &Takeoff) -> TakeoffPart {
    let lines = takeoff.order.iter().map(|ordered| {
        let name = ordered.item.to_string();
        let mut shown = line(
            &name,
            &names::capital(&name),
            whole(ordered.packs, ordered.pack.name()),
            formula(ordered, takeoff),
            traces.made(&ordered.because),
        );
        shown.spare = Some(spare(ordered));
        shown
    });
    TakeoffPart {
        name: "Order list".to_owned(),
        words: Some(sentence(
            "order_list",
            "Whole packs. What rounding leaves over stands beside each.",
        )),
        loads: None,
        lines: lines.collect(),
    }
}

/// What rounding to whole packs leaves over, in packs; the margin is not in it.
fn spare(line: &OrderLine) -> String {
    #[expect(
        clippy::cast_precision_loss,
        reason = "counts of goods, far below 2^53"
    )]
    let rounded = line.packs as f64 - exactly(line);
    if number(rounded, 1) == "0" {
        "nothing over".to_owned()
    } else {
        format!("{} {} over", number(rounded, 1), line.pack.name())
    }
}

/// Packs before they are rounded up.
fn exactly(line: &OrderLine) -> f64 {
    line.needed.amount() * (1.0 + line.margin.value() / 100.0) / line.pack_size.amount()
}

/// How a line of the order list was worked out.
#[must_use]
pub fn formula(line: &OrderLine, takeoff: &Takeoff) -> String {
    let needed = counted(line.needed.amount(), 1, line.needed.unit().name());
    let margin = if line.margin.value() > 0.0 {
        format!(" and {} % on top", number(line.margin.value(), 2))
    } else {
        String::new()
    };
    let exact = exactly(line);
    let pack = line.pack.name();
    let packed = if (line.pack_size.amount() - 1.0).abs() < 1e-9 {
        format!("{needed}{margin}.")
    } else {
        format!(
            "{needed}{margin}, {} a {pack}: {}, so {}.",
            counted(line.pack_size.amount(), 2, line.pack_size.unit().name()),
            counted(exact, 2, pack),
            whole(line.packs, pack),
        )
    };
    format!("{} {packed}", counted_from(&line.item, takeoff))
}

fn counted_from(item: &OrderItem, takeoff: &Takeoff) -> &'static str {
    match item {
        OrderItem::Field => {
            "Laid course by course, each cut and off-cut counted, with what runs past closed valleys."
        }
        OrderItem::Starter => "Along the eaves, and the rakes where the rates say so.",
        OrderItem::Cap => "Over each hip and ridge, the pieces of each rounded up.",
        OrderItem::RidgeVent => "Each ridge, less what is left uncut at both its ends.",
        OrderItem::ValleyMetal => "Each valley, with what is trimmed at both its ends.",
        OrderItem::IceBarrier => {
            "Courses along the whole of each eave, as far up the slope as the code profile asks; \
             valleys once more where the rates say so."
        }
        OrderItem::Underlayment => {
            "The area of the faces; one that wants half laps takes more of a roll. The ice barrier is \
             not taken off."
        }
        OrderItem::EaveEdgeMetal => "Along the eaves, each stick less its lap.",
        OrderItem::RakeEdgeMetal => "Along the rakes, each stick less its lap.",
        OrderItem::StepFlashing => "One a course, along side walls and both sides of each opening.",
        OrderItem::ApronFlashing => {
            "Head walls, and the lower and the upper side of each opening. A saddle is not counted."
        }
        OrderItem::KickOut => "One where a side wall ends on an eave.",
        OrderItem::Nails => "For each piece and each cap, by how many a pound holds.",
        OrderItem::Boot { .. } => "One for each of this size.",
        OrderItem::DeckSheet if takeoff.deck_overlay => {
            "Over the whole deck, since nails would miss its planks."
        }
        OrderItem::DeckSheet => "An allowance: a share of the deck, for what nobody could see.",
    }
}

/// Squares by the three ways of billing.
#[must_use]
pub fn billing(traces: &Traces, takeoff: &Takeoff) -> TakeoffPart {
    let now = traces.rates.rates.get().price.billing;
    let ways = [
        (
            BillingBy::NetArea,
            "Net area",
            takeoff.billing.net,
            "The area to cover, in squares of 100 sq ft.",
        ),
        (
            BillingBy::NetAndAccessories,
            "Net and accessories",
            takeoff.billing.net_and_accessories,
            "The area to cover, hips and ridges as a strip a foot wide, eaves as one course more.",
        ),
        (
            BillingBy::OrderedPacks,
            "Ordered packs",
            takeoff.billing.ordered,
            "The packs of field pieces that are ordered, at their exposure.",
        ),
    ];
    let lines = ways.map(|(way, name, squares, formula)| {
        let mut made = traces.made(&takeoff.billing.because);
        let key = "price.billing";
        if !made.rates.iter().any(|rate| rate.key == key) {
            made.rates.insert(0, traces.rates.view(key));
        }
        let mut shown = line(
            &name.to_lowercase(),
            name,
            squares_of(squares),
            formula.to_owned(),
            made,
        );
        shown.word = (way == now).then(|| "billed so".to_owned());
        shown
    });
    TakeoffPart {
        name: "Three ways to bill".to_owned(),
        words: None,
        loads: None,
        lines: lines.into(),
    }
}
