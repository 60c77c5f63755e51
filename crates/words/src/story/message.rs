use crate::format::ReadingText;
use crate::samples::local_time;
use crate::{Count, Noun, Quoted};
use chrono::{DateTime, FixedOffset};
use eavebook_core::book::fold::TakenOut;
use eavebook_core::book::kinds::{Followed, HowRead, Thing};
use eavebook_core::units::{Area, Figure};

messages! {
    /// How the figures of a job came out of its readings.
    StoryMessage, "story";
    /// A reading that is no longer in force.
    ReadingOutOfForce {
        /// What was read.
        thing: Thing,
        /// Its value.
        reading: ReadingText,
        /// `None` if its time is not readable.
        read_at: Option<DateTime<FixedOffset>>,
        /// How it went out of force.
        how: TakenOut,
        /// `None` if its time is not readable.
        struck_at: Option<DateTime<FixedOffset>>,
        /// As a person gave it.
        reason: Option<Quoted>,
    } = {
        thing: Thing::Leg { leg: 13 },
        reading: ReadingText::from("52' 10 1/2\""),
        read_at: local_time(),
        how: TakenOut::Strike,
        struck_at: local_time(),
        reason: Some("digits turned".into()),
    },
        {
            thing: Thing::Leg { leg: 3 },
            reading: ReadingText::from("10'"),
            read_at: local_time(),
            how: TakenOut::Undo,
            struck_at: local_time(),
            reason: None,
        };
    /// A pitch as it was given.
    PitchInTwelve {
        /// Rise in 12.
        rise: f64,
    } = { rise: 6.25 };
    /// A pitch by level and tape.
    PitchRiseInRun {
        /// Inches.
        rise: f64,
        /// Inches.
        run: f64,
    } = { rise: 6.5, run: 12.0 };
    /// A pitch taken over from another face.
    PitchSameAs {
        /// The leg of that face, from 1.
        leg: u32,
    } = { leg: 3 };
    /// How a value was read, and along what.
    HowRead {
        /// How.
        how: HowRead,
        /// Along what; `None` for what is not a leg.
        followed: Option<Followed>,
    } = { how: HowRead::Taped, followed: Some(Followed::EaveEdge) },
        { how: HowRead::OffPhoto, followed: None };
    /// A leg that nobody read.
    WorkedOut;
    /// A leg read once that no other reading checks.
    OneUncheckedReading;
    /// How many readings a leg has.
    Readings {
        /// How many.
        count: Count,
    } = { count: Count::new(1, Noun::Reading) },
        { count: Count::new(2, Noun::Reading) };
    /// How the lengths are adjusted.
    LeastSquares;
    /// Readings that the others contradict.
    Disagree {
        /// Suspects.
        things: Vec<Thing>,
    } = { things: vec![Thing::Leg { leg: 2 }, Thing::Leg { leg: 6 }] };
    /// How the area follows from footprint and pitch.
    AreaFormula {
        /// In plan.
        footprint: Area,
        /// On the slope.
        area: Figure<Area>,
    } = {
        footprint: Area::square_feet(2111.3),
        area: Figure { value: Area::square_feet(2396.2), sigma: Area::square_feet(12.8) },
    };
    /// Heading over what differs from the version before.
    ChangedSince {
        /// The version before, from 1.
        version: u32,
    } = { version: 1 };
}
