//! What can be booked: the body of each kind of entry, as it is written in JSON.
//!
//! A body is written once and kept as its bytes for ever, so these shapes only grow.

pub use super::change::ChangeFound;
pub use super::edition::Edition;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

pub use super::photo_facts::{PhotoDistance, PhotoFacts, PhotoPlace, PhotoWord};
pub use super::roof_observed::{
    CoveringObserved, DeckKind, DeckObserved, ObservedOverLeg, PenetrationAdded, RateSet,
    RoofObserved, SaddleObserved,
};
pub use super::thing::{DeckSizeOf, ItemKind, SizeOf, Thing};
pub use super::visit::{Found, Hazard, Permission, VisitNote, WalkTarget};

/// One kind of entry and its body.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// A job begins.
    JobStarted(JobStarted),
    /// A taped value.
    Reading(Reading),
    /// The read-back of a reading was answered `Right`.
    ReadBackRight(About),
    /// The walker turned at the far corner of a leg.
    Corner(Corner),
    /// A leg that cannot be read; it is worked out from the others.
    CannotGet(CannotGet),
    /// What rises at a leg: a slope, a gable, a wall.
    LegEnd(LegEnd),
    /// A slope read.
    Pitch(PitchBooked),
    /// Something stands out of a face.
    Penetration(PenetrationAdded),
    /// What lies on the roof now.
    Covering(CoveringObserved),
    /// What the covering is nailed to.
    Deck(DeckObserved),
    /// What was seen of the roof over a leg, to be compared with the computed one.
    RoofObserved(RoofObserved),
    /// One rate of the firm, changed for this job.
    Rate(RateSet),
    /// Something said or seen on a visit that no tape reads.
    Visit(VisitNote),
    /// Something turned up once the old roof was off.
    Change(ChangeFound),
    /// A photo kept.
    Photo(PhotoTaken),
    /// Something said aloud, kept as it sounds until somebody types it.
    Clip(ClipTaken),
    /// A word about photos: what they show, from how far, who may see them.
    PhotoFacts(PhotoFacts),
    /// Somebody looked at the desk and let what was read on site stand.
    SettledAtDesk(SettledAtDesk),
    /// Takes the entries that the envelope supersedes out of use and keeps them readable.
    Strike(Strike),
    /// Takes a strike, or the last act, back.
    Undo(Undo),
    /// Takes an undo back, so that the act stands again.
    Redo(Redo),
    /// A packet was made of the job as it stood.
    PacketFrozen(PacketFrozen),
    /// A packet is to go to somebody, or what became of that.
    PacketSent(PacketSent),
}

