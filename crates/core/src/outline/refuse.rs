//! What is no outline, and what to do about it.

use super::nominal::Nominal;
use crate::survey::{Body, Reading, Sketch, Span};
use crate::units::Angle;

/// Why a body has no outline that could be adjusted.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum AdjustError {
    /// Fewer than three corners enclose nothing.
    #[error("body {body} has {corners} corners: an outline needs at least 3")]
    TooFewCorners {
        /// Which body.
        body: String,
        /// How many it has.
        corners: usize,
    },
    /// More corners than one adjustment takes.
    #[error(
        "body {body} has {corners} corners to adjust: at most {MOST_CORNERS} go into one body, split it or give its corners as known"
    )]
    TooManyCorners {
        /// Which body.
        body: String,
        /// How many it has.
        corners: usize,
    },
    /// The turns do not go once around.
    #[error(
        "the turns of body {body} sum to {sum} degrees: once around is 360 or -360, check the turn at each corner"
    )]
    TurnsDoNotClose {
        /// Which body.
        body: String,
        /// Their sum.
        sum: f64,
    },
    /// Legs that all run one way or back.
    #[error(
        "every leg of body {body} runs one way or back, so it encloses nothing: check the turn at each corner"
    )]
    AllParallel {
        /// Which body.
        body: String,
    },
    /// A number of the sketch is not finite or a spread is not above 0.
    #[error("the {what} of body {body} is no usable number: give a finite one{above}", above = if *what == "spread of the turns" { " above 0" } else { "" })]
    NotANumber {
        /// Which body.
        body: String,
        /// Which number.
        what: &'static str,
    },
    /// A reading names a leg that the outline does not have.
    #[error(
        "reading {reading} names leg {leg}, but body {body} has legs 0 to {last}: name one of them"
    )]
    NoSuchLeg {
        /// Which body.
        body: String,
        /// Which reading.
        reading: String,
        /// The leg named.
        leg: usize,
        /// The last leg there is.
        last: usize,
    },
    /// A reading names a corner that the outline does not have.
    #[error(
        "reading {reading} names corner {corner}, but body {body} has corners 0 to {last}: name one of them"
    )]
    NoSuchCorner {
        /// Which body.
        body: String,
        /// Which reading.
        reading: String,
        /// The corner named.
        corner: usize,
        /// The last corner there is.
        last: usize,
    },
    /// A reading runs from a corner to itself.
    #[error("reading {reading} runs from corner {corner} to itself: name two corners")]
    SameCorner {
        /// Which reading.
        reading: String,
        /// The corner.
        corner: usize,
    },
    /// A length that no tape reads.
    #[error(
        "reading {reading} is {feet} ft: a reading is more than 0 and at most 10,000 ft, read it again"
    )]
    NoLength {
        /// Which reading.
        reading: String,
        /// What it says.
        feet: f64,
    },
    /// A spread that is no spread.
    #[error("reading {reading} has a sigma of {feet} ft: give one above 0, or leave it out")]
    NoSpread {
        /// Which reading.
        reading: String,
        /// What it says.
        feet: f64,
    },
    /// Spreads so unlike that the sums lose every digit.
    #[error(
        "the readings of body {body} have spreads too unlike to be brought together: state sigmas nearer to each other"
    )]
    TooFarApart {
        /// Which body.
        body: String,
    },
    /// An overhang that is no length.
    #[error("reading {reading} has an overhang of {feet} ft: give 0 or more")]
    NoOverhang {
        /// Which reading.
        reading: String,
        /// What it says.
        feet: f64,
    },
}

/// Most corners of one adjusted outline: the normal matrix is dense.
pub const MOST_CORNERS: usize = 200;
/// Longest length that is taken, feet.
const LONGEST: f64 = 10_000.0;
/// How far the turns may be from once around, degrees: rounding, not measuring.
const ROUND_OFF: f64 = 1e-6;

/// Refuses what is no outline.
pub(crate) fn refuse(body: &Body) -> Result<(), AdjustError> {
    let corners = refuse_sketch(body)?;
    body.readings
        .iter()
        .try_for_each(|reading| refuse_reading(&body.id, reading, corners))
}

