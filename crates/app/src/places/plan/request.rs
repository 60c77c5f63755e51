//! What the plan is asked.

use eavebook_core::book::kinds::{
    DeckKind, EndKind, GableMark, ItemKind, ObservedOverLeg, PitchRead, SaddleObserved,
};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A request of the plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum PlanRequest {
    /// What rises at a leg. Reply: `Job`.
    LegEnd {
        /// Which job.
        job: Uuid,
        /// The leg, from 1.
        leg: u32,
        /// Slope, gable, wall.
        end: EndKind,
    },
    /// A slope read. Reply: `Job`.
    Pitch {
        /// Which job.
        job: Uuid,
        /// The leg from which the face rises, from 1.
        leg: u32,
        /// How, with what was read.
        read: PitchRead,
    },
    /// Looks at the tilt of a phone that is being held still on a slope. Books nothing. Reply:
    /// `Hold`.
    HoldStill {
        /// The oldest first.
        looks: Vec<TiltSample>,
    },
    /// A slope worked out from marks on a photo of the gable end. Reply: `Job`.
    SightPitch {
        /// Which job.
        job: Uuid,
        /// The leg from which the face rises, from 1.
        leg: u32,
        /// Entry of the photo.
        photo: Uuid,
        /// Points across and down the picture, upright as it is looked at.
        size: [u32; 2],
        /// What was marked.
        marks: Vec<GableMark>,
        /// Slopes booked before it: the same request said twice books once.
        after: u32,
    },
    /// A slope captured with the phone, from the looks of its last two seconds. Reply: `Job`.
    CapturePitch {
        /// Which job.
        job: Uuid,
        /// The leg from which the face rises, from 1.
        leg: u32,
        /// The oldest first.
        looks: Vec<TiltSample>,
        /// Turned end for end since the one before.
        reversed: bool,
        /// Slopes booked before it: the same request said twice books once.
        after: u32,
    },
    /// Something stands out of the face of a leg. Reply: `Job`.
    AddItem {
        /// Which job.
        job: Uuid,
        /// The leg from which the face rises, from 1.
        leg: u32,
        /// What it is.
        item: ItemKind,
        /// Items booked before it: the same request said twice books once.
        after: u32,
    },
    /// Whether a saddle stands behind a chimney. Reply: `Job`.
    Saddle {
        /// Which job.
        job: Uuid,
        /// The number of the chimney.
        number: u32,
        /// What was seen.
        seen: SaddleObserved,
    },
    /// What lies on the roof, as seen at one place. Reply: `Job`.
    Layers {
        /// Which job.
        job: Uuid,
        /// How many layers, where they were counted.
        layers: Option<u32>,
        /// What it is, in the words of the rates.
        kind: Option<String>,
        /// The leg at whose edge it was seen, from 1; `None` if no place was named.
        leg: Option<u32>,
    },
    /// What the covering is nailed to, as seen at one place. Reply: `Job`.
    Deck {
        /// Which job.
        job: Uuid,
        /// Planks or sheets.
        kind: DeckKind,
        /// The leg at whose edge it was seen, from 1; `None` if no place was named.
        leg: Option<u32>,
    },
    /// What was seen of the roof over a leg, to be compared with what is computed. Reply: `Job`.
    #[serde(rename = "roof_seen")]
    RoofObserved {
        /// Which job.
        job: Uuid,
        /// The leg, from 1.
        leg: u32,
        /// What was seen over it.
        over: ObservedOverLeg,
    },
    /// The plan as a leaf of the screen shows it; while the line is open there is none. Reply:
    /// `Plan`.
    Plan {
        /// Which job.
        job: Uuid,
        /// The width there is, px of the page.
        width: f64,
        /// The greatest height of the house on it.
        tallest: f64,
        /// Size of its letters: as large as the reader has them.
        letters: f64,
    },
    /// The roof as a solid, from one place. Reply: `Solid`.
    Solid {
        /// Which job.
        job: Uuid,
        /// From where.
        from: SeenFrom,
    },
}

/// One look at the tilt of this device.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TiltSample {
    /// Milliseconds on a clock that only goes forward.
    pub at_ms: f64,
    /// Front to back, degrees, as the device tells it.
    pub beta: f64,
}

/// From where the roof is seen as a solid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum SeenFrom {
    /// From the street.
    Front,
    /// From the side that is right from the street.
    Right,
    /// From behind.
    Back,
    /// From the side that is left from the street.
    Left,
    /// From above the street, over the front's right corner.
    StreetCorner,
}
