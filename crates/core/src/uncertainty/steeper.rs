//! What it costs to take the steeper of two pitches where the readings leave both open.

use crate::pitch::SettledRise;
use crate::roof::Roof;
use crate::settled::{RoofUnavailable, SolvedBody};
use crate::units::{Area, Pitch};
use std::collections::BTreeMap;

/// "If unsure take the steeper", for one slope that was read: the smallest pitch that the roof does
/// not exceed with nine chances in ten, instead of the likeliest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeperWhenUnsure {
    /// Index of the body.
    pub body: usize,
    /// The leg at which the slope was read; all that took it over are meant too.
    pub leg: usize,
    /// The pitch to take.
    pub pitch: Pitch,
    /// Chance that the likeliest pitch is too low.
    pub too_low_likeliest: f64,
    /// Chance that this one is.
    pub too_low: f64,
    /// Roof area that it adds over its faces, their plan as it is; none where there is no roof yet.
    pub more_area: Option<Area>,
    /// The same in per cent of those faces.
    pub more_percent: f64,
}

/// One for each slope that was read, by body and leg; it costs nothing where the likeliest pitch is
/// sure enough.
#[must_use]
pub fn steeper_when_unsure(
    solved: &[SolvedBody],
    roof: &Result<Roof, RoofUnavailable>,
) -> Vec<SteeperWhenUnsure> {
    let mut plan: BTreeMap<(usize, usize), f64> = BTreeMap::new();
    for face in roof.iter().flat_map(|roof| &roof.faces) {
        let rise = solved.get(face.body).map(|body| &body.rises);
        if let Some(SettledRise::Slope(pitch)) = rise.and_then(|rises| rises.get(face.leg)) {
            *plan.entry((face.body, pitch.read_at)).or_default() += face.plan_area.in_square_feet();
        }
    }
    let mut all = Vec::new();
    for (body, solved) in solved.iter().enumerate() {
        for (leg, rise) in solved.rises.iter().enumerate() {
            let SettledRise::Slope(settled) = rise else {
                continue;
            };
            let Some(read) = settled.read.as_ref().filter(|_| settled.read_at == leg) else {
                continue;
            };
            // A likeliest pitch that is sure enough may lie above the smallest not exceeded.
            let pitch = if read.steeper_when_unsure > settled.used {
                read.steeper_when_unsure
            } else {
                settled.used
            };
            let more = pitch.slope_factor() - settled.used.slope_factor();
            all.push(SteeperWhenUnsure {
                body,
                leg,
                pitch,
                too_low_likeliest: read.more_than_likeliest,
                too_low: read.more_than_steeper.min(read.more_than_likeliest),
                more_area: plan
                    .get(&(body, leg))
                    .map(|plan| Area::square_feet(plan * more)),
                more_percent: 100.0 * more / settled.used.slope_factor(),
            });
        }
    }
    all
}
