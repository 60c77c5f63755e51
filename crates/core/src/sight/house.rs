//! The house as far as a photo of it is marked: places in plan, a slope, heights.

use super::mark::{Mark, Spot};
use super::refusal::SightError;
use crate::survey::Point;
use crate::units::{Figure, Length};

/// Where the marked things of one house lie in plan, and how well that is known.
#[derive(Clone, Debug, PartialEq)]
pub struct House {
    /// Eave corners.
    pub corners: Vec<PlanCorner>,
    /// Ridge ends and gable tops.
    pub peaks: Vec<Peak>,
    /// Height of the eaves above the ground under them. `None` if it was not taped.
    pub eave_height: Option<Figure<Length>>,
}

/// An eave corner in plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanCorner {
    /// Where.
    pub at: Point,
    /// One standard deviation along each axis.
    pub sigma: Length,
}

/// A ridge end or gable top: the slopes of two eaves meet there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// Where, in plan.
    pub at: Point,
    /// Two eave corners straight across the ridge from each other: the run of a slope is half of
    /// what lies between them.
    pub across: [usize; 2],
    /// One standard deviation of its place across the ridge.
    pub sigma_across: Length,
    /// One standard deviation of its place along the ridge.
    pub sigma_along: Length,
}

/// A gable end seen from outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GableEnd {
    /// Taped distance between its eave corners.
    pub width: Figure<Length>,
    /// How far its top may lie off the middle: one standard deviation.
    pub top_off_middle: Length,
}

impl GableEnd {
    /// As a house: corner 0 is the left one as it is looked at, corner 1 the right one, peak 0 the
    /// top.
    #[must_use]
    pub fn house(&self) -> House {
        let Figure {
            value: width,
            sigma,
        } = self.width;
        let corner = |feet: f64| PlanCorner {
            at: Point { x: feet, y: 0.0 },
            // Two corners share what the tape may be off.
            sigma: Length::feet(sigma.in_feet() / 2.0_f64.sqrt()),
        };
        let width = width.in_feet();
        House {
            corners: vec![corner(0.0), corner(width)],
            peaks: vec![Peak {
                at: Point {
                    x: width / 2.0,
                    y: 0.0,
                },
                across: [0, 1],
                sigma_across: self.top_off_middle,
                // Rake boards stand in one plane, a quarter inch of thirty feet.
                sigma_along: Length::feet(width.abs() / 1500.0),
            }],
            eave_height: None,
        }
    }
}

/// Feet of spread of the ground under an eave corner, as a share of its width: what is marked is
/// what is seen, a wall's foot or a splash line (judged).
const FOOT_SHARE: f64 = 1.0 / 300.0;

/// The house in numbers, feet, with what the marks ask of it.
#[derive(Clone, Debug)]
pub(super) struct MarkedHouse {
    /// Marks in an order of their own, so that the order in which they were set changes nothing.
    pub marks: Vec<Mark>,
    /// Plan and spread of each corner.
    pub corners: Vec<([f64; 2], f64)>,
    /// Plan, spread across and along, corners across of each peak.
    pub peaks: Vec<MarkedPeak>,
    pub eave_height: Option<[f64; 2]>,
    pub foot_sigma: f64,
    /// The greatest of the plan, feet.
    pub size: f64,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct MarkedPeak {
    pub at: [f64; 2],
    pub across: [usize; 2],
    pub sigmas: [f64; 2],
    /// Direction across, a unit.
    pub over: [f64; 2],
}

impl MarkedHouse {
    pub fn new(house: &House, marks: &[Mark], frame: [f64; 2]) -> Result<MarkedHouse, SightError> {
        let mut marks = marks.to_vec();
        marks.sort_by_key(|mark| mark.of);
        sound_marks(house, &marks, frame)?;
        let corners: Vec<([f64; 2], f64)> = house
            .corners
            .iter()
            .enumerate()
            .map(|(k, corner)| {
                let at = place(corner.at).ok_or(SightError::NoPlan { of: Spot::Eave(k) })?;
                let sigma = spread(corner.sigma).ok_or(SightError::NoPlan { of: Spot::Eave(k) })?;
                Ok((at, sigma))
            })
            .collect::<Result<_, SightError>>()?;
        let peaks: Vec<MarkedPeak> = house
            .peaks
            .iter()
            .enumerate()
            .map(|(k, peak)| {
                seen_peak(peak, &corners).ok_or(SightError::NoPlan { of: Spot::Peak(k) })
            })
            .collect::<Result<_, SightError>>()?;
        let eave_height = match house.eave_height {
            None => None,
            Some(height) => {
                let known = spread(height.value).zip(spread(height.sigma));
                let (height, sigma) = known.ok_or(SightError::NoEaveHeight)?;
                Some([height, sigma])
            }
        };
        let far = |from: f64, corner: &([f64; 2], f64)| {
            let (first, at) = (corners[0].0, corner.0);
            from.max((at[0] - first[0]).hypot(at[1] - first[1]))
        };
        let size = corners.iter().fold(0.0, far);
        Ok(MarkedHouse {
            marks,
            foot_sigma: FOOT_SHARE * size,
            size,
            corners,
            peaks,
            eave_height,
        })
    }

