//! `eavebook words`: every sentence and label of the program in one language.

use crate::refusal::Refusal;
use clap::{Args, ValueEnum};
use eavebook_words::{Language, catalog};
use std::io::{self, BufWriter, ErrorKind, Write};

/// Print every sentence and label of the program, one JSON object a line.
///
/// Each line has the id of a text, the number of its sample, its kind (sentence, label, heading,
/// spoken or noun) and the text. `"same": true` marks a text that may read alike in both languages.
#[derive(Args)]
#[command(after_help = "Examples:
  eavebook words --lang en
  eavebook words --lang es | grep closure")]
pub struct Words {
    /// The language of the texts.
    #[arg(long, value_enum, default_value_t = Lang::En)]
    lang: Lang,
}

/// A language, as an argument names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Lang {
    /// English
    En,
    /// Spanish
    Es,
}

impl From<Lang> for Language {
    fn from(lang: Lang) -> Language {
        match lang {
            Lang::En => Language::English,
            Lang::Es => Language::Spanish,
        }
    }
}

impl Words {
    /// Prints the catalog.
    pub fn run(self) -> Result<(), Refusal> {
        let mut out = BufWriter::new(io::stdout().lock());
        let mut print = || -> io::Result<()> {
            for line in catalog(self.lang.into()) {
                serde_json::to_writer(&mut out, &line)?;
                out.write_all(b"\n")?;
            }
            out.flush()
        };
        match print() {
            Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(Refusal::new(&format!(
                "the texts cannot be printed ({error}): print to another place"
            ))),
            _ => Ok(()),
        }
    }
}
