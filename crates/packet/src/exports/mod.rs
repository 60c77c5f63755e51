//! What a machine reads of a job: tables, the roof in space, the book itself.

mod roof;
mod tables;

pub use roof::glb;
pub use tables::{
    differences, edges, faces, items, order_lines, photo_list, price_lines, readings,
};

use crate::job::Job;
use eavebook_core::book::freeze::house_entries;
use eavebook_core::settings::{Chosen, Origin, Rates};
use eavebook_core::survey_file::{self, SurveyFile};

/// The entries as they were booked, one a line, in the order of their stamps.
pub fn entries(job: &Job) -> Vec<u8> {
    let mut in_order: Vec<_> = house_entries(job.entries).collect();
    in_order.sort_by_key(|entry| entry.display_order());
    let lines = in_order.into_iter().map(|entry| entry.to_json() + "\n");
    lines.collect::<String>().into_bytes()
}

/// The book as a survey file, once its line has come round. It names the rates of the demo where
/// those made the price; the firm's own stay out of it.
pub fn survey(job: &Job) -> Option<Vec<u8>> {
    let demo = job.rates_from == Origin::Demo;
    let rates = demo.then(|| Chosen::Demo(Rates::demo()));
    let file = SurveyFile {
        survey: job.laid.survey.clone()?,
        rates,
        code: None,
    };
    Some(survey_file::write(&file).into_bytes())
}
