use super::Quoted;

/// What the covering is nailed to, by its name in the rates or in a person's own words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DeckName {
    /// Boards, with or without a gap.
    Plank,
    /// Sheets edge to edge.
    Sheet,
    /// Any other text.
    Other(Quoted),
}

impl From<&str> for DeckName {
    fn from(name: &str) -> DeckName {
        match name {
            "plank" => DeckName::Plank,
            "sheet" => DeckName::Sheet,
            other => DeckName::Other(other.into()),
        }
    }
}

/// What covers a roof, by its name in the rates or in a person's own words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CoveringName {
    /// `strip shingle`.
    StripShingle,
    /// `laminated shingle`.
    LaminatedShingle,
    /// `wood shake`.
    WoodShake,
    /// Any other text.
    Other(Quoted),
}

impl From<&str> for CoveringName {
    fn from(name: &str) -> CoveringName {
        match name {
            "strip shingle" => CoveringName::StripShingle,
            "laminated shingle" => CoveringName::LaminatedShingle,
            "wood shake" => CoveringName::WoodShake,
            other => CoveringName::Other(other.into()),
        }
    }
}
