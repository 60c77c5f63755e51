//! What a screen is told. Figures come as words, worked out and rounded here; places in plan come
//! as feet, to be drawn.

mod copies;
mod job_file;
mod plan;
mod solid;
mod takeoff;
mod visit;
mod walk;

pub use copies::{BookCopyView, CarriedView, CopiesView, HubView, InviteView, SquareView};
pub use job_file::{PacketView, PacketsView, PaperGroup, PaperView, ReaderView, SendView};
pub use plan::PlanDrawn;
pub use solid::{PaintedView, SolidName, SolidView};
pub use takeoff::{LackView, LoadBar, RateView, TakeoffLine, TakeoffPart, TakeoffView, ThingLink};
pub use visit::{ArriveView, CheckItem, CheckView, TickView};
pub use walk::{LookView, PhotoState, WalkPart, WalkView, WantedShot};

use crate::request::{FractionStep, Language, Request, Theme};
use eavebook_core::book::keypad::Slot;
use eavebook_core::book::kinds::{
    EndKind, Followed, HowRead, PhotoDistance, PhotoPlace, Side, TapeMarks, Thing,
};
pub use eavebook_core::check::State;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// One reply.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "reply", rename_all = "snake_case")]
pub enum Reply {
    /// The list of jobs.
    Today(TodayView),
    /// One job, whole.
    Job(Box<JobView>),
    /// The keypad after a key.
    Pad(Box<PadView>),
    /// Settings after a change.
    Settings(SettingsView),
    /// Where copies are.
    Copies(CopiesView),
    /// What lets one more device join.
    Invite(InviteView),
    /// What a photo of a hub's square says.
    Square(SquareView),
    /// A file that is carried in by hand.
    Carried(CarriedView),
    /// A copy of the whole book.
    BookCopy(BookCopyView),
    /// How still a phone is held.
    Hold(HoldView),
    /// The plan of one job, drawn.
    Plan(Box<PlanDrawn>),
    /// The roof of one job as a solid.
    Solid(Box<SolidView>),
    /// The takeoff of one job.
    Takeoff(Box<TakeoffView>),
    /// The packets of a job.
    Packets(Box<PacketsView>),
    /// Nothing was changed, and why.
    Refused(Sentence),
}

/// A sentence of one breath, with a code by which another language finds its own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Sentence {
    /// Names the sentence: `inches_over_eleven`.
    pub code: String,
    /// The sentence in English.
    pub en: String,
}

/// A worked or read figure in words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Figure {
    /// With its unit: `42 ft 7 1/2 in`, `2,013 sq ft`.
    pub words: String,
    /// Its ± with unit, where it was worked out: `± 35 sq ft`.
    pub give_or_take: Option<String>,
}

/// Today.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TodayView {
    /// Jobs, the newest first but for the pretend house, which stands first.
    pub stops: Vec<StopView>,
    /// What a search found.
    pub found: Vec<FoundView>,
    /// Settings of this device.
    pub settings: SettingsView,
}

/// One job in the list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StopView {
    /// Which.
    pub job: Uuid,
    /// Street address as said.
    pub address: String,
    /// The pretend house.
    pub pretend: bool,
    /// What there is: "6 legs read, closes within 2 in".
    pub standing: Sentence,
    /// Where copies are.
    pub copies: Sentence,
}

/// One thing that a search found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct FoundView {
    /// In which job.
    pub job: Uuid,
    /// Street address of the job.
    pub address: String,
    /// The thing, `leg 4`; none: the job itself.
    pub thing: Option<String>,
    /// What it says.
    pub words: String,
}

/// Settings of this device.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SettingsView {
    /// Larger keys.
    pub cold_hands: bool,
    /// Controls for the left thumb.
    pub mirror_hand: bool,
    /// Speech and sounds.
    pub sound: bool,
    /// Single-letter keys on a keyboard.
    pub single_letter_keys: bool,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// The person chose the tape; until then it is feet and inches.
    pub tape_chosen: bool,
    /// Finest fraction that is read.
    pub fractions: FractionStep,
    /// On which side of the walker the building stands.
    pub building_on: Side,
    /// The language of the page.
    pub language: Language,
    /// Its ground.
    #[serde(rename = "leaf")]
    pub theme: Theme,
}

