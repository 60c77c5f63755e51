//! A solved survey taken off and priced.

use super::solved::Solved;
use crate::price::{Price, price};
use crate::roof::{Roof, raise};
use crate::settings::{Chosen, Terms};
use crate::settled::{Ground, RoofUnavailable, shapes};
use crate::survey::{Sketch, Survey};
use crate::takeoff::{NoTakeoff, TENTH, Takeoff, TakeoffCaution, take_off};
use crate::units::{Area, Money};
use rust_decimal::Decimal;

/// What a roof takes and what it costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Priced {
    /// Quantities.
    pub takeoff: Takeoff,
    /// Their price.
    pub price: Price,
    /// One standard deviation of the area for which both have their range.
    pub area_sigma: Area,
}

impl Priced {
    /// What so much more roof, or less, does to the price: by how the price goes from the low to the
    /// high end of the area's own range, in which packs and loads come in steps. None where the area
    /// is known and so has no range.
    #[must_use]
    pub fn price_moved_by(&self, area: Area) -> Option<Money> {
        let wide = 2.0 * TENTH * self.area_sigma.in_square_feet();
        let part = Decimal::from_f64_retain(area.in_square_feet() / wide)?;
        Some(((self.price.high - self.price.low) * part).to_cent())
    }
}

/// Why nothing can be priced.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NotPriceable {
    /// There is no roof to take off.
    #[error("{0}")]
    RoofUnavailable(#[from] RoofUnavailable),
    /// The roof cannot be taken off.
    #[error("{0}")]
    NoTakeoff(#[from] NoTakeoff),
}

/// Takes off and prices the roof of a solved survey. Faces and edges that the lines name are those
/// of `solved.roof`.
///
/// # Errors
/// [`NotPriceable`] where there is no roof, or one past counting.
pub fn take_off_and_price(
    survey: &Survey,
    solved: &Solved,
    terms: &Terms,
) -> Result<Priced, NotPriceable> {
    let roof = solved.roof.as_ref().map_err(Clone::clone)?;
    Ok(over(survey, roof, solved, terms)?)
}

/// [`take_off_and_price`] over outlines squared as they were meant, whatever the solved roof stands
/// on: a front that was read a hair out of line makes a hair of a face with hips of many feet, which
/// nobody orders. Faces and edges that the lines name are those of the roof that comes with it.
///
/// # Errors
/// As [`take_off_and_price`].
pub fn take_off_and_price_as_meant(
    survey: &Survey,
    solved: &Solved,
    terms: &Terms,
) -> Result<(Priced, Option<Roof>), NotPriceable> {
    let was_read = survey
        .bodies
        .iter()
        .any(|body| matches!(body.outline, Sketch::Turned { .. }));
    if was_read {
        let shapes = shapes(&survey.bodies, &solved.bodies, Ground::Squared)?;
        // Where squaring spoils what the readings allow, the roof as read is taken off.
        if let Ok(roof) = raise(&shapes, &survey.walls) {
            return Ok((over(survey, &roof, solved, terms)?, Some(roof)));
        }
    }
    Ok((take_off_and_price(survey, solved, terms)?, None))
}

fn over(survey: &Survey, roof: &Roof, solved: &Solved, terms: &Terms) -> Result<Priced, NoTakeoff> {
    let (rates, code) = (terms.rates.get(), terms.code.get());
    let sigma = solved.totals.area.map_or(Area::ZERO, |area| area.sigma);
    let mut takeoff = take_off(survey, roof, sigma, rates, code)?;
    if matches!(terms.rates, Chosen::Demo(_)) {
        takeoff.cautions.push(TakeoffCaution::DemoRates);
    }
    if matches!(terms.code, Chosen::Demo(_)) {
        takeoff.cautions.push(TakeoffCaution::DemoCode);
    }
    if let (Some(on), Some(read)) = (terms.on, code.day()) {
        takeoff.cautions.extend(TakeoffCaution::age(read, on));
    }
    let price = price(&takeoff, rates);
    Ok(Priced {
        takeoff,
        price,
        area_sigma: sigma,
    })
}
