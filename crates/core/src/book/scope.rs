//! The sets of entries whose digests two sides compare, each set in smaller ones until the entries
//! that differ are found.

use std::fmt::{self, Display};
use uuid::Uuid;

/// A set of entries of one company.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// All of them: `company`.
    Company,
    /// Those of one job: `book:ID`.
    Book(Uuid),
    /// Those of one job whose id ends in this byte: `book:ID/hh`. The last byte, since the first
    /// are time and alike.
    Byte(Uuid, u8),
}

impl Scope {
    /// The set of this name.
    #[must_use]
    pub fn read(name: &str) -> Option<Scope> {
        if name == "company" {
            return Some(Scope::Company);
        }
        let book = name.strip_prefix("book:")?;
        let Some((book, byte)) = book.split_once('/') else {
            return Some(Scope::Book(book.parse().ok()?));
        };
        let two = byte.len() == 2 && byte.bytes().all(|digit| digit.is_ascii_hexdigit());
        let byte = u8::from_str_radix(byte, 16).ok()?;
        two.then_some(Scope::Byte(book.parse().ok()?, byte))
    }

    /// Whether it holds the entry `id` of a job.
    #[must_use]
    pub fn holds(self, book: Uuid, id: Uuid) -> bool {
        match self {
            Scope::Company => true,
            Scope::Book(of) => of == book,
            Scope::Byte(of, byte) => of == book && last_byte(id) == byte,
        }
    }

    /// The next smaller set in it that holds the entry `id` of a job; itself where none is smaller.
    #[must_use]
    pub fn part(self, book: Uuid, id: Uuid) -> Scope {
        match self {
            Scope::Company => Scope::Book(book),
            Scope::Book(_) | Scope::Byte(..) => Scope::Byte(book, last_byte(id)),
        }
    }

    /// The job, where it is of one.
    #[must_use]
    pub fn book(self) -> Option<Uuid> {
        match self {
            Scope::Company => None,
            Scope::Book(book) | Scope::Byte(book, _) => Some(book),
        }
    }
}

impl Display for Scope {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Scope::Company => f.write_str("company"),
            Scope::Book(book) => write!(f, "book:{book}"),
            Scope::Byte(book, byte) => write!(f, "book:{book}/{byte:02x}"),
        }
    }
}

fn last_byte(id: Uuid) -> u8 {
    id.as_bytes()[15]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_comes_back_as_the_set_it_names_and_other_texts_as_none() {
        let book = Uuid::from_u128(7);
        for scope in [Scope::Company, Scope::Book(book), Scope::Byte(book, 0x0f)] {
            assert_eq!(Scope::read(&scope.to_string()), Some(scope));
        }
        for text in [
            "",
            "firm",
            "book:7",
            "book:",
            &format!("book:{book}/f"),
            &format!("book:{book}/+f"),
        ] {
            assert_eq!(Scope::read(text), None, "{text}");
        }
    }

    #[test]
    fn a_part_holds_its_entry_and_lies_in_the_whole() {
        let (book, id) = (Uuid::from_u128(7), Uuid::from_u128(0x1234));
        let parts = [Scope::Company, Scope::Book(book), Scope::Byte(book, 0x34)];
        for pair in parts.windows(2) {
            assert_eq!(pair[0].part(book, id), pair[1]);
            assert!(pair[1].holds(book, id));
            assert!(!pair[1].holds(Uuid::from_u128(8), id));
        }
    }
}
