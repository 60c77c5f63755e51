//! What turns up once the old roof is off: how much, where, at what price, and who agreed.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::parts::job_rates::JobRates;
use crate::refusal::{Refusal, RequestRefusal};
use eavebook_core::book::fold::FieldBook;
use eavebook_core::book::kinds::{ChangeFound, Kind, VisitNote};
use eavebook_core::units::Money;
use eavebook_store::Store;
use uuid::Uuid;

/// More sheets than any face holds.
const MOST_SHEETS: u32 = 999;

/// What was found.
pub struct Found {
    /// The number it is to have: the next one, or that of one just booked, which books nothing.
    pub number: u32,
    /// The leg from which the face rises, from 1; `None` if no face was chosen.
    pub leg: Option<u32>,
    /// Sheets of the deck to be replaced.
    pub sheets: u32,
    /// Somebody who may say yes agreed.
    pub consent: bool,
}

/// Books it at the price of now, which later rates do not change.
///
/// # Errors
/// `NoJob`, `NoFace`, `NoSheets`, `NoLeg`, `NoItem` for a number that is not the next.
pub fn found(book: &mut Store, job: Uuid, found: &Found) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    let leg = found.leg.ok_or(RequestRefusal::NoFace)?;
    opened.check_leg(leg)?;
    if !(1..=MOST_SHEETS).contains(&found.sheets) {
        return Err(RequestRefusal::NoSheets { said: found.sheets }.into());
    }
    let next = opened.next_change();
    let change = ChangeFound {
        number: found.number,
        leg,
        sheets: found.sheets,
        each: a_sheet(&opened.book).map(|price| price.as_decimal().to_string()),
        consent: found.consent,
        by: found.consent.then(|| who_agrees(&opened.book)).flatten(),
    };
    opened.check_thing(&change.thing())?;
    if found.number == next {
        opened.book(book, &Kind::Change(change), Vec::new())?;
    }
    Ok(Answer::Job(job))
}

/// What a sheet of the deck costs in this job, laid. None: one of the two is not priced.
#[must_use]
pub fn a_sheet(book: &FieldBook) -> Option<Money> {
    let rates = JobRates::new(book).rates;
    let deck = &rates.get().deck;
    Some(deck.price? + deck.labor_price?)
}

/// The last of those who are said to be here and may say yes.
fn who_agrees(book: &FieldBook) -> Option<String> {
    let mut here = book.visited().rev();
    here.find_map(|noted| {
        let VisitNote::Here {
            name,
            may_say_yes: true,
        } = &noted.what
        else {
            return None;
        };
        Some(name.clone())
    })
}
