use crate::{Count, Noun, Quoted};
use chrono::NaiveDate;
use eavebook_core::units::{Area, Length, Pitch};

messages! {
    /// Sentences of the permit sheet and the notes of a code profile.
    PermitMessage, "permit";
    /// The arithmetic of attic ventilation.
    Ventilation {
        /// Footprint of the roof.
        plan_area: Area,
        /// Square feet of footprint to one of opening.
        ratio: f64,
        /// Opening that is asked for, sq in.
        required: f64,
        /// Of that near the ridge, sq in.
        upper: f64,
        /// What ridge vents give, sq in.
        ridge_vents: f64,
        /// What is missing near the ridge, sq in.
        missing: f64,
    } = {
        plan_area: Area::square_feet(2111.0),
        ratio: 300.0,
        required: 1013.0,
        upper: 507.0,
        ridge_vents: 1301.0,
        missing: 0.0,
    };
    /// No membrane is counted.
    NoIceBarrier;
    /// Length of membrane along the eaves, all courses.
    IceBarrierLength {
        /// In all.
        length: Length,
    } = { length: Length::feet(339.2) };
    /// How far the membrane reaches, with the row for steep roofs.
    IceBarrierRule {
        /// Past the wall line, level.
        inside: Length,
        /// At least so far up the slope.
        up_slope: Length,
        /// From this pitch on.
        from: Pitch,
    } = {
        inside: Length::inches(24.0),
        up_slope: Length::inches(36.0),
        from: Pitch::rise_in_12(8.0),
    };
    /// How far the membrane reaches.
    IceBarrierPastWall {
        /// Past the wall line, level.
        inside: Length,
    } = { inside: Length::inches(24.0) };
    /// The code profile does not ask for it.
    NotRequired;
    /// Underlayment is half-lapped on low pitches.
    HalfLapBelow {
        /// Below it.
        pitch: Pitch,
    } = { pitch: Pitch::rise_in_12(4.0) };
    /// The least pitch for shingles.
    NoShinglesBelow {
        /// Below it.
        pitch: Pitch,
    } = { pitch: Pitch::rise_in_12(2.0) };
    /// Footprint to opening, and the share near the ridge.
    VentilationRule {
        /// Square feet of footprint to one of opening.
        ratio: f64,
        /// Share near the ridge.
        upper_percent: f64,
    } = { ratio: 300.0, upper_percent: 50.0 };
    /// How many layers may be on a roof in the end.
    MostLayers {
        /// At most.
        layers: Count,
    } = { layers: Count::new(1, Noun::Layer) },
        { layers: Count::new(2, Noun::Layer) };
    /// Where a note was read, when and by whom.
    Source {
        /// Where it applies.
        place: Quoted,
        /// In what it was read.
        source: Quoted,
        /// When.
        read_on: NaiveDate,
        /// By whom.
        read_by: Quoted,
    } = {
        place: "demo".into(),
        source: "model residential code".into(),
        read_on: NaiveDate::from_ymd_opt(2024, 5, 1).unwrap_or_default(),
        read_by: "demo".into(),
    };
}
