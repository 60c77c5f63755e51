//! From what a phone feels of the vertical to the slope that it lies on.

use crate::units::Angle;

/// A phone further askew than this reads another slope than the one it lies on.
pub const MOST_SIDEWAYS: Angle = Angle::degrees(3.0);

/// How a phone lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tilt {
    /// Its long axis above level, 0 to 90 degrees.
    pub pitch: Angle,
    /// What it is turned about that axis, from lying flat on a slope or standing on its long edge,
    /// whichever is nearer: 0 to 45 degrees.
    pub sideways: Angle,
}

/// Why what a phone feels is no reading.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum NoTilt {
    /// Nothing, or no number.
    #[error("the phone says nothing of the vertical: use a level and tape")]
    NoGravity,
    /// Turned about its long axis.
    #[error(
        "the phone leans {:.1} degrees sideways: lay it flat, its long side straight up the slope, \
         within {:.0} degrees",
        sideways.in_degrees(),
        MOST_SIDEWAYS.in_degrees()
    )]
    Askew {
        /// How far.
        sideways: Angle,
    },
}

impl Tilt {
    /// From the vertical in the phone's axes: x to the right of the screen, y to its top, z out of
    /// it. Any length and either sign, since phones differ in both.
    ///
    /// The pitch is that of the long axis by the arc tangent over all three components, so that a
    /// phone which rocks about that axis reads no less.
    ///
    /// # Errors
    /// [`NoTilt`] if the vector says nothing or the phone leans more than [`MOST_SIDEWAYS`].
    pub fn from_vertical(vertical: [f64; 3]) -> Result<Tilt, NoTilt> {
        let greatest = vertical
            .iter()
            .fold(0.0_f64, |most, axis| most.max(axis.abs()));
        let sound = vertical.iter().all(|axis| axis.is_finite()) && greatest > 0.0;
        if !sound {
            return Err(NoTilt::NoGravity);
        }
        let [x, y, z] = vertical.map(|axis| (axis / greatest).abs());
        let pitch = Angle::radians(y.atan2(x.hypot(z)));
        // Lying flat the short side should be level, on edge the screen upright. Against the whole
        // vertical: about an axis that stands upright itself there is no sideways.
        let sideways = Angle::radians((x.min(z) / x.hypot(y).hypot(z)).asin());
        if sideways > MOST_SIDEWAYS {
            return Err(NoTilt::Askew { sideways });
        }
        Ok(Tilt { pitch, sideways })
    }

    /// From the turns about the phone's x and y axes as a browser hands them over (W3C Device
    /// Orientation: beta about x, then gamma about the turned y).
    ///
    /// # Errors
    /// As [`Tilt::from_vertical`].
    pub fn from_turns(beta: Angle, gamma: Angle) -> Result<Tilt, NoTilt> {
        let (beta, gamma) = (beta.in_radians(), gamma.in_radians());
        Tilt::from_vertical([
            -beta.cos() * gamma.sin(),
            beta.sin(),
            beta.cos() * gamma.cos(),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn degrees(tilt: Tilt) -> (f64, f64) {
        (tilt.pitch.in_degrees(), tilt.sideways.in_degrees())
    }

    #[test]
    fn a_phone_laid_up_a_slope_reads_it_whatever_the_sign_and_length_of_gravity() {
        let (sin, cos) = 26.565_f64.to_radians().sin_cos();
        for size in [1.0, -9.81, 1e300] {
            let tilt = Tilt::from_vertical([0.0, size * sin, size * cos]).unwrap();
            assert!((tilt.pitch.in_degrees() - 26.565).abs() < 1e-9);
            assert!(tilt.sideways.in_degrees().abs() < 1e-9);
        }
        let turned = Tilt::from_turns(Angle::degrees(-26.565), Angle::degrees(0.0)).unwrap();
        assert!((turned.pitch.in_degrees() - 26.565).abs() < 1e-9);
    }

    #[test]
    fn a_phone_on_its_long_edge_reads_the_slope_too() {
        let (sin, cos) = 33.69_f64.to_radians().sin_cos();
        let (pitch, sideways) = degrees(Tilt::from_vertical([cos, sin, 0.0]).unwrap());
        assert!((pitch - 33.69).abs() < 1e-9 && sideways.abs() < 1e-9);
    }

    #[test]
    fn a_phone_that_rocks_two_degrees_reads_the_same_and_one_that_leans_five_is_refused() {
        let leaning = |lean: f64| {
            let (sin, cos) = 26.0_f64.to_radians().sin_cos();
            let lean = lean.to_radians();
            Tilt::from_vertical([cos * lean.sin(), sin, cos * lean.cos()])
        };
        let (pitch, sideways) = degrees(leaning(2.0).unwrap());
        assert!((pitch - 26.0).abs() < 1e-9);
        assert!((sideways - 1.8).abs() < 0.01);
        let refusal = leaning(5.0).unwrap_err();
        assert_eq!(
            refusal.to_string(),
            "the phone leans 4.5 degrees sideways: lay it flat, its long side straight up the \
             slope, within 3 degrees"
        );
    }

    #[test]
    fn no_vertical_is_no_reading() {
        for nothing in [[0.0; 3], [f64::NAN, 1.0, 0.0], [f64::INFINITY, 0.0, 0.0]] {
            let refusal = Tilt::from_vertical(nothing).unwrap_err();
            assert_eq!(
                refusal.to_string(),
                "the phone says nothing of the vertical: use a level and tape"
            );
        }
    }
}
