//! What an entry is about, in the words of the screens: `leg 4`, `tie 2-5`, `pipe 1`.

use super::tape_marks::TapeMarks;
use serde::{Deserialize, Serialize};

/// What an entry is about. Legs, corners and items are counted from 1, as a person counts them.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(tag = "thing", rename_all = "snake_case")]
pub enum Thing {
    /// A side of the outline.
    Leg {
        /// Its number.
        leg: u32,
    },
    /// A check length between two corners.
    Tie {
        /// First corner.
        from: u32,
        /// Second corner.
        to: u32,
    },
    /// What stands out of the roof, as a whole.
    Item {
        /// What it is.
        item: ItemKind,
        /// Its number among those of its kind.
        number: u32,
    },
    /// One size of what stands out of the roof.
    Size {
        /// What it is.
        item: ItemKind,
        /// Its number among those of its kind.
        number: u32,
        /// Which of its sizes.
        size: SizeOf,
    },
    /// How far the eave of a leg stands out past the wall.
    Overhang {
        /// The leg.
        leg: u32,
    },
    /// The face that rises from a leg: what is photographed or said of its slope, which is booked
    /// as a pitch and never read with a tape alone.
    Slope {
        /// The leg.
        leg: u32,
    },
    /// How high the eave lies above the ground.
    EaveHeight,
    /// How high the highest ridge lies above the eaves, as it was seen: compared with the computed
    /// one.
    RidgeHeight,
    /// What the covering is nailed to, as a whole.
    Deck,
    /// One size of the deck.
    DeckSize {
        /// Which.
        size: DeckSizeOf,
    },
    /// What lies on the roof now.
    Layers,
    /// What turned up once the old roof was off.
    Change {
        /// Its number.
        number: u32,
    },
}

/// What stands out of a roof.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ItemKind {
    /// A vent pipe.
    Pipe,
    /// The mast of a service or an aerial.
    Mast,
    /// A metal flue.
    Flue,
    /// A chimney.
    Chimney,
    /// A skylight.
    Skylight,
    /// A box vent.
    BoxVent,
    /// A fan.
    Fan,
    /// A dish.
    Dish,
    /// Solar panels.
    Solar,
    /// Anything else.
    Other,
}

impl ItemKind {
    /// Every kind, in the order in which they are offered.
    pub const ALL: [ItemKind; 10] = [
        ItemKind::Pipe,
        ItemKind::BoxVent,
        ItemKind::Fan,
        ItemKind::Skylight,
        ItemKind::Chimney,
        ItemKind::Flue,
        ItemKind::Mast,
        ItemKind::Dish,
        ItemKind::Solar,
        ItemKind::Other,
    ];

    /// In words: `box vent`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            ItemKind::Pipe => "pipe",
            ItemKind::Mast => "mast",
            ItemKind::Flue => "flue",
            ItemKind::Chimney => "chimney",
            ItemKind::Skylight => "skylight",
            ItemKind::BoxVent => "box vent",
            ItemKind::Fan => "fan",
            ItemKind::Dish => "dish",
            ItemKind::Solar => "solar",
            ItemKind::Other => "other",
        }
    }

    /// The sizes that are asked of it, in the order in which they are read.
    #[must_use]
    pub fn sizes(self) -> &'static [SizeOf] {
        match self {
            ItemKind::Pipe | ItemKind::Mast | ItemKind::Flue => &[SizeOf::Across],
            ItemKind::Chimney => &[SizeOf::Width, SizeOf::Depth, SizeOf::Height],
            ItemKind::Skylight => &[SizeOf::Width, SizeOf::Depth],
            ItemKind::BoxVent
            | ItemKind::Fan
            | ItemKind::Dish
            | ItemKind::Solar
            | ItemKind::Other => &[],
        }
    }
}

/// One size of what stands out of a roof.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SizeOf {
    /// Outside diameter.
    Across,
    /// Across the slope.
    Width,
    /// Up the slope.
    Depth,
    /// Above the roof.
    Height,
}

impl SizeOf {
    /// In a word: `width`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            SizeOf::Across => "size",
            SizeOf::Width => "width",
            SizeOf::Depth => "depth",
            SizeOf::Height => "height",
        }
    }
}

