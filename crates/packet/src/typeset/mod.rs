//! A leaf to a PDF: tagged for screen readers (PDF/UA-1, PDF/A-2a), its letters inside, the same
//! bytes for the same leaf.
//!
//! What is typed never becomes markup: a leaf goes to the template as data.

mod letters;
mod world;

pub use letters::{Letters, Unwritten};

use crate::leaf::Leaf;
use std::collections::BTreeMap;
use typst::foundations::{Bytes, Datetime, Smart};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};
use world::PaperWorld;

/// Drawings and sheet copies by the names that a leaf uses.
pub type Pictures = BTreeMap<String, Bytes>;

/// The name under which every leaf in English finds the plan.
pub const PLAN: &str = "plan.svg";
/// The one in Spanish.
pub const PLAN_ES: &str = "plan.es.svg";
/// The roof as a solid.
pub const SOLID: &str = "solid.svg";
/// The plan drawn for half a page.
pub const PLAN_HALF: &str = "plan.half.svg";

/// A paper that was set.
pub struct SetPaper {
    /// The PDF.
    pub pdf: Vec<u8>,
    /// Signs that no font has, if any; `[?]` stands in their place.
    pub unwritten: Option<Unwritten>,
}

/// Why a paper could not be set.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotSet {
    /// A font of the program is missing or broken.
    #[error("its font is missing")]
    NoFont,
    /// What the typesetter said.
    #[error("the typesetter refused it: {0}")]
    Refused(String),
}

/// Sets a leaf. `moment`: RFC 3339, the date in the file; `ident`: what tells this paper from all
/// others, the same for the same paper.
///
/// # Errors
/// `NoFont`, `Refused`. A warning is an error too: without a font the typesetter warns and writes a
/// paper without a letter.
pub fn set(
    leaf: &Leaf,
    letters: &Letters,
    pictures: &Pictures,
    moment: &str,
    ident: &str,
) -> Result<SetPaper, NotSet> {
    if !letters.are_all_there() {
        return Err(NotSet::NoFont);
    }
    let refused = |why: &str| NotSet::Refused(why.to_owned());
    let mut data = serde_json::to_value(leaf).map_err(|why| refused(&why.to_string()))?;
    let unwritten = letters.make_writable(&mut data);
    let world = PaperWorld::new(letters, pictures, data.to_string());
    let set = typst::compile::<PagedDocument>(&world);
    let first = |all: &[typst::diag::SourceDiagnostic]| {
        let said = all.first().map(|one| one.message.to_string());
        NotSet::Refused(said.unwrap_or_default())
    };
    let document = set.output.map_err(|errors| first(&errors))?;
    if !set.warnings.is_empty() {
        return Err(first(&set.warnings));
    }
    let standards = PdfStandards::new(&[PdfStandard::Ua_1, PdfStandard::A_2a]);
    let options = PdfOptions {
        ident: Smart::Custom(ident.to_owned()),
        creator: Smart::Custom(Some("eavebook".to_owned())),
        timestamp: timestamp(moment),
        standards: standards.map_err(|why| refused(why.message()))?,
        ..PdfOptions::default()
    };
    let pdf = typst_pdf::pdf(&document, &options).map_err(|errors| first(&errors))?;
    // What was set stays in the typesetter's memory for a second making, not for ever.
    typst::comemo::evict(8);
    Ok(SetPaper { pdf, unwritten })
}

/// A moment as the file writes it; none for what is no RFC 3339.
fn timestamp(moment: &str) -> Option<Timestamp> {
    let number = |range: std::ops::Range<usize>| moment.get(range)?.parse::<i32>().ok();
    let small = |range| u8::try_from(number(range)?).ok();
    let datetime = Datetime::from_ymd_hms(
        number(0..4)?,
        small(5..7)?,
        small(8..10)?,
        small(11..13)?,
        small(14..16)?,
        small(17..19)?,
    )?;
    let offset = moment
        .get(19..)?
        .trim_start_matches(|sign: char| sign == '.' || sign.is_ascii_digit());
    if offset == "Z" {
        return Some(Timestamp::new_utc(datetime));
    }
    let sign = if offset.starts_with('-') { -1 } else { 1 };
    let (hours, minutes) = offset.get(1..)?.split_once(':')?;
    let minutes = hours.parse::<i32>().ok()? * 60 + minutes.parse::<i32>().ok()?;
    Timestamp::new_local(datetime, sign * minutes)
}
