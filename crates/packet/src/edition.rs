//! Who gets what: one container with every paper would hand the margin to the supplier.

use crate::contents::Role;
pub use eavebook_core::book::edition::Edition;
use serde::{Deserialize, Serialize};

/// The language of a paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lang {
    /// English.
    En,
    /// Spanish as it is spoken on roofs in the United States.
    Es,
}

impl Lang {
    /// Its code: `en`.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Lang::En => "en",
            Lang::Es => "es",
        }
    }
}

/// A paper of a packet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PaperKind {
    /// What will be done, for how much, and what is not known.
    Proposal,
    /// The roof as those see it who work on it.
    Crew,
    /// What to bring, in units that are sold.
    Order,
    /// What the permit office asks for.
    Permit,
    /// Photos in walking order.
    Photos,
    /// Every figure with what made it.
    Story,
    /// What turned up once the old roof was off, and who agreed.
    Changes,
}

impl PaperKind {
    /// Its name in a path and its role in `packet.json`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            PaperKind::Proposal => "proposal",
            PaperKind::Crew => "crew",
            PaperKind::Order => "order",
            PaperKind::Permit => "permit",
            PaperKind::Photos => "photos",
            PaperKind::Story => "story",
            PaperKind::Changes => "changes",
        }
    }

    /// Its role in `packet.json`.
    #[must_use]
    pub fn role(self) -> Role {
        match self {
            PaperKind::Proposal => Role::Proposal,
            PaperKind::Crew => Role::Crew,
            PaperKind::Order => Role::Order,
            PaperKind::Permit => Role::Permit,
            PaperKind::Photos => Role::Photos,
            PaperKind::Story => Role::Story,
            PaperKind::Changes => Role::Changes,
        }
    }
}

/// Whether money may stand on a paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MoneyOn {
    /// None, nor a word of it.
    No,
    /// What the owner pays; neither cost nor margin.
    Total,
}

/// One row of the table: a paper, in which languages, for whom, with what money.
#[derive(Clone, Copy, Debug)]
pub struct PaperRow {
    /// Which paper.
    pub kind: PaperKind,
    /// In which languages.
    pub langs: &'static [Lang],
    /// For whom.
    pub editions: &'static [Edition],
    /// Whether money may stand on it.
    pub money: MoneyOn,
}

/// Who gets which paper.
pub const PAPERS: [PaperRow; 7] = {
    use Edition::{Crew, Firm, Owner, Permit, Supplier};
    use Lang::{En, Es};
    [
        PaperRow {
            kind: PaperKind::Proposal,
            langs: &[En],
            editions: &[Firm, Owner],
            money: MoneyOn::Total,
        },
        PaperRow {
            kind: PaperKind::Crew,
            langs: &[En, Es],
            editions: &[Firm, Crew],
            money: MoneyOn::No,
        },
        PaperRow {
            kind: PaperKind::Order,
            langs: &[En],
            editions: &[Firm, Supplier],
            money: MoneyOn::No,
        },
        PaperRow {
            kind: PaperKind::Permit,
            langs: &[En],
            editions: &[Firm, Permit],
            money: MoneyOn::No,
        },
        PaperRow {
            kind: PaperKind::Photos,
            langs: &[En],
            editions: &[Firm, Owner],
            money: MoneyOn::No,
        },
        PaperRow {
            kind: PaperKind::Story,
            langs: &[En],
            editions: &[Firm, Owner],
            money: MoneyOn::No,
        },
        PaperRow {
            kind: PaperKind::Changes,
            langs: &[En],
            editions: &[Firm, Owner],
            money: MoneyOn::Total,
        },
    ]
};

/// Who gets which file besides the papers. What is in no row goes to everybody.
const FILES: [(Role, &[Edition]); 15] = {
    use Edition::{Crew, Firm, Owner, Permit, Supplier};
    [
        (Role::PlanSvg, &[Firm, Owner, Crew, Permit, Supplier]),
        (Role::PlanDxf, &[Firm, Owner, Crew, Permit]),
        (Role::RoofGlb, &[Firm, Owner, Crew]),
        (Role::Faces, &[Firm, Owner, Crew, Permit]),
        (Role::Edges, &[Firm, Owner, Crew, Permit]),
        (Role::Readings, &[Firm, Owner]),
        (Role::Items, &[Firm, Owner, Crew, Permit]),
        (Role::OrderLines, &[Firm, Crew, Supplier]),
        (Role::PriceLines, &[Firm]),
        (Role::PhotoList, &[Firm, Owner, Crew]),
        (Role::Differences, &[Firm, Owner, Crew, Permit]),
        (Role::Photo, &[Firm, Owner, Crew]),
        (Role::Book, &[Firm]),
        (Role::Survey, &[Firm]),
        (Role::Original, &[Firm]),
    ]
};

/// Whether an edition holds files of a role.
#[must_use]
pub fn holds(edition: Edition, role: Role) -> bool {
    FILES
        .iter()
        .find(|(of, _)| *of == role)
        .is_none_or(|(_, editions)| editions.contains(&edition))
}

/// The papers of an edition, each once a language.
pub fn papers_of(edition: Edition) -> impl Iterator<Item = (PaperRow, Lang)> {
    PAPERS
        .into_iter()
        .filter(move |row| row.editions.contains(&edition))
        .flat_map(|row| row.langs.iter().map(move |lang| (row, *lang)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_the_book_and_the_originals_are_the_firms_alone() {
        for edition in Edition::ALL {
            for role in [Role::PriceLines, Role::Book, Role::Survey, Role::Original] {
                assert_eq!(
                    holds(edition, role),
                    edition == Edition::Firm,
                    "{edition} {role:?}"
                );
            }
        }
    }

    #[test]
    fn neither_crew_nor_supplier_nor_permit_office_gets_a_paper_with_money() {
        for edition in [Edition::Crew, Edition::Supplier, Edition::Permit] {
            assert!(papers_of(edition).all(|(row, _)| row.money == MoneyOn::No));
        }
    }

    #[test]
    fn the_crew_reads_its_paper_in_english_and_in_spanish() {
        let langs: Vec<Lang> = papers_of(Edition::Crew).map(|(_, lang)| lang).collect();
        assert_eq!(langs, [Lang::En, Lang::Es]);
    }
}
