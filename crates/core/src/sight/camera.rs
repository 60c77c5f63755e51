//! The camera of a photo: pixel, focal length, the vertical as the phone felt it.
//!
//! Axes of a picture: x to the right, y down, z into it.

use nalgebra::{Rotation3, Unit, Vector3};

/// Diagonal of a frame of 36 x 24 mm, by which focal lengths are compared (CIPA DCG-001).
const DIAGONAL_35: f64 = 43.266_615;
/// Spread of the logarithm of a focal length that the file states: lenses differ from their label,
/// and focus moves them (judged).
const STATED_FOCAL: f64 = 0.01;
/// What a phone has where the file states none, mm on a 35 mm frame, and the spread of its
/// logarithm (judged).
const USUAL_FOCAL_35: f64 = 27.0;
const USUAL_FOCAL: f64 = 0.25;
/// Spread of the vertical as a phone held in the hand feels it, degrees (judged).
const VERTICAL_DEGREES: f64 = 0.5;

/// What is known of the camera of one photo, upright as it is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// Pixels across.
    pub width_px: f64,
    /// Pixels down.
    pub height_px: f64,
    /// Focal length as on a 35 mm frame, mm, from the file. None: not stated, or the photo was cut
    /// or made smaller unevenly, so that what is stated is of another picture.
    pub focal_35: Option<f64>,
    /// Where up is, in the axes of the picture, at any length; none: nobody felt it.
    pub up: Option<[f64; 3]>,
}

/// How a phone was held at the shutter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhoneTurn {
    /// Its top up.
    Upright,
    /// Turned a quarter to the left: its top points left.
    TopLeft,
    /// Turned a quarter to the right: its top points right.
    TopRight,
    /// Its top down.
    UpsideDown,
}

/// Where up is in the axes of the picture, from the vertical in the phone's axes (x to the right of
/// the screen, y to its top, z out of it) at any length and of either sign: up points up.
#[must_use]
pub fn up_in_picture(vertical: [f64; 3], held: PhoneTurn) -> [f64; 3] {
    let [x, y, z] = vertical;
    let [right, down] = match held {
        PhoneTurn::Upright => [x, -y],
        PhoneTurn::TopLeft => [-y, -x],
        PhoneTurn::TopRight => [y, x],
        PhoneTurn::UpsideDown => [-x, y],
    };
    let into = -z;
    if down > 0.0 {
        [-right, -down, -into]
    } else {
        [right, down, into]
    }
}

/// The camera as the least squares use it.
#[derive(Clone, Debug)]
pub(super) struct Lens {
    pub middle: [f64; 2],
    /// Logarithm of the focal length in pixels, and its spread.
    pub log_focal: f64,
    pub log_focal_sigma: f64,
    /// Up, with its spread in radians.
    pub up: Option<(Unit<Vector3<f64>>, f64)>,
}

impl Lens {
    /// None where the numbers are of no camera.
    pub fn new(camera: &Camera) -> Option<Lens> {
        const PIXELS: std::ops::RangeInclusive<f64> = 16.0..=200_000.0;
        const FOCAL_35: std::ops::RangeInclusive<f64> = 5.0..=2_000.0;
        if !PIXELS.contains(&camera.width_px) || !PIXELS.contains(&camera.height_px) {
            return None;
        }
        if camera
            .focal_35
            .is_some_and(|focal| !FOCAL_35.contains(&focal))
        {
            return None;
        }
        let (focal, log_focal_sigma) = match camera.focal_35 {
            Some(focal) => (focal, STATED_FOCAL),
            None => (USUAL_FOCAL_35, USUAL_FOCAL),
        };
        let up = match camera.up {
            None => None,
            Some(up) => Some((direction(up)?, VERTICAL_DEGREES.to_radians())),
        };
        let diagonal = camera.width_px.hypot(camera.height_px);
        Some(Lens {
            middle: [camera.width_px / 2.0, camera.height_px / 2.0],
            log_focal: (focal / DIAGONAL_35 * diagonal).ln(),
            log_focal_sigma,
            up,
        })
    }

    /// The direction in which a pixel looks, in the axes of the picture.
    pub fn ray(&self, pixel: [f64; 2]) -> Vector3<f64> {
        let focal = self.log_focal.exp();
        Vector3::new(
            (pixel[0] - self.middle[0]) / focal,
            (pixel[1] - self.middle[1]) / focal,
            1.0,
        )
        .normalize()
    }
}

fn direction(axes: [f64; 3]) -> Option<Unit<Vector3<f64>>> {
    let greatest = axes.iter().fold(0.0_f64, |most, axis| most.max(axis.abs()));
    let sound = axes.iter().all(|axis| axis.is_finite()) && greatest > 0.0;
    sound.then(|| Unit::new_normalize(Vector3::from(axes) / greatest))
}

/// A turn that brings plan axes (z up) into a picture whose up is `up`, looking in plan direction
/// `yaw`.
pub(super) fn turn(up: Unit<Vector3<f64>>, yaw: f64) -> Rotation3<f64> {
    let upright = Rotation3::rotation_between(&Vector3::z(), &up)
        .unwrap_or_else(|| Rotation3::from_axis_angle(&Vector3::x_axis(), std::f64::consts::PI));
    upright * Rotation3::from_axis_angle(&Vector3::z_axis(), yaw)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn up_is_up_however_the_phone_is_held_and_whatever_its_sign() {
        // Held level, the camera looking straight ahead: the phone stands on an edge.
        for (held, vertical) in [
            (PhoneTurn::Upright, [0.0, 9.8, 0.0]),
            (PhoneTurn::TopLeft, [9.8, 0.0, 0.0]),
            (PhoneTurn::TopRight, [-9.8, 0.0, 0.0]),
            (PhoneTurn::UpsideDown, [0.0, -9.8, 0.0]),
        ] {
            for sign in [1.0, -1.0] {
                let up = up_in_picture(vertical.map(|axis| sign * axis), held);
                assert!(
                    (up[1] + 9.8).abs() < 1e-12 && up[0].abs() < 1e-12,
                    "{held:?}"
                );
            }
        }
        // Tilted up, the screen looks down at the person: up has a part into the picture.
        let up = up_in_picture([0.0, 0.9, -0.4], PhoneTurn::Upright);
        assert!(up[2] > 0.0);
    }

    #[test]
    fn a_focal_length_of_26_mm_is_3004_pixels_of_a_4000_by_3000_picture() {
        let lens = Lens::new(&Camera {
            width_px: 4000.0,
            height_px: 3000.0,
            focal_35: Some(26.0),
            up: None,
        });
        let focal = lens.expect("a camera").log_focal.exp();
        assert!((focal - 3004.6).abs() < 0.5, "{focal}");
    }
}
