//! The measurement record: a spread of the field book. Figures left, sketch right, strikes shown;
//! then how each figure came out of the readings, and what nothing checks.

use super::PaperInput;
use crate::differences::differences;
use crate::edition::{Lang, PaperKind};
use crate::leaf::{Block, Leaf, Mark, Set, Table};
use crate::named;
use crate::said;
use crate::words;
use eavebook_core::book::kinds::Thing;
use eavebook_core::outline::LegFigure;

pub fn leaf(told: &PaperInput) -> Leaf {
    let job = told.job;
    let opening = format!(
        "This is how every figure of the roof at {} came about: what was read, what was struck, what the readings say together and how surely.",
        job.book.address
    );
    let mut leaf = told.begin(PaperKind::Story, Lang::En, opening);
    leaf.say(told.area(Lang::En));
    leaf.blocks.push(Block::Heading {
        text: "What was read".to_owned(),
    });
    leaf.blocks.push(Block::Spread {
        table: read(told),
        alt: told.plan_alt(Lang::En),
    });
    leaf.under("Strikes and second thoughts", strikes(told));
    leaf.under("Slopes read", slopes(told));
    leaf.under("What the readings say together", legs(told));
    leaf.under("Closure", closure(told));
    leaf.under("Faces", told.faces(Lang::En).into_iter().collect());
    leaf.under("Edges", told.each_edge(Lang::En).into_iter().collect());
    leaf.under("How the area comes out", formula(told));
    let since = match told.freeze.version.checked_sub(1) {
        Some(version) => format!("What version {version} said otherwise"),
        None => "What the version before said otherwise".to_owned(),
    };
    leaf.under(&since, since_before(told));
    leaf.under("Not known", told.not_known(Lang::En));
    leaf
}

/// What the version before said otherwise.
fn since_before(told: &PaperInput) -> Vec<Block> {
    let mut table = Table::with(&[
        ("Thing", Set::Words),
        ("Before", Set::Wide),
        ("Now", Set::Wide),
    ]);
    let said = |words: String| {
        if words.is_empty() {
            "nothing".to_owned()
        } else {
            words
        }
    };
    for row in differences(told.job) {
        table.row(vec![row.thing, said(row.before), said(row.now)]);
    }
    if table.rows.is_empty() {
        Vec::new()
    } else {
        vec![Block::Table(table)]
    }
}

/// Each reading as it was booked, struck ones too.
fn read(told: &PaperInput) -> Table {
    let mut table = Table::with(&[
        ("Thing", Set::Words),
        ("Read", Set::Figures),
        ("State", Set::Wide),
    ]);
    for read in &told.job.book.readings {
        let state = said::state_of(told.job, read);
        let mark = if read.struck.is_some() {
            Mark::Struck
        } else {
            Mark::Plain
        };
        let state = match &read.struck {
            Some(struck) => said::taken_out(struck.how).to_owned(),
            None => state.word().to_owned(),
        };
        table.marked(
            mark,
            vec![read.thing.name(), said::in_words(&read.text), state],
        );
    }
    table
}

/// What was struck, why, and what was read after.
fn strikes(told: &PaperInput) -> Vec<Block> {
    let struck = told.job.book.readings.iter().filter_map(|read| {
        let struck = read.struck.as_ref()?;
        let reason = match &struck.reason {
            Some(reason) => format!(": {reason}"),
            None => ", no reason given".to_owned(),
        };
        Some(format!(
            "{}, {} read {}: {} {}{reason}",
            words::capital(&read.thing.name()),
            said::in_words(&read.text),
            said::local(&read.local_time),
            said::taken_out(struck.how),
            said::local(&struck.local_time),
        ))
    });
    listed(struck.collect())
}

