//! What is torn off and hauled, the air under the roof, the hours.

use crate::figures::{self, number, whole};
use crate::places::takeoff::because::Traces;
use crate::places::takeoff::order::line;
use crate::places::takeoff::reply::{LoadBar, TakeoffLine, TakeoffPart};
use crate::sentence::sentence;
use eavebook_core::takeoff::{LoadLimit, Takeoff, TearOff, Ventilation};
use eavebook_core::units::measure::SquareInch;
use eavebook_core::units::{Measure, Weight};

/// Weight and loads, the sentence first.
#[must_use]
pub fn tear_off(traces: &Traces, takeoff: &Takeoff) -> TakeoffPart {
    let off = &takeoff.tear_off;
    let made = || traces.made(&off.because);
    let pounds = |weight: Weight| {
        let tens = (weight.in_pounds() / 10.0).round() * 10.0;
        format!("{} lb", number(tens, 0))
    };
    let filled = match off.limit {
        LoadLimit::Payload => "the weight it may carry fills a trailer first",
        LoadLimit::Volume => "the room in it fills a trailer first",
    };
    let words = format!(
        "About {} to tear off, likely {} to {}: about {}, likely {} to {}. Plan for {}.",
        pounds(off.p50),
        pounds(off.p10),
        pounds(off.p90),
        loads(off.loads_p50.value()),
        number(off.loads_p10.value(), 1),
        number(off.loads_p90.value(), 1),
        whole(off.loads, "load"),
    );
    let mut weight = line(
        "weight",
        "Weight",
        pounds(off.mean),
        format!(
            "The area of the roof times what a square foot of each layer weighs, less the granules \
             it lost, more the water in it, and the felt. One time in ten less than {}, one time in \
             ten more than {}.",
            pounds(off.p10),
            pounds(off.p90)
        ),
        made(),
    );
    weight.value.give_or_take = Some(format!("± {}", pounds(off.sigma)));
    let by_payload = line(
        "loads by payload",
        "Loads by weight",
        whole(off.loads_by_payload, "load"),
        "What is torn off, as heavy as it is one time in ten, over what the trailer may carry. That \
         comes from a scale, never from a plate."
            .to_owned(),
        made(),
    );
    let by_volume = line(
        "loads by volume",
        "Loads by room",
        whole(off.loads_by_volume, "load"),
        "The same over what the trailer holds of it, lying loose.".to_owned(),
        made(),
    );
    let mut plan = line(
        "loads",
        "Loads to plan for",
        whole(off.loads, "load"),
        format!("The greater of the two: {filled}."),
        made(),
    );
    plan.word = None;
    TakeoffPart {
        name: "Tear-off".to_owned(),
        words: Some(sentence("tear_off", words)),
        loads: Some(bar(off)),
        lines: vec![weight, by_payload, by_volume, plan],
    }
}

fn loads(loads: f64) -> String {
    figures::counted(loads, 1, "load")
}

/// The bar ends at whole loads, so that what fits in them is seen.
fn bar(off: &TearOff) -> LoadBar {
    let end = off.loads_p90.value().ceil().max(1.0);
    let at = [off.loads_p10, off.loads_p50, off.loads_p90].map(Measure::value);
    let mut whole = Vec::new();
    let mut load = 1.0;
    while load <= end {
        whole.push(load / end);
        load += 1.0;
    }
    LoadBar {
        at: at.map(|loads| loads / end),
        whole,
        end: loads(end),
    }
}

/// Openings for air.
#[must_use]
pub fn air(traces: &Traces, air: &Ventilation) -> TakeoffPart {
    let line = |key: &str, name: &str, free: Measure<SquareInch>, formula: String| -> TakeoffLine {
        let words = format!("{} sq in", number(free.value(), 0));
        line(key, name, words, formula, traces.made(&air.because))
    };
    let lines = vec![
        line(
            "required",
            "Asked for",
            air.required,
            format!(
                "{} in plan, overhangs with it, one part of opening to {}.",
                air.plan_area.words(),
                number(air.ratio.value(), 0)
            ),
        ),
        line(
            "upper",
            "Near the ridge",
            air.upper,
            "The upper share of it by the code profile.".to_owned(),
        ),
        line(
            "lower",
            "Near the eaves",
            air.lower,
            "The rest of it.".to_owned(),
        ),
        line(
            "ridge vent",
            "Ridge vents give",
            air.ridge_vent,
            "The length of the ridge vents times what a foot of them lets through.".to_owned(),
        ),
        line(
            "short",
            "Lacks near the ridge",
            air.upper_short,
            "What is asked for near the ridge less what the ridge vents give.".to_owned(),
        ),
    ];
    TakeoffPart {
        name: "Air".to_owned(),
        words: Some(sentence(
            "code_profile",
            "Notes someone read on the date shown. The permit office decides.",
        )),
        loads: None,
        lines,
    }
}

/// Hours.
#[must_use]
pub fn labor(traces: &Traces, takeoff: &Takeoff) -> TakeoffPart {
    let hours = &takeoff.labor;
    let words = |hours: f64| figures::counted(hours, 1, "hour");
    TakeoffPart {
        name: "Labour".to_owned(),
        words: None,
        loads: None,
        lines: vec![
            line(
                "strip",
                "Strip",
                words(hours.strip_hours.value()),
                "Squares of each face, its factors for steepness and height, hours a square and \
                 layer, layers, and the factor of the deck."
                    .to_owned(),
                traces.made(&hours.strip_because),
            ),
            line(
                "lay",
                "Lay",
                words(hours.lay_hours.value()),
                "Squares of each face, its factors for steepness and height, hours a square."
                    .to_owned(),
                traces.made(&hours.lay_because),
            ),
        ],
    }
}
