//! The takeoff as it is shown: every total with its lines, every line with what made it.

use crate::open_job::OpenJob;
use crate::parts::job_rates::JobRates;
use crate::parts::roof::Raised;
use crate::parts::solved_job::{self, SolvedJob};
use crate::places::takeoff::because::Traces;
use crate::places::takeoff::reply::TakeoffView;
use crate::places::takeoff::{lacks, order, steps, work};
use eavebook_core::settings::Terms;
use eavebook_core::solve::take_off_and_price;

/// The takeoff of a job as it is shown.
#[must_use]
pub fn view(opened: &OpenJob) -> TakeoffView {
    let laid = opened.laid_out();
    let solved = solved_job::solve(&laid);
    let hidden = opened.draft.hidden();
    let seen = SolvedJob::new(opened, &laid, solved.as_ref(), hidden.as_ref());
    let rates = JobRates::new(&opened.book);
    let mut shown = TakeoffView {
        job: opened.job,
        lack: None,
        not_known: Vec::new(),
        not_priced: Vec::new(),
        cautions: Vec::new(),
        parts: Vec::new(),
        changed: rates.changed(),
    };
    let terms = Terms::new(rates.rates.clone(), None, Some(crate::stamp::today()));
    let worked = laid
        .survey
        .as_ref()
        .zip(solved.as_ref())
        .and_then(|(survey, solved)| {
            let raised = Raised::new(&seen, solved)?;
            Some((
                raised,
                take_off_and_price(survey, solved, &terms).ok()?,
                solved,
            ))
        });
    let Some((raised, priced, worked)) = worked else {
        shown.lack = Some(lacks::no_roof(&seen, solved.as_ref()));
        return shown;
    };
    let (takeoff, price) = (&priced.takeoff, &priced.price);
    let traces = Traces {
        seen: &seen,
        raised: &raised,
        rates: &rates,
        code: terms.code.get(),
        order: &takeoff.order,
    };
    shown.not_known = lacks::not_known(&seen, &priced);
    shown.not_priced = lacks::not_priced(&seen, &rates, price);
    shown.cautions = lacks::cautions_of(&rates, &priced);
    shown.parts = vec![
        steps::price(&traces, takeoff, price),
        order::squares(&traces, takeoff, worked.totals.area),
        order::order(&traces, takeoff),
        work::tear_off(&traces, takeoff),
        work::air(&traces, &takeoff.ventilation),
        work::labor(&traces, takeoff),
        order::billing(&traces, takeoff),
    ];
    shown
}
