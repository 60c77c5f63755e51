//! What the permit office asks for, as somebody read it.

use crate::units::measure::{Inch, Percent, PlanPerOpening};
use crate::units::{Measure, Pitch};
use serde::{Deserialize, Serialize};

/// Notes that somebody read on a date: never law. The permit office decides.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Code {
    /// Where it applies.
    pub place: String,
    /// The day on which it was read, `2024-05-01`.
    pub date: String,
    /// Who read it.
    pub read_by: String,
    /// In what.
    pub source: String,
    /// The barrier against ice along eaves.
    pub ice_barrier: IceBarrierCode,
    /// Slopes that want more under them, or no shingles.
    pub underlayment: UnderlaymentCode,
    /// Air under the roof.
    pub ventilation: VentilationCode,
    /// Laying over what lies there.
    pub recover: RecoverCode,
}

/// The barrier against ice along eaves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IceBarrierCode {
    /// Whether it is asked for.
    pub required: bool,
    /// How far past the wall line it reaches, level.
    pub inside_in: Measure<Inch>,
    /// The wall's thickness, where that line is its inner face; 0 where its outer face is.
    pub wall_in: Measure<Inch>,
    /// From this pitch up at least `steep_in` up the slope; 0: no such row.
    pub steep_from_pitch: Pitch,
    /// Up the slope.
    pub steep_in: Measure<Inch>,
}

/// Slopes that want more under them, or no shingles.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UnderlaymentCode {
    /// Below this pitch underlayment is half-lapped.
    pub half_lap_below_pitch: Pitch,
    /// Below this pitch nothing is shingled.
    pub least_pitch: Pitch,
}

/// Air under the roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VentilationCode {
    /// Square feet of plan to one of opening: 150 or 300.
    pub ratio: Measure<PlanPerOpening>,
    /// Share of it near the ridge.
    pub upper_percent: Measure<Percent>,
}

/// Laying over what lies there.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RecoverCode {
    /// Most layers that may lie on a roof in the end.
    pub most_layers: u32,
}