fn slopes(told: &PaperInput) -> Vec<Block> {
    let mut table = Table::with(&[
        ("Face", Set::Words),
        ("Read", Set::Figures),
        ("How", Set::Wide),
    ]);
    let standing = told.job.standing();
    for read in &told.job.book.pitches {
        let place = told.parts.places.get((read.leg as usize).saturating_sub(1));
        let face = place.map_or_else(|| format!("leg {}", read.leg), |place| place.name());
        let mark = if read.struck.is_some() {
            Mark::Struck
        } else {
            Mark::Plain
        };
        let how = said::slope_how(&read.read);
        let how = match &read.struck {
            Some(struck) => format!("{how}, {}", said::taken_out(struck.how)),
            None => format!("{how}, {}", standing.slope_state(read.leg).word()),
        };
        table.marked(mark, vec![face, said::slope(&read.read), how]);
    }
    if table.rows.is_empty() {
        Vec::new()
    } else {
        vec![Block::Table(table)]
    }
}

/// Each leg after the adjustment.
fn legs(told: &PaperInput) -> Vec<Block> {
    let Some(outline) = told.job.standing().outline() else {
        return Vec::new();
    };
    let mut table = Table::with(&[
        ("Leg", Set::Figures),
        ("Length", Set::Figures),
        ("Smallest slip that would show", Set::Figures),
        ("Known by", Set::Wide),
    ]);
    for (figure, leg) in outline.legs.iter().zip(1..) {
        let length = figure
            .length
            .map(|length| words::length_give_or_take(length.value, Some(length.sigma), Lang::En));
        table.row(vec![
            leg.to_string(),
            length.unwrap_or_else(|| "not known".to_owned()),
            figure
                .smallest_slip
                .map_or_else(|| "–".to_owned(), |slip| words::length(slip, Lang::En)),
            known_by(told, leg, figure),
        ]);
    }
    vec![
        Block::Table(table),
        Block::Text {
            text: "The lengths are adjusted by least squares, each reading by its own ±; the smallest slip that would show is after Baarda 1968.".to_owned(),
        },
    ]
}

fn known_by(told: &PaperInput, leg: u32, figure: &LegFigure) -> String {
    if figure.worked_out {
        return "worked out from the other legs".to_owned();
    }
    let thing = Thing::Leg { leg };
    let standing = told
        .job
        .book
        .readings
        .iter()
        .filter(|read| read.thing == thing && read.struck.is_none());
    let count = standing.count();
    let checked = if figure.smallest_slip.is_none() && count == 1 {
        ", nothing checks it"
    } else {
        ""
    };
    match count {
        1 => format!("one reading{checked}"),
        many => format!("{many} readings"),
    }
}

fn closure(told: &PaperInput) -> Vec<Block> {
    let suspects: Vec<String> = named::suspects(&told.job.standing())
        .iter()
        .map(Thing::name)
        .collect();
    let mut blocks = Vec::new();
    if let Some(closure) = told
        .job
        .standing()
        .outline()
        .and_then(|outline| outline.closure.as_ref())
    {
        blocks.push(Block::Text {
            text: closure.words.to_string(),
        });
    }
    if !suspects.is_empty() {
        blocks.push(Block::Text {
            text: format!(
                "The readings speak against {}. Nothing was mended: the figures stand on all readings as booked.",
                words::listed(&suspects, Lang::En)
            ),
        });
    }
    blocks
}

fn formula(told: &PaperInput) -> Vec<Block> {
    let Some(solved) = told.job.solved else {
        return Vec::new();
    };
    let (Some(plan), Some(area)) = (solved.totals.plan_area, solved.totals.area) else {
        return Vec::new();
    };
    vec![Block::Text {
        text: format!(
            "Each face is its area in plan times the square root of 1 + (rise / 12)², and the roof is their sum: {} in plan, {} on the slope. The ± carries that of every corner and every slope along.",
            words::area(plan, Lang::En),
            words::area_give_or_take(area, Lang::En)
        ),
    }]
}

fn listed(items: Vec<String>) -> Vec<Block> {
    if items.is_empty() {
        Vec::new()
    } else {
        vec![Block::List { items }]
    }
}
