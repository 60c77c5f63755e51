//! What a screen may ask. A request that books is idempotent: said twice, it books once.

pub use eavebook_core::book::edition::Edition;
pub use eavebook_core::book::keypad::{FractionStep, Key, Meant};
use eavebook_core::book::kinds::{
    DeckKind, EndKind, Followed, GableMark, HowRead, ItemKind, ObservedOverLeg, PhotoWord,
    PitchRead, SaddleObserved, SendStage, TapeMarks, Thing, Turn, VisitNote,
};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// One request.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum Request {
    /// The list of jobs. Reply: `Today`.
    Today,
    /// Jobs and things that hold these words. Reply: `Today`, with `found`.
    Search {
        /// What to look for.
        words: String,
    },
    /// Where copies are, of one job where one is open. Reply: `Copies`.
    Copies {
        /// Which job.
        job: Option<Uuid>,
    },
    /// Join a hub. Reply: `Copies`.
    Join {
        /// Its link, or its address, code and key as typed.
        link: String,
    },
    /// Let one more device join the hub of this machine. Reply: `Invite`.
    Invite,
    /// Begin a job. Reply: `Job`.
    StartJob {
        /// Street address as said.
        address: String,
    },
    /// One job, whole. Reply: `Job`.
    Job {
        /// Which.
        job: Uuid,
    },
    /// Change a setting of this device. Reply: `Settings`.
    Set {
        /// Which, with its value.
        setting: Setting,
    },
    /// Open the keypad for a thing (none: the next useful one). Keeps a draft. Reply: `Job`.
    OpenPad {
        /// Which job.
        job: Uuid,
        /// What is to be read.
        thing: Option<Thing>,
        /// Hide every value of it that is booked already.
        blind: bool,
    },
    /// Put the keypad away; the half-typed slots stay. Reply: `Job`.
    ClosePad {
        /// Which job.
        job: Uuid,
    },
    /// One key of the keypad. Kept on disk before the reply. Reply: `Pad`; `Job` after `BookIt`.
    Press {
        /// Which job.
        job: Uuid,
        /// Count of presses on this pad before this one: the same press said twice is one press.
        press: u32,
        /// The key.
        key: Key,
        /// Milliseconds since the press before, where there was one: a bounce is asked about.
        since_ms: Option<u32>,
    },
    /// Answer to "two 2s?". Reply: `Pad`.
    AnswerDouble {
        /// Which job.
        job: Uuid,
        /// What was meant.
        meant: Meant,
    },
    /// How the open reading is read and what the tape follows. Reply: `Pad`.
    Chip {
        /// Which job.
        job: Uuid,
        /// How it is read.
        how: HowRead,
        /// What the tape follows.
        followed: Followed,
    },
    /// The read-back is right. Reply: `Job`.
    Right {
        /// Which job.
        job: Uuid,
        /// The reading.
        reading: Uuid,
    },
    /// Strike a reading or a slope. Reply: `Job`.
    Strike {
        /// Which job.
        job: Uuid,
        /// The entry to strike.
        entry: Uuid,
        /// Why, where a reason is given.
        reason: Option<String>,
    },
    /// Somebody looked at the desk and lets what was read stand. Reply: `Job`.
    SettleAtDesk {
        /// Which job.
        job: Uuid,
        /// Everything in force on which a thing rests.
        entries: Vec<Uuid>,
    },
    /// Take back the act named (the one `undo` in the job offers). Reply: `Job`.
    Undo {
        /// Which job.
        job: Uuid,
        /// The entry to take back.
        entry: Uuid,
    },
    /// Do again the act named (the one `redo` in the job offers). Reply: `Job`.
    Redo {
        /// Which job.
        job: Uuid,
        /// The undo entry to take back.
        entry: Uuid,
    },
    /// The corner at the far end of a leg; opens the keypad for the next. Reply: `Job`.
    Corner {
        /// Which job.
        job: Uuid,
        /// The leg that ends there, from 1.
        after_leg: u32,
        /// Which way the outline turns.
        turn: Turn,
    },
    /// A thing that cannot be read. Reply: `Job`.
    CannotGet {
        /// Which job.
        job: Uuid,
        /// What.
        thing: Thing,
        /// Why, where a reason is given.
        reason: Option<String>,
    },
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
    /// Something said or seen on a visit that no tape reads. Reply: `Job`.
    Visit {
        /// Which job.
        job: Uuid,
        /// What.
        note: VisitNote,
    },
    /// A word about photos: what they show, from how far, who may see them. Reply: `Job`.
    #[serde(rename = "photo_said")]
    PhotoFacts {
        /// Which job.
        job: Uuid,
        /// Entries of the photos.
        photos: Vec<Uuid>,
        /// What is said of them.
        word: PhotoWord,
    },
    /// The card of the Leave-site check from which somebody goes to mend something. Reply: `Job`.
    HoldPlace {
        /// Which job.
        job: Uuid,
        /// The card; none: one came back.
        at: Option<String>,
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
    /// Sheets of the deck that turned out bad once the old roof was off. Reply: `Job`.
    AddChange {
        /// Which job.
        job: Uuid,
        /// The number it is to have, as the job says: the same request said twice books once.
        number: u32,
        /// The leg from which the face rises, from 1; none where no face was chosen.
        leg: Option<u32>,
        /// How many sheets.
        sheets: u32,
        /// Somebody who may say yes agreed to it.
        consent: bool,
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
    /// The takeoff and the price of one job. Reply: `Takeoff`.
    Takeoff {
        /// Which job.
        job: Uuid,
    },
    /// Change one rate of the firm for this job alone. Reply: `Job`.
    SetRate {
        /// Which job.
        job: Uuid,
        /// The path of its key: `field.price`.
        key: String,
        /// Its value as typed; empty: blank, so that what it prices is not priced.
        value: String,
    },
    /// What lies on the roof, as seen at one place. Reply: `Job`.
    Layers {
        /// Which job.
        job: Uuid,
        /// How many layers, where they were counted.
        layers: Option<u32>,
        /// What it is, in the words of the rates.
        kind: Option<String>,
        /// The leg at whose edge it was seen, from 1; none where the place was not named.
        leg: Option<u32>,
    },
    /// What the covering is nailed to, as seen at one place. Reply: `Job`.
    Deck {
        /// Which job.
        job: Uuid,
        /// Planks or sheets.
        kind: DeckKind,
        /// The leg at whose edge it was seen, from 1; none where the place was not named.
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
    /// The packets of a job. Reply: `Packets`.
    Packets {
        /// Which job.
        job: Uuid,
    },
    /// Make a packet for a reader; with nothing booked since the last one it is that one. Takes
    /// seconds, and holds no other request up. Reply: `Packets`, with `made`.
    MakePacket {
        /// Which job.
        job: Uuid,
        /// For whom.
        edition: Edition,
    },
    /// A packet is to go to somebody: it waits until it is handed over. Reply: `Packets`.
    Send {
        /// Which job.
        job: Uuid,
        /// The packet's id; none: the newest.
        packet: Option<String>,
        /// Who is to get it, as written.
        to: String,
        /// Sendings booked before it: the same request said twice books once.
        after: u32,
    },
    /// What became of a sending. Reply: `Packets`.
    SendCame {
        /// Which job.
        job: Uuid,
        /// The sending.
        send: Uuid,
        /// How far.
        stage: SendStage,
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

/// A setting of this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(tag = "set", content = "to", rename_all = "snake_case")]
pub enum Setting {
    /// Larger keys.
    ColdHands(bool),
    /// Controls for the left thumb.
    MirrorHand(bool),
    /// Speech and sounds.
    Sound(bool),
    /// Single-letter keys on a keyboard.
    SingleLetterKeys(bool),
    /// How the tape is marked.
    Tape(TapeMarks),
    /// Fractions to the eighth, or only to the quarter.
    Fractions(FractionStep),
    /// On which side of the walker the building stands.
    BuildingOn(eavebook_core::book::kinds::Side),
    /// The language of the page.
    Language(Language),
    /// Dark on light for the sun, or light on dark for the night.
    #[serde(rename = "leaf")]
    Theme(Theme),
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

/// A language of the page. What a packet is written in is chosen by its reader.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish as it is spoken in the trade.
    Spanish,
}

/// Light or dark ground of every screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Theme {
    /// Dark on light: what can be read in the sun.
    #[default]
    Sun,
    /// Light on dark: what does not blind at night.
    Night,
}
