//! What a screen is answered. Figures come as words, worked out and rounded here; places in plan
//! come as feet, to be drawn.

pub use crate::copies::reply::{
    BookCopyView, CarriedView, CopiesReply, CopiesView, HubView, InviteView, SquareView,
};
pub use crate::job::reply::{ActView, JobView, YouWereHere};
pub use crate::parts::reply::{
    AskView, ChoiceView, Figure, NextAct, SizeView, StoryView, ThingView,
};
pub use crate::places::arrive::reply::{ArriveView, TickView};
pub use crate::places::check::reply::{CheckItem, CheckView, OpenView};
pub use crate::places::field_book::reply::{
    ClipView, ClosureView, ClosureWord, OpenPadView, PadView, ReadBackView, SlotView, SuspectView,
};
pub use crate::places::job_file::reply::{
    ChangesView, PacketView, PacketsView, PaperGroup, PaperView, ReaderView, SendView,
};
pub use crate::places::plan::reply::{
    CapturedView, FaceView, HoldView, HoldWord, ItemView, LineKind, LineView, PlanDrawn, PlanReply,
    PlanView, SeenView, TotalView,
};
pub use crate::places::plan::solid_reply::{PaintedView, SolidName, SolidView};
pub use crate::places::takeoff::reply::{
    LackView, LoadBar, RateView, TakeoffLine, TakeoffPart, TakeoffView, ThingLink,
};
pub use crate::places::today::reply::{FoundView, StopView, TodayView};
pub use crate::places::walk_round::reply::{
    LookView, PhotoState, PhotoView, WalkPart, WalkView, WantedShot,
};
pub use crate::sentence::Sentence;
pub use crate::settings::reply::SettingsView;
pub use eavebook_core::check::State;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

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
    /// The takeoff of one job.
    Takeoff(Box<TakeoffView>),
    /// The packets of a job.
    Packets(Box<PacketsView>),
    /// Nothing was changed, and why.
    Refused(Sentence),
    /// What the plan answers.
    #[serde(untagged)]
    Plan(PlanReply),
    /// What is answered about copies.
    #[serde(untagged)]
    Copies(CopiesReply),
}

impl Reply {
    /// The job, if that is the reply.
    ///
    /// # Errors
    /// The reply itself, if it is another.
    pub fn into_job(self) -> Result<Box<JobView>, Box<Reply>> {
        if let Reply::Job(job) = self {
            Ok(job)
        } else {
            Err(Box::new(self))
        }
    }
}

impl From<PlanReply> for Reply {
    fn from(reply: PlanReply) -> Reply {
        Reply::Plan(reply)
    }
}

impl From<CopiesReply> for Reply {
    fn from(reply: CopiesReply) -> Reply {
        Reply::Copies(reply)
    }
}
