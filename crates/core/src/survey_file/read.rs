//! The survey file as a whole.

use super::json::Reader;
use super::refusal::{Refusal, ShapeFault};
use super::{bodies, extras, seen, terms};
use crate::settings::{Chosen, Code, Rates, Terms, choose_rates};
use crate::survey::Survey;
use chrono::NaiveDate;

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
