//! Where a camera may have stood, before any least squares.
//!
//! Once it is said how the camera was turned, each mark is a ray, and that the ray meets its place
//! is linear in where the camera stood, the slope and the eave height (a direct linear solution:
//! Abdel-Aziz and Karara 1971). So turns all round are tried, and the best few go on.

use super::bundle::{Bundle, HEIGHT, State};
use super::camera::turn;
use super::mark::Spot;
use nalgebra::{Matrix3, Rotation3, SMatrix, SVector, Unit, Vector3};

/// Degrees between the directions that are tried.
const EVERY_DEGREES: usize = 10;
/// Cameras tilted up by so many degrees are tried where the phone felt no vertical.
const TILTED_UP: [f64; 4] = [-8.0, 3.0, 14.0, 25.0];
/// So many starts go on.
const GO_ON: usize = 4;

/// Starts, the best first.
pub(super) fn starts(bundle: &Bundle<'_>) -> Vec<State> {
    let ups: Vec<Unit<Vector3<f64>>> = match &bundle.lens.up {
        Some((up, _)) => vec![*up],
        None => TILTED_UP
            .map(|degrees: f64| {
                let (sin, cos) = degrees.to_radians().sin_cos();
                Unit::new_normalize(Vector3::new(0.0, -cos, sin))
            })
            .to_vec(),
    };
    let mut found: Vec<(f64, usize, State)> = Vec::new();
    for up in ups {
        for degrees in (0..360).step_by(EVERY_DEGREES) {
            let turned = turn(up, (degrees as f64).to_radians());
            if let Some((off, state)) = stood(bundle, turned) {
                found.push((off, degrees, state));
            }
        }
    }
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut kept: Vec<(usize, State)> = Vec::new();
    for (_, degrees, state) in found {
        let apart = kept.iter().all(|(other, _)| {
            let between = other.abs_diff(degrees);
            between.min(360 - between) > EVERY_DEGREES
        });
        if apart && kept.len() < GO_ON {
            kept.push((degrees, state));
        }
    }
    kept.into_iter().map(|(_, state)| state).collect()
}

/// Where a camera turned like that stood; how far its rays miss, as a share of how far they go.
fn stood(bundle: &Bundle<'_>, turned: Rotation3<f64>) -> Option<(f64, State)> {
    // Unknown: camera (3), rise over run, eave height.
    let mut matrix = SMatrix::<f64, 5, 5>::zeros();
    let mut right = SVector::<f64, 5>::zeros();
    let mut rays = Vec::with_capacity(bundle.seen.marks.len());
    for mark in &bundle.seen.marks {
        let (plan, rise, fall) = nominal(bundle, mark.of);
        let ray = turned.inverse() * bundle.lens.ray(mark.at);
        let aside = Matrix3::identity() - ray * ray.transpose();
        // aside * (plan + rise * slope z - fall * height z - camera) = 0
        let mut by = SMatrix::<f64, 3, 5>::zeros();
        by.fixed_view_mut::<3, 3>(0, 0).copy_from(&(-aside));
        by.set_column(3, &(aside.column(2) * rise));
        by.set_column(4, &(aside.column(2) * -fall));
        matrix += by.transpose() * by;
        right -= by.transpose() * (aside * plan);
        rays.push((ray, plan, rise, fall));
    }
    // Slope and height are held loosely near usual ones, so that too few marks still give a start.
    let size = bundle.seen.size;
    let hold = 1e-6 * size * size;
    matrix[(3, 3)] += hold;
    right[3] += hold * 0.5;
    matrix[(4, 4)] += if bundle.has_feet() { 1e-6 } else { 1.0 };
    right[4] += if bundle.has_feet() {
        1e-7 * size
    } else {
        0.3 * size
    };
    let solved = matrix.cholesky()?.solve(&right);
    let camera = Vector3::new(solved[0], solved[1], solved[2]);
    let (slope, height) = (solved[3], solved[4]);
    let mut off = 0.0;
    for (ray, plan, rise, fall) in rays {
        let to = plan + Vector3::z() * (rise * slope - fall * height) - camera;
        let far = ray.dot(&to);
        if far.is_nan() || far <= 0.01 * size {
            return None;
        }
        off += (to - ray * far).norm_squared() / far.powi(2);
    }
    let slope = slope.clamp(0.05, 3.0);
    off.is_finite().then(|| {
        let state = State {
            turn: turned,
            camera,
            log_focal: bundle.lens.log_focal,
            slope,
            height: bundle.seen.eave_height.map_or(height, |known| known[0]),
            off: vec![0.0; bundle.unknowns() - HEIGHT - 1],
        };
        (off, state)
    })
}

/// A marked thing over its plan: its place at the eaves, how it rises with the slope and falls with
/// the eave height.
fn nominal(bundle: &Bundle<'_>, of: Spot) -> (Vector3<f64>, f64, f64) {
    let seen = bundle.seen;
    let at = |plan: [f64; 2]| Vector3::new(plan[0], plan[1], 0.0);
    match of {
        Spot::Eave(k) => (at(seen.corners[k].0), 0.0, 0.0),
        Spot::Foot(k) => (at(seen.corners[k].0), 0.0, 1.0),
        Spot::Peak(k) => {
            let peak = &seen.peaks[k];
            let [from, to] = peak.across.map(|corner| seen.corners[corner].0);
            let run = (to[0] - from[0]).hypot(to[1] - from[1]) / 2.0;
            (at(peak.at), run, 0.0)
        }
    }
}