/// One job, whole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct JobView {
    /// Which.
    pub job: Uuid,
    /// Street address as said.
    pub address: String,
    /// The pretend house.
    pub pretend: bool,
    /// Where copies are: "1 copy: this phone only".
    pub copies: Sentence,
    /// The last act and the next one; none in an empty job.
    pub you_were_here: Option<YouWereHere>,
    /// The act that Undo takes back.
    pub undo: Option<ActView>,
    /// The act that Redo does again.
    pub redo: Option<ActView>,
    /// Settings of this device.
    pub settings: SettingsView,
    /// The keypad, the read-back and the corner pad.
    pub pad: PadView,
    /// Everything with a reading or a place for one, newest first.
    pub readings: Vec<ThingView>,
    /// The two sums.
    pub closure: ClosureView,
    /// What to draw.
    pub plan: PlanView,
    /// Edges of the roof; before the outline closes, its legs.
    pub edges: Vec<ThingView>,
    /// Faces of the roof: one a leg as soon as the outline closes.
    pub faces: Vec<FaceView>,
    /// What stands out of the roof, lies on it, or is nailed to.
    pub items: Vec<ItemView>,
    /// What turned up once the old roof was off.
    pub changes: ChangesView,
    /// Areas and lengths, once there is a roof.
    pub totals: Vec<TotalView>,
    /// What to look at, and what closure cannot see.
    pub cautions: Vec<Sentence>,
    /// What is said and seen beside the tape.
    pub arrive: ArriveView,
    /// What is open before driving off, with its evidence.
    pub check: CheckView,
    /// What is open, the dearest to come back for first.
    pub whats_left: Vec<OpenView>,
    /// Photos kept, newest first.
    pub photos: Vec<PhotoView>,
    /// The walk round the house.
    pub walk: WalkView,
    /// What was said aloud and waits to be typed, the newest first.
    pub clips: Vec<ClipView>,
}

/// Something said aloud.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ClipView {
    /// Its entry.
    pub entry: Uuid,
    /// Its name in the photo folder: `/photo/{sha256}`.
    pub sha256: String,
    /// The thing in hand as it was said, where it can be read.
    pub read: Option<Thing>,
    /// "Leg 4, said 2:41 pm, this phone".
    pub words: String,
}

/// The last act and the next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct YouWereHere {
    /// "Leg 4 booked. At the inside corner."
    pub words: Sentence,
    /// What the one button does.
    pub next: NextAct,
}

/// What leads on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "next", rename_all = "snake_case")]
pub enum NextAct {
    /// Open the keypad for a thing.
    Read {
        /// Which.
        thing: Thing,
    },
    /// Tap the corner after a leg.
    Corner {
        /// The leg, from 1.
        after_leg: u32,
    },
    /// Look at the plan.
    Plan,
    /// Look at the photos of the walk round.
    WalkRound,
    /// Say who is here and what they allow.
    Arrive,
    /// Look at the papers and their copies.
    JobFile,
    /// Open the leaf of a thing on the plan.
    Open {
        /// `layers`, `pipe 1`.
        thing: String,
    },
}

/// An act that can be taken back or done again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ActView {
    /// Its entry.
    pub entry: Uuid,
    /// "leg 4, 42 ft 7 in".
    pub words: String,
}

/// The keypad, the read-back and the corner pad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PadView {
    /// The open keypad.
    pub open: Option<OpenPadView>,
    /// The reading just booked, until it is answered or another act begins.
    pub read_back: Option<ReadBackView>,
    /// The leg whose far corner is still to be tapped, from 1.
    pub corner_after: Option<u32>,
    /// Why the last key did nothing.
    pub refused: Option<Sentence>,
    /// "two 2s?", never in the way.
    pub double: Option<Sentence>,
}

/// The open keypad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct OpenPadView {
    /// What is being read.
    pub thing: Thing,
    /// By name: `leg 4`.
    pub name: String,
    /// In words: "Leg 4, back".
    pub title: String,
    /// Earlier values are out of sight.
    pub blind: bool,
    /// Presses so far: goes with the next one.
    pub press: u32,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// The slots in order.
    pub slots: Vec<SlotView>,
    /// How it is read.
    pub how: HowRead,
    /// What the tape follows.
    pub followed: Followed,
}

/// One slot of the keypad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SlotView {
    /// Which.
    pub slot: Slot,
    /// What stands in it: digits, or `1/2`; empty when nothing does.
    pub typed: String,
    /// Unit beside it.
    pub unit: String,
    /// Where the next key goes.
    pub active: bool,
}

/// A reading just booked, read back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReadBackView {
    /// The reading.
    pub reading: Uuid,
    /// What was read: `leg 4`.
    pub thing: String,
    /// In words: "Leg 4, back".
    pub title: String,
    /// `42 ft 7 1/2 in`.
    pub value: String,
    /// "four two feet, seven and a half inches".
    pub spoken: String,
    /// `Right` was tapped.
    pub answered: bool,
    /// Another reading of the same thing differs by more than both can: a third is wanted.
    pub dispute: Option<Sentence>,
}

