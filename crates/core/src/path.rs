//! Where in a file something stands.

use crate::units::quotable;
use std::fmt;

/// Where in the file something stands: `bodies[0].edges[2].pitch`; `the file` for all of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Path {
    steps: Vec<Step>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Step {
    Key(String),
    Place(usize),
}

/// Signs after which a path is cut, so that the sentence behind it is still read.
const LONGEST: usize = 160;

impl Path {
    pub(crate) fn enter_key(&mut self, key: &str) {
        self.steps.push(Step::Key(key.to_owned()));
    }

    pub(crate) fn enter_place(&mut self, place: usize) {
        self.steps.push(Step::Place(place));
    }

    pub(crate) fn leave(&mut self) {
        self.steps.pop();
    }

    /// The path of a key below this one.
    #[must_use]
    pub(crate) fn key(&self, key: &str) -> Path {
        let mut below = self.clone();
        below.enter_key(key);
        below
    }

    /// The path of a place in a list below this one.
    #[must_use]
    pub(crate) fn place(&self, place: usize) -> Path {
        let mut below = self.clone();
        below.enter_place(place);
        below
    }

    /// The path of what stands here, seen from a table that holds it under a key.
    #[must_use]
    pub(crate) fn below_key(mut self, key: &str) -> Path {
        self.steps.insert(0, Step::Key(key.to_owned()));
        self
    }

    /// The path of what stands here, seen from a list that holds it at a place.
    #[must_use]
    pub(crate) fn below_place(mut self, place: usize) -> Path {
        self.steps.insert(0, Step::Place(place));
        self
    }

    pub(crate) fn is_whole_file(&self) -> bool {
        self.steps.is_empty()
    }
}

impl fmt::Display for Path {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.steps.is_empty() {
            return out.write_str("the file");
        }
        let mut written = String::new();
        for step in &self.steps {
            match step {
                Step::Place(place) => written.push_str(&format!("[{place}]")),
                Step::Key(key) => {
                    if !written.is_empty() {
                        written.push('.');
                    }
                    written.push_str(&quotable(key));
                }
            }
        }
        if written.chars().count() > LONGEST {
            written = written.chars().take(LONGEST).chain(['…']).collect();
        }
        out.write_str(&written)
    }
}
