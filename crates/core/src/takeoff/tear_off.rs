//! What is torn off: its weight, and the loads it takes.

use super::because::Cause;
use super::existing_roof::ExistingRoof;
use super::mils::up;
use super::quantities::{LoadLimit, TearOff};
use super::weight::{Mixture, Spread};
use crate::settings::{Rates, TearOffRates, Trailer};
use crate::units::{Measure, Weight};

/// Weight and loads of an area (square feet, with its spread).
pub(super) fn tear_off(
    area: Spread,
    lying: &ExistingRoof,
    rates: &Rates,
    faces: Vec<Cause>,
) -> TearOff {
    let weight = weight(area, lying, &rates.tear_off);
    let spread = weight.spread();
    let [p10, p50, p90] = [0.1, 0.5, 0.9].map(|chance| weight.quantile(chance));
    let Loading {
        by_payload,
        by_volume,
    } = Loading::new(&rates.trailer);
    let most = by_payload.max(by_volume);
    let loads_by_payload = up(p90 * by_payload);
    let loads_by_volume = up(p90 * by_volume);
    TearOff {
        mean: Weight::pounds(spread.mean),
        sigma: Weight::pounds(spread.variance.sqrt()),
        p10: Weight::pounds(p10),
        p50: Weight::pounds(p50),
        p90: Weight::pounds(p90),
        limit: if by_payload >= by_volume {
            LoadLimit::Payload
        } else {
            LoadLimit::Volume
        },
        loads_p10: Measure::new(p10 * most),
        loads_p50: Measure::new(p50 * most),
        loads_p90: Measure::new(p90 * most),
        loads_by_payload,
        loads_by_volume,
        loads: loads_by_payload.max(loads_by_volume),
        because: because(lying, rates, faces),
    }
}

/// Loads a pound.
struct Loading {
    by_payload: f64,
    by_volume: f64,
}

impl Loading {
    fn new(trailer: &Trailer) -> Loading {
        Loading {
            by_payload: 1.0 / trailer.payload_lb.in_pounds(),
            by_volume: 1.0 / (trailer.density_lb_per_cuyd.value() * trailer.volume_cuyd.value()),
        }
    }
}

/// For each number of layers that may lie there, `area (layers (1 - lost)(1 + wet) + felt + deck)`;
/// layers weigh independently.
fn weight(area: Spread, lying: &ExistingRoof, rates: &TearOffRates) -> Mixture {
    let layer = Spread::of_corners(covering(lying, rates));
    let ceiling = rates.granule_ceiling_percent.value();
    let lost = rates.granule_loss_percent.map(Measure::value);
    let lost = Spread::of_corners(lost.map(|percent| percent.min(ceiling) / 100.0));
    let wet = rates.wet_percent.map(Measure::value);
    let wet = Spread::of_corners(wet.map(|percent| percent / 100.0));
    let felt = Spread::triangle(rates.felt_psf);
    let deck = if rates.remove_deck {
        Spread::triangle(rates.deck_psf)
    } else {
        Spread::exact(0.0)
    };
    Mixture::new(chances(lying, rates).into_iter().map(|(layers, chance)| {
        let laid = layer
            .times_over(layers)
            .times(lost.rest_of_one())
            .times(Spread::exact(1.0).plus(wet));
        (chance, laid.plus(felt).plus(deck).times(area))
    }))
}

/// How many layers may lie there, each with its chance.
fn chances(lying: &ExistingRoof, rates: &TearOffRates) -> Vec<(f64, f64)> {
    match lying.layers {
        Some(layers) => vec![(f64::from(layers), 1.0)],
        None => rates
            .layer_chance
            .iter()
            .enumerate()
            .map(|(above, chance)| ((above + 1) as f64, chance.value()))
            .collect(),
    }
}

/// Layers that lie there, in the mean.
pub(super) fn mean_layers(lying: &ExistingRoof, rates: &TearOffRates) -> f64 {
    chances(lying, rates)
        .into_iter()
        .map(|(layers, chance)| layers * chance)
        .sum()
}

/// How many layers lie there with a chance at most.
pub(super) fn layers_at(chance: f64, rates: &TearOffRates) -> u32 {
    let mut sum = 0.0;
    let below = rates.layer_chance.iter().take_while(|it| {
        sum += it.value();
        sum < chance - 1e-9
    });
    below.count() as u32 + 1
}

fn covering(lying: &ExistingRoof, rates: &TearOffRates) -> [f64; 3] {
    let table = &rates.covering_psf;
    table
        .get(covering_key(lying, rates))
        .map_or([0.0; 3], |triangle| triangle.map(Measure::value))
}

fn covering_key<'a>(lying: &'a ExistingRoof, rates: &TearOffRates) -> &'a str {
    let kind = lying.covering.as_deref();
    kind.filter(|kind| rates.covering_psf.contains_key(*kind))
        .unwrap_or("other")
}

fn because(lying: &ExistingRoof, rates: &Rates, faces: Vec<Cause>) -> Vec<Cause> {
    let covering = format!(
        "tear_off.covering_psf.{}",
        covering_key(lying, &rates.tear_off)
    );
    let mut because = faces;
    because.push(Cause::Covering);
    because.push(Cause::Rate(covering));
    if lying.layers.is_none() {
        because.extend(Cause::rates(&["tear_off.layer_chance"]));
    }
    because.extend(Cause::rates(&[
        "tear_off.granule_loss_percent",
        "tear_off.granule_ceiling_percent",
        "tear_off.wet_percent",
        "tear_off.felt_psf",
    ]));
    if rates.tear_off.remove_deck {
        because.extend(Cause::rates(&["tear_off.deck_psf"]));
    }
    because.extend(Cause::rates(&[
        "trailer.payload_lb",
        "trailer.volume_cuyd",
        "trailer.density_lb_per_cuyd",
    ]));
    because
}
