//! One job, whole.

use crate::parts::reply::{NextAct, ThingView};
use crate::places::arrive::reply::ArriveView;
use crate::places::check::reply::{CheckView, OpenView};
use crate::places::field_book::reply::{ClipView, ClosureView, PadView};
use crate::places::job_file::reply::ChangesView;
use crate::places::plan::reply::{FaceView, ItemView, PlanView, TotalView};
use crate::places::walk_round::reply::{PhotoView, WalkView};
use crate::sentence::Sentence;
use crate::settings::reply::SettingsView;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

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
    /// Roof penetrations, the existing covering and the deck.
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

/// The last act and the next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct YouWereHere {
    /// "Leg 4 booked. At the inside corner."
    pub words: Sentence,
    /// What the one button does.
    pub next: NextAct,
}

/// An act that can be taken back or done again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ActView {
    /// Its entry.
    pub entry: Uuid,
    /// "leg 4, 42 ft 7 in".
    pub words: String,
}
