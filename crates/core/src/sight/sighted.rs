//! From marks to what is said of a roof.

use super::bundle::{Bundle, Fit, HEIGHT, SLOPE};
use super::camera::{Camera, Lens};
use super::house::{House, MarkedHouse};
use super::mark::{Mark, Spot};
use super::refusal::{SightCaution, SightError};
use super::start::starts;
use crate::survey::{PitchReading, Way};
use crate::units::{Figure, Length, Pitch};
use nalgebra::DMatrix;

/// No pitch from one photo is said to be known better than this, rise in 12: four to five times what
/// marks alone give (judged; no field figures stand behind it).
pub const LEAST_SIGMA: Pitch = Pitch::rise_in_12(0.25);
/// A pitch known worse than this from its marks is none, rise in 12.
const MOST_SIGMA: f64 = 1.0;
/// Spread of a mark set with care, as a share of the picture's diagonal: 2 pixels of 4000 x 3000.
const MARK_SHARE: f64 = 2.0 / 5000.0;
/// The steepest slope of a roof, rise in 12.
const STEEPEST: f64 = 48.0;

/// What marks on one photo say.
#[derive(Clone, Debug, PartialEq)]
pub struct SightResult {
    /// The pitch: the mean of two where the top is off the middle. Its sigma is never below
    /// [`LEAST_SIGMA`].
    pub pitch: Figure<Pitch>,
    /// One standard deviation from the marks, the vertical, the focal length and the tape alone.
    pub sigma_of_marks: Pitch,
    /// One for each peak of the house that is marked.
    pub peaks: Vec<PeakSighted>,
    /// Height of the eaves above the ground. `None` if no ground is marked.
    pub eave_height: Option<Figure<Length>>,
    /// How far the camera stood from the middle of the marked eave corners, in plan.
    pub distance: Length,
    /// Root mean square distance of marks and fit, pixels.
    pub off_px: f64,
    /// What to be careful of.
    pub cautions: Vec<SightCaution>,
}

/// A ridge end or gable top as sighted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakSighted {
    /// Index in the house.
    pub peak: usize,
    /// Its height above the eaves.
    pub rise: Figure<Length>,
    /// Its offset from its nominal position, across the ridge.
    pub off_middle: Figure<Length>,
}

impl SightResult {
    /// As a reading of a slope beside others.
    #[must_use]
    pub fn reading(&self) -> PitchReading {
        PitchReading {
            sigma: Some(self.pitch.value.spread_in_angle(self.pitch.sigma.in_12())),
            ..PitchReading::new(self.pitch.value.angle(), Way::Sighted)
        }
    }
}

/// Works out pitch and heights from marks on a photo.
///
/// Two eave corners of the plan and one peak at the least. The camera is found by itself: no start
/// is asked for. Marks may stand in any order.
///
/// # Errors
/// [`SightError`], with the remedy, where the marks are too few, are of something else than they name,
/// fit two roofs, or leave the pitch open.
pub fn sight(camera: &Camera, house: &House, marks: &[Mark]) -> Result<SightResult, SightError> {
    let lens = Lens::new(camera).ok_or(SightError::NoCamera)?;
    let seen = MarkedHouse::new(house, marks, [camera.width_px, camera.height_px])?;
    let bundle = Bundle {
        seen: &seen,
        lens: &lens,
        mark_px: MARK_SHARE * camera.width_px.hypot(camera.height_px),
    };
    let mut fits: Vec<Fit> = starts(&bundle)
        .into_iter()
        .filter_map(|start| bundle.fit(start))
        .collect();
    fits.sort_by(|a, b| a.chi2.total_cmp(&b.chi2));
    let best = fits.first().ok_or(SightError::NoPose)?;
    let spare = f64::from(bundle.spare().max(0));
    if best.chi2 > loosest(spare) {
        return Err(SightError::DoesNotFit {
            off_px: off_px(&bundle, best),
        });
    }
    one_roof(&fits)?;
    let pitch = best.state.slope * 12.0;
    if pitch.is_nan() || pitch <= 0.05 {
        return Err(SightError::NotAbove);
    }
    if pitch > STEEPEST {
        return Err(SightError::TooWeak);
    }
    told(&bundle, best, camera)
}

/// Weighted sums of squares past this come from marks on other points than they name: five times
/// the spread of a careful mark, and what chance adds with few spare rows.
fn loosest(spare: f64) -> f64 {
    25.0 * spare.max(1.0)
}

/// Roofs that fit nearly as well and are not the same.
fn one_roof(fits: &[Fit]) -> Result<(), SightError> {
    /// Less than this in the sum of squares nobody can tell apart (95 % of one degree of freedom).
    const AS_WELL: f64 = 4.0;
    /// Rise in 12.
    const OTHER: f64 = 0.75;
    let Some(best) = fits.first() else {
        return Ok(());
    };
    let pitch = |fit: &Fit| Pitch::rise_in_12(12.0 * fit.state.slope);
    for fit in &fits[1..] {
        let apart = (pitch(fit).in_12() - pitch(best).in_12()).abs();
        if fit.chi2 - best.chi2 < AS_WELL && apart > OTHER && fit.state.slope > 0.0 {
            let (this, other) = (pitch(best), pitch(fit));
            return Err(SightError::FitsTwo { this, other });
        }
    }
    Ok(())
}

