//! What a screen may ask, in groups by place. A request that books is idempotent: sent twice, it
//! books once.

pub use crate::copies::request::CopiesRequest;
pub use crate::places::arrive::request::ArriveRequest;
pub use crate::places::check::request::CheckRequest;
pub use crate::places::field_book::request::FieldBookRequest;
pub use crate::places::job_file::request::JobFileRequest;
pub use crate::places::plan::request::{PlanRequest, SeenFrom, TiltSample};
pub use crate::places::takeoff::request::TakeoffRequest;
pub use crate::places::today::request::TodayRequest;
pub use crate::places::walk_round::request::WalkRoundRequest;
pub use crate::settings::request::{Language, Setting, SettingsRequest, Theme};
pub use eavebook_core::book::edition::Edition;
pub use eavebook_core::book::keypad::{FractionStep, Key, Meant};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Writes the enum of all requests with a conversion from each group.
macro_rules! requests {
    ($($(#[$doc:meta])* $group:ident($request:ident),)+) => {
        /// One request. The groups share one tag, `ask`, so that a request is one flat object.
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
        #[serde(untagged)]
        pub enum Request {
            $($(#[$doc])* $group($request),)+
        }

        $(impl From<$request> for Request {
            fn from(request: $request) -> Request {
                Request::$group(request)
            }
        })+
    };
}

requests! {
    /// Of Today.
    Today(TodayRequest),
    /// Of Arrive.
    Arrive(ArriveRequest),
    /// Of the walk-round.
    WalkRound(WalkRoundRequest),
    /// Of the field book.
    FieldBook(FieldBookRequest),
    /// Of the plan.
    Plan(PlanRequest),
    /// Of the Leave-site check.
    Check(CheckRequest),
    /// Of the takeoff.
    Takeoff(TakeoffRequest),
    /// Of the job file.
    JobFile(JobFileRequest),
    /// About settings of this device.
    Settings(SettingsRequest),
    /// About copies on other machines.
    Copies(CopiesRequest),
}
