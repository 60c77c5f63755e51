//! What lies on the roof now, as a takeoff needs it.

use crate::survey::Survey;

/// What lies on the roof now and what it is nailed to, as far as somebody saw it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct ExistingRoof {
    /// The covering, in words.
    pub covering: Option<String>,
    /// Its layers.
    pub layers: Option<u32>,
    /// The deck, in words.
    pub deck: Option<String>,
    /// The gap between planks, inches.
    pub gap_in: f64,
}

impl ExistingRoof {
    pub fn from_survey(survey: &Survey) -> ExistingRoof {
        let (covering, deck) = (survey.covering.as_ref(), survey.deck.as_ref());
        ExistingRoof {
            covering: covering.and_then(|it| it.kind.clone()),
            layers: covering.and_then(|it| it.layers),
            deck: deck.and_then(|it| it.kind.clone()),
            gap_in: deck
                .and_then(|it| it.gap)
                .map_or(0.0, crate::units::Length::in_inches),
        }
    }
}
