use super::Noun;

/// How many of something, written with its noun in one or many: `1 bundle`, `2 bundles`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count {
    /// How many.
    pub n: u64,
    /// Of what.
    pub noun: Noun,
}

impl Count {
    /// So many of a noun.
    #[must_use]
    pub fn new(n: usize, noun: Noun) -> Count {
        Count {
            n: u64::try_from(n).unwrap_or(u64::MAX),
            noun,
        }
    }
}