impl Kind {
    /// Its name in an entry.
    pub fn name(&self) -> &'static str {
        match self {
            Kind::JobStarted(_) => "job_started",
            Kind::Reading(_) => "reading",
            Kind::ReadBackRight(_) => "read_back_right",
            Kind::Corner(_) => "corner",
            Kind::CannotGet(_) => "cannot_get",
            Kind::LegEnd(_) => "leg_end",
            Kind::Pitch(_) => "pitch",
            Kind::Penetration(_) => "penetration",
            Kind::Covering(_) => "covering",
            Kind::Deck(_) => "deck",
            Kind::RoofObserved(_) => "roof_seen",
            Kind::Rate(_) => "rate",
            Kind::Visit(_) => "visit",
            Kind::Change(_) => "change",
            Kind::Photo(_) => "photo",
            Kind::Clip(_) => "clip",
            Kind::PhotoFacts(_) => "photo_said",
            Kind::SettledAtDesk(_) => "settled_at_desk",
            Kind::Strike(_) => "strike",
            Kind::Undo(_) => "undo",
            Kind::Redo(_) => "redo",
            Kind::PacketFrozen(_) => "packet_frozen",
            Kind::PacketSent(_) => "packet_sent",
        }
    }

    /// Version of the shape of its body that this program writes.
    pub fn version(&self) -> u32 {
        1
    }

    /// Entries and photos that the body speaks of: entry ids, photo hashes.
    pub fn refs(&self) -> Vec<String> {
        match self {
            Kind::ReadBackRight(about) => vec![about.entry.to_string()],
            Kind::Photo(photo) => vec![photo.sha256.clone()],
            Kind::Clip(clip) => vec![clip.sha256.clone()],
            Kind::PhotoFacts(said) => said.photos.iter().map(Uuid::to_string).collect(),
            Kind::SettledAtDesk(settled) => settled.entries.iter().map(Uuid::to_string).collect(),
            Kind::JobStarted(_)
            | Kind::Reading(_)
            | Kind::Corner(_)
            | Kind::CannotGet(_)
            | Kind::LegEnd(_)
            | Kind::Pitch(_)
            | Kind::Penetration(_)
            | Kind::Covering(_)
            | Kind::Deck(_)
            | Kind::RoofObserved(_)
            | Kind::Rate(_)
            | Kind::Visit(_)
            | Kind::Change(_)
            | Kind::Strike(_)
            | Kind::Undo(_)
            | Kind::Redo(_)
            | Kind::PacketFrozen(_)
            | Kind::PacketSent(_) => Vec::new(),
        }
    }

    /// The body as JSON text, as it will be kept.
    pub fn body(&self) -> String {
        // Every number in these shapes is finite once read, and every key a string: this cannot
        // fail. A `null` would read back as an unknown body, never as a wrong one.
        let text = match self {
            Kind::JobStarted(body) => serde_json::to_string(body),
            Kind::Reading(body) => serde_json::to_string(body),
            Kind::ReadBackRight(body) => serde_json::to_string(body),
            Kind::Corner(body) => serde_json::to_string(body),
            Kind::CannotGet(body) => serde_json::to_string(body),
            Kind::LegEnd(body) => serde_json::to_string(body),
            Kind::Pitch(body) => serde_json::to_string(body),
            Kind::Penetration(body) => serde_json::to_string(body),
            Kind::Covering(body) => serde_json::to_string(body),
            Kind::Deck(body) => serde_json::to_string(body),
            Kind::RoofObserved(body) => serde_json::to_string(body),
            Kind::Rate(body) => serde_json::to_string(body),
            Kind::Visit(body) => serde_json::to_string(body),
            Kind::Change(body) => serde_json::to_string(body),
            Kind::Photo(body) => serde_json::to_string(body),
            Kind::Clip(body) => serde_json::to_string(body),
            Kind::PhotoFacts(body) => serde_json::to_string(body),
            Kind::SettledAtDesk(body) => serde_json::to_string(body),
            Kind::Strike(body) => serde_json::to_string(body),
            Kind::Undo(body) => serde_json::to_string(body),
            Kind::Redo(body) => serde_json::to_string(body),
            Kind::PacketFrozen(body) => serde_json::to_string(body),
            Kind::PacketSent(body) => serde_json::to_string(body),
        };
        text.unwrap_or_else(|_| "null".to_owned())
    }

    /// Reads a body; fields that are not known are passed over. None: the kind is not known, or
    /// the body does not read as one of it.
    pub fn read(kind: &str, body: &str) -> Option<Kind> {
        fn of<T: serde::de::DeserializeOwned>(body: &str, kind: fn(T) -> Kind) -> Option<Kind> {
            serde_json::from_str(body).ok().map(kind)
        }
        match kind {
            "job_started" => of(body, Kind::JobStarted),
            "reading" => of(body, Kind::Reading),
            "read_back_right" => of(body, Kind::ReadBackRight),
            "corner" => of(body, Kind::Corner),
            "cannot_get" => of(body, Kind::CannotGet),
            "leg_end" => of(body, Kind::LegEnd),
            "pitch" => of(body, Kind::Pitch),
            "penetration" => of(body, Kind::Penetration),
            "covering" => of(body, Kind::Covering),
            "deck" => of(body, Kind::Deck),
            "roof_seen" => of(body, Kind::RoofObserved),
            "rate" => of(body, Kind::Rate),
            "visit" => of(body, Kind::Visit),
            "change" => of(body, Kind::Change),
            "photo" => of(body, Kind::Photo),
            "clip" => of(body, Kind::Clip),
            "photo_said" => of(body, Kind::PhotoFacts),
            "settled_at_desk" => of(body, Kind::SettledAtDesk),
            "strike" => of(body, Kind::Strike),
            "undo" => of(body, Kind::Undo),
            "redo" => of(body, Kind::Redo),
            "packet_frozen" => of(body, Kind::PacketFrozen),
            "packet_sent" => of(body, Kind::PacketSent),
            _ => None,
        }
    }
}

/// Body of [`Kind::JobStarted`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct JobStarted {
    /// Street address as said.
    pub address: String,
    /// The pretend house, which can be thrown away.
    #[serde(default)]
    pub pretend: bool,
}