fn refuse_sketch(body: &Body) -> Result<usize, AdjustError> {
    let not_a_number = |what| AdjustError::NotANumber {
        body: body.id.clone(),
        what,
    };
    let corners = match &body.outline {
        Sketch::Known(corners) => {
            if !corners.iter().all(|p| p.x.is_finite() && p.y.is_finite()) {
                return Err(not_a_number("corners"));
            }
            corners.len()
        }
        Sketch::Turned {
            start,
            heading,
            turns,
            turn_sigma,
        } => {
            if !(start.x.is_finite() && start.y.is_finite()) {
                return Err(not_a_number("start"));
            }
            if !heading.in_degrees().is_finite() {
                return Err(not_a_number("heading"));
            }
            if !(turn_sigma.in_degrees().is_finite() && turn_sigma.in_degrees() > 0.0) {
                return Err(not_a_number("spread of the turns"));
            }
            refuse_turns(&body.id, turns)?;
            turns.len()
        }
    };
    if corners < 3 {
        return Err(AdjustError::TooFewCorners {
            body: body.id.clone(),
            corners,
        });
    }
    Ok(corners)
}

fn refuse_turns(body: &str, turns: &[Angle]) -> Result<(), AdjustError> {
    if turns.len() > MOST_CORNERS {
        return Err(AdjustError::TooManyCorners {
            body: body.to_owned(),
            corners: turns.len(),
        });
    }
    let sum: f64 = turns.iter().map(|t| t.in_degrees()).sum();
    let off = (sum.abs() - 360.0).abs();
    if turns.len() >= 3 && !(off.is_finite() && off < ROUND_OFF) {
        return Err(AdjustError::TurnsDoNotClose {
            body: body.to_owned(),
            sum,
        });
    }
    let units = Nominal::of_turns(turns).units;
    let across = |unit: &[f64; 2]| unit[1].abs();
    if turns.len() >= 3 && units.iter().map(across).all(|part| part < ROUND_OFF) {
        return Err(AdjustError::AllParallel {
            body: body.to_owned(),
        });
    }
    Ok(())
}

fn refuse_reading(body: &str, reading: &Reading, corners: usize) -> Result<(), AdjustError> {
    let id = || reading.id.clone();
    let known_leg = |leg: usize| {
        if leg < corners {
            Ok(())
        } else {
            Err(AdjustError::NoSuchLeg {
                body: body.to_owned(),
                reading: id(),
                leg,
                last: corners - 1,
            })
        }
    };
    let two_corners = |from: usize, to: usize| {
        if let Some(&corner) = [from, to].iter().find(|&&c| c >= corners) {
            return Err(AdjustError::NoSuchCorner {
                body: body.to_owned(),
                reading: id(),
                corner,
                last: corners - 1,
            });
        }
        if from == to {
            return Err(AdjustError::SameCorner {
                reading: id(),
                corner: from,
            });
        }
        Ok(())
    };
    match reading.span {
        Span::Leg(leg) => known_leg(leg)?,
        Span::Tie(from, to) => two_corners(from, to)?,
        Span::Overall {
            from,
            to,
            along_leg,
        } => {
            known_leg(along_leg)?;
            two_corners(from, to)?;
        }
        Span::WallOfLeg { leg, overhangs } => {
            known_leg(leg)?;
            if let Some(bad) = overhangs
                .iter()
                .map(|o| o.in_feet())
                .find(|o| !(0.0..=LONGEST).contains(o))
            {
                return Err(AdjustError::NoOverhang {
                    reading: id(),
                    feet: bad,
                });
            }
        }
    }
    let feet = reading.value.in_feet();
    if !(feet > 0.0 && feet <= LONGEST) {
        return Err(AdjustError::NoLength {
            reading: id(),
            feet,
        });
    }
    match reading.sigma.map(|s| s.in_feet()) {
        Some(feet) if !(feet > 0.0 && feet.is_finite()) => Err(AdjustError::NoSpread {
            reading: id(),
            feet,
        }),
        _ => Ok(()),
    }
}
