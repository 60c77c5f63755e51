//! A paper before it is set: one sentence, then what stands under it. All papers are of this one
//! family, so that one template sets them all and one law can read them all.

use crate::edition::{Lang, PaperKind};
use serde::Serialize;

/// One paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Leaf {
    /// Which.
    #[serde(skip)]
    pub kind: PaperKind,
    /// In which language.
    pub lang: Lang,
    /// Its name: `Proposal`.
    pub title: String,
    /// What it is and for whom, in a sentence.
    pub opening: String,
    /// What stands on it.
    pub blocks: Vec<Block>,
    /// What stands at the foot of each page.
    pub foot: Foot,
}

/// The foot of each page.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Foot {
    /// The address.
    pub job: String,
    /// `version 2, owner's edition`.
    pub version: String,
    /// `page`.
    pub page: String,
    /// `of`.
    pub of: String,
    /// The first 12 signs of the digest of the entries.
    pub digest: String,
}

/// A part of a paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "block", rename_all = "snake_case")]
pub enum Block {
    /// A heading.
    Heading { text: String },
    /// A sentence or several.
    Text { text: String },
    /// A caution: the same with a rule beside it.
    Caution { text: String },
    /// Items one under another.
    List { items: Vec<String> },
    /// A ruled table.
    Table(Table),
    /// The plan, with what it shows in words.
    Plan { alt: String },
    /// The roof as a solid, small, with what it shows in words.
    Solid { alt: String },
    /// A table on the left leaf, the plan on the right.
    Spread { table: Table, alt: String },
    /// Photos in a grid.
    Photos { pictures: Vec<Picture>, across: u8 },
    /// Lines to write on: what each is for.
    Sign { lines: Vec<String> },
}

/// A ruled table.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Table {
    /// One a column.
    pub columns: Vec<Column>,
    /// One a row.
    pub rows: Vec<Row>,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Column {
    /// What stands over it.
    pub head: String,
    /// How it is set.
    pub set: Set,
}

/// How a column is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Set {
    /// Words, as wide as they are.
    Words,
    /// Words, with what room is left.
    Wide,
    /// Figures, to the right.
    Figures,
    /// An empty box to write in.
    Blank,
}

/// A row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// One a column.
    pub cells: Vec<String>,
    /// How it is marked.
    pub mark: Mark,
}

/// How a row is marked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// Not at all.
    Plain,
    /// Struck: one line through, still readable.
    Struck,
    /// A sum.
    Sum,
}

/// A photo, or the empty frame of one that cannot be shown.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Picture {
    /// Its copy among the files of the typesetter; none: an empty frame.
    pub file: Option<String>,
    /// What it shows, for who cannot see it.
    pub alt: String,
    /// What stands under it.
    pub caption: String,
}

impl Table {
    /// A table with these columns.
    pub fn with(columns: &[(&str, Set)]) -> Table {
        let columns = columns.iter().map(|(head, set)| Column {
            head: (*head).to_owned(),
            set: *set,
        });
        Table {
            columns: columns.collect(),
            rows: Vec::new(),
        }
    }

    /// Adds a row.
    pub fn row(&mut self, cells: Vec<String>) {
        self.marked(Mark::Plain, cells);
    }

    /// Adds a row with a mark.
    pub fn marked(&mut self, mark: Mark, cells: Vec<String>) {
        self.rows.push(Row { cells, mark });
    }
}

impl Leaf {
    /// Adds a heading and what stands under it, where there is anything.
    pub fn under(&mut self, heading: &str, blocks: Vec<Block>) {
        if blocks.is_empty() {
            return;
        }
        self.blocks.push(Block::Heading {
            text: heading.to_owned(),
        });
        self.blocks.extend(blocks);
    }

    /// Adds a sentence.
    pub fn say(&mut self, text: impl Into<String>) {
        self.blocks.push(Block::Text { text: text.into() });
    }

    /// Everything that stands on it, line by line: what laws and snapshots read.
    #[cfg(test)]
    pub fn text(&self) -> String {
        let mut lines = vec![format!("= {}", self.title), self.opening.clone()];
        for block in &self.blocks {
            match block {
                Block::Heading { text } => lines.push(format!("\n== {text}")),
                Block::Text { text } => lines.push(text.clone()),
                Block::Caution { text } => lines.push(format!("! {text}")),
                Block::List { items } => lines.extend(items.iter().map(|item| format!("- {item}"))),
                Block::Table(table) => lines.extend(table.lines()),
                Block::Plan { alt } => lines.push(format!("[plan: {alt}]")),
                Block::Solid { alt } => lines.push(format!("[solid: {alt}]")),
                Block::Spread { table, alt } => {
                    lines.extend(table.lines());
                    lines.push(format!("[plan: {alt}]"));
                }
                Block::Photos { pictures, across } => {
                    lines.push(format!("[{} photos, {across} across]", pictures.len()));
                    let frame = |picture: &Picture| match &picture.file {
                        Some(file) => format!("[{file}: {}] {}", picture.alt, picture.caption),
                        None => format!("[empty frame: {}] {}", picture.alt, picture.caption),
                    };
                    lines.extend(pictures.iter().map(frame));
                }
                Block::Sign { lines: blank } => {
                    lines.extend(blank.iter().map(|line| format!("{line} ______")));
                }
            }
        }
        let foot = &self.foot;
        lines.push(format!(
            "\n{} | {} | {} n {} m | {}",
            foot.job, foot.version, foot.page, foot.of, foot.digest
        ));
        lines.join("\n") + "\n"
    }
}

#[cfg(test)]
impl Table {
    fn lines(&self) -> Vec<String> {
        let heads: Vec<&str> = self
            .columns
            .iter()
            .map(|column| column.head.as_str())
            .collect();
        let rows = self.rows.iter().map(|row| {
            let cells = row.cells.join(" | ");
            match row.mark {
                Mark::Plain => format!("  {cells}"),
                Mark::Struck => format!("  ~~{cells}~~"),
                Mark::Sum => format!("  == {cells}"),
            }
        });
        std::iter::once(format!("# {}", heads.join(" | ")))
            .chain(rows)
            .collect()
    }
}
