//! `eavebook solve`: a survey file in, what it says out.

use crate::lines::Lines;
use crate::progress::Progress;
use crate::refusal::Refusal;
use chrono::NaiveDate;
use clap::Args;
use eavebook_core::settled::{Ground, RoofUnavailable};
use eavebook_core::solve::{solve_over, take_off_and_price_as_meant};
use eavebook_core::{result, survey_file};
use serde::Serialize;
use std::fs::File;
use std::io::{self, BufWriter, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};

/// Solve a survey file: faces, edges and areas with their spread, slips, what to read again, what to
/// order, haul and charge.
///
/// FILE is JSON in the format eavebook-survey/1. Lengths are feet as numbers, or tape text such as
/// "42' 7 1/2\"", "42.63 ft", "13.01 m". The result is JSON on stdout. A file that cannot be read
/// is refused in one line that says where and what to write, and nothing is printed.
#[derive(Args)]
#[command(after_long_help = EXAMPLES)]
pub struct Solve {
    /// The survey file; `-` reads it from stdin.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// Against which day rates and code profile are old, as 2026-05-31. Without it nothing is said
    /// of their age.
    #[arg(long, value_name = "DATE")]
    on: Option<NaiveDate>,
    /// Raise the roof over the outline squared as it was meant, as the screens do. Without it the
    /// roof stands over the corners as the readings place them, and a front that was read a hair
    /// out of line makes a hair of a face with hips and valleys of its own. The order list and the
    /// price are of the squared roof either way: nobody orders hips for a hair.
    #[arg(long)]
    squared: bool,
}

const EXAMPLES: &str = r#"A rectangle read once, hip roof at 6 in 12:
  { "format": "eavebook-survey/1",
    "bodies": [ { "id": "main",
      "outline": { "turns_deg": [90, 90, 90, 90] },
      "readings": [ { "id": "front", "leg": 0, "value": "60' 2\"" },
                    { "id": "right", "leg": 1, "value": "29' 11\"" },
                    { "id": "back",  "leg": 2, "value": "60'" },
                    { "id": "left",  "leg": 3, "value": "30'" } ],
      "edges": [ { "pitch": 6 }, { "pitch": 6 }, { "pitch": 6 }, { "pitch": 6 } ] } ] }

Turns are at the far corner of each leg, left positive: negative all round when the
building was on the right. An edge may also say
  { "end": "gable" }
  { "pitch_readings": [ { "degrees": 26.4 }, { "degrees": 26.9, "reversed": true } ] }

Look first at `suspects` (readings the others speak against), `unproved` (readings nothing
checks) and `retake_first` (what to read again, the dearest first):
  eavebook solve house.json
  eavebook solve - < house.json"#;

/// Files past this are not surveys, bytes.
const LARGEST: u64 = 50_000_000;

impl Solve {
    /// Prints the result.
    pub fn run(self) -> Result<(), Refusal> {
        let text = read(&self.file)?;
        let progress = Progress::of("solving the survey");
        let file =
            survey_file::read(&text).map_err(|refusal| Refusal::new(&refusal.to_string()))?;
        drop(text);
        let ground = if self.squared {
            Ground::Squared
        } else {
            Ground::AsAdjusted
        };
        let solved = solve_over(&file.survey, ground)
            .map_err(|refusal| Refusal::new(&refusal.to_string()))?;
        if let Err(RoofUnavailable::Refused(refusal)) = &solved.roof {
            return Err(Refusal::new(&refusal.to_string()));
        }
        let terms = file.terms(self.on);
        let priced = take_off_and_price_as_meant(&file.survey, &solved, &terms);
        drop(progress);
        let result = result::result(&file.survey, &solved);
        print(&match (&priced, &solved.roof) {
            (Ok((priced, Some(roof))), _) | (Ok((priced, None)), Ok(roof)) => {
                result.with_price(&file.survey, roof, priced)
            }
            (Ok((_, None)), Err(_)) => result,
            (Err(why), _) => result.without_price(why),
        })
    }
}

/// All of a file, or of stdin for `-`.
fn read(file: &Path) -> Result<Vec<u8>, Refusal> {
    let name = if file == Path::new("-") {
        "stdin".to_owned()
    } else {
        format!("\"{}\"", file.display())
    };
    let amiss = |fault: io::Error| {
        let kind = fault.kind();
        Refusal::new(&if kind == ErrorKind::NotFound {
            format!("there is no file {name}: look at its name and folder")
        } else if kind == ErrorKind::PermissionDenied {
            format!("{name} may not be read by you: change its permissions or copy it")
        } else if kind == ErrorKind::IsADirectory {
            format!("{name} is a folder: name a survey file in it")
        } else {
            format!("{name} cannot be read ({fault}): copy it elsewhere and try again")
        })
    };
    let mut text = Vec::new();
    if file == Path::new("-") {
        io::stdin().take(LARGEST + 1).read_to_end(&mut text)
    } else {
        File::open(file)
            .map_err(amiss)?
            .take(LARGEST + 1)
            .read_to_end(&mut text)
    }
    .map_err(amiss)?;
    if text.len() as u64 > LARGEST {
        return Err(Refusal::new(&format!(
            "{name} is over 50 MB: a survey file is small, look whether this is one"
        )));
    }
    Ok(text)
}

/// Whoever reads may stop reading.
fn print(result: &result::ResultFile<'_>) -> Result<(), Refusal> {
    let mut out = BufWriter::new(io::stdout().lock());
    let mut json = serde_json::Serializer::with_formatter(&mut out, Lines::default());
    let written = result
        .serialize(&mut json)
        .map_err(io::Error::from)
        .and_then(|()| out.write_all(b"\n"))
        .and_then(|()| out.flush());
    match written {
        Err(fault) if fault.kind() != ErrorKind::BrokenPipe => Err(Refusal::new(&format!(
            "the result cannot be written ({fault}): look for room where it goes"
        ))),
        _ => Ok(()),
    }
}
