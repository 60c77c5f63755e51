//! All that the typesetter may see: one template, one leaf, its pictures, our fonts. No file of the
//! machine, no clock.

use super::{Letters, Pictures};
use std::sync::LazyLock;
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, Source};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

/// The one template of all papers.
const TEMPLATE: &str = include_str!("../../papers/paper.typ");
/// Where it finds its leaf.
const LEAF: &str = "leaf.json";

static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));
pub struct PaperWorld<'a> {
    letters: &'a Letters,
    book: LazyHash<FontBook>,
    template: Source,
    leaf: Bytes,
    pictures: &'a Pictures,
}

impl<'a> PaperWorld<'a> {
    pub fn new(letters: &'a Letters, pictures: &'a Pictures, leaf: String) -> PaperWorld<'a> {
        PaperWorld {
            letters,
            book: LazyHash::new(letters.book.clone()),
            template: Source::detached(TEMPLATE),
            leaf: Bytes::from_string(leaf),
            pictures,
        }
    }
}

impl World for PaperWorld<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.book
    }

    fn main(&self) -> FileId {
        self.template.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.template.id() {
            Ok(self.template.clone())
        } else {
            Err(FileError::AccessDenied)
        }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let name = id.get().vpath().get_without_slash();
        if name == LEAF {
            return Ok(self.leaf.clone());
        }
        self.pictures
            .get(name)
            .cloned()
            .ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.letters.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
