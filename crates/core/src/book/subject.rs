//! What an entry is about. Entries about one subject form its story.

use super::roof_observed::ObservedOverLeg;
use super::thing::Thing;

/// What an entry is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A thing that is measured, photographed or numbered.
    Thing(Thing),
    /// The corner at the far end of a leg, from 1.
    CornerAfter(u32),
    /// What rises at a leg, from 1.
    EndOf(u32),
    /// The pitch of the face that rises from a leg, from 1.
    PitchOf(u32),
    /// The covering at a leg, from 1; `None` means at no named place.
    CoveringAt(Option<u32>),
    /// The deck at a leg, from 1; `None` means at no named place.
    DeckAt(Option<u32>),
    /// One question about the roof over a leg, from 1.
    RoofObservedAt(u32, RoofQuestion),
    /// A rate of the firm, by the path of its key.
    Rate(String),
    /// One question of a visit, by [`super::visit::VisitNote::about`].
    Visit(String),
}

/// A question that an observation of the roof over a leg answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoofQuestion {
    /// Gable or slope?
    End,
    /// How many faces?
    FaceCount,
}

impl From<ObservedOverLeg> for RoofQuestion {
    fn from(observed: ObservedOverLeg) -> RoofQuestion {
        match observed {
            ObservedOverLeg::Gable | ObservedOverLeg::Slope => RoofQuestion::End,
            ObservedOverLeg::Faces { .. } => RoofQuestion::FaceCount,
        }
    }
}

impl Subject {
    /// Whether a new entry about this subject replaces the earlier ones. Measurements do not
    /// replace each other: all readings of one thing are kept.
    #[must_use]
    pub fn keeps_last_only(&self) -> bool {
        match self {
            Subject::CornerAfter(_)
            | Subject::EndOf(_)
            | Subject::CoveringAt(_)
            | Subject::DeckAt(_)
            | Subject::RoofObservedAt(..)
            | Subject::Rate(_)
            | Subject::Visit(_) => true,
            Subject::Thing(_) | Subject::PitchOf(_) => false,
        }
    }
}