/// Body of [`Kind::Reading`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// What was read.
    #[serde(flatten)]
    pub thing: Thing,
    /// The tape text as read back: `42 ft 7 1/2 in`.
    pub text: String,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// How it was read.
    pub how: HowRead,
    /// What the tape followed.
    pub followed: Followed,
    /// Read without sight of an earlier value of the same thing.
    #[serde(default)]
    pub blind: bool,
}

/// How a tape is marked.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TapeMarks {
    /// Feet, inches, eighths.
    #[default]
    FeetInches,
    /// Feet and tenths.
    FeetTenths,
    /// Metres and centimetres.
    #[serde(rename = "metres")]
    Meters,
}

/// How a value was read.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HowRead {
    /// With a tape.
    #[default]
    Taped,
    /// By paces.
    Paced,
    /// Off a photo, later.
    OffPhoto,
    /// Somebody said so.
    Told,
}

/// What the tape followed.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Followed {
    /// The edge of the eave.
    #[default]
    EaveEdge,
    /// The outer face of the gutter.
    GutterFace,
    /// The wall below.
    Wall,
}

/// A body that only names another entry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct About {
    /// The entry.
    pub entry: Uuid,
}

/// Body of [`Kind::SettledAtDesk`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SettledAtDesk {
    /// What was let stand: readings, slopes, what was seen.
    pub entries: Vec<Uuid>,
}

/// Body of [`Kind::Corner`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Corner {
    /// The leg that ends here, from 1.
    pub after_leg: u32,
    /// Which way the outline turns.
    pub turn: Turn,
    /// On which side of the walker the building stands.
    pub building_on: Side,
}

/// Which way the outline turns at a corner.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "turn", rename_all = "snake_case")]
pub enum Turn {
    /// Round a corner of the building: 90 degrees toward it.
    Outside,
    /// Into a corner: 90 degrees away from it.
    Inside,
    /// By another angle, degrees; toward the building positive.
    Angled {
        /// Degrees.
        degrees: f64,
    },
    /// Not at all: a step in the eave or another pitch begins.
    Straight,
}

/// A side of a walker.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// On the right hand: the walk goes clockwise seen from above.
    #[default]
    Right,
    /// On the left hand: the walk goes counter-clockwise.
    Left,
}

/// Body of [`Kind::CannotGet`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CannotGet {
    /// What cannot be read.
    #[serde(flatten)]
    pub thing: Thing,
    /// Why, where a reason was given.
    pub reason: Option<String>,
}

/// Body of [`Kind::LegEnd`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LegEnd {
    /// The leg, from 1.
    pub leg: u32,
    /// What rises there.
    pub end: EndKind,
}

/// What rises at a leg.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EndKind {
    /// A slope.
    Sloped,
    /// A gable end.
    Gable,
    /// A wall that rises past the roof.
    Wall,
}

/// Body of [`Kind::Pitch`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PitchBooked {
    /// The leg from which the face rises, from 1.
    pub leg: u32,
    /// How it was read, with what was read. In an object of its own: a slope taken over names a leg
    /// too.
    pub read: PitchRead,
}

/// How a slope was read, with what was read.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum PitchRead {
    /// Rise in 12, as a number known from elsewhere.
    Number {
        /// Rise in 12.
        in_12: f64,
    },
    /// A level held out along the run and a tape from its end down to the roof.
    LevelAndTape {
        /// Run along the level, inches.
        run_in: f64,
        /// Rise read on the tape, inches.
        rise_in: f64,
    },
    /// A phone laid on the slope.
    Phone {
        /// Angle above level, degrees, positive.
        degrees: f64,
        /// Turned end for end.
        reversed: bool,
    },
    /// Worked out from marks on a photo of the gable end, taken from the ground. The marks are kept
    /// beside what came of them, so that it can be worked out again.
    Sighted {
        /// Angle above level, degrees, positive.
        degrees: f64,
        /// One standard deviation, degrees.
        sigma: f64,
        /// Entry of the photo.
        photo: Uuid,
        /// Where each thing was marked.
        marks: Vec<GableMark>,
    },
    /// Taken as the same as another face, not read.
    SameAs {
        /// The leg of that face.
        leg: u32,
    },
    /// Looked for, and not got: a fair answer.
    NotGot,
}

/// Body of [`Kind::Clip`]: a raw booking. What was said in it is typed on the ground, by somebody who
/// listens; the strike that then takes it out of what waits says so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ClipTaken {
    /// SHA-256 of the file, 64 hex digits: its name in the photo folder.
    pub sha256: String,
    /// Bytes.
    pub size: u64,
    /// What the file is: `audio/webm`.
    pub media: String,
    /// The thing in hand as it was said, where there was one.
    pub of: Option<Thing>,
}

