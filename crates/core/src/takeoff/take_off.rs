//! The takeoff of a roof, and of the same roof as it may also be.

use super::because::Cause;
use super::cautions::TakeoffCaution;
use super::existing_roof::ExistingRoof;
use super::ice_barrier::ice_barrier;
use super::item::OrderItem;
use super::measured::Measured;
use super::openings::{boot, size};
use super::order::{Ordering, overlay};
use super::quantities::{Courses, Laid, NotShingled, OrderLine, Range, Ranged, Takeoff, Unlisted};
use super::refusal::NoTakeoff;
use super::tear_off::{layers_at, tear_off};
use super::weight::Spread;
use super::work::{billing, labor, piece_area, ventilation};
use crate::roof::Roof;
use crate::settings::{Code, Rates};
use crate::survey::Survey;
use crate::units::measure::Percent;
use crate::units::{Area, Length, Measure};

/// One time in ten a normal value is farther below its mean, in standard deviations.
pub const TENTH: f64 = 1.281_551_565_544_600_4;

/// Takes off a roof.
///
/// `area_sigma`: one standard deviation of the area of the roof; none: it is known.
/// # Errors
/// [`NoTakeoff`] where counting would not end soon.
pub fn take_off(
    survey: &Survey,
    roof: &Roof,
    area_sigma: Area,
    rates: &Rates,
    code: &Code,
) -> Result<Takeoff, NoTakeoff> {
    let measured = Measured::new(survey, roof, rates, code)?;
    let lying = ExistingRoof::from_survey(survey);
    let sigma = area_sigma.in_square_feet();
    let at = |scale: f64, sigma: f64, lying: &ExistingRoof| {
        let as_it_is = AsItIs {
            measured: &measured,
            rates,
            code,
            lying,
            scale,
            sigma,
        };
        as_it_is.takeoff()
    };
    let mut takeoff = at(1.0, sigma, &lying);
    let area = roof.area().in_square_feet();
    if sigma > 0.0 && area > 0.0 {
        let apart = TENTH * sigma / area;
        takeoff.ranges.push(Range {
            of: Ranged::Area,
            low: at((1.0 - apart).max(0.0), 0.0, &lying),
            high: at(1.0 + apart, 0.0, &lying),
        });
    }
    let mut range = |of, low: &ExistingRoof, high: &ExistingRoof| {
        let [low, high] = [low, high].map(|lying| at(1.0, sigma, lying));
        takeoff.ranges.push(Range { of, low, high });
    };
    if lying.layers.is_none() {
        let [low, high] = [0.1, 0.9].map(|chance| ExistingRoof {
            layers: Some(layers_at(chance, &rates.tear_off)),
            ..lying.clone()
        });
        range(Ranged::Layers, &low, &high);
    }
    if lying.deck.is_none() {
        let on = |deck: &str, gap_in: f64| ExistingRoof {
            deck: Some(deck.to_owned()),
            gap_in,
            ..lying.clone()
        };
        let wide = rates.deck.overlay_over_gap_in.value() + 1.0;
        range(Ranged::Deck, &on("sheet", 0.0), &on("plank", wide));
    }
    Ok(takeoff)
}

/// A roof that was measured, its areas `scale` times what they are.
struct AsItIs<'a> {
    measured: &'a Measured<'a>,
    rates: &'a Rates,
    code: &'a Code,
    lying: &'a ExistingRoof,
    scale: f64,
    sigma: f64,
}