/// A thing in a list: a leg, a tie, an edge.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ThingView {
    /// `leg 4`: `data-thing`.
    pub thing: String,
    /// The thing to ask for, where it can be read again.
    pub read: Option<Thing>,
    /// "Leg 4, back".
    pub title: String,
    /// How well it is known.
    pub state: State,
    /// The state in a word or two.
    pub state_word: String,
    /// Its value, read or worked out; `data-value` without the ±.
    pub value: Option<Figure>,
    /// A sentence: "read twice, meets leg 5 at an inside corner".
    pub about: String,
    /// All readings of it, newest first.
    pub story: Vec<StoryView>,
    /// Photos of it, the newest first, by their names in the photo folder: `/photo/{sha256}`.
    pub photos: Vec<String>,
}

/// One reading in a story.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StoryView {
    /// Its entry.
    pub entry: Uuid,
    /// `42 ft 7 1/2 in`.
    pub value: String,
    /// In force, or struck.
    pub state: State,
    /// The state in a word or two.
    pub state_word: String,
    /// "taped along the eave edge, 2:41 pm, this phone".
    pub about: String,
    /// It may be struck.
    pub may_strike: bool,
}

/// An item: its state, the sizes asked of it, what can be said of it by one tap.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ItemView {
    /// `pipe 1`, its state, its sizes as value, all that was noted of it as story.
    #[serde(flatten)]
    pub item: ThingView,
    /// Sizes asked of it, each read on the keypad.
    pub sizes: Vec<SizeView>,
    /// What can be said of it by one tap.
    pub asks: Vec<AskView>,
}

/// What turned up once the old roof was off, and what the next one needs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ChangesView {
    /// Those booked, the newest first: `change 2`, with all that was said of it as story.
    pub changes: Vec<ThingView>,
    /// The number of the next one.
    pub next: u32,
    /// `change 3`: what a photo for the next one is taken of.
    pub next_thing: String,
    /// Photos that were taken for it already, by their names in the photo folder.
    pub next_photos: Vec<String>,
    /// "A sheet, laid: $58.00.", or that it is not priced.
    pub price: Sentence,
    /// Under which it can be: (leg, name).
    pub faces: Vec<(u32, String)>,
}

/// A size that is read on the keypad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SizeView {
    /// The thing to ask for.
    pub thing: Thing,
    /// `width`.
    pub name: String,
    /// How well it is known.
    pub state: State,
    /// What it measures; none where nobody read it.
    pub value: Option<Figure>,
}

/// A question that one tap answers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct AskView {
    /// "Layers at this edge".
    pub title: String,
    /// The answers.
    pub choices: Vec<ChoiceView>,
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ChoiceView {
    /// What its button says.
    pub name: String,
    /// It is what was said last.
    pub chosen: bool,
    /// The request that says it.
    pub says: Request,
    /// The thing whose leaf opens then: `pipe 2`.
    pub opens: Option<String>,
}

/// The two sums.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ClosureView {
    /// What to call it.
    pub state: ClosureWord,
    /// "Closes within 2 in." or "18 ft short along the front."
    pub words: Sentence,
    /// "Look again at leg 2 or leg 6." or what closure cannot see.
    pub more: Option<Sentence>,
    /// At most two, likeliest first.
    pub suspects: Vec<SuspectView>,
    /// There are others beside the two.
    pub or_another: bool,
}

/// What to call a closure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub enum ClosureWord {
    /// Corners are still to come.
    #[serde(rename = "open")]
    Open,
    /// Both sums within tolerance.
    #[serde(rename = "closes")]
    Closes,
    /// The turns close, the legs do not.
    #[serde(rename = "gap")]
    Gap,
    /// A leg was worked out: that is no check.
    #[serde(rename = "not checked")]
    NotChecked,
}

/// A reading that the others speak against.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SuspectView {
    /// `leg 2`.
    pub thing: String,
    /// "Leg 2": the name of its button.
    pub title: String,
    /// "swapped digits? If so it would have been 42 ft."
    pub why: Sentence,
}

/// The sketch of the outline, in feet: x to the right, y up the sheet; the walker's side is at the
/// foot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PlanView {
    /// Every line.
    pub lines: Vec<LineView>,
    /// From the last corner to the start, while open.
    pub to_close: Option<[[f64; 2]; 2]>,
    /// Where the walker stands.
    pub walker: Option<[f64; 2]>,
}

