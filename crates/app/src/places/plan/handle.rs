//! What the plan is asked.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::places::plan::reply::PlanReply;
use crate::places::plan::request::PlanRequest;
use crate::places::plan::{drawn, hold, on_roof, sight, slopes, solid};
use crate::refusal::Refusal;
use eavebook_core::book::kinds::CoveringObserved;
use eavebook_store::Store;

/// Answers a request of this place.
///
/// # Errors
/// Why nothing was changed.
pub fn answer(store: &mut Store, request: PlanRequest) -> Result<Answer, Refusal> {
    match request {
        PlanRequest::LegEnd { job, leg, end } => slopes::leg_end(store, job, leg, end),
        PlanRequest::Pitch { job, leg, read } => slopes::pitch(store, job, leg, read),
        PlanRequest::HoldStill { looks } => Ok(PlanReply::Hold(hold::view(&looks)).into()),
        PlanRequest::SightPitch {
            job,
            leg,
            photo,
            size,
            marks,
            after,
        } => {
            let marked = sight::Marked {
                leg,
                photo,
                size,
                marks,
                after,
            };
            sight::pitch(store, job, &marked)
        }
        PlanRequest::CapturePitch {
            job,
            leg,
            looks,
            reversed,
            after,
        } => {
            let captured = hold::Captured {
                leg,
                looks,
                reversed,
                after,
            };
            hold::capture(store, job, &captured)
        }
        PlanRequest::AddItem {
            job,
            leg,
            item,
            after,
        } => on_roof::add_item(store, job, leg, item, after),
        PlanRequest::Saddle { job, number, seen } => on_roof::saddle(store, job, number, seen),
        PlanRequest::Layers {
            job,
            layers,
            kind,
            leg,
        } => on_roof::covering(store, job, CoveringObserved { layers, kind, leg }),
        PlanRequest::Deck { job, kind, leg } => on_roof::deck(store, job, kind, leg),
        PlanRequest::RoofObserved { job, leg, over } => on_roof::roof_seen(store, job, leg, over),
        PlanRequest::Plan {
            job,
            width,
            tallest,
            letters,
        } => {
            let opened = OpenJob::read(store, job)?;
            let plan = drawn::view(&opened, drawn::Room::new(width, tallest, letters));
            Ok(PlanReply::Plan(Box::new(plan)).into())
        }
        PlanRequest::Solid { job, from } => {
            let opened = OpenJob::read(store, job)?;
            Ok(PlanReply::Solid(Box::new(solid::view(&opened, from))).into())
        }
    }
}
