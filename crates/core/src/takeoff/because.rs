/// One thing that made a figure. A figure's list of them leads from it to faces and edges, from
/// there to legs, and so to readings; and to the rates and notes that were used.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// A face, by its index in the roof.
    Face(usize),
    /// An edge, by its index in the roof.
    Edge(usize),
    /// A penetration, by its index in the survey.
    Penetration(usize),
    /// What lies on the roof now.
    Covering,
    /// What the covering is nailed to.
    Deck,
    /// A line of the order list, by its index.
    OrderLine(usize),
    /// A line of the price, by its index.
    PriceLine(usize),
    /// A key of the rates, as [`crate::settings::Rates::with`] takes it: `field.piece_in`.
    Rate(String),
    /// A key of the code profile: `ice_barrier.inside_in`.
    Code(String),
}

impl Cause {
    /// Keys of the rates.
    #[must_use]
    pub fn rates(keys: &[&str]) -> Vec<Cause> {
        keys.iter().map(|key| Cause::Rate((*key).into())).collect()
    }

    /// Keys of the code profile.
    #[must_use]
    pub fn codes(keys: &[&str]) -> Vec<Cause> {
        keys.iter().map(|key| Cause::Code((*key).into())).collect()
    }
}
