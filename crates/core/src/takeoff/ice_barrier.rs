//! The barrier against ice along eaves.

use super::cautions::TakeoffCaution;
use super::measured::Measured;
use super::mils::{ceil_div, mil};
use super::quantities::IceBarrier;
use crate::roof::EdgeKind;
use crate::settings::{Code, Rates};
use crate::units::{Length, Measure};

/// Rows of the ice barrier, one a face with an eave, and cautions where an overhang was not given.
/// Nothing where the code profile asks for none.
pub(super) fn ice_barrier(
    measured: &Measured<'_>,
    rates: &Rates,
    code: &Code,
) -> (Vec<IceBarrier>, Vec<TakeoffCaution>) {
    let (mut rows, mut cautions) = (Vec::new(), Vec::new());
    if !code.ice_barrier.required {
        return (rows, cautions);
    }
    for &face in &measured.order {
        let eave: f64 = measured
            .edges(EdgeKind::Eave)
            .filter(|(_, edge)| edge.faces.contains(&face))
            .map(|(_, edge)| edge.length.in_feet())
            .sum();
        if eave <= 0.0 {
            continue;
        }
        let leg = measured.roof.faces[face].leg;
        let overhang_in = overhang(measured, face).map(Length::in_inches);
        if overhang_in.is_none() {
            cautions.push(TakeoffCaution::OverhangNotGiven {
                body: measured.body_name(face),
                leg,
            });
        }
        let overhang_in = overhang_in.unwrap_or(rates.ice_barrier.overhang_in.value());
        let up_slope_in = up_slope(measured, face, overhang_in, code);
        let [low, high] = measured.faces[face].region.extent(1);
        let courses =
            courses_over(mil(up_slope_in), rates).min(courses_over(mil(high - low), rates));
        rows.push(IceBarrier {
            face,
            body: measured.body_name(face),
            leg,
            up_slope: Measure::new(up_slope_in),
            courses,
            length: Length::feet(courses as f64 * eave),
        });
    }
    (rows, cautions)
}

/// How far up the slope it must reach: past the wall line, and at least so far where it is steep.
fn up_slope(measured: &Measured<'_>, face: usize, overhang_in: f64, code: &Code) -> f64 {
    let asked = &code.ice_barrier;
    let level = overhang_in + asked.inside_in.value() + asked.wall_in.value();
    let up_slope = level * measured.faces[face].slope.factor;
    let steep_from = asked.steep_from_pitch.in_12();
    let pitch = measured.roof.faces[face].pitch.in_12();
    let steep = steep_from > 0.0 && pitch >= steep_from - 1e-6;
    if steep {
        up_slope.max(asked.steep_in.value())
    } else {
        up_slope
    }
}

/// Courses that cover so much of a slope, each lapping the one below.
fn courses_over(slope: i64, rates: &Rates) -> u64 {
    let (width, lap) = (
        mil(rates.ice_barrier.width_in.value()),
        mil(rates.ice_barrier.lap_in.value()),
    );
    ceil_div(slope - lap, width - lap).max(1).unsigned_abs()
}

fn overhang(measured: &Measured<'_>, face: usize) -> Option<Length> {
    let face = &measured.roof.faces[face];
    let body = measured.survey.bodies.get(face.body)?;
    body.edges.get(face.leg)?.overhang
}
