//! A refusal with its place in the file.

use super::body::BodyFault;
use super::edge::EdgeFault;
use super::extra::ExtraFault;
use super::measure::MeasureFault;
use super::observation::SeenFault;
use super::outline::OutlineFault;
use super::reading::ReadingFault;
use super::shape::ShapeFault;
use super::slope::SlopeFault;
use super::syntax::SyntaxFault;
use super::terms::TermsFault;
use crate::path::Path;
use crate::units::quotable;
use std::fmt;

/// Why a file is no survey: one line of at most [`Refusal::LONGEST`] signs that says where, what
/// is wrong and what to write.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    // Boxed: every step of the reader hands one back.
    said: Box<RefusalDetails>,
}

#[derive(Clone, Debug, PartialEq)]
struct RefusalDetails {
    place: Place,
    /// The reading or body at fault, by its name in the file.
    about: Option<String>,
    fault: Fault,
}

#[derive(Clone, Debug, PartialEq)]
enum Place {
    /// A path in a file that is JSON.
    Path(Path),
    /// A spot in a file that is not.
    Spot {
        line: usize,
        column: usize,
        path: Path,
    },
}

impl Refusal {
    /// Most signs of a refusal in print.
    pub const LONGEST: usize = 500;

    pub(crate) fn at(path: Path, fault: impl Into<Fault>) -> Refusal {
        Refusal::new(Place::Path(path), fault.into())
    }

    pub(crate) fn not_json(line: usize, column: usize, path: Path, fault: SyntaxFault) -> Refusal {
        Refusal::new(Place::Spot { line, column, path }, Fault::Syntax(fault))
    }

    fn new(place: Place, fault: Fault) -> Refusal {
        let about = None;
        let said = RefusalDetails {
            place,
            about,
            fault,
        };
        Refusal {
            said: Box::new(said),
        }
    }

    /// The same refusal, naming the thing at fault; the first name stays.
    #[must_use]
    pub(crate) fn about(mut self, kind: &str, name: &str) -> Refusal {
        self.said.about.get_or_insert_with(|| {
            let name = quotable(name);
            // What has no name of its own is called `body 2` already.
            if name.starts_with(kind) {
                name
            } else {
                format!("{kind} {name}")
            }
        });
        self
    }

    /// The same refusal of something in a body, naming the body beside it: a path alone counts
    /// bodies from 0, a person knows them by name.
    #[must_use]
    pub(crate) fn in_body(mut self, id: &str) -> Refusal {
        let id = quotable(id);
        self.said.about = Some(match self.said.about {
            Some(leg) if leg.starts_with("leg ") => format!("{leg} of {id}"),
            Some(other) => other,
            None => format!("body {id}"),
        });
        self
    }

    /// What is wrong.
    #[must_use]
    pub fn fault(&self) -> &Fault {
        &self.said.fault
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let place = match &self.said.place {
            Place::Path(path) => path.to_string(),
            Place::Spot { line, column, path } if path.is_whole_file() => {
                format!("line {line} column {column}")
            }
            Place::Spot { line, column, path } => format!("line {line} column {column} ({path})"),
        };
        let about = self
            .said
            .about
            .as_ref()
            .map_or(String::new(), |name| format!(" ({name})"));
        let sentence = format!("{place}{about}: {}", self.said.fault);
        if sentence.chars().count() <= Refusal::LONGEST {
            return out.write_str(&sentence);
        }
        let cut: String = sentence.chars().take(Refusal::LONGEST - 1).collect();
        write!(out, "{cut}…")
    }
}

impl std::error::Error for Refusal {}

/// What is wrong with a survey file, by the part of it that is at fault.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Fault {
    /// It is no JSON.
    #[error(transparent)]
    Syntax(#[from] SyntaxFault),
    /// Keys and kinds of value.
    #[error(transparent)]
    Shape(#[from] ShapeFault),
    /// A number, a length or an angle.
    #[error(transparent)]
    Measure(#[from] MeasureFault),
    /// A body as a whole.
    #[error(transparent)]
    Body(#[from] BodyFault),
    /// Corners given as known.
    #[error(transparent)]
    Outline(#[from] OutlineFault),
    /// A taped value.
    #[error(transparent)]
    Reading(#[from] ReadingFault),
    /// What rises at a leg.
    #[error(transparent)]
    Edge(#[from] EdgeFault),
    /// A reading of a slope.
    #[error(transparent)]
    Slope(#[from] SlopeFault),
    /// All that is no body.
    #[error(transparent)]
    Extra(#[from] ExtraFault),
    /// Something seen of the roof.
    #[error(transparent)]
    RoofObservation(#[from] SeenFault),
    /// Rates or the code profile.
    #[error(transparent)]
    Terms(#[from] TermsFault),
}
