//! Why marks on a photo tell no pitch, and what to be careful of where they do.

use super::mark::Spot;
use crate::units::{Length, Pitch};
use std::fmt;

/// Why marks tell no pitch. Its `Display` is a sentence without its stop.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum SightError {
    /// A rake and nothing else: its angle in the picture is not its pitch.
    #[error(
        "the angle of one rake in a picture is no pitch, it can be off by 3 in 12: mark both eave \
         corners and the top between them"
    )]
    OneRake,
    /// Fewer marks than a slope needs.
    #[error(
        "{eaves} eave corners and {peaks} ridge ends are marked: mark at least two eave corners and \
         one ridge end or gable top"
    )]
    TooFew {
        /// Eave corners marked.
        eaves: usize,
        /// Peaks marked.
        peaks: usize,
    },
    /// One thing marked twice.
    #[error("{of} is marked twice: take one of the two marks out")]
    MarkedTwice {
        /// Which.
        of: Spot,
    },
    /// A mark far outside the picture, or no number.
    #[error("the mark of {of} lies off the picture: set it again")]
    OffPicture {
        /// Which.
        of: Spot,
    },
    /// A marked thing whose place in plan is not known, or is of no house.
    #[error("where {of} lies in plan is not known: read its legs first, or take its mark out")]
    NoPlan {
        /// Which.
        of: Spot,
    },
    /// An eave height that nobody measured.
    #[error("the eave height is no height of a house: tape it, or leave it out")]
    NoEaveHeight,
    /// Numbers of no camera.
    #[error(
        "the picture's size, focal length or vertical is that of no camera: send the photo as the \
         camera made it"
    )]
    NoCamera,
    /// Nothing fits at all.
    #[error(
        "no roof over this plan looks like that from anywhere: look whether each mark is on the \
         thing that it names"
    )]
    NoPose,
    /// The best fit is far from the marks.
    #[error(
        "the marks fit no roof over this plan, the best is {:.0} pixels off: one is on another \
         point than it names, or the plan is of another house",
        off_px
    )]
    DoesNotFit {
        /// Root mean square distance of marks and fit, pixels.
        off_px: f64,
    },
    /// Two roofs fit.
    #[error(
        "the marks fit {} in 12 as well as {} in 12: mark the ground under a corner too, or take \
         the photo from off a corner", one_decimal(*this), one_decimal(*other)
    )]
    FitsTwo {
        /// One.
        this: Pitch,
        /// The other.
        other: Pitch,
    },
    /// Too little is known.
    #[error(
        "the marks leave the pitch open by more than 1 in 12: mark the ground under the corners or \
         a third eave corner, or take the photo from off a corner with the phone's vertical"
    )]
    TooWeak,
    /// A roof upside down.
    #[error(
        "the top comes out at or under the eaves: look whether each mark is on the thing that it \
         names"
    )]
    NotAbove,
}

fn one_decimal(pitch: Pitch) -> f64 {
    (pitch.in_12() * 10.0).round() / 10.0
}

impl fmt::Display for Spot {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Spot::Eave(corner) => write!(f, "eave corner {corner}"),
            Spot::Foot(corner) => write!(f, "the ground under corner {corner}"),
            Spot::Peak(peak) => write!(f, "ridge end {peak}"),
        }
    }
}

/// What to be careful of in a pitch from a photo.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SightCaution {
    /// Always: what marks on a photo cannot know.
    PhotoAlone,
    /// The phone said nothing of the vertical.
    NoVertical,
    /// The file says nothing of the focal length, or of another picture's.
    NoFocalLength,
    /// A gable top off the middle, or a ridge end off its place.
    OffMiddle {
        /// Which peak.
        peak: usize,
        /// How far.
        by: Length,
    },
    /// Two eave corners of a hip, the front alone.
    TwoCorners,
    /// Nothing would show a mark on a wrong point.
    Unchecked,
    /// The fit is worse than marks set with care.
    LooseFit {
        /// Root mean square distance of marks and fit, pixels.
        off_px: f64,
    },
}

impl fmt::Display for SightCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SightCaution::PhotoAlone => f.write_str(
                "A pitch from marks on one photo is good to a quarter inch in 12 at best: boards, \
                 gutters and the lens are not in it. Read it on the roof or with a level and tape \
                 before you order.",
            ),
            SightCaution::NoVertical => f.write_str(
                "The phone said nothing of the vertical, so a house that leans in the picture \
                 leans here.",
            ),
            SightCaution::NoFocalLength => f.write_str(
                "The file says nothing of the lens that is of this picture: a usual one is taken.",
            ),
            SightCaution::OffMiddle { peak, by } => write!(
                f,
                "Ridge end {peak} comes out {:.1} ft off the middle: its two slopes differ, and \
                 this pitch is the mean of them.",
                by.in_feet().abs()
            ),
            SightCaution::TwoCorners => f.write_str(
                "Two eave corners are marked: stand off a corner and show three, and the pitch is \
                 known twice as well.",
            ),
            SightCaution::Unchecked => f.write_str(
                "No mark checks another here: one on a wrong point would not show. Mark the ground \
                 under the corners too.",
            ),
            SightCaution::LooseFit { off_px } => write!(
                f,
                "The marks lie {off_px:.0} pixels off the roof that fits them best: set them again \
                 where the picture is sharp.",
            ),
        }
    }
}