impl AsItIs<'_> {
    fn takeoff(&self) -> Takeoff {
        let AsItIs {
            measured,
            rates,
            code,
            lying,
            scale,
            sigma,
        } = *self;
        let (ice_barrier, mut cautions) = ice_barrier(measured, rates, code);
        let ordering = Ordering {
            measured,
            rates,
            code,
            lying,
            ice_barrier: &ice_barrier,
            scale,
        };
        let order = ordering.lines();
        let vented = Length::feet(ordering.vented_ridge());
        if lying.layers.is_none() {
            cautions.push(TakeoffCaution::LayersNotGiven);
        }
        let not_shingled = self.not_shingled();
        for flat in &not_shingled {
            cautions.push(TakeoffCaution::TooFlat {
                body: flat.body.clone(),
                leg: flat.leg,
            });
        }
        cautions.push(TakeoffCaution::Loads);
        let area = Spread {
            mean: measured.roof.area().in_square_feet() * scale,
            variance: sigma * sigma,
        };
        let faces = measured.order.iter().copied().map(Cause::Face).collect();
        Takeoff {
            net_area: Area::square_feet(measured.net_area() * scale),
            not_shingled,
            courses: self.courses(),
            laid: self.laid(&order),
            tear_off: tear_off(area, lying, rates, faces),
            ventilation: ventilation(measured, rates, code, scale, vented),
            labor: labor(measured, lying, rates, scale),
            billing: billing(measured, &order, rates, scale),
            order,
            ice_barrier,
            unlisted: unlisted(measured.survey),
            deck_overlay: overlay(lying, rates),
            cautions,
            ranges: Vec::new(),
        }
    }

    fn not_shingled(&self) -> Vec<NotShingled> {
        let measured = self.measured;
        let flat = measured
            .order
            .iter()
            .filter(|&&face| !measured.faces[face].shingled);
        flat.map(|&face| NotShingled {
            face,
            body: measured.body_name(face),
            leg: measured.roof.faces[face].leg,
            area: measured.roof.faces[face].area,
        })
        .collect()
    }

    fn courses(&self) -> Vec<Courses> {
        let laid = self.measured.laid.iter();
        laid.map(|&(face, laid)| {
            let net = self.measured.net_area_of(face);
            Courses {
                face,
                body: self.measured.body_name(face),
                leg: self.measured.roof.faces[face].leg,
                net_area: Area::square_feet(net),
                courses: laid.courses,
                run: Length::feet(laid.run_ft),
                pieces_laid: laid.pieces_laid,
                new_pieces: laid.new_pieces,
                reused: laid.reused,
                waste: waste(laid.new_pieces as f64 * piece_area(self.rates), net),
            }
        })
        .collect()
    }

    fn laid(&self, order: &[OrderLine]) -> Laid {
        let measured = self.measured;
        let sum = |of: fn(&super::courses::Laid) -> u64| {
            measured.laid.iter().map(|(_, laid)| of(laid)).sum::<u64>()
        };
        let new_pieces = sum(|laid| laid.new_pieces);
        let net = measured.net_area();
        let bought = (new_pieces + measured.valley_pieces) as f64 * piece_area(self.rates);
        let field = order.iter().find(|line| line.item == OrderItem::Field);
        let ordered = field.map_or(0.0, |line| line.packs as f64 * line.pack_size.amount());
        Laid {
            new_pieces,
            valley_pieces: measured.valley_pieces,
            pieces_laid: sum(|laid| laid.pieces_laid),
            reused: sum(|laid| laid.reused),
            waste: waste(bought, net),
            ordered_waste: waste(ordered * piece_area(self.rates), net * self.scale),
        }
    }
}

/// What is bought over what it covers, less one, per cent; nothing where nothing is covered.
fn waste(bought: f64, covered: f64) -> Measure<Percent> {
    Measure::new(if covered > 0.0 {
        100.0 * (bought / covered - 1.0)
    } else {
        0.0
    })
}

/// What is counted and for which the rates have no table.
fn unlisted(survey: &Survey) -> Vec<Unlisted> {
    let mut unlisted: Vec<Unlisted> = Vec::new();
    for (index, it) in survey.penetrations.iter().enumerate() {
        if it.kind.holds_water_back() {
            unlisted.push(Unlisted::Saddle { penetration: index });
        }
        if boot(it.kind).is_some() || size(it.kind).is_some() {
            continue;
        }
        let name = it.kind.name();
        let same = unlisted.iter_mut().find_map(|it| match it {
            Unlisted::Penetrations { what, penetrations } if *what == name => Some(penetrations),
            Unlisted::Penetrations { .. } | Unlisted::Saddle { .. } => None,
        });
        match same {
            Some(penetrations) => penetrations.push(index),
            None => unlisted.push(Unlisted::Penetrations {
                what: name,
                penetrations: vec![index],
            }),
        }
    }
    unlisted
}
