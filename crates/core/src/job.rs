//! A job worked out as one value: folded, laid out, solved, taken off and priced.
//!
//! [`SolvedJob`] is made once for a state of a job and shared behind an [`Arc`]. Every view, paper,
//! search and command takes its figures from it. A walk that is still open, an outline without a
//! pitch and a roof past counting are results ([`JobError`]), not failures: the steps before them
//! keep their figures.

use crate::book::entry::Entry;
use crate::book::fold::{FieldBook, fold};
use crate::book::kinds::Side;
use crate::book::lay_out::{LaidOut, lay_out};
use crate::book::on_roof;
use crate::check::Standing;
use crate::outline::AdjustError;
use crate::price::Price;
use crate::roof::Roof;
use crate::settings::{Terms, choose_rates};
use crate::settled::RoofUnavailable;
use crate::solve::{NotPriceable, Priced, Solved, solve, take_off_and_price};
use crate::survey::Survey;
use crate::takeoff::{NoTakeoff, Takeoff};
use std::sync::Arc;

/// The settings by which a job is worked out: those of the device and of the firm.
#[derive(Clone, Debug, PartialEq)]
pub struct JobBasis {
    /// The side of the walker on which the building is, until a corner records it.
    pub building_on: Side,
    /// Rates of the firm before the changes of the job, code profile, and the day for their age.
    pub firm: Terms,
}

/// Why a step of a job has no result.
#[derive(Clone, Debug, PartialEq)]
pub enum JobError {
    /// The walk has not returned to its start.
    WalkOpen,
    /// The readings make no outline.
    Outline(AdjustError),
    /// The outline carries no roof yet.
    Roof(RoofUnavailable),
    /// The roof cannot be taken off.
    Takeoff(NoTakeoff),
}

/// One job, worked out.
#[derive(Clone, Debug)]
pub struct SolvedJob {
    /// All entries of the job, folded.
    pub field_book: Arc<FieldBook>,
    /// The settings by which it was worked out.
    pub basis: JobBasis,
    /// The walk, and the survey once the walk is closed.
    pub laid: LaidOut,
    /// Outline, roof, totals and checks; `WalkOpen` or `Outline` otherwise.
    pub solved: Result<Solved, JobError>,
    /// Rates with the changes that were recorded for this job, code profile and day.
    pub terms: Terms,
    /// Quantities and price, or the first step that has no result.
    pub priced: Result<Priced, JobError>,
}

impl SolvedJob {
    /// Works out a job from its entries, in any order.
    #[must_use]
    pub fn from_entries<'a>(
        entries: impl IntoIterator<Item = &'a Entry>,
        basis: JobBasis,
    ) -> SolvedJob {
        SolvedJob::new(Arc::new(fold(entries)), basis)
    }

    /// Works out a job from its folded entries.
    #[must_use]
    pub fn new(field_book: Arc<FieldBook>, basis: JobBasis) -> SolvedJob {
        let laid = lay_out(&field_book, basis.building_on);
        let terms = job_terms(&basis.firm, &field_book);
        let survey = laid.survey.as_ref().ok_or(JobError::WalkOpen);
        let solved =
            survey.and_then(|survey| Ok((survey, solve(survey).map_err(JobError::Outline)?)));
        let (solved, priced) = match solved {
            Ok((survey, solved)) => {
                let priced = take_off_and_price(survey, &solved, &terms).map_err(JobError::from);
                (Ok(solved), priced)
            }
            Err(why) => (Err(why.clone()), Err(why)),
        };
        SolvedJob {
            field_book,
            basis,
            laid,
            solved,
            terms,
            priced,
        }
    }

    /// Returns whether this value is that of a folded job under a basis, so that it need not be made
    /// again. Compares the fold by its address.
    #[must_use]
    pub fn is_current(&self, field_book: &Arc<FieldBook>, basis: &JobBasis) -> bool {
        Arc::ptr_eq(&self.field_book, field_book) && self.basis == *basis
    }

    /// The survey of the closed walk; `None` while the walk is open.
    #[must_use]
    pub fn survey(&self) -> Option<&Survey> {
        self.laid.survey.as_ref()
    }

    /// The solution; `None` while the walk is open or its readings make no outline.
    #[must_use]
    pub fn solution(&self) -> Option<&Solved> {
        self.solved.as_ref().ok()
    }

    /// The raised roof; `None` if a step before it has no result.
    #[must_use]
    pub fn roof(&self) -> Option<&Roof> {
        self.solution()?.roof.as_ref().ok()
    }

    /// Quantities; `None` if there is no roof to take off.
    #[must_use]
    pub fn takeoff(&self) -> Option<&Takeoff> {
        self.priced.as_ref().ok().map(|priced| &priced.takeoff)
    }

    /// The price; `None` if there is no roof to take off.
    #[must_use]
    pub fn price(&self) -> Option<&Price> {
        self.priced.as_ref().ok().map(|priced| &priced.price)
    }

    /// How well each thing of the job is known.
    #[must_use]
    pub fn standing(&self) -> Standing<'_> {
        Standing {
            book: &self.field_book,
            laid: &self.laid,
            bodies: self.solution().map_or(&[], |solved| &solved.bodies),
        }
    }
}

/// Returns the firm's terms with the rates that were changed for one job.
#[must_use]
pub fn job_terms(firm: &Terms, field_book: &FieldBook) -> Terms {
    let rates = choose_rates(Some(firm.rates.clone()), on_roof::rates(field_book));
    Terms {
        rates,
        ..firm.clone()
    }
}

impl From<NotPriceable> for JobError {
    fn from(why: NotPriceable) -> JobError {
        match why {
            NotPriceable::RoofUnavailable(why) => JobError::Roof(why),
            NotPriceable::NoTakeoff(why) => JobError::Takeoff(why),
        }
    }
}