/// Body of [`Kind::Photo`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PhotoTaken {
    /// SHA-256 of the file, 64 hex digits: its name in the photo folder.
    pub sha256: String,
    /// Bytes.
    pub size: u64,
    /// What the file is: `image/jpeg`.
    pub media: String,
    /// The thing it was taken of, when one was in hand.
    pub of: Option<Thing>,
    /// Where it came from.
    pub from: PhotoFrom,
    /// Where the back camera looked at the shutter, degrees clockwise from north as this device
    /// felt it; none where it did not, or for a file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heading: Option<f64>,
    /// How the phone was held at the shutter; none where it felt nothing, or for a file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tilt: Option<TiltFelt>,
    /// What it shows, where somebody said so before the shutter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PhotoPlace>,
    /// From how far, where somebody said so before the shutter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub distance: Option<PhotoDistance>,
}

/// One thing marked on a photo of a gable end.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct GableMark {
    /// What.
    pub of: GableSpot,
    /// Where, as shares of the picture's width from its left and of its height from its top.
    pub at: [f64; 2],
}

/// What is marked on a photo of a gable end, left and right as it is looked at.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GableSpot {
    /// The lower end of the left rake.
    LeftEave,
    /// Where both rakes meet.
    Top,
    /// The lower end of the right rake.
    RightEave,
    /// The ground straight under the left eave corner.
    LeftGround,
    /// The ground straight under the right eave corner.
    RightGround,
}

/// How a phone was held at the shutter, as it felt it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TiltFelt {
    /// Turn about the axis across the screen, degrees (W3C Device Orientation).
    pub beta: f64,
    /// Turn about the axis up the screen, degrees.
    pub gamma: f64,
    /// How far what the screen shows is turned from the phone's own upright: 0, 90, 180 or 270
    /// degrees (W3C Screen Orientation).
    pub screen: f64,
}

/// Where a photo came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhotoFrom {
    /// The camera of this device, at the shutter.
    Camera,
    /// A file brought in later.
    File,
}

/// Body of [`Kind::Strike`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Strike {
    /// Why, where a reason was given.
    pub reason: Option<String>,
}

/// Body of [`Kind::Undo`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Undo {}

/// Body of [`Kind::Redo`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Redo {}

/// Body of [`Kind::PacketFrozen`]. It counts neither among the entries of a packet nor in their
/// digest, so that to make a packet changes nothing of what a packet holds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PacketFrozen {
    /// The packet's id, 64 hex digits.
    pub packet: String,
    /// For whom.
    pub edition: Edition,
    /// Counts from 1, per job and edition.
    pub version: u32,
    /// The id of the version before, if there is one.
    pub before: Option<String>,
    /// When, local time with offset, RFC 3339: the one time that stands in the papers.
    pub moment: String,
    /// The reader by name, where somebody said.
    #[serde(default)]
    pub reader: Option<String>,
    /// What it was made of.
    pub entries: FrozenEntries,
    /// Program and version that made it: another may set the papers otherwise.
    pub made_with: String,
}

/// Body of [`Kind::PacketSent`]. Like a freeze it says nothing of the house: it counts neither
/// among the entries of a packet nor in their digest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PacketSent {
    /// The entry that began this sending; none: this one begins it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<Uuid>,
    /// The packet's id, 64 hex digits.
    pub packet: String,
    /// Who is to get it, as written.
    pub to: String,
    /// How far it came.
    pub stage: SendStage,
}

/// How far a packet came on its way. No device can know that somebody read it.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SendStage {
    /// It is to go, and waits here.
    Waiting,
    /// The system's own way of sharing took it.
    Shared,
    /// Somebody says that it was handed on: by mail, by cable, on a stick.
    HandedOn,
    /// It is not to go after all.
    NotSent,
}

/// The set of entries of which a packet was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FrozenEntries {
    /// How many.
    pub count: u64,
    /// Their digest, 64 hex digits.
    pub digest: String,
    /// The last one of each life of each device, so that the set can be found again when more has
    /// been booked, here or elsewhere.
    pub up_to: Vec<LastOf>,
}

/// The last entry of one life of a device in a set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LastOf {
    /// The device.
    pub device: Uuid,
    /// Which life of its store.
    pub incarnation: Uuid,
    /// Its count there.
    pub dseq: u64,
}
