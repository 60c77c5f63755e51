//! For whom a packet is made.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// The reader for whom a packet is made: one with every paper would hand the firm's margin to the
/// supplier.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Edition {
    /// The owner of the house.
    Owner,
    /// Those who do the work.
    Crew,
    /// The firm itself: everything, the book and the photos as they were taken.
    Firm,
    /// Who sells the material.
    Supplier,
    /// The permit office.
    Permit,
}

impl Edition {
    /// Every edition there is.
    pub const ALL: [Edition; 5] = [
        Edition::Owner,
        Edition::Crew,
        Edition::Firm,
        Edition::Supplier,
        Edition::Permit,
    ];

    /// Its name in commands, in file names and in `packet.json`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Edition::Owner => "owner",
            Edition::Crew => "crew",
            Edition::Firm => "firm",
            Edition::Supplier => "supplier",
            Edition::Permit => "permit",
        }
    }
}

impl fmt::Display for Edition {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// A name of no edition.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("there is no edition for \"{0}\": write owner, crew, firm, supplier or permit")]
pub struct NoEdition(String);

impl FromStr for Edition {
    type Err = NoEdition;

    fn from_str(name: &str) -> Result<Edition, NoEdition> {
        let named = Edition::ALL.into_iter().find(|one| one.name() == name);
        let quoted = || {
            name.chars()
                .take(40)
                .filter(|sign| !sign.is_control())
                .collect()
        };
        named.ok_or_else(|| NoEdition(quoted()))
    }
}

#[cfg(test)]
mod tests {
    use super::Edition;

    #[test]
    fn an_edition_is_known_by_its_name_and_another_name_is_refused() {
        for edition in Edition::ALL {
            assert_eq!(edition.name().parse(), Ok(edition));
            let json = serde_json::to_string(&edition).unwrap();
            assert_eq!(json, format!("\"{edition}\""));
        }
        let said = "everybody".parse::<Edition>().unwrap_err().to_string();
        assert_eq!(
            said,
            "there is no edition for \"everybody\": write owner, crew, firm, supplier or permit"
        );
    }
}
