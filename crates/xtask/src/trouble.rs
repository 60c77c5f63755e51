//! What can stop a task. Every text names the thing and the remedy.

use std::fmt;
use std::io;
use std::path::PathBuf;

/// Why a task ended early or failed.
#[derive(Debug)]
pub enum Trouble {
    /// A program that should be there did not start.
    NoStart {
        /// Its name.
        program: String,
        /// What the system said.
        cause: io::Error,
    },
    /// A program ran and said no.
    Failed {
        /// The whole command line.
        command: String,
    },
    /// Something must be installed by hand.
    Missing {
        /// What, and the line to run.
        remedy: String,
    },
    /// A file or folder could not be read or written.
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// Some steps failed; the table above names them.
    Steps {
        /// How many.
        failed: usize,
    },
    /// Some drills did not hold; the lines above name them.
    Drills,
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::NoStart { program, cause } => {
                write!(
                    f,
                    "`{program}` did not start ({cause}): install it or put it on PATH"
                )
            }
            Trouble::Failed { command } => {
                write!(f, "`{command}` failed: its own words stand above")
            }
            Trouble::Missing { remedy } => write!(f, "{remedy}"),
            Trouble::File { path, cause } => write!(f, "{}: {cause}", path.display()),
            Trouble::Steps { failed } => {
                write!(f, "{failed} failed: the table above names what")
            }
            Trouble::Drills => write!(f, "not every drill holds: the lines above name which"),
        }
    }
}

impl std::error::Error for Trouble {}