/// One line of the plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LineView {
    /// `leg 4`, `tie 2-5`.
    pub thing: String,
    /// What is drawn.
    pub kind: LineKind,
    /// Ends, feet.
    pub from: [f64; 2],
    /// The other end.
    pub to: [f64; 2],
    /// Its length in words.
    pub label: Option<String>,
    /// Not read: drawn dashed.
    pub worked_out: bool,
    /// The readings speak against it: double line, and the word.
    pub suspect: bool,
    /// The keypad is open for it.
    pub in_hand: bool,
}

/// A kind of line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum LineKind {
    /// A side of the outline.
    Leg,
    /// A check length between two corners.
    Tie,
}

/// One face.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct FaceView {
    /// `face 2`, its state, its area as value, its pitches as story.
    #[serde(flatten)]
    pub face: ThingView,
    /// The leg from which it rises, from 1.
    pub leg: u32,
    /// Slope, gable, wall; none where nobody said.
    pub end: Option<EndKind>,
    /// "6 in 12, 26.6°"; none where nobody said.
    pub pitch: Option<Figure>,
    /// The last slope read at it, as the region `Pitch` shows it.
    pub captured: Option<CapturedView>,
    /// Slopes booked in the job so far: goes with the next one that is captured.
    pub slopes_before: u32,
    /// Faces whose pitch may be taken as the same: (leg, name).
    pub same_as: Vec<(u32, String)>,
    /// What can be added on it.
    pub add: Vec<ChoiceView>,
    /// Sizes read at its edge: its overhang.
    pub sizes: Vec<SizeView>,
    /// What can be said of its edge by one tap.
    pub asks: Vec<AskView>,
    /// What was seen over its leg, beside what is computed.
    pub seen: SeenView,
}

/// What was seen of the roof from a face's leg, beside the computed one.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SeenView {
    /// What can be said by one tap.
    pub asks: Vec<AskView>,
    /// What comes of what was said, a sentence each.
    pub judged: Vec<Sentence>,
}

/// A slope just read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CapturedView {
    /// `26.6°`; of a phone laid both ways the mean.
    pub degrees: String,
    /// "6.0 in 12, near 6 in 12".
    pub in_12: String,
    /// It was a phone laid one way: turned end for end it would show what the phone adds.
    pub one_way: bool,
    /// "The two ways differ by 1.2°: this phone reads 0.6° high, and their mean is free of it."
    pub zero_error: Option<Sentence>,
    /// What a slope marked on a photo is good for; none of a slope read otherwise.
    pub sighted: Option<Sentence>,
    /// As it is spoken: "two six point six degrees".
    pub spoken: String,
}

/// How still a phone is held.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct HoldView {
    /// `26.6°`; none where there was no look.
    pub degrees: Option<String>,
    /// What to do with it.
    pub hold: HoldWord,
    /// The same in words: "Hold still."
    pub words: Sentence,
}

/// How a phone is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum HoldWord {
    /// Two seconds are not over.
    Begun,
    /// The looks scatter, or creep.
    Moving,
    /// Still for two seconds: captured without a touch.
    Still,
    /// Exactly level all the time: the sensor does not feel the tilt.
    Nothing,
}

/// One total.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TotalView {
    /// "Roof area", "Ridge".
    pub name: String,
    /// With its ±.
    pub value: Figure,
    /// What made it: things, in words.
    pub because: Vec<String>,
}

/// Something open.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct OpenView {
    /// `leg 3`, `face 2`, `closure`.
    pub thing: String,
    /// "Leg 3 is read once and nothing checks it."
    pub words: Sentence,
    /// What leads there.
    pub next: NextAct,
}

/// One photo kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PhotoView {
    /// `photo 3`.
    pub thing: String,
    /// Its name in the photo folder.
    pub sha256: String,
    /// The thing it was taken of: `leg 4`.
    pub of: Option<String>,
    /// "Leg 4, 2:41 pm".
    pub caption: String,
    /// Its entry.
    pub entry: Uuid,
    /// What is known of what it shows.
    pub state: PhotoState,
    /// "Back side", "Back side?", "Back or Left side?".
    pub words: String,
    /// What it shows, said or guessed.
    pub place: Option<PhotoPlace>,
    /// What else it may show as well.
    pub or: Option<PhotoPlace>,
    /// From how far, where somebody said.
    pub distance: Option<PhotoDistance>,
    /// No packet holds it.
    pub private: bool,
    /// Out of sight.
    pub set_aside: bool,
}