/// One size of a deck.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DeckSizeOf {
    /// Gap between planks.
    Gap,
    /// Width of a plank.
    PlankWidth,
    /// Thickness of planks or sheets.
    Thickness,
}

impl DeckSizeOf {
    /// In words: `plank width`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            DeckSizeOf::Gap => "gap",
            DeckSizeOf::PlankWidth => "plank width",
            DeckSizeOf::Thickness => "thickness",
        }
    }
}

/// How long what a tape spans may be, which says how well two readings of it should agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// A length of the house: a leg, a tie, a height.
    House,
    /// A size for a hand rule: a pipe, a chimney, an overhang.
    Hand,
    /// A gap or a thickness.
    Fine,
}

impl Thing {
    /// Its name in lists: `leg 4`, `tie 2-5`, `pipe 1`.
    #[must_use]
    pub fn name(&self) -> String {
        match self {
            Thing::Leg { leg } => format!("leg {leg}"),
            Thing::Tie { from, to } => format!("tie {from}-{to}"),
            Thing::Item { item, number } => format!("{} {number}", item.word()),
            Thing::Size { item, number, size } => {
                format!("{} {number} {}", item.word(), size.word())
            }
            Thing::Overhang { leg } => format!("overhang {leg}"),
            Thing::Slope { leg } => format!("face {leg}"),
            Thing::EaveHeight => "eave height".to_owned(),
            Thing::RidgeHeight => "ridge height".to_owned(),
            Thing::Deck => "deck".to_owned(),
            Thing::DeckSize { size } => format!("deck {}", size.word()),
            Thing::Layers => "layers".to_owned(),
            Thing::Change { number } => format!("change {number}"),
        }
    }

    /// The thing of which this is a size; itself where it is none. Photos of a size are photos of
    /// the whole.
    #[must_use]
    pub fn whole(&self) -> Thing {
        match *self {
            Thing::Size { item, number, .. } => Thing::Item { item, number },
            Thing::DeckSize { .. } => Thing::Deck,
            Thing::Leg { .. }
            | Thing::Tie { .. }
            | Thing::Item { .. }
            | Thing::Overhang { .. }
            | Thing::Slope { .. }
            | Thing::EaveHeight
            | Thing::RidgeHeight
            | Thing::Deck
            | Thing::Layers
            | Thing::Change { .. } => self.clone(),
        }
    }

    /// The leg that it is, or along which it lies.
    #[must_use]
    pub fn leg(&self) -> Option<u32> {
        match self {
            Thing::Leg { leg } | Thing::Overhang { leg } | Thing::Slope { leg } => Some(*leg),
            Thing::Tie { .. }
            | Thing::Item { .. }
            | Thing::Size { .. }
            | Thing::EaveHeight
            | Thing::RidgeHeight
            | Thing::Deck
            | Thing::DeckSize { .. }
            | Thing::Layers
            | Thing::Change { .. } => None,
        }
    }

    /// Whether it is a side of the outline or a check length across it: one whose reading moves
    /// the outline, and whose tape follows an eave or a wall.
    #[must_use]
    pub fn is_of_outline(&self) -> bool {
        matches!(self, Thing::Leg { .. } | Thing::Tie { .. })
    }

    /// How long it may be.
    #[must_use]
    pub fn scale(&self) -> Scale {
        match self {
            Thing::Leg { .. } | Thing::Tie { .. } | Thing::EaveHeight | Thing::RidgeHeight => {
                Scale::House
            }
            Thing::Item { .. }
            | Thing::Size { .. }
            | Thing::Overhang { .. }
            | Thing::Slope { .. }
            | Thing::Change { .. } => Scale::Hand,
            Thing::Deck | Thing::DeckSize { .. } | Thing::Layers => Scale::Fine,
        }
    }

    /// The marks of the tape on which it is read: what is read in the hand in feet and tenths
    /// along the eaves is read in inches on a pipe.
    #[must_use]
    pub fn tape(&self, along_eaves: TapeMarks) -> TapeMarks {
        match (self.scale(), along_eaves) {
            (Scale::Hand | Scale::Fine, TapeMarks::FeetTenths) => TapeMarks::FeetInches,
            (Scale::House | Scale::Hand | Scale::Fine, marks) => marks,
        }
    }
}
