//! What is said and seen on a visit beside what is measured: the front, who is here, what they
//! allow, what to beware of, what was promised, and the leaving.

use serde::{Deserialize, Serialize};

/// Body of `visit`: one thing said or seen. The last one about the same thing stands.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "note", rename_all = "snake_case")]
pub enum VisitNote {
    /// Somebody stands before the front and looks at it: the viewer's right is the right side.
    Front {
        /// Where the back camera looks, degrees clockwise from north as a compass reads; none
        /// where the device has no such sense: sides are then set by hand.
        heading: Option<f64>,
    },
    /// Somebody is here.
    Here {
        /// By name, or what they are: "tenant".
        name: String,
        /// They may say yes to work on this house.
        may_say_yes: bool,
    },
    /// Nobody is home: what can be done from the ground is done, and no climbing is asked for.
    GroundOnly {
        /// It is so.
        on: bool,
    },
    /// Somebody allowed something, or took it back.
    Permission {
        /// What.
        what: Permission,
        /// It is allowed.
        given: bool,
        /// Who said so.
        by: Option<String>,
    },
    /// Something to beware of was seen here, or is gone.
    Hazard {
        /// What.
        what: Hazard,
        /// It is here.
        seen: bool,
    },
    /// Somebody elsewhere was told where one is and when one will call.
    CheckIn {
        /// Who was told.
        with: String,
        /// Until when, as said: "3:30 pm".
        until: String,
    },
    /// What was promised to the customer; empty: nothing.
    Promise {
        /// As said.
        words: String,
    },
    /// One of the short list was looked for.
    Looked {
        /// What.
        what: WalkTarget,
        /// What came of it.
        found: Found,
        /// How many, where somebody counted.
        count: Option<u32>,
    },
    /// The visit is over.
    Left {
        /// Why open things were left, where a reason was given.
        reason: Option<String>,
    },
}

impl VisitNote {
    /// What it is about: two notes about one thing are two answers to one question, and the last
    /// one stands. Each promise and each leaving is one of its own.
    #[must_use]
    pub fn about(&self) -> Option<String> {
        match self {
            VisitNote::Front { .. } => Some("front".to_owned()),
            VisitNote::Here { name, .. } => Some(format!("here {}", name.trim().to_lowercase())),
            VisitNote::GroundOnly { .. } => Some("ground only".to_owned()),
            VisitNote::Permission { what, .. } => Some(format!("permission {}", what.word())),
            VisitNote::Hazard { what, .. } => Some(format!("hazard {}", what.word())),
            VisitNote::CheckIn { .. } => Some("check-in".to_owned()),
            VisitNote::Looked { what, .. } => Some(format!("looked {}", what.word())),
            VisitNote::Promise { .. } | VisitNote::Left { .. } => None,
        }
    }
}

/// What is looked for on a walk round a house beside its sides.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WalkTarget {
    /// Vents in the roof, the gables and the soffit.
    Vents,
    /// Gutters and their downspouts.
    Gutters,
    /// Solar panels, which come off before the roof does.
    Solar,
    /// A place for the bin.
    Bin,
    /// A driveway, before a truck stood on it.
    Driveway,
    /// The attic.
    Attic,
}

impl WalkTarget {
    /// All of them, in the order in which they are asked.
    pub const ALL: [WalkTarget; 6] = [
        WalkTarget::Vents,
        WalkTarget::Gutters,
        WalkTarget::Solar,
        WalkTarget::Bin,
        WalkTarget::Driveway,
        WalkTarget::Attic,
    ];

    /// In a word or two: `bin place`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            WalkTarget::Vents => "vents",
            WalkTarget::Gutters => "gutters",
            WalkTarget::Solar => "solar panels",
            WalkTarget::Bin => "bin place",
            WalkTarget::Driveway => "driveway",
            WalkTarget::Attic => "attic",
        }
    }

    /// Whether it is counted.
    #[must_use]
    pub fn is_counted(self) -> bool {
        match self {
            WalkTarget::Vents | WalkTarget::Gutters | WalkTarget::Solar => true,
            WalkTarget::Bin | WalkTarget::Driveway | WalkTarget::Attic => false,
        }
    }
}

/// What came of looking.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Found {
    /// It was seen.
    Seen,
    /// There is none.
    None,
    /// Nobody looked.
    NotLooked,
}

/// What the people of a house are asked for.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Permission {
    /// To walk on the land, all round.
    Walk,
    /// To photograph the house.
    Photograph,
    /// To go up a ladder, on the roof.
    Climb,
    /// To lift an edge of the covering.
    LiftEdge,
    /// To look into the attic.
    Attic,
}

impl Permission {
    /// All of them, in the order in which they are asked.
    pub const ALL: [Permission; 5] = [
        Permission::Walk,
        Permission::Photograph,
        Permission::Climb,
        Permission::LiftEdge,
        Permission::Attic,
    ];

    /// In a word or two: `lift an edge`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Permission::Walk => "walk round",
            Permission::Photograph => "photograph",
            Permission::Climb => "climb",
            Permission::LiftEdge => "lift an edge",
            Permission::Attic => "look into the attic",
        }
    }

    /// Whether it needs a ladder: while one stays on the ground it is not asked.
    #[must_use]
    pub fn is_climbing(self) -> bool {
        matches!(self, Permission::Climb | Permission::LiftEdge)
    }
}

/// What to beware of at a house.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hazard {
    /// Ice, snow, frost or wet.
    Ice,
    /// Wind.
    Wind,
    /// The wire from the street to the house.
    ServiceDrop,
    /// High eaves or a steep roof.
    HighOrSteep,
    /// Ground on which no ladder stands firm.
    SoftGround,
    /// A deck that looks or feels weak.
    WeakDeck,
    /// Skylights that snow or dirt hides.
    Skylights,
    /// Bees, wasps, a dog.
    Animals,
    /// Nobody else is here.
    Alone,
}

impl Hazard {
    /// All of them, in the order in which they are asked.
    pub const ALL: [Hazard; 9] = [
        Hazard::Ice,
        Hazard::Wind,
        Hazard::ServiceDrop,
        Hazard::HighOrSteep,
        Hazard::SoftGround,
        Hazard::WeakDeck,
        Hazard::Skylights,
        Hazard::Animals,
        Hazard::Alone,
    ];

    /// In a few words: `ice, snow or wet`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Hazard::Ice => "ice, snow or wet",
            Hazard::Wind => "wind",
            Hazard::ServiceDrop => "wire to the house",
            Hazard::HighOrSteep => "high or steep",
            Hazard::SoftGround => "soft ground",
            Hazard::WeakDeck => "weak deck",
            Hazard::Skylights => "hidden skylights",
            Hazard::Animals => "bees or a dog",
            Hazard::Alone => "alone here",
        }
    }
}