    pub fn count(&self, is: impl Fn(Spot) -> bool) -> usize {
        self.marks.iter().filter(|mark| is(mark.of)).count()
    }
}

fn sound_marks(house: &House, sorted: &[Mark], frame: [f64; 2]) -> Result<(), SightError> {
    for mark in sorted {
        let within = |at: f64, most: f64| at.is_finite() && (-most..=2.0 * most).contains(&at);
        if !within(mark.at[0], frame[0]) || !within(mark.at[1], frame[1]) {
            return Err(SightError::OffPicture { of: mark.of });
        }
        let known = match mark.of {
            Spot::Eave(k) | Spot::Foot(k) => k < house.corners.len(),
            Spot::Peak(k) => k < house.peaks.len(),
        };
        if !known {
            return Err(SightError::NoPlan { of: mark.of });
        }
    }
    for pair in sorted.windows(2) {
        if pair[0].of == pair[1].of {
            return Err(SightError::MarkedTwice { of: pair[0].of });
        }
    }
    let count = |is: fn(Spot) -> bool| sorted.iter().filter(|mark| is(mark.of)).count();
    let eaves = count(|of| matches!(of, Spot::Eave(_)));
    let peaks = count(|of| matches!(of, Spot::Peak(_)));
    match (eaves, peaks) {
        (1, 1) if sorted.len() == 2 => Err(SightError::OneRake),
        (_, 0) | (0 | 1, _) => Err(SightError::TooFew { eaves, peaks }),
        (_, _) => Ok(()),
    }
}

/// Feet further than this from the first axes are no house.
const FARTHEST: f64 = 100_000.0;

fn place(at: Point) -> Option<[f64; 2]> {
    let near = |feet: f64| feet.abs() <= FARTHEST;
    (near(at.x) && near(at.y)).then_some([at.x, at.y])
}

fn spread(sigma: Length) -> Option<f64> {
    const LEAST: f64 = 1e-4;
    let feet = sigma.in_feet();
    (LEAST..=FARTHEST).contains(&feet).then_some(feet)
}

fn seen_peak(peak: &Peak, corners: &[([f64; 2], f64)]) -> Option<MarkedPeak> {
    /// Feet: eaves nearer than this to each other carry no roof.
    const NARROWEST: f64 = 0.5;
    let [from, to] = peak.across;
    let (from_at, to_at) = (corners.get(from)?.0, corners.get(to)?.0);
    let (x, y) = (to_at[0] - from_at[0], to_at[1] - from_at[1]);
    let between = x.hypot(y);
    if between < NARROWEST {
        return None;
    }
    Some(MarkedPeak {
        at: place(peak.at)?,
        across: peak.across,
        sigmas: [spread(peak.sigma_across)?, spread(peak.sigma_along)?],
        over: [x / between, y / between],
    })
}
