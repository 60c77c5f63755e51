//! `eavebook-survey/1`: a survey as JSON text, written by hand or by another program.
//!
//! The text is read once from front to back and judged as it comes, so that a file of any size is
//! answered soon and in little memory. A key that is unknown or given twice is refused by name.
//! What can be decided from the file alone is refused here; what needs the corners adjusted or the
//! roof raised is left to those who do it.
//!
//! `REFERENCE.md` beside this file says every key, with a file that works for each.

mod bodies;
mod edges;
mod extras;
mod json;
mod known_outline;
mod measures;
mod readings;
mod refusal;
mod seen;
mod slopes;
mod terms;
mod write;

pub use crate::path::Path;
pub use bodies::BodyFault;
pub use edges::EdgeFault;
pub use extras::ExtraFault;
pub use known_outline::OutlineFault;
pub use measures::MeasureFault;
pub use readings::ReadingFault;
pub use refusal::{Fault, Refusal, ShapeFault, SyntaxFault};
pub use seen::SeenFault;
pub use slopes::SlopeFault;
pub use terms::TermsFault;
pub use write::write;

use crate::settings::{Chosen, Code, Rates, Terms, choose_rates};
use crate::survey::Survey;
use chrono::NaiveDate;
use json::Reader;

/// The name of the format, as the file says it.
pub const FORMAT: &str = "eavebook-survey/1";

/// What a survey file holds.
#[derive(Clone, Debug, PartialEq)]
pub struct SurveyFile {
    /// What was seen and read at the house.
    pub survey: Survey,
    /// Rates to price by; none: the file says nothing of them.
    pub rates: Option<Chosen<Rates>>,
    /// Code profile; none: the file says nothing of it.
    pub code: Option<Chosen<Code>>,
}

impl SurveyFile {
    /// Chooses the rates and the code profile that the file names, the demo ones if it names none.
    #[must_use]
    pub fn terms(&self, on: Option<NaiveDate>) -> Terms {
        let rates = choose_rates(self.rates.clone(), []);
        Terms::new(rates, self.code.clone(), on)
    }
}

const KEYS: &[&str] = &[
    "format",
    "bodies",
    "walls",
    "penetrations",
    "deck",
    "covering",
    "hearsay",
    "seen",
    "rates",
    "code",
];

/// Reads a survey file.
///
/// # Errors
/// The first thing that is wrong, as one line that says where and what to write.
pub fn read(text: &[u8]) -> Result<SurveyFile, Refusal> {
    let mut reader = Reader::new(text)?;
    let mut format = None;
    let mut bodies = None;
    let mut survey = Survey::default();
    let (mut rates, mut code) = (None, None);
    let wanted = "a survey, {\"format\": \"eavebook-survey/1\", \"bodies\": [...]}";
    reader.object(wanted, |reader, key| {
        match key {
            "format" => format = Some(known_format(reader)?),
            "bodies" => bodies = Some(bodies::bodies(reader)?),
            "walls" => survey.walls = extras::walls(reader)?,
            "penetrations" => survey.penetrations = extras::penetrations(reader)?,
            "deck" => survey.deck = Some(extras::deck(reader)?),
            "covering" => survey.covering = Some(extras::covering(reader)?),
            "hearsay" => survey.hearsay = extras::hearsay(reader)?,
            "seen" => survey.seen = seen::seen(reader)?,
            "rates" => rates = Some(terms::rates(reader)?),
            "code" => code = Some(terms::code(reader)?),
            _ => return Err(reader.unknown_key(key, KEYS)),
        }
        Ok(())
    })?;
    reader.end()?;
    reader.must_have(format, "format", "\"format\": \"eavebook-survey/1\"")?;
    survey.bodies = reader.must_have(bodies, "bodies", "\"bodies\": [{...}]")?;
    Ok(SurveyFile {
        survey,
        rates,
        code,
    })
}

fn known_format(reader: &mut Reader<'_>) -> Result<(), Refusal> {
    const WANTED: &str = "\"eavebook-survey/1\"";
    let format = reader.text(WANTED)?;
    if format == FORMAT {
        return Ok(());
    }
    let found = format!("the format \"{}\"", crate::units::quotable(&format));
    let wanted = WANTED;
    Err(reader.refuse(ShapeFault::Wrong { found, wanted }))
}