/// Of the marks alone: what ties the plan and the lens is no distance in the picture.
fn off_px(bundle: &Bundle<'_>, fit: &Fit) -> f64 {
    let rows = 2.0 * bundle.seen.marks.len() as f64;
    bundle.mark_px * (bundle.chi2_of_marks(&fit.state) / rows).sqrt()
}

fn told(bundle: &Bundle<'_>, best: &Fit, camera: &Camera) -> Result<SightResult, SightError> {
    let state = &best.state;
    let covariance = covariance(bundle, best).ok_or(SightError::TooWeak)?;
    let sigma_of = |of: &[(usize, f64)]| {
        let mut variance = 0.0;
        for (a, by_a) in of {
            for (b, by_b) in of {
                variance += by_a * by_b * covariance[(*a, *b)];
            }
        }
        variance.max(0.0).sqrt()
    };
    let sigma = 12.0 * sigma_of(&[(SLOPE, 1.0)]);
    if sigma.is_nan() || sigma > MOST_SIGMA {
        return Err(SightError::TooWeak);
    }
    let seen = bundle.seen;
    let mut peaks = Vec::new();
    for mark in &seen.marks {
        let Spot::Peak(peak) = mark.of else { continue };
        let (rise, of) = bundle.rise(peak, state);
        let (at, off) = bundle.off_middle(peak, state);
        peaks.push(PeakSighted {
            peak,
            rise: in_feet(rise, sigma_of(&of)),
            off_middle: in_feet(off, sigma_of(&[(at, 1.0)])),
        });
    }
    let eave_height = bundle
        .has_feet()
        .then(|| in_feet(state.height, sigma_of(&[(HEIGHT, 1.0)])));
    let corners: Vec<[f64; 2]> = seen
        .marks
        .iter()
        .filter_map(|mark| match mark.of {
            Spot::Eave(k) => Some(seen.corners[k].0),
            Spot::Foot(_) | Spot::Peak(_) => None,
        })
        .collect();
    let middle = |axis: usize| {
        corners.iter().map(|corner| corner[axis]).sum::<f64>() / corners.len().max(1) as f64
    };
    let off_px = off_px(bundle, best);
    Ok(SightResult {
        pitch: Figure {
            value: Pitch::rise_in_12(12.0 * state.slope),
            sigma: Pitch::rise_in_12(sigma.max(LEAST_SIGMA.in_12())),
        },
        sigma_of_marks: Pitch::rise_in_12(sigma),
        cautions: cautions(bundle, camera, &peaks, off_px),
        peaks,
        eave_height,
        distance: Length::feet((state.camera.x - middle(0)).hypot(state.camera.y - middle(1))),
        off_px,
    })
}

/// A length with its standard deviation, both in feet.
fn in_feet(value: f64, sigma: f64) -> Figure<Length> {
    Figure {
        value: Length::feet(value),
        sigma: Length::feet(sigma),
    }
}

/// Inverse of the normal matrix, wider where the marks fit worse than they should.
fn covariance(bundle: &Bundle<'_>, best: &Fit) -> Option<DMatrix<f64>> {
    let (matrix, _) = bundle.normal(&best.state)?;
    // Feet, radians and slopes side by side: scaled to ones on the diagonal first.
    let scale: Vec<f64> = matrix
        .diagonal()
        .iter()
        .map(|own| own.sqrt().recip())
        .collect();
    let n = scale.len();
    let scaled = DMatrix::from_fn(n, n, |a, b| matrix[(a, b)] * scale[a] * scale[b]);
    let inverse = scaled.cholesky()?.inverse();
    // Few spare rows say little of the fit, so they count beside a few that fit as they should.
    const AS_THEY_SHOULD: f64 = 4.0;
    let spare = f64::from(bundle.spare().max(0));
    let wider = ((best.chi2 + AS_THEY_SHOULD) / (spare + AS_THEY_SHOULD)).max(1.0);
    let covariance = DMatrix::from_fn(n, n, |a, b| wider * inverse[(a, b)] * scale[a] * scale[b]);
    covariance
        .iter()
        .all(|each| each.is_finite())
        .then_some(covariance)
}

fn cautions(
    bundle: &Bundle<'_>,
    camera: &Camera,
    peaks: &[PeakSighted],
    off_px: f64,
) -> Vec<SightCaution> {
    /// Feet off the middle that are worth a word.
    const OFF_MIDDLE: f64 = 0.3;
    let seen = bundle.seen;
    let mut all = vec![SightCaution::PhotoAlone];
    if camera.up.is_none() {
        all.push(SightCaution::NoVertical);
    }
    if camera.focal_35.is_none() {
        all.push(SightCaution::NoFocalLength);
    }
    for peak in peaks {
        let Figure { value: by, sigma } = peak.off_middle;
        if by.in_feet().abs() > OFF_MIDDLE.max(2.0 * sigma.in_feet()) {
            let peak = peak.peak;
            all.push(SightCaution::OffMiddle { peak, by });
        }
    }
    let eaves = seen.count(|of| matches!(of, Spot::Eave(_)));
    if eaves == 2 && seen.corners.len() > 2 {
        all.push(SightCaution::TwoCorners);
    }
    if bundle.spare() < 2 {
        all.push(SightCaution::Unchecked);
    }
    if off_px > 2.5 * bundle.mark_px {
        all.push(SightCaution::LooseFit { off_px });
    }
    all
}
